package page

import (
	"slices"

	"gonum.org/v1/plot/vg"
)

// area is a panel with its place on the sheet.
type area struct {
	*Panel
	frame          vg.Rectangle
	right          vg.Length // where the panel's share of the sheet ends
	x, y           scale
	drawn          span // of y, before there is room for labels
	xTicks, yTicks []tick
	margin         margins
	flags          []pennant
	side           []sideLabel
	beside         []string // wrapped
	taken          []vg.Rectangle
	curves         [][]vg.Point // what is drawn, on paper
}

// margins are the room around a frame.
type margins struct{ left, right, bottom, top vg.Length }

// Distances on the sheet, in points.
const (
	gap          = vg.Length(4)
	tickLength   = vg.Length(3)
	xTickEvery   = vg.Length(58)
	yTickEvery   = vg.Length(24)
	mostTicks    = 10
	flagRow      = labelSize * 1.3
	mostFlagRows = 7
	sampleWidth  = vg.Length(22)
	mostSide     = vg.Length(185)
	betweenRows  = vg.Length(7)
	leastFrame   = vg.Length(20)
)

// layOut gives every panel its frame. Frames in a column stand below each other.
func layOut(room vg.Rectangle, rows []Row) []*area {
	var all []*area
	var table [][]*area
	for i := range rows {
		var r []*area
		for j := range rows[i].Panels {
			r = append(r, newArea(&rows[i].Panels[j]))
		}
		table, all = append(table, r), append(all, r...)
	}
	if len(all) == 0 {
		return nil
	}
	guess := room.Size().Y/vg.Length(len(rows)) - 25
	for _, a := range all {
		a.measure(guess)
	}
	alignColumns(table)
	tops := make([]vg.Length, len(rows))
	for _, r := range table {
		width := room.Size().X / vg.Length(max(len(r), 1))
		for j, a := range r {
			left := room.Min.X + width*vg.Length(j)
			a.right = left + width
			a.frame.Min.X = left + a.margin.left
			a.frame.Max.X = max(a.frame.Min.X+leastFrame, a.right-a.margin.right-gap)
		}
	}
	// An edge that one panel's labels draw in moves the marks of the panels below it.
	for moved := true; moved; {
		for _, a := range all {
			a.hoist()
		}
		moved = alignEdges(table)
	}
	for i, r := range table {
		for _, a := range r {
			a.raise()
			tops[i] = max(tops[i], a.margin.top)
		}
	}
	stack(room, rows, table, tops)
	for _, a := range all {
		a.settle()
	}
	return all
}

// column tells panels below each other: of so many in a row, the one at an index.
type column struct{ columns, index int }

// alignColumns gives panels below each other the same margins left and right.
func alignColumns(table [][]*area) {
	most := map[column]margins{}
	for _, r := range table {
		for j, a := range r {
			k := column{len(r), j}
			m := most[k]
			m.left, m.right = max(m.left, a.margin.left), max(m.right, a.margin.right)
			most[k] = m
		}
	}
	for _, r := range table {
		for j, a := range r {
			m := most[column{len(r), j}]
			a.margin.left, a.margin.right = m.left, m.right
		}
	}
}

// alignEdges ends the frames of panels below each other where the narrowest does, and
// tells whether that moved one.
func alignEdges(table [][]*area) (moved bool) {
	least := map[column]vg.Length{}
	for _, r := range table {
		for j, a := range r {
			k := column{len(r), j}
			if x, ok := least[k]; !ok || a.frame.Max.X < x {
				least[k] = a.frame.Max.X
			}
		}
	}
	for _, r := range table {
		for j, a := range r {
			x := least[column{len(r), j}]
			moved = moved || x < a.frame.Max.X
			a.frame.Max.X = x
		}
	}
	return moved
}

// stack places the rows from the top, their frames as high as their weights say.
func stack(room vg.Rectangle, rows []Row, table [][]*area, tops []vg.Length) {
	weight := func(i int) vg.Length {
		if w := rows[i].Weight; w > 0 {
			return vg.Length(w)
		}
		return 1
	}
	free, weights := room.Size().Y, vg.Length(0)
	bottoms := make([]vg.Length, len(rows))
	for i, r := range table {
		for _, a := range r {
			bottoms[i] = max(bottoms[i], a.margin.bottom)
		}
		free -= tops[i] + bottoms[i] + betweenRows
		weights += weight(i)
	}
	y := room.Max.Y
	for i, r := range table {
		y -= tops[i]
		height := max(free*weight(i)/weights, leastFrame)
		for _, a := range r {
			a.frame.Max.Y, a.frame.Min.Y = y, y-height
		}
		y -= height + bottoms[i] + betweenRows
	}
}

// newArea takes the ranges from what the panel draws.
func newArea(p *Panel) *area {
	a := &area{Panel: p}
	xs, ys := nothing(), nothing()
	for _, l := range p.Lines {
		xs.take(l.X...)
		ys.take(l.Y...)
	}
	for _, d := range p.Dots {
		xs.take(d.X...)
		ys.take(d.Y...)
	}
	for _, q := range p.Points {
		xs.take(q.X)
		ys.take(q.Y)
	}
	for _, l := range p.Limits {
		ys.take(l.At)
	}
	if l := p.Levels; l != nil {
		xs.take(l.X...)
		ys.take(l.Y...)
	}
	a.x.span = p.X.over(xs, p.Equal, p.Equal)
	a.y.span = p.Y.over(ys, p.Levels == nil, p.Equal)
	a.drawn = a.y.span
	return a
}

