package tui

import (
	"math"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
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

func (v *flightView) hints() []hint { return v.bindings.hints() }

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
	unit := func(name string) quantity.Unit { return s.units.Unit(unitNamed(name)) }
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
	v.marks = eventMarks(s.now.flight, v.marks[:0])
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
	c := plot.Chart{Y: plot.Axis{Title: v.scene.look.say(title), Unit: u.Name, Zero: true}}
	if kept := v.scene.kept; kept != nil && kept != v.scene.now {
		c.Series = append(c.Series, plot.Series{X: kept.trace.time, Y: inUnit(of(&kept.trace), u), Ink: plot.Kept, Style: plot.Dotted})
	}
	c.Series = append(c.Series, plot.Series{X: v.scene.now.trace.time, Y: inUnit(of(&v.scene.now.trace), u), Ink: ink})
	c.Note = word + " " + quantity.Format(most, u, 3)
	return c
}

// inUnit is a series in a unit; the same slice when the unit is SI.
func inUnit(ys []float64, u quantity.Unit) []float64 {
	if u.Scale == 1 && u.Offset == 0 || ys == nil {
		return ys
	}
	out := make([]float64, len(ys))
	for i, y := range ys {
		out[i] = u.FromSI(y)
	}
	return out
}

// draw draws the plots and the reading below them.
func (v *flightView) draw() {
	v.painted = v.painted[:0]
	if v.rows < 2 || v.columns < 1 {
		return
	}
	if v.scene.now == nil {
		for range v.rows {
			v.painted = append(v.painted, blanks(v.columns))
		}
		return
	}
	look := v.scene.look
	v.last = v.span.end(v.scene.now.flight)
	stack := plot.Stack{
		Charset: look.charset, Charts: v.charts, Marks: v.marks,
		X:          plot.Axis{Title: "time", Unit: "s", Min: 0, Max: v.last},
		ShowCursor: true, Cursor: v.cursor.time,
	}
	v.grid.Resize(v.columns, v.rows-1)
	stack.DrawTo(&v.grid)
	v.columnWidth = v.last / 100
	if f := v.grid.Frame(); f.Columns > 0 {
		v.columnWidth = (f.Max - f.Min) / float64(f.Columns)
	}
	for row := range v.grid.Height() {
		v.painted = append(v.painted, paintRow(look, &v.grid, row))
	}
	v.painted = append(v.painted, v.reading())
}

// paintRow is a row of a drawing as painted text.
func paintRow(look *look, g *plot.Grid, row int) string {
	var b strings.Builder
	b.Grow(g.Width() * 4)
	for ink, text := range g.Runs(row) {
		brush := look.inks[ink]
		if strings.TrimLeft(text, " ") == "" {
			brush.on, brush.off = "", ""
		}
		b.WriteString(brush.on)
		b.WriteString(text)
		b.WriteString(brush.off)
	}
	return b.String()
}

// reading says what the flight is at the cursor: as much as there is room for.
func (v *flightView) reading() string {
	look, fl := v.scene.look, v.scene.now.flight
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
	u := func(x float64, unit string) string { return reading(x, v.scene.units.Unit(unitNamed(unit))) }
	parts := []string{reading(at.Height, v.heightU) + " high", reading(at.Speed, v.speedU)}
	if v.pushIsPressure {
		parts = append(parts, reading(at.Chamber-at.Air, v.pushU))
	} else {
		parts = append(parts, reading(at.Thrust, v.pushU)+" thrust")
	}
	more := []string{"Mach " + u(at.Mach, ""), u(at.Mass, "kg"), u(at.Drag, "N") + " drag"}
	if v.pushIsPressure {
		more = append(more, u(at.Thrust, "N")+" thrust")
	}
	more = append(more, u(at.Vertical, "m/s")+" upward", u(at.Acceleration/atmosphere.StandardGravity, "")+" g")
	tail := look.say(v.span.String())
	room := v.columns - width(tail) - 1
	text := look.say(when)
	painted := look.in(focused, text)
	used := width(text)
	for i, p := range append(parts, more...) {
		p = look.say(p)
		if used+2+width(p) > room {
			break
		}
		r := plainText
		if i >= len(parts) {
			r = dimText
		}
		painted, used = painted+"  "+look.in(r, p), used+2+width(p)
	}
	return painted + blanks(v.columns-used-width(tail)) + look.in(dimText, tail)
}

// reading is an SI value to three digits, and no finer than a hundredth of its
// unit: at the top the upward speed is 0, not what rounding left of it.
func reading(v float64, u quantity.Unit) string {
	if math.Abs(u.FromSI(v)) < 0.005 {
		v = u.ToSI(0)
	}
	return quantity.Format(v, u, 3)
}
