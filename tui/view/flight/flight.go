// Package flight is the view of the flight itself: height, speed and what pushes over time, read by a cursor.
package flight

import (
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// View draws height, speed and what pushes over time, with a cursor that
// reads them.
type View struct {
	view.Pane
	shared            view.Keys
	span              view.Span
	cursor            cursor
	charts            []plot.Chart // of the scene, in the units shown
	marks             []plot.VerticalMark
	grid              plot.Grid
	heightU, speedU   quantity.Unit
	pushU             quantity.Unit
	pushIsPressure    bool
	columnWidth, last float64 // s of one column; end of the span shown
}

// New is the view as it is at the start.
func New(k view.Keys) *View {
	return &View{shared: k, span: view.AscentSpan, cursor: cursor{stuck: true, kind: sim.ApogeeEvent}}
}

// About is what the view is.
func (v *View) About() view.About {
	return view.About{
		Name: "flight", Open: view.Bind("esc", "the flight", "esc"),
		Help: "Height, speed and what pushes over time: the pressure in the chamber on water, the thrust on a motor. " +
			"The cursor reads the flight at one moment; at an event it stays with that event from flight to flight. " +
			"A flight that was kept is dotted beneath.",
	}
}

// Keys is empty: what the flight's keys do here is told among the frame's own.
func (v *View) Keys() []view.Key { return nil }

func (v *View) Hints() []draw.Hint { return v.shared.Hints() }

func (v *View) Show(s view.Scene) tea.Cmd {
	v.Scene = s
	if s.Now != nil {
		v.cursor.follow(s.Now.Flight)
		v.prepare()
	}
	v.draw()
	return nil
}

func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if v.Scene.Now == nil || !view.Press(v.actions(), frame, k) {
		return false, nil
	}
	v.draw()
	return true, nil
}

// actions are what the flight's keys do in this view.
func (v *View) actions() []view.Key {
	k := &v.shared
	return []view.Key{
		view.On(k.Span, func(view.Frame) { v.span = v.span.Step(1) }),
		view.On(k.SpanBack, func(view.Frame) { v.span = v.span.Step(-1) }),
		view.On(k.Earlier, func(view.Frame) { v.step(-1) }),
		view.On(k.Later, func(view.Frame) { v.step(1) }),
		view.On(k.FarEarlier, func(view.Frame) { v.step(-10) }),
		view.On(k.FarLater, func(view.Frame) { v.step(10) }),
		view.On(k.NextEvent, func(view.Frame) { v.jump(1) }),
		view.On(k.PrevEvent, func(view.Frame) { v.jump(-1) }),
	}
}

// Point moves the cursor to the time at a column.
func (v *View) Point(column, _ int) {
	if f := v.grid.Frame(); f.Columns > 0 && v.Scene.Now != nil {
		v.cursor = cursor{time: min(max(f.X(column), 0), v.last)}
		v.draw()
	}
}

// step moves the cursor by columns of the plot, inside the span shown.
func (v *View) step(columns float64) {
	end := v.span.End(v.Scene.Now.Flight)
	v.cursor = cursor{time: min(max(min(v.cursor.time, end)+columns*v.columnWidth, 0), end)}
}

// jump moves the cursor to the next event (by = 1) or the one before, in a span that has it.
func (v *View) jump(by int) {
	fl := v.Scene.Now.Flight
	v.cursor.jump(fl, by)
	v.widen(fl)
}

// widen chooses the shortest span that has the cursor in it, if the present
// one has not.
func (v *View) widen(fl *sim.Flight) {
	for v.span+1 < view.Spans && v.cursor.time > v.span.End(fl) {
		v.span++
	}
}

// prepare makes the charts of the scene.
func (v *View) prepare() {
	s := v.Scene
	unit := s.Unit
	v.heightU, v.speedU = unit("m"), unit("m/s")
	v.pushU, v.pushIsPressure = unit("N"), s.Now.Trace.Pressure != nil
	title := "thrust"
	if v.pushIsPressure {
		v.pushU, title = unit("bar"), "chamber gauge pressure"
	}
	push := func(t *view.Trace) []float64 {
		if v.pushIsPressure {
			return t.Pressure
		}
		return t.Thrust
	}
	max := s.Now.Flight.Results.Max
	v.charts = append(v.charts[:0],
		v.chart("height", v.heightU, plot.TraceA, func(t *view.Trace) []float64 { return t.Height },
			s.Now.Flight.Results.Apogee.Height, "highest"),
		v.chart("speed", v.speedU, plot.TraceB, func(t *view.Trace) []float64 { return t.Speed }, max.Speed, "fastest"),
		v.chart(title, v.pushU, plot.TraceC, push, v.most(push), "greatest"),
	)
	v.marks = draw.EventMarks(s.Now.Flight, v.marks[:0])
}

