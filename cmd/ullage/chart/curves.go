package chart

import (
	"ullage/cmd/ullage/chart/page"
	"ullage/sim/gates"
)

// shows are the two things of a flight that a sweep shows.
var shows = []struct {
	title, unit string
	weight      float64
	of          func(cell) float64
}{
	{"apogee", "m", 3, func(c cell) float64 { return c.apogee }},
	{"rail exit speed", "m/s", 2, func(c cell) float64 { return c.rail }},
}

// mostSigns is up to how many flights on a curve each has a sign.
const mostSigns = 41

// curves are two panels against one axis: with a curve for each value of the other,
// if there is one.
func (w *sweep) curves(axis, family int) []page.Row {
	var rows []page.Row
	members := 1
	if family >= 0 {
		members = len(w.Axes[family].Values)
	}
	order := w.rising(axis)
	for k, show := range shows {
		u := w.look.unit(show.unit)
		p := page.Panel{X: w.axis(axis), Y: page.Axis{Title: show.title, Unit: u.Name, Zero: w.worded(axis)}}
		p.X.Bare = k == 0
		var left page.Dots
		most := 0.0
		for m := range members {
			line := page.Line{Pen: page.Pen(m), Dotty: len(order) <= mostSigns}
			if family >= 0 {
				line.Label = w.text(family, m)
			}
			for _, i := range order {
				c := w.at(axis, i, family, m)
				x, y := w.place(axis, i), u.FromSI(show.of(c))
				line.X, line.Y = append(line.X, x), append(line.Y, y)
				if c.left {
					left.X, left.Y = append(left.X, x), append(left.Y, y)
				}
				if v := show.of(c); v > most {
					most = v
				}
			}
			if w.worded(axis) {
				p.Dots = append(p.Dots, page.Dots{X: line.X, Y: line.Y, Sign: line.Pen.Sign(), Label: line.Label})
				continue
			}
			p.Lines = append(p.Lines, line)
		}
		if len(left.X) > 0 {
			left.Sign, left.Label = page.Cross, "liquid left over"
			p.Dots = append(p.Dots, left)
		}
		if k == 1 {
			p.Limits = w.limits(most)
		}
		w.point(&p, k, axis, family)
		rows = append(rows, page.Row{Weight: show.weight, Panels: []page.Panel{p}})
	}
	return rows
}

// point adds the marks of today's value and of the highest flight.
func (w *sweep) point(p *page.Panel, k, axis, family int) {
	if at, ok := w.now(axis); ok {
		m := page.Mark{At: at}
		if k == 0 {
			m.Label = "today's " + given(w.unit(axis).ToSI(at), w.unit(axis), 4)
		}
		p.Marks = append(p.Marks, m)
	}
	b := w.best()
	if b < 0 {
		return
	}
	i := w.split(b)[axis]
	show := shows[k]
	v := show.of(w.cells.cells[b])
	label := "highest " + w.look.text(v, show.unit) + " at " + w.text(axis, i)
	if k > 0 {
		label = w.look.text(v, show.unit)
	}
	if family >= 0 && k == 0 {
		label += ", " + w.text(family, w.split(b)[family])
	}
	p.Points = append(p.Points, page.Point{X: w.place(axis, i), Y: w.look.unit(show.unit).FromSI(v), Sign: page.Target, Label: label})
}

// levels are two maps over both axes, side by side.
func (w *sweep) levels() []page.Row {
	var row page.Row
	columns, lines := w.rising(0), w.rising(1)
	for k, show := range shows {
		u := w.look.unit(show.unit)
		p := page.Panel{Title: show.title + ", " + u.Name, X: w.axis(0), Y: w.axis(1)}
		l := &page.Levels{}
		for _, j := range lines {
			l.Y = append(l.Y, w.place(1, j))
		}
		for _, i := range columns {
			l.X = append(l.X, w.place(0, i))
			var z []float64
			for _, j := range lines {
				z = append(z, u.FromSI(show.of(w.at(0, i, 1, j))))
			}
			l.Z = append(l.Z, z)
		}
		if k == 1 {
			l.Limit = u.FromSI(gates.RailExit(w.Rocket).Min)
			p.Title += "; broken line: the least, " + w.look.given(gates.RailExit(w.Rocket).Min, show.unit)
		}
		p.Levels = l
		if x, ok := w.now(0); ok {
			if y, ok := w.now(1); ok {
				p.Points = append(p.Points, page.Point{X: x, Y: y, Sign: page.Ringlet, Label: "today's"})
			}
		}
		if b := w.best(); b >= 0 {
			at := w.split(b)
			p.Points = append(p.Points, page.Point{X: w.place(0, at[0]), Y: w.place(1, at[1]), Sign: page.Target, Label: "highest"})
		}
		row.Panels = append(row.Panels, p)
	}
	return []page.Row{row}
}
