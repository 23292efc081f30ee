package throats

import (
	"math"
	"sort"
	"ullage/sim/quantity"

	"ullage/sim"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// leastThroatPlot is how many rows make a plot worth drawing.
const leastThroatPlot = 5

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the table, the reading below it and the plot.
func (v *View) paint() {
	theme := v.Scene.Theme
	rows := v.listed()
	t := v.figures(rows)
	v.Add(t.Draw(theme, v.Columns, v.Rows)...)
	reading := v.reading(rows, &t, max(min(v.Left()-leastThroatPlot, 4), 1))
	v.Add(reading...)
	stack := v.stack(rows)
	v.Add(draw.PaintStack(theme, &v.grid, &stack, v.Columns, v.Left())...)
}

// instead is what is said where there is nothing to compare; empty mostly.
func (v *View) instead() string {
	switch s := v.Scene; {
	case s.Now == nil:
		return " "
	case v.flies():
		return ""
	case s.File.Rocket().Water != nil:
		return "A throat is what water flies on, and this flight is on the motor. Press " + v.shared.Drive.Help().Key + " to fly on water."
	}
	return "A throat is what water flies on, and this rocket's file has no [water]: it flies on the motor alone. " +
		"Press " + v.shared.Leave.Help().Key + " for its flight."
}

// throatPlot is what is drawn of the flights.
type throatPlot struct {
	title, unit string
	of          func(t *view.Trace) []float64
	most        func(r *sim.Results) float64 // the axis has to take in
	until       func(r *sim.Results) float64 // s
}

var (
	heightOfThroats = throatPlot{"height", "m", func(t *view.Trace) []float64 { return t.Height },
		func(r *sim.Results) float64 { return r.Apogee.Height }, func(r *sim.Results) float64 { return r.Apogee.Time }}
	thrustOfThroats = throatPlot{"thrust", "N", func(t *view.Trace) []float64 { return t.Thrust },
		func(r *sim.Results) float64 { return r.Max.Thrust }, func(r *sim.Results) float64 { return r.Burnout.Time }}
)

// stack is the throats' traces over one time axis.
func (v *View) stack(rows []throatRow) plot.Stack {
	theme, is := v.Scene.Theme, heightOfThroats
	if v.thrust {
		is = thrustOfThroats
	}
	unit := v.Scene.Unit(is.unit)
	c := plot.Chart{Y: plot.Axis{Title: is.title, Unit: unit.Name, Zero: true}}
	end, most, surge, lasts := 0.0, 0.0, 0.0, 0.0
	others := 0
	for i, r := range rows {
		f := v.flight(r.throat)
		if f == nil || f.flight == nil {
			continue
		}
		res := &f.flight.Results
		end, most, surge = max(end, is.until(res)), max(most, is.most(res)), max(surge, res.Startup.Thrust)
		lasts = max(lasts, res.Startup.Duration)
		line := plot.Series{X: f.trace.Time, Y: draw.InUnit(is.of(&f.trace), unit), Ink: plot.TraceA}
		if v.thrust { // what follows is nothing, over the others
			line.X = line.X[:sort.SearchFloat64s(line.X, math.Nextafter(is.until(res), math.Inf(1)))]
		}
		if !r.own {
			line.Style, line.Ink = draw.OtherTrace(others)
			others++
		}
		if v.flights.Busy {
			line.Ink = plot.Kept
		}
		c.Series = append(c.Series, line)
		c.Points = append(c.Points, draw.Lettered(line, is.until(res), i, len(rows))...)
	}
	switch {
	case v.flights.Busy:
		c.Note = "the rocket before; computing" + theme.Ellipsis
	case v.thrust && surge > most:
		c.Note = "without the surge of the first " + quantity.Format(lasts, draw.Unit("ms"), 2)
	}
	if v.thrust && most > 0 {
		c.Y.Max = unit.FromSI(most) * 1.1
	}
	if end *= 1.08; end == 0 {
		end = 1
	}
	return plot.Stack{Charset: theme.Charset, X: plot.Axis{Title: "time", Unit: "s", Min: 0, Max: end}, Charts: []plot.Chart{c}}
}
