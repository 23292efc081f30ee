package fill

import (
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// leftSign is on a curve where liquid stays aboard.
const leftSign = 'x'

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the charts and the reading below them.
func (v *View) paint() {
	reading := v.reading(max(v.Rows/3, 6))
	stack := v.stack()
	v.Add(draw.PaintStack(v.Scene.Theme, &v.grid, &stack, v.Columns, v.Rows-len(reading))...)
	v.Add(reading...)
}

// instead is what is said where there is no curve to draw; empty mostly.
func (v *View) instead() string {
	fly := v.shared.Drive.Help().Key
	switch s := v.Scene; {
	case s.Now == nil:
		return " "
	case !v.flies() && s.Now.Flight.Rocket.Water != nil:
		return "Fill is for water, and this flight is on the motor. Press " + fly + " to fly on water."
	case !v.flies():
		return "Fill is for water, and this rocket's file has no [water]: it flies on the motor alone. " +
			"Press " + v.shared.Leave.Help().Key + " for its flight."
	case v.curves.Err != nil && !v.curves.Busy:
		return "No curve: " + view.FaultText(v.curves.Err, "")
	case !v.curves.Ready:
		return "The curve is being computed" + v.Scene.Theme.Ellipsis
	}
	return ""
}

// drawnCurve is a curve and how it is drawn.
type drawnCurve struct {
	*fillCurve
	style plot.Style
	ink   plot.Ink
	sign  rune // of its best; 'A' and on in a family
}

func (v *View) drawn() []drawnCurve {
	curves := v.curves.Result
	out := make([]drawnCurve, len(curves))
	others := 0
	for i := range curves {
		d := drawnCurve{fillCurve: &curves[i], ink: plot.TraceA, sign: draw.BestSign}
		if len(curves) > 1 {
			d.sign = 'A' + rune(i)
		}
		if !curves[i].today {
			d.style, d.ink = draw.OtherTrace(others)
			others++
		}
		if v.curves.Busy {
			d.ink = plot.Kept
		}
		out[i] = d
	}
	return out
}

// wished is what the curves are of.
func (v *View) wished() study.Wish {
	if len(v.curves.Result) > 0 {
		return v.curves.Result[0].wish
	}
	return v.wish.For(v.Scene.Now.Flight.Rocket)
}

// stack is the two charts over the fill.
func (v *View) stack() plot.Stack {
	s, theme := v.Scene, v.Scene.Theme
	fillU := draw.Unit("%")
	wish := v.wished()
	wantedU, speedU := s.Units.Unit(wish.Row.Metric()), s.Unit("m/s")
	wanted := plot.Chart{Y: plot.Axis{Title: theme.Say(wish.Row.Label), Unit: wantedU.Name, Zero: true}, Weight: 3}
	if y, label, there := view.WishLimit(&wish, wantedU); there {
		wanted.Limits = []plot.Limit{{Y: y, Label: label}}
	}
	rail := plot.Chart{Y: plot.Axis{Title: theme.Say("rail exit speed"), Unit: speedU.Name, Zero: true}, Weight: 2}
	last := 0.0
	for _, c := range v.drawn() {
		x := draw.InUnit(c.fill, fillU)
		if n := len(x); n > 0 {
			last = max(last, x[n-1])
		}
		values := draw.InUnit(c.value, wantedU)
		wanted.Series = append(wanted.Series, plot.Series{X: x, Y: values, Ink: c.ink, Style: c.style})
		rail.Series = append(rail.Series, plot.Series{X: x, Y: draw.InUnit(c.rail, speedU), Ink: c.ink, Style: c.style})
		every := max(len(x)*4/max(v.Columns, 1), 1)
		for i := range x {
			if c.left[i] && i%every == 0 {
				wanted.Points = append(wanted.Points, plot.PointMark{X: x[i], Y: values[i], Sign: leftSign})
			}
		}
		if b := c.best; b != nil {
			label := c.name
			wanted.Points = append(wanted.Points, plot.PointMark{X: fillU.FromSI(b.Values[0]), Y: wantedU.FromSI(c.granted()), Sign: c.sign, Label: theme.Say(label)})
			rail.Points = append(rail.Points, plot.PointMark{X: fillU.FromSI(b.Values[0]), Y: speedU.FromSI(b.Flight.Results.RailExit.Speed), Sign: c.sign})
		}
	}
	limit := gates.RailExit(s.Now.Flight.Rocket).Min
	rail.Limits = []plot.Limit{{Y: speedU.FromSI(limit), Label: quantity.Format(limit, speedU, 2) + " asked for"}}
	if v.curves.Busy {
		wanted.Note = "the curve before; computing" + theme.Ellipsis
	} else if c := v.today(); c != nil && c.best != nil {
		wanted.Note = "shaded: within 1 %"
	}
	today := fillU.FromSI(v.Scene.Now.Flight.Rocket.Water.Fill)
	stack := plot.Stack{
		Charset: theme.Charset, X: plot.Axis{Title: "fill", Unit: fillU.Name, Min: 0, Max: max(last, 1)},
		Marks:      []plot.VerticalMark{{X: today, Label: "today", Short: "today", Priority: 3}},
		ShowCursor: true, Cursor: today,
	}
	if c := v.today(); c != nil && c.best != nil {
		w := c.best.Within[0]
		stack.Bands = []plot.Band{{From: fillU.FromSI(w[0]), To: fillU.FromSI(w[1])}}
		stack.Marks = append(stack.Marks, plot.VerticalMark{X: fillU.FromSI(c.best.Values[0]), Label: "best", Short: "best", Priority: 2})
	}
	if k := s.Kept; k != nil && k != s.Now && k.Flight.Rocket.Power == rocket.WaterPower {
		r := k.Flight
		x := fillU.FromSI(r.Rocket.Water.Fill)
		wanted.Points = append(wanted.Points, plot.PointMark{X: x, Y: wantedU.FromSI(wish.Row.Of(r)), Sign: 'k', Label: "kept"})
		rail.Points = append(rail.Points, plot.PointMark{X: x, Y: speedU.FromSI(r.Results.RailExit.Speed), Sign: 'k'})
	}
	stack.Charts = []plot.Chart{wanted, rail}
	return stack
}
