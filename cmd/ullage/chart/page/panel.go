package page

import (
	"math"

	"gonum.org/v1/plot/vg"
)

// panel draws one panel, from what lies lowest.
func (s sheet) panel(a *area) {
	s.grid(a)
	inner := *s.Canvas
	inner.Rectangle = a.frame
	s.rings(a)
	for _, m := range a.Marks {
		if m.At >= a.x.min && m.At <= a.x.max {
			s.StrokeLine2(markLine, a.x.at(m.At), a.frame.Min.Y, a.x.at(m.At), a.frame.Max.Y)
		}
	}
	for _, l := range a.Limits {
		if l.At >= a.y.min && l.At <= a.y.max {
			s.StrokeLine2(limitLine, a.frame.Min.X, a.y.at(l.At), a.frame.Max.X, a.y.at(l.At))
		}
	}
	if a.Compass != nil { // an outline on a map is not to go under in what it holds
		s.dots(a)
	}
	for _, l := range a.Lines {
		style := l.Pen.style()
		for _, piece := range a.pieces(l) {
			inner.StrokeLines(style, inner.ClipLinesXY(thin(piece))...)
		}
		if l.Dotty {
			signs(s.Canvas, l.Pen.Sign(), style.Color, a.shown(l.X, l.Y))
		}
	}
	levels := s.levels(a)
	if a.Compass == nil {
		s.dots(a)
	}
	for _, p := range a.Points {
		signs(s.Canvas, p.Sign, black, a.shown([]float64{p.X}, []float64{p.Y}))
	}
	s.axes(a)
	s.compass(a)
	s.labels(a)
	s.levelLabels(a, levels)
	s.drawFlags(a)
	s.drawSide(a)
}

// dots draws the points that are not joined.
func (s sheet) dots(a *area) {
	for _, d := range a.Dots {
		ink := black
		if d.Sign == Dot {
			ink = cloud
		}
		signs(s.Canvas, d.Sign, ink, a.shown(d.X, d.Y))
	}
}

// shown are the points within the ranges, on paper.
func (a *area) shown(x, y []float64) []vg.Point {
	var out []vg.Point
	for i := range min(len(x), len(y)) {
		if a.inside(x[i], y[i]) {
			out = append(out, a.point(x[i], y[i]))
		}
	}
	return out
}

func (s sheet) grid(a *area) {
	for _, t := range a.xTicks {
		s.StrokeLine2(gridLine, a.x.at(t.at), a.frame.Min.Y, a.x.at(t.at), a.frame.Max.Y)
	}
	for _, t := range a.yTicks {
		s.StrokeLine2(gridLine, a.frame.Min.X, a.y.at(t.at), a.frame.Max.X, a.y.at(t.at))
	}
}

// axes draws the frame, the ticks and their labels, and the titles.
func (s sheet) axes(a *area) {
	f := a.frame
	s.StrokeLines(frameLine, []vg.Point{f.Min, {X: f.Max.X, Y: f.Min.Y}, f.Max, {X: f.Min.X, Y: f.Max.Y}, f.Min})
	for _, t := range a.yTicks {
		y := a.y.at(t.at)
		s.StrokeLine2(frameLine, f.Min.X-tickLength, y, f.Min.X, y)
		s.write(plain(tickSize), black, vg.Point{X: f.Min.X - tickLength - gap, Y: y - tickSize*middle}, atRight, t.label)
	}
	x := f.Min.X - a.margin.left + axisSize*0.65
	room := f.Size().Y + gap*2
	title := plain(axisSize)
	if w := title.Width(a.Y.title()); w > room {
		title = plain(max(axisSize*room/w, leastSize))
	}
	s.writeUp(title, black, vg.Point{X: x, Y: (f.Min.Y + f.Max.Y) / 2}, fit(title, room, a.Y.title()))
	if a.Title != "" {
		top := f.Max.Y + a.margin.top - axisSize
		s.write(bold(axisSize), black, vg.Point{X: f.Min.X, Y: top}, atLeft, fit(bold(axisSize), f.Size().X, a.Title))
	}
	for _, t := range a.xTicks {
		s.StrokeLine2(frameLine, a.x.at(t.at), f.Min.Y-tickLength, a.x.at(t.at), f.Min.Y)
	}
	if a.X.Bare {
		return
	}
	base := f.Min.Y - tickLength - gap - tickSize*2*middle
	for _, t := range a.xTicks {
		room := f.Size().X / vg.Length(max(len(a.X.Words), 1))
		s.write(plain(tickSize), black, vg.Point{X: a.x.at(t.at), Y: base}, atCentre, fit(plain(tickSize), room, t.label))
	}
	s.write(plain(axisSize), black, vg.Point{X: (f.Min.X + f.Max.X) / 2, Y: base - gap - axisSize*2*middle - 1}, atCentre,
		fit(plain(axisSize), f.Size().X, a.X.title()))
}

