package page

import (
	"cmp"
	"slices"

	"gonum.org/v1/plot/vg"
)

// flag is the label of a mark: it stands above the frame, right of a staff that
// rises from the mark.
type flag struct {
	at   float64
	x    vg.Length
	text string
	row  int // from the frame up; -1 where there is no room
}

// raiseFlags places the labels of marks, and makes room above the frame and to
// the right of it. From the right to the left, each takes the lowest row on
// which its text meets neither a text nor a staff of those on its right.
func (a *area) raiseFlags() {
	f := plain(labelSize)
	a.margin.top = tickSize * 0.5
	a.flags = nil
	for _, m := range a.Marks {
		if m.Label != "" && drawable(m.At) && m.At >= a.x.min && m.At <= a.x.max {
			a.flags = append(a.flags, flag{at: m.At, text: fit(f, a.frame.Size().X*2/3, m.Label)})
		}
	}
	slices.SortStableFunc(a.flags, func(p, q flag) int { return cmp.Compare(p.at, q.at) })
	// A text that would run off the sheet moves the frame's edge in.
	edge := a.frame.Max.X + a.margin.right
	s := scale{a.x.span, a.frame.Min.X, a.frame.Max.X}
	for _, l := range a.flags {
		if over := s.at(l.at) + gap + f.Width(l.text) - edge; over > 0 {
			a.frame.Max.X = max(a.frame.Min.X+leastFrame, a.frame.Max.X-over)
			s.to = a.frame.Max.X
		}
	}
	rows := 0
	for i := len(a.flags) - 1; i >= 0; i-- {
		l := &a.flags[i]
		l.x = s.at(l.at)
		end := l.x + gap + f.Width(l.text)
		for _, right := range a.flags[i+1:] {
			if right.x < end {
				l.row = max(l.row, right.row+1)
			}
		}
		rows = max(rows, l.row+1)
	}
	a.dropFlags()
	if rows = min(rows, mostFlagRow); rows > 0 {
		a.margin.top += flagRow*vg.Length(rows) + gap
	}
	if a.Title != "" {
		a.margin.top += axisSize * leading
	}
}

// dropFlags leaves out those that stand too high.
func (a *area) dropFlags() {
	for i := range a.flags {
		if a.flags[i].row >= mostFlagRow {
			a.flags[i].row = -1
		}
	}
}

// drawFlags draws staffs and texts.
func (s sheet) drawFlags(a *area) {
	f := plain(labelSize)
	for _, l := range a.flags {
		if l.row < 0 {
			continue
		}
		x := a.x.at(l.at)
		base := a.frame.Max.Y + gap + flagRow*vg.Length(l.row)
		s.StrokeLine2(thread, x, a.frame.Max.Y, x, base+labelSize*0.8)
		s.write(f, black, vg.Point{X: x + gap*0.7, Y: base}, atLeft, l.text)
	}
}
