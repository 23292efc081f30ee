package motors

import (
	"math"
	"slices"
	"sort"

	"ullage/sim"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// Rows of the motors view.
const (
	motorHeading   = 2 // above the first motor
	leastMotorPlot = 6 // that make a plot worth drawing
	mostMotorWords = 5 // of the reading below the list
)

// mostMotorTraces is how many traces are told apart on one plot.
const mostMotorTraces = 6

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the list, what there is to say of the chosen motor, and plots.
func (v *View) paint() {
	theme, w := v.Scene.Theme, v.Columns
	t := v.list()
	v.Add(t.Draw(theme, w, v.listRows(&t))...)
	v.Add(draw.Sentences(theme, v.reading(&t), w, min(max(v.Left()-leastMotorPlot, 1), mostMotorWords))...)
	room := v.Left()
	if w < draw.SideBySideFrom {
		v.Add(v.plot(v.heights, w, room)...)
		return
	}
	const gap = 3
	half := (w - gap) / 2
	v.Add(draw.Beside(v.plot(false, half, room), v.plot(true, w-half-gap, room), half, gap, w, room)...)
}

// listRows is how many rows the list takes, its heading included.
func (v *View) listRows(t *draw.Table) int {
	return min(len(t.Rows)+motorHeading, max(v.Rows-leastMotorPlot-2, motorHeading+1))
}

// instead is what is said where there is nothing to compare; empty mostly.
func (v *View) instead() string {
	switch theme := v.Scene.Theme; {
	case v.set.Err != nil && !v.set.Busy:
		return "No motors: " + view.FaultText(v.set.Err, "")
	case !v.set.Ready:
		return "The motors are being flown" + theme.Ellipsis
	case len(v.set.Result.motors) == 0:
		return "This rocket's file has no [motor], and there is no motor file in its folder. " +
			"Press " + v.bindings.Add.Help().Key + " to add one by its path."
	}
	return ""
}

// motorPlot is what is drawn of the flights.
type motorPlot struct {
	title, unit string
	of          func(t *view.Trace) []float64
	until       func(r *sim.Results) float64 // s
}

var (
	thrustOfMotors = motorPlot{"thrust", "N", func(t *view.Trace) []float64 { return t.Thrust },
		func(r *sim.Results) float64 { return r.Burnout.Time }}
	heightOfMotors = motorPlot{"height", "m", func(t *view.Trace) []float64 { return t.Height },
		func(r *sim.Results) float64 { return r.Apogee.Time }}
)

// plot draws the motors' traces over one time axis: the chosen one solid.
func (v *View) plot(heights bool, w, h int) []string {
	theme, is, grid := v.Scene.Theme, thrustOfMotors, &v.grids[0]
	if heights {
		is, grid = heightOfMotors, &v.grids[1]
	}
	unit := v.Scene.Unit(is.unit)
	c := plot.Chart{Y: plot.Axis{Title: is.title, Unit: unit.Name, Zero: true}}
	end, others := 0.0, 0
	for _, i := range v.drawn() {
		e := &v.set.Result.motors[i]
		until := is.until(&e.Flight.Results)
		end = max(end, until)
		line := plot.Series{X: e.trace.Time, Y: draw.InUnit(is.of(&e.trace), unit), Ink: plot.TraceA}
		line.X = line.X[:sort.SearchFloat64s(line.X, math.Nextafter(until, math.Inf(1)))]
		if i != v.at() {
			line.Style, line.Ink = draw.OtherTrace(others)
			others++
		}
		if v.set.Busy {
			line.Ink = plot.Kept
		}
		c.Series = append(c.Series, line)
		if motorLetter(i) != "" {
			c.Points = append(c.Points, draw.Lettered(line, until, i, len(v.set.Result.motors))...)
		}
	}
	if len(c.Series) == 0 {
		return nil
	}
	if v.set.Busy {
		c.Note = "the rocket before; computing" + theme.Ellipsis
	}
	if end *= 1.08; end == 0 {
		end = 1
	}
	return draw.PaintStack(theme, grid, &plot.Stack{
		Charset: theme.Charset, X: plot.Axis{Title: "time", Unit: "s", Min: 0, Max: end}, Charts: []plot.Chart{c},
	}, w, h)
}

// drawn are the motors whose traces are drawn, the chosen one last and so over
// the others: of many those nearest to it on the list.
func (v *View) drawn() []int {
	at := v.at()
	var out []int
	for i := range v.set.Result.motors {
		if v.set.Result.motors[i].Flight != nil {
			out = append(out, i)
		}
	}
	far := func(i int) int { return max(i-at, at-i) }
	slices.SortStableFunc(out, func(a, b int) int { return far(a) - far(b) })
	out = out[:min(len(out), mostMotorTraces)]
	slices.SortFunc(out, func(a, b int) int {
		if a == at || b == at {
			return far(b) - far(a)
		}
		return a - b
	})
	return out
}

// motorLetter names a motor on the plots and on the list, as far as letters go.
func motorLetter(i int) string {
	if i > 'Z'-'A' {
		return ""
	}
	return string(rune('A' + i))
}