// title is what an axis shows, and its unit.
func (x *Axis) title() string {
	if x.Unit == "" {
		return clean(x.Title)
	}
	return clean(x.Title + ", " + x.Unit)
}

// labels writes the labels of points and limits where they hide least.
func (s sheet) labels(a *area) {
	for _, p := range a.Points {
		if a.inside(p.X, p.Y) {
			a.taken = append(a.taken, rectangle(a.point(p.X, p.Y), 2*p.Sign.radius(), 2*p.Sign.radius()))
		}
	}
	for _, p := range a.Points {
		if p.Label == "" || !a.inside(p.X, p.Y) {
			continue
		}
		text := fit(plain(labelSize), a.frame.Size().X*0.9, p.Label)
		w, h := sized(text)
		s.label(a.place(around(a.point(p.X, p.Y), p.Sign.radius()+1.5, w, h)), text)
	}
	for _, l := range a.Limits {
		if l.Label == "" || !(l.At >= a.y.min && l.At <= a.y.max) {
			continue
		}
		text := fit(plain(labelSize), a.frame.Size().X*0.9, l.Label)
		w, h := sized(text)
		var places []vg.Rectangle
		for share := vg.Length(1); share > -0.01; share -= 0.05 {
			for _, side := range []vg.Length{1, -1} {
				x := a.frame.Min.X + gap + w/2 + share*(a.frame.Size().X-w-2*gap)
				places = append(places, rectangle(vg.Point{X: x, Y: a.y.at(l.At) + side*(h/2+1.5)}, w, h))
			}
		}
		s.label(a.place(places), text)
	}
}

// thin leaves out points that a line through their neighbours meets within a
// hundredth of a millimetre: a printer does not show them.
func thin(line []vg.Point) []vg.Point {
	const within = 0.03 // points
	if len(line) < 3 {
		return line
	}
	keep := make([]bool, len(line))
	keep[0], keep[len(line)-1] = true, true
	// Douglas and Peucker, The Canadian Cartographer 10 (1973) 112.
	type stretch struct{ from, to int }
	todo := []stretch{{0, len(line) - 1}}
	for len(todo) > 0 {
		s := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		far, most := 0, within
		for i := s.from + 1; i < s.to; i++ {
			if d := distance(line[i], line[s.from], line[s.to]); d > most {
				far, most = i, d
			}
		}
		if far > 0 {
			keep[far] = true
			todo = append(todo, stretch{s.from, far}, stretch{far, s.to})
		}
	}
	out := line[:0:0]
	for i, k := range keep {
		if k {
			out = append(out, line[i])
		}
	}
	return out
}

// distance is that of a point from the stretch between two others.
func distance(p, a, b vg.Point) float64 {
	d, q := b.Sub(a), p.Sub(a)
	length := d.Dot(d)
	if length > 0 {
		along := min(max(q.Dot(d)/length, 0), 1)
		q = q.Sub(d.Scale(along))
	}
	return math.Hypot(float64(q.X), float64(q.Y))
}
