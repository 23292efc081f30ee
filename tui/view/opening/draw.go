package opening

import (
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// Least rows of the parts of the opening view.
const (
	leastPlot  = 9
	goodPlot   = 3 // more, that go before delays far from today's
	leastTable = 5
	tablesFrom = 130 // columns for two tables beside each other
)

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// paint draws the view.
func (v *View) paint() {
	v.Add(v.parts()...)
}

// instead is what is said where there is no opening to look at; empty mostly.
func (v *View) instead() string {
	switch s := v.Scene; {
	case s.Now == nil:
		return " "
	case v.index(s.Now.Flight.Rocket) < 0:
		return "This rocket has no canopy: nothing slows its fall. Press " + v.shared.AddCanopy.Help().Key + " to add one."
	case v.study.Err != nil && !v.study.Busy:
		return "No openings: " + view.FaultText(v.study.Err, "")
	case !v.study.Ready:
		return "The openings are being computed" + s.Theme.Ellipsis
	}
	return ""
}

// sheets is into how many parts the view falls where it has no room for all.
func (v *View) sheets() int {
	if !v.study.Ready || v.roomForAll() {
		return 1
	}
	return len(v.sheetsHere())
}

// sheetsHere are the parts where there is no room for all: the curve with what may go wrong
// with this canopy, the top, the delays of a motor, and what may go wrong with the others.
func (v *View) sheetsHere() []func(w, h int) []string {
	all := []func(w, h int) []string{v.curveSheet, v.topPlot}
	if v.delays() != nil {
		all = append(all, v.delaysTable)
	}
	if others := v.others(); len(others) > 0 {
		all = append(all, func(w, h int) []string { return v.casesTable(others, w, h) })
	}
	return all
}

// curveSheet is the curve above what may go wrong with this canopy.
func (v *View) curveSheet(w, h int) []string {
	own := v.listed()
	cases := v.rowsFor(own)
	rows := v.curvePlot(w, h-cases-sizeRows)
	rows = append(rows, v.casesTable(own, w, cases)...)
	return append(rows, v.sizeLine(w))
}

// roomForAll tells that every part finds its place at once.
func (v *View) roomForAll() bool {
	plots := 2 * leastPlot
	if v.Columns >= draw.SideBySideFrom {
		plots = leastPlot
	}
	tables := v.rowsFor(v.everyCase())
	if n := len(v.delays()); n > 0 && v.Columns >= tablesFrom {
		tables = max(tables, leastTable)
	} else if n > 0 {
		tables += 1 + min(n+1, leastTable)
	}
	return v.Rows >= headRows+plots+tables+sizeRows
}

const (
	headRows = 1
	sizeRows = 1
)

// everyCase is what may go wrong with this canopy, then with the others.
func (v *View) everyCase() []openingCase { return append(v.listed(), v.others()...) }

// rowsFor is how many rows cases take, their heading included.
func (v *View) rowsFor(cases []openingCase) int {
	n := len(cases)
	if n > 0 {
		n++
	}
	if n > 0 && v.several() {
		n++ // the units
	}
	return n
}

// several tells that there are other canopies than the one looked at.
func (v *View) several() bool { return len(v.study.Result.of.Flight.Rocket.Canopies) > 1 }

// parts sets the view's parts in its rows.
func (v *View) parts() []string {
	w, h := v.Columns, v.Rows
	rows := v.head(w)
	if v.roomForAll() {
		return v.all(rows, w, h)
	}
	sheets := v.sheetsHere()
	return append(rows, sheets[v.sheet%len(sheets)](w, h-headRows)...)
}

// all sets every part.
func (v *View) all(rows []string, w, h int) []string {
	const gap = 3
	room := h - headRows - sizeRows
	every := v.everyCase()
	cases, delays := v.rowsFor(every), len(v.delays())
	if delays > 0 {
		delays += 2 // a heading, and a blank row before it
	}
	half := (w - gap) / 2
	var tables []string
	if delays > 0 && w >= tablesFrom {
		high := max(cases, min(delays-1, room-2*leastPlot))
		tables = draw.Beside(v.casesTable(every, half, high), v.delaysTable(w-half-gap, high), half, gap, w, high)
	} else {
		least := leastPlot
		if w < draw.SideBySideFrom {
			least *= 2
		}
		tables = v.casesTable(every, w, cases)
		if high := min(delays-1, max(room-cases-1-least-goodPlot, leastTable)); delays > 0 {
			tables = append(append(tables, draw.Blanks(w)), v.delaysTable(w, high)...)
		}
	}
	room -= len(tables)
	if w >= draw.SideBySideFrom {
		rows = append(rows, draw.Beside(v.topPlot(half, room), v.curvePlot(w-half-gap, room), half, gap, w, room)...)
	} else {
		rows = append(rows, v.topPlot(w, room/2)...)
		rows = append(rows, v.curvePlot(w, room-room/2)...)
	}
	return append(append(rows, tables...), v.sizeLine(w))
}

// topPlot is height and airspeed around the top, with the moments of every
// canopy.
func (v *View) topPlot(w, h int) []string {
	o, theme := &v.study.Result, v.Scene.Theme
	u := v.Scene.Unit
	stack := plot.Stack{
		Charset: theme.Charset,
		X:       plot.Axis{Title: "time", Unit: "s", Min: o.top.from, Max: o.top.to},
		Charts: []plot.Chart{
			{Y: plot.Axis{Title: "height", Unit: u("m").Name},
				Series: []plot.Series{{X: o.top.time, Y: draw.InUnit(o.top.height, u("m")), Ink: plot.TraceA}}},
			{Y: plot.Axis{Title: "airspeed", Unit: u("m/s").Name, Zero: true},
				Series: []plot.Series{{X: o.top.time, Y: draw.InUnit(o.top.airspeed, u("m/s")), Ink: plot.TraceB}},
				Limits: []plot.Limit{v.limit()}},
		},
	}
	for _, e := range o.of.Flight.Events {
		if e.Kind == sim.ApogeeEvent || e.Kind == sim.CanopyEvent {
			long, short, priority := draw.EventName(o.of.Flight, e)
			stack.Marks = append(stack.Marks, plot.VerticalMark{X: e.Time, Label: long, Short: short, Priority: priority})
		}
	}
	return draw.PaintStack(theme, &v.topGrid, &stack, w, h)
}

// curvePlot is airspeed and load against the number in the rule.
func (v *View) curvePlot(w, h int) []string {
	o, theme := &v.study.Result, v.Scene.Theme
	if len(o.values) == 0 {
		return draw.Centred(theme, v.noNumber(), w, max(h, 0))
	}
	x := v.numberUnit()
	speed, force := v.Scene.Unit("m/s"), v.Scene.Unit("N")
	values := draw.InUnit(o.curve.value, x)
	airspeed := plot.Chart{Y: plot.Axis{Title: "airspeed", Unit: speed.Name, Zero: true},
		Series: []plot.Series{{X: values, Y: draw.InUnit(o.curve.airspeed, speed), Ink: plot.TraceB}},
		Limits: []plot.Limit{v.limit()}, Points: v.hadPoints(x, speed)}
	load := plot.Chart{Y: plot.Axis{Title: "load", Unit: force.Name, Zero: true},
		Series: []plot.Series{{X: values, Y: draw.InUnit(o.curve.load, force), Ink: plot.TraceC}}}
	if h < 2*leastPlot {
		airspeed.Weight, load.Weight = 3, 2
	}
	stack := plot.Stack{
		Charset: theme.Charset, X: plot.Axis{Title: v.numberTitle(), Unit: x.Name, Zero: o.rule().Trigger.Falls()},
		Charts: []plot.Chart{airspeed, load}, Marks: v.numberMarks(x),
	}
	return draw.PaintStack(theme, &v.curveGrid, &stack, w, h)
}

// hadPoints marks the delays that can be had on the curve.
func (v *View) hadPoints(x, y quantity.Unit) []plot.PointMark {
	var points []plot.PointMark
	for _, d := range v.study.Result.values {
		if d.Listed && d.Opened && !d.Early {
			points = append(points, plot.PointMark{X: x.FromSI(d.Value), Y: y.FromSI(d.Airspeed), Sign: hadSign})
		}
	}
	return points
}

// numberMarks mark today's value and the best.
func (v *View) numberMarks(x quantity.Unit) []plot.VerticalMark {
	o := &v.study.Result
	var marks []plot.VerticalMark
	now, there := o.now()
	if there {
		marks = append(marks, plot.VerticalMark{X: x.FromSI(now), Label: "as set", Short: "set", Priority: 2})
	}
	if o.best < 0 {
		return marks
	}
	if best := o.values[o.best].Value; there && sameNumber(best, now) {
		marks[0].Label = "as set, the best"
	} else {
		marks = append(marks, plot.VerticalMark{X: x.FromSI(best), Label: "best", Short: "best", Priority: 3})
	}
	return marks
}
