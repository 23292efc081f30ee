package tui

import (
	"math"
	"sort"

	"ullage/sim"
	"ullage/tui/plot"
)

// How the throats' traces are told apart besides by their letters. The rocket's
// own is solid.
var (
	throatStyles = [...]plot.Style{plot.Dashed, plot.Dotted}
	throatInks   = [...]plot.Ink{plot.TraceC, plot.TraceD, plot.TraceB}
)

// leastThroatPlot is how many rows make a plot worth drawing.
const leastThroatPlot = 5

// draw draws the table, the reading below it and the plot.
func (v *throatsView) draw() {
	v.painted = v.painted[:0]
	if v.rows < 2 || v.columns < 1 || v.scene.look == nil {
		return
	}
	look := v.scene.look
	if text := v.instead(); text != "" {
		v.painted = centred(look, text, v.columns, v.rows)
		return
	}
	rows := v.listed()
	t := v.figures(rows)
	v.painted = append(v.painted, t.draw(look, v.columns, v.rows)...)
	reading := v.reading(rows, &t, max(min(v.rows-len(v.painted)-leastThroatPlot, 4), 1))
	v.painted = append(v.painted, reading...)
	v.grid.Resize(v.columns, max(v.rows-len(v.painted), 0))
	stack := v.stack(rows)
	stack.DrawTo(&v.grid)
	for row := range v.grid.Height() {
		v.painted = append(v.painted, paintRow(look, &v.grid, row))
	}
	v.painted = v.painted[:v.rows]
}

// instead is what is said where there is nothing to compare; empty mostly.
func (v *throatsView) instead() string {
	switch s := v.scene; {
	case s.now == nil:
		return " "
	case v.flies():
		return ""
	case s.file.Rocket().Water != nil:
		return "A throat is what water flies on, and this flight is on the motor. Press " + v.frame.Drive.Help().Key + " to fly on water."
	}
	return "A throat is what water flies on, and this rocket's file has no [water]: it flies on the motor alone. " +
		"Press " + v.frame.Leave.Help().Key + " for its flight."
}

// throatPlot is what is drawn of the flights.
type throatPlot struct {
	title, unit string
	of          func(t *trace) []float64
	most        func(r *sim.Results) float64 // the axis has to take in
	until       func(r *sim.Results) float64 // s
}

var (
	heightOfThroats = throatPlot{"height", "m", func(t *trace) []float64 { return t.height },
		func(r *sim.Results) float64 { return r.Apogee.Height }, func(r *sim.Results) float64 { return r.Apogee.Time }}
	thrustOfThroats = throatPlot{"thrust", "N", func(t *trace) []float64 { return t.thrust },
		func(r *sim.Results) float64 { return r.Max.Thrust }, func(r *sim.Results) float64 { return r.Burnout.Time }}
)

// stack is the throats' traces over one time axis.
func (v *throatsView) stack(rows []throatRow) plot.Stack {
	look, is := v.scene.look, heightOfThroats
	if v.thrust {
		is = thrustOfThroats
	}
	unit := v.scene.units.Unit(unitNamed(is.unit))
	c := plot.Chart{Y: plot.Axis{Title: is.title, Unit: unit.Name, Zero: true}}
	end, most, surge := 0.0, 0.0, 0.0
	others := 0
	for i, r := range rows {
		f := v.flight(r.throat)
		if f == nil || f.flight == nil {
			continue
		}
		res := &f.flight.Results
		end, most, surge = max(end, is.until(res)), max(most, is.most(res)), max(surge, res.Startup.Thrust)
		line := plot.Series{X: f.trace.time, Y: inUnit(is.of(&f.trace), unit), Ink: plot.TraceA}
		if v.thrust { // what follows is nothing, over the others
			line.X = line.X[:sort.SearchFloat64s(line.X, math.Nextafter(is.until(res), math.Inf(1)))]
		}
		if !r.own {
			line.Style, line.Ink = throatStyles[others%len(throatStyles)], throatInks[others%len(throatInks)]
			others++
		}
		if v.flights.busy {
			line.Ink = plot.Kept
		}
		c.Series = append(c.Series, line)
		c.Points = append(c.Points, lettered(line, is.until(res), i, len(rows))...)
	}
	switch {
	case v.flights.busy:
		c.Note = "the rocket before; computing" + look.ellipsis
	case v.thrust && surge > most:
		c.Note = "without the surge of the first moment"
	}
	if v.thrust && most > 0 {
		c.Y.Max = unit.FromSI(most) * 1.1
	}
	if end *= 1.08; end == 0 {
		end = 1
	}
	return plot.Stack{Charset: look.charset, X: plot.Axis{Title: "time", Unit: "s", Min: 0, Max: end}, Charts: []plot.Chart{c}}
}

// lettered are two signs of a trace, each throat's in places of its own so that
// traces that run together keep their letters apart.
func lettered(line plot.Series, until float64, i, of int) []plot.PointMark {
	var out []plot.PointMark
	for _, half := range []float64{0, 0.5} {
		at := until * (half + 0.1 + 0.35*float64(i)/float64(of))
		if j := sort.SearchFloat64s(line.X, at); j < len(line.X) {
			out = append(out, plot.PointMark{X: line.X[j], Y: line.Y[j], Sign: 'A' + rune(i)})
		}
	}
	return out
}