// over is the range of an axis over what is drawn; loose ones leave some air.
func (x *Axis) over(drawn span, loose, all bool) span {
	switch {
	case len(x.Words) > 0:
		return span{-0.5, float64(len(x.Words)) - 0.5}
	case x.fixed():
		return span{x.Min, x.Max}.open()
	}
	if x.Zero {
		drawn.take(0)
	}
	s := drawn.open()
	switch {
	case all:
		by := (s.max - s.min) * 0.06
		return span{s.min - by, s.max + by}
	case loose:
		return s.widen(0.06)
	}
	return s
}

// fixed tells whether the axis has its range.
func (x *Axis) fixed() bool { return x.Max > x.Min && drawable(x.Min) && drawable(x.Max) }

// measure works out the margins from the labels, with ticks for about this
// height.
func (a *area) measure(height vg.Length) {
	a.headroom(height)
	a.ticksOfY(height)
	widest := vg.Length(0)
	for _, t := range a.yTicks {
		widest = max(widest, plain(tickSize).Width(t.label))
	}
	a.margin.left = tickLength + gap + widest + gap + axisSize*1.3
	a.margin.bottom = gap
	if !a.X.Bare {
		a.margin.bottom = tickLength + gap + tickSize + gap + axisSize*1.1
	}
	a.labelSide()
	right := vg.Length(0)
	for _, l := range a.side {
		right = max(right, gap+sampleWidth+gap+plain(labelSize).Width(l.text))
	}
	a.beside = nil
	for _, text := range a.Beside {
		for _, l := range wrap(plain(labelSize), mostSide-gap*3, text) {
			right = max(right, gap*3+plain(labelSize).Width(l))
			a.beside = append(a.beside, l)
		}
	}
	if a.Compass != nil {
		right = max(right, a.compassSize().X)
	}
	a.margin.right = max(right, tickSize)
}

// headroom raises the end of a range so that the label of the highest point has room
// above it.
func (a *area) headroom(height vg.Length) {
	labelled := slices.ContainsFunc(a.Points, func(q Point) bool { return q.Label != "" })
	if labelled && a.Levels == nil && !a.Equal && len(a.Y.Words) == 0 {
		const room = labelSize*1.15 + 5
		a.y.max = a.drawn.max + (a.drawn.max-a.drawn.min)*float64(room/max(height-room, room))
	}
}

func (a *area) ticksOfY(height vg.Length) {
	if len(a.Y.Words) > 0 {
		a.yTicks = wordTicks(a.Y.Words)
		return
	}
	a.yTicks = a.y.ticks(min(int(height/yTickEvery), mostTicks))
}

// settle fixes the scales, once the frame is known.
func (a *area) settle() {
	a.x.from, a.x.to = a.frame.Min.X, a.frame.Max.X
	a.y.from, a.y.to = a.frame.Min.Y, a.frame.Max.Y
	a.headroom(a.frame.Size().Y)
	if a.Equal {
		a.equalise()
	}
	a.ticksOfY(a.frame.Size().Y)
	a.xTicks = wordTicks(a.X.Words)
	if len(a.X.Words) == 0 {
		a.xTicks = a.x.ticks(min(int(a.frame.Size().X/xTickEvery), mostTicks))
	}
	a.trace()
}

// equalise widens the range of the axis whose unit is longer on paper.
func (a *area) equalise() {
	ux, uy := a.x.perUnit(), a.y.perUnit()
	grow := func(s *span, factor float64) {
		m, half := s.min/2+s.max/2, (s.max-s.min)/2*factor
		s.min, s.max = m-half, m+half
	}
	if ux > uy {
		grow(&a.x.span, ux/uy)
	} else {
		grow(&a.y.span, uy/ux)
	}
}

// point is a point of the panel on paper. One far outside the ranges is brought
// nearer, since drawing has its bounds.
func (a *area) point(x, y float64) vg.Point {
	const far = 1e4
	return vg.Point{X: min(max(a.x.at(x), -far), far), Y: min(max(a.y.at(y), -far), far)}
}

// inside tells whether a point is within the ranges shown.
func (a *area) inside(x, y float64) bool {
	return x >= a.x.min && x <= a.x.max && y >= a.y.min && y <= a.y.max
}

// trace puts the curves on paper, in unbroken pieces.
func (a *area) trace() {
	for _, l := range a.Lines {
		a.curves = append(a.curves, a.pieces(l)...)
	}
}

// pieces is a line on paper, broken where it has no value.
func (a *area) pieces(l Line) [][]vg.Point {
	var out [][]vg.Point
	var piece []vg.Point
	n := min(len(l.X), len(l.Y))
	for i := range n {
		if !drawable(l.X[i]) || !drawable(l.Y[i]) {
			if len(piece) > 1 {
				out = append(out, piece)
			}
			piece = nil
			continue
		}
		piece = append(piece, a.point(l.X[i], l.Y[i]))
	}
	if len(piece) > 1 {
		out = append(out, piece)
	}
	return out
}
