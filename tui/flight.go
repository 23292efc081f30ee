package tui

import (
	"strconv"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// flightView draws height, speed and what pushes over time, with a cursor that
// reads them.
type flightView struct {
	bindings          KeyMap
	columns, rows     int
	scene             scene
	span              span
	cursor            cursor
	charts            []plot.Chart // of the scene, in the units shown
	marks             []plot.VerticalMark
	grid              plot.Grid
	painted           []string
	heightU, speedU   quantity.Unit
	pushU             quantity.Unit
	pushIsPressure    bool
	columnWidth, last float64 // s of one column; end of the span shown
}

func newFlightView(k KeyMap) *flightView {
	return &flightView{bindings: k, span: ascentSpan, cursor: cursor{stuck: true, kind: sim.ApogeeEvent}}
}

func (v *flightView) name() string { return "flight" }

func (v *flightView) opens() key.Binding { return bind("esc", "the flight", "esc") }

// keys is empty: the flight's keys are in the KeyMap's own groups.
func (v *flightView) keys() []key.Binding { return nil }

func (v *flightView) hints() []draw.Hint { return v.bindings.hints() }

func (v *flightView) enter(*Model) {}

func (v *flightView) lines() []string { return v.painted }

func (v *flightView) receive(tea.Msg) tea.Cmd { return nil }

func (v *flightView) resize(columns, rows int) { v.columns, v.rows = columns, rows }

func (v *flightView) show(s scene) tea.Cmd {
	v.scene = s
	if s.now != nil {
		v.cursor.follow(s.now.flight)
		v.prepare()
	}
	v.draw()
	return nil
}

func (v *flightView) press(_ *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	if v.scene.now == nil {
		return false, nil
	}
	fl := v.scene.now.flight
	switch keys := &v.bindings; {
	case key.Matches(k, keys.Span):
		v.span = (v.span + 1) % spans
	case key.Matches(k, keys.SpanBack):
		v.span = (v.span + spans - 1) % spans
	case key.Matches(k, keys.Earlier):
		v.step(-1)
	case key.Matches(k, keys.Later):
		v.step(1)
	case key.Matches(k, keys.FarEarlier):
		v.step(-10)
	case key.Matches(k, keys.FarLater):
		v.step(10)
	case key.Matches(k, keys.NextEvent):
		v.cursor.jump(fl, 1)
		v.widen(fl)
	case key.Matches(k, keys.PrevEvent):
		v.cursor.jump(fl, -1)
		v.widen(fl)
	default:
		return false, nil
	}
	v.draw()
	return true, nil
}

// point moves the cursor to the time at a column.
func (v *flightView) point(column, _ int) {
	if f := v.grid.Frame(); f.Columns > 0 && v.scene.now != nil {
		v.cursor = cursor{time: min(max(f.X(column), 0), v.last)}
		v.draw()
	}
}

// step moves the cursor by columns of the plot, inside the span shown.
func (v *flightView) step(columns float64) {
	end := v.span.end(v.scene.now.flight)
	v.cursor = cursor{time: min(max(min(v.cursor.time, end)+columns*v.columnWidth, 0), end)}
}

// widen chooses the shortest span that has the cursor in it, if the present
// one has not.
func (v *flightView) widen(fl *sim.Flight) {
	for v.span+1 < spans && v.cursor.time > v.span.end(fl) {
		v.span++
	}
}

// prepare makes the charts of the scene.
func (v *flightView) prepare() {
	s := v.scene
	unit := func(name string) quantity.Unit { return s.units.Unit(draw.Unit(name)) }
	v.heightU, v.speedU = unit("m"), unit("m/s")
	v.pushU, v.pushIsPressure = unit("N"), s.now.trace.pressure != nil
	title := "thrust"
	if v.pushIsPressure {
		v.pushU, title = unit("bar"), "chamber gauge pressure"
	}
	push := func(t *trace) []float64 {
		if v.pushIsPressure {
			return t.pressure
		}
		return t.thrust
	}
	max := s.now.flight.Results.Max
	v.charts = append(v.charts[:0],
		v.chart("height", v.heightU, plot.TraceA, func(t *trace) []float64 { return t.height },
			s.now.flight.Results.Apogee.Height, "highest"),
		v.chart("speed", v.speedU, plot.TraceB, func(t *trace) []float64 { return t.speed }, max.Speed, "fastest"),
		v.chart(title, v.pushU, plot.TraceC, push, v.most(push), "greatest"),
	)
	v.marks = draw.EventMarks(s.now.flight, v.marks[:0])
}

// most is the greatest value of a series, from 0.
func (v *flightView) most(of func(*trace) []float64) float64 {
	most := 0.0
	for _, y := range of(&v.scene.now.trace) {
		if y > most {
			most = y
		}
	}
	return most
}

// chart is one plot with the kept flight's trace beneath, when it has one.
func (v *flightView) chart(title string, u quantity.Unit, ink plot.Ink, of func(*trace) []float64, most float64, word string) plot.Chart {
	c := plot.Chart{Y: plot.Axis{Title: v.scene.theme.Say(title), Unit: u.Name, Zero: true}}
	if kept := v.scene.kept; kept != nil && kept != v.scene.now {
		c.Series = append(c.Series, plot.Series{X: kept.trace.time, Y: draw.InUnit(of(&kept.trace), u), Ink: plot.Kept, Style: plot.Dotted})
	}
	c.Series = append(c.Series, plot.Series{X: v.scene.now.trace.time, Y: draw.InUnit(of(&v.scene.now.trace), u), Ink: ink})
	c.Note = word + " " + quantity.Format(most, u, 3)
	return c
}

// draw draws the plots and the reading below them.
func (v *flightView) draw() {
	v.painted = v.painted[:0]
	if v.rows < 2 || v.columns < 1 {
		return
	}
	if v.scene.now == nil {
		for range v.rows {
			v.painted = append(v.painted, draw.Blanks(v.columns))
		}
		return
	}
	theme := v.scene.theme
	v.last = v.span.end(v.scene.now.flight)
	stack := plot.Stack{
		Charset: theme.Charset, Charts: v.charts, Marks: v.marks,
		X:          plot.Axis{Title: "time", Unit: "s", Min: 0, Max: v.last},
		ShowCursor: true, Cursor: v.cursor.time,
	}
	v.painted = append(v.painted, draw.PaintStack(theme, &v.grid, &stack, v.columns, v.rows-1)...)
	v.columnWidth = v.last / 100
	if f := v.grid.Frame(); f.Columns > 0 {
		v.columnWidth = (f.Max - f.Min) / float64(f.Columns)
	}
	v.painted = append(v.painted, v.reading())
}

// reading says what the flight is at the cursor: as much as there is room for.
func (v *flightView) reading() string {
	theme, fl := v.scene.theme, v.scene.now.flight
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
	u := func(x float64, unit string) string { return draw.Reading(x, v.scene.units.Unit(draw.Unit(unit))) }
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
	room := v.columns - draw.Width(tail) - 1
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
	return painted + draw.Blanks(v.columns-used-draw.Width(tail)) + theme.Paint(draw.Dim, tail)
}
