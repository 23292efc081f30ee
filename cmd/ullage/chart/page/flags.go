package page

import (
	"cmp"
	"slices"

	"gonum.org/v1/plot/vg"
)

// pennant is the label of a mark: it stands above the frame, right of a staff that
// rises from the mark, or left of it.
type pennant struct {
	at    float64
	x     vg.Length
	text  string
	width vg.Length
	left  bool
	row   int // from the frame up
}

// from and to are where the text begins and ends.
func (l *pennant) from() vg.Length {
	if l.left {
		return l.x - l.width
	}
	return l.x
}

func (l *pennant) to() vg.Length { return l.from() + l.width }

// hoist lists the labels of marks, and draws the frame's right edge in for those that
// would run off the sheet. The last one may turn to the left instead, where no
// staff is in its way.
func (a *area) hoist() {
	f := plain(labelSize)
	a.flags = nil
	for _, m := range a.Marks {
		if m.Label != "" && m.At >= a.x.min && m.At <= a.x.max {
			text := fit(f, a.frame.Size().X*2/3, m.Label)
			a.flags = append(a.flags, pennant{at: m.At, text: text, width: f.Width(text)/slack + 2*gap})
		}
	}
	slices.SortStableFunc(a.flags, func(p, q pennant) int { return cmp.Compare(p.at, q.at) })
	edge := a.right - tickSize*0.5
	for i := range a.flags {
		l := &a.flags[i]
		s := a.across()
		x := s.at(l.at)
		if x+l.width <= edge+1e-6 || x <= a.frame.Min.X { // rounding is no reason
			continue
		}
		if i == len(a.flags)-1 && (i == 0 || s.at(a.flags[i-1].at) < x-l.width) {
			l.left = true
			continue
		}
		// The mark moves with its share of what the edge moves.
		share := (x - a.frame.Min.X) / a.frame.Size().X
		a.frame.Max.X = max(a.frame.Min.X+leastFrame, a.frame.Max.X-(x+l.width-edge)/share)
	}
}

// across is the scale of x as the frame is now.
func (a *area) across() scale { return scale{a.x.span, a.frame.Min.X, a.frame.Max.X} }

// raise gives the labels their rows, and makes room for them. From the right to the
// left, each takes the lowest row on which its text meets neither a text nor a
// staff of those on its right.
func (a *area) raise() {
	a.margin.top = tickSize * 0.5
	s := a.across()
	rows := 0
	for i := len(a.flags) - 1; i >= 0; i-- {
		l := &a.flags[i]
		l.x = s.at(l.at)
		for j := range a.flags[i+1:] {
			if right := &a.flags[i+1+j]; right.from() < l.to() {
				l.row = max(l.row, right.row+1)
			}
		}
		rows = max(rows, l.row+1)
	}
	if rows = min(rows, mostFlagRows); rows > 0 {
		a.margin.top += flagRow*vg.Length(rows) + gap
	}
	if a.Title != "" {
		a.margin.top += axisSize * leading
	}
}

// drawFlags draws staffs and texts, but those that would stand too high.
func (s sheet) drawFlags(a *area) {
	f := plain(labelSize)
	for i := range a.flags {
		l := &a.flags[i]
		if l.row >= mostFlagRows {
			continue
		}
		base := a.frame.Max.Y + gap + flagRow*vg.Length(l.row)
		s.StrokeLine2(thread, l.x, a.frame.Max.Y, l.x, base+labelSize*0.8)
		if l.left {
			s.write(f, black, vg.Point{X: l.x - gap*0.7, Y: base}, atRight, l.text)
			continue
		}
		s.write(f, black, vg.Point{X: l.x + gap*0.7, Y: base}, atLeft, l.text)
	}
}
