package chart

import (
	"math"
	"strings"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/gates"
	"ullage/sim/quantity"
)

// weight is how tall the panel of a row is beside others.
func weight(row int) float64 {
	if row == apogeeRow {
		return 3
	}
	return 2
}

// of is a value of a flight in the unit its row is shown in.
func (w *sweep) of(row int, c cell) float64 { return w.shownIn(row).FromSI(c.values[row]) }

// shownIn is the unit that a row is shown in.
func (w *sweep) shownIn(row int) quantity.Unit { return w.look.System.Unit(w.cells.rows[row].Metric()) }

// value writes a value of a row.
func (w *sweep) value(row int, v float64) string {
	r := &w.cells.rows[row]
	return strings.TrimSpace(w.look.in(v, r.Metric()) + " " + r.Suffix)
}

// axisOf is the axis of a row.
func (w *sweep) axisOf(row int) page.Axis {
	r := &w.cells.rows[row]
	return page.Axis{Title: r.Label, Unit: strings.TrimSpace(unitName(w.shownIn(row)) + " " + r.Suffix)}
}

// mostSigns is up to how many flights on a curve each has a sign.
const mostSigns = 41

// curves are panels against one axis: with a curve for each value of the other,
// if there is one.
func (w *sweep) curves(axis, family int) []page.Row {
	var rows []page.Row
	members := 1
	if family >= 0 {
		members = len(w.Axes[family].Values)
	}
	order := w.rising(axis)
	shows := w.cells.shown()
	for k, row := range shows {
		p := page.Panel{X: w.axis(axis), Y: w.axisOf(row)}
		p.Y.Zero = w.worded(axis)
		p.X.Bare = k < len(shows)-1
		var left page.Dots
		most := 0.0
		for m := range members {
			line := page.Line{Pen: page.Pen(m), Dotty: len(order) <= mostSigns}
			if family >= 0 {
				line.Label = w.text(family, m)
			}
			for _, i := range order {
				c := w.at(axis, i, family, m)
				x, y := w.place(axis, i), w.of(row, c)
				line.X, line.Y = append(line.X, x), append(line.Y, y)
				if c.left {
					left.X, left.Y = append(left.X, x), append(left.Y, y)
				}
				most = math.Max(most, zeroIfNone(c.values[row]))
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
		if row == exitRow {
			p.Limits = w.limits(most)
		}
		w.point(&p, k, row, axis, family)
		rows = append(rows, page.Row{Weight: weight(row), Panels: []page.Panel{p}})
	}
	return rows
}

// point adds the marks of today's value and of the highest flight.
func (w *sweep) point(p *page.Panel, k, row, axis, family int) {
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
	c := w.cells.cells[b]
	label := w.value(row, c.values[row])
	switch {
	case row == apogeeRow:
		label = "highest " + label + " at " + w.text(axis, i)
	case k == 0:
		label += " in the highest flight, at " + w.text(axis, i)
	}
	if family >= 0 && k == 0 {
		label += ", " + w.text(family, w.split(b)[family])
	}
	p.Points = append(p.Points, page.Point{X: w.place(axis, i), Y: w.of(row, c), Sign: page.Target, Label: label})
}

// levels are maps over both axes, two side by side.
func (w *sweep) levels() []page.Row {
	const beside = 2
	var rows []page.Row
	columns, lines := w.rising(0), w.rising(1)
	for k, row := range w.cells.shown() {
		y := w.axisOf(row)
		p := page.Panel{Title: strings.TrimSuffix(y.Title+", "+y.Unit, ", "), X: w.axis(0), Y: w.axis(1)}
		l := &page.Levels{}
		for _, j := range lines {
			l.Y = append(l.Y, w.place(1, j))
		}
		for _, i := range columns {
			l.X = append(l.X, w.place(0, i))
			var z []float64
			for _, j := range lines {
				z = append(z, w.of(row, w.at(0, i, 1, j)))
			}
			l.Z = append(l.Z, z)
		}
		if row == exitRow {
			least := gates.RailExit(w.Rocket).Min
			l.Limit = w.shownIn(row).FromSI(least)
			p.Title += "; broken line: the least, " + w.look.given(least, "m/s")
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
		if k%beside == 0 {
			rows = append(rows, page.Row{})
		}
		last := &rows[len(rows)-1]
		last.Panels = append(last.Panels, p)
	}
	return rows
}

// zeroIfNone is a value, or 0 where there is none.
func zeroIfNone(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
