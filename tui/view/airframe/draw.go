package airframe

import (
	"math"
	"unicode"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// The letters of the drawing: balance points and the centre of pressure.
const (
	drySign      = 'D'
	releaseSign  = 'R'
	liquidSign   = 'L'
	pressureSign = 'P'
)

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the rocket, and below it the plots, the figures, or both.
func (v *View) paint() {
	r := v.Scene.Now.Flight.Rocket
	figures, legend, side := v.figureLines(), v.legend(), draw.SideRows(r.Shape, v.Columns, v.Rows/3)
	const plots = 12 // rows that both plots need beside the figures
	room := v.Rows - side - len(legend)
	switch {
	case room >= plots+len(figures):
		v.plot(v.side(r), side)
		v.Add(legend...)
		v.plot(v.overTime(), room-len(figures))
		v.Add(figures...)
	case !v.figures:
		v.plot(v.side(r), side)
		v.Add(legend...)
		v.plot(v.overTime(), room)
	case room >= len(figures):
		v.plot(v.side(r), side)
		v.Add(legend...)
		v.Add(figures...)
	default:
		v.Add(figures...)
	}
}

// plot draws a stack in the next rows.
func (v *View) plot(stack plot.Stack, rows int) {
	v.Add(draw.PaintStack(v.Scene.Theme, &v.grid, &stack, v.Columns, rows)...)
}

// instead is what is said where there is nothing to draw; empty mostly.
func (v *View) instead() string {
	switch s := v.Scene; {
	case s.Now == nil:
		return " "
	case s.Now.Flight.Rocket.Shape == nil:
		return "The file gives no shape, so there is nothing to balance. Write into it: length and balance under [body] " +
			"(the balance point from the tip of the nose, empty), a [nose] with shape and length, and " +
			"[[fins]] with count, root, tip, span, sweep, thickness and position. Then this view draws the rocket and tells its margins."
	case !s.Now.Flight.Rocket.Balanced():
		return "The file gives a shape but no balance point. Balance the rocket, empty, and write the distance from " +
			"the tip of the nose under [body] as balance, or list its parts as [[part]]."
	case v.study.Err != nil && !v.study.Busy && !v.study.Ready:
		return "No study: " + view.FaultText(v.study.Err, "")
	}
	return ""
}

// side is the rocket from the side with its letters.
func (v *View) side(r *rocket.Rocket) plot.Stack {
	u := v.Scene.Unit("mm")
	var marks []plot.PointMark
	for _, m := range v.marks() {
		marks = append(marks, plot.PointMark{X: u.FromSI(m.at), Sign: m.sign})
	}
	return draw.Side(v.Scene.Theme.Charset, r.Shape, u, marks...)
}

// balanceMark is a letter on the drawing's axis.
type balanceMark struct {
	sign rune
	name string
	at   float64 // m from the tip of the nose
}

// marks are the letters of the flight on show, the centre of pressure over the others.
func (v *View) marks() []balanceMark {
	st := &v.Scene.Now.Flight.Stability
	end := results.EndOfThrust(v.Scene.Now.Flight.Rocket.Power)
	endSign := unicode.ToUpper(rune(end[0]))
	var out []balanceMark
	for _, m := range []struct {
		sign rune
		name string
		at   sim.StabilityAt
	}{{drySign, "dry", st.Dry}, {endSign, end, st.Burnout}, {liquidSign, "liquid out", st.LiquidOut}, {releaseSign, "release", st.Release}} {
		if m.at.Happened {
			out = append(out, balanceMark{m.sign, m.name, m.at.Balance})
		}
	}
	return append(out, balanceMark{pressureSign, "centre of pressure", st.Release.PressureCentre})
}

// legend says what the letters are and where they stand.
func (v *View) legend() []string {
	u := v.Scene.Unit("mm")
	text := "Balance "
	for i, m := range v.marks() {
		switch {
		case m.sign == pressureSign:
			text += "; "
		case i > 0:
			text += ", "
		}
		text += string(m.sign) + " " + m.name + " " + quantity.Format(m.at, u, 3)
	}
	return v.Paragraph(draw.Dim, text)
}

// overTime is margin and angle of attack up to the top.
func (v *View) overTime() plot.Stack {
	fl := v.Scene.Now.Flight
	theme := v.Scene.Theme
	end := fl.Apogee.Time
	if !(end > 0) {
		end = math.Max(fl.Duration(), 1)
	}
	deg := draw.Unit("deg")
	var t, margin, attack []float64
	slow := fl.RailExit.Speed / 2 // below it the angle only says that the top is near
	for _, s := range fl.Trace() {
		if s.Time > end {
			break
		}
		angle := deg.FromSI(s.Attack)
		if s.Airspeed < slow {
			angle = math.NaN()
		}
		t, margin, attack = append(t, s.Time), append(margin, s.Margin), append(attack, angle)
	}
	c := plot.Chart{
		Y:      plot.Axis{Title: theme.Say("margin"), Unit: "calibres", Zero: true},
		Series: []plot.Series{{X: t, Y: margin, Ink: plot.TraceA}},
		Limits: []plot.Limit{{Y: 1, Label: "1"}, {Y: 3, Label: "3"}},
		Note:   "least " + quantity.Format(fl.Stability.Least, draw.Unit(""), 3),
	}
	a := plot.Chart{
		Y:      plot.Axis{Title: theme.Say("angle of attack"), Unit: deg.Name, Zero: true},
		Series: []plot.Series{{X: t, Y: attack, Ink: plot.TraceB}},
	}
	if fl.Rocket.Rigid() {
		a.Note = "greatest while fast " + quantity.Format(fl.Stability.MaxAngle, deg, 3)
	} else {
		a.Note = "a point mass has none"
	}
	return plot.Stack{Charset: theme.Charset, X: plot.Axis{Title: "time", Unit: "s", Min: 0, Max: end}, Charts: []plot.Chart{c, a},
		Marks: airframeEvents(fl)}
}

// airframeEvents are the marks over time that matter to balance.
func airframeEvents(fl *sim.Flight) []plot.VerticalMark {
	var out []plot.VerticalMark
	for _, e := range fl.Events {
		switch e.Kind {
		case sim.RailExitEvent, sim.LiquidOutEvent, sim.BurnoutEvent:
			label, short, _ := draw.EventName(fl, e)
			out = append(out, plot.VerticalMark{X: e.Time, Label: label, Short: short, Priority: balancePriority[e.Kind]})
		}
	}
	return out
}

// balancePriority is how much an event's label matters to balance where room is scarce.
var balancePriority = map[sim.EventKind]int{sim.RailExitEvent: 3, sim.BurnoutEvent: 2, sim.LiquidOutEvent: 1}