// most is the greatest value of a series, from 0.
func (v *View) most(of func(*view.Trace) []float64) float64 {
	most := 0.0
	for _, y := range of(&v.Scene.Now.Trace) {
		if y > most {
			most = y
		}
	}
	return most
}

// chart is one plot with the kept flight's trace beneath, when it has one.
func (v *View) chart(title string, u quantity.Unit, ink plot.Ink, of func(*view.Trace) []float64, most float64, word string) plot.Chart {
	c := plot.Chart{Y: plot.Axis{Title: v.Scene.Theme.Say(title), Unit: u.Name, Zero: true}}
	if kept := v.Scene.Kept; kept != nil && kept != v.Scene.Now {
		c.Series = append(c.Series, plot.Series{X: kept.Trace.Time, Y: draw.InUnit(of(&kept.Trace), u), Ink: plot.Kept, Style: plot.Dotted})
	}
	c.Series = append(c.Series, plot.Series{X: v.Scene.Now.Trace.Time, Y: draw.InUnit(of(&v.Scene.Now.Trace), u), Ink: ink})
	c.Note = word + " " + quantity.Format(most, u, 3)
	return c
}

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the plots and the reading below them.
func (v *View) paint() {
	theme := v.Scene.Theme
	v.last = v.span.End(v.Scene.Now.Flight)
	stack := plot.Stack{
		Charset: theme.Charset, Charts: v.charts, Marks: v.marks,
		X:          plot.Axis{Title: "time", Unit: "s", Min: 0, Max: v.last},
		ShowCursor: true, Cursor: v.cursor.time,
	}
	v.Add(draw.PaintStack(theme, &v.grid, &stack, v.Columns, v.Rows-1)...)
	v.columnWidth = v.last / 100
	if f := v.grid.Frame(); f.Columns > 0 {
		v.columnWidth = (f.Max - f.Min) / float64(f.Columns)
	}
	v.Add(v.reading())
}

// instead is nothing to be seen, before the first flight.
func (v *View) instead() string {
	if v.Scene.Now == nil {
		return " "
	}
	return ""
}

// reading says what the flight is at the cursor: as much as there is room for.
func (v *View) reading() string {
	theme, fl := v.Scene.Theme, v.Scene.Now.Flight
	at := fl.At(v.cursor.time)
	// Fixed places, so that nothing jumps as the cursor moves.
	places := 2
	if v.last < 2 {
		places = 3
	}
	when := "at " + strconv.FormatFloat(v.cursor.time, 'f', places, 64) + " s"
	if name := v.cursor.event(fl); name != "" {
		when = name + " " + when
	}
	u := func(x float64, unit string) string { return draw.Reading(x, v.Scene.Unit(unit)) }
	parts := []string{draw.Reading(at.Height, v.heightU) + " high", draw.Reading(at.Speed, v.speedU)}
	if v.pushIsPressure {
		parts = append(parts, draw.Reading(at.Chamber-at.Air, v.pushU))
	} else {
		parts = append(parts, draw.Reading(at.Thrust, v.pushU)+" thrust")
	}
	more := []string{"Mach " + u(at.Mach, ""), u(at.Mass, "kg"), u(at.Drag, "N") + " drag"}
	if v.pushIsPressure {
		more = append(more, u(at.Thrust, "N")+" thrust")
	}
	more = append(more, u(at.Vertical, "m/s")+" upward", u(at.Acceleration/atmosphere.StandardGravity, "")+" g")
	tail := theme.Say(v.span.String())
	room := v.Columns - draw.Width(tail) - 1
	text := theme.Say(when)
	painted := theme.Paint(draw.Focused, text)
	used := draw.Width(text)
	for i, p := range append(parts, more...) {
		p = theme.Say(p)
		if used+2+draw.Width(p) > room {
			break
		}
		r := draw.Plain
		if i >= len(parts) {
			r = draw.Dim
		}
		painted, used = painted+"  "+theme.Paint(r, p), used+2+draw.Width(p)
	}
	return painted + draw.Blanks(v.Columns-used-draw.Width(tail)) + theme.Paint(draw.Dim, tail)
}
