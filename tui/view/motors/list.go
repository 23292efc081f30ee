package motors

import (
	"math"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// againstSign marks a motor that something speaks against, on the list.
const againstSign = report.MotorMark

// bestDelay is the title of the column of the best delay, which no one flight tells.
const bestDelay = "best delay"

// motorFacts are in the order of the columns.
var motorFacts = []view.Fact{
	{Result: "apogee.height"},
	{Result: "rail_exit.speed", Short: "rail"},
	{Result: "rail_exit.thrust_to_weight", Long: "thrust/weight", Short: "thrust/", Rank: 2},
	{Long: bestDelay, Short: "delay", Unit: "s", Rank: 1},
	{Result: "max.speed", Short: "speed", Rank: 4},
	{Result: "max.mach", Rank: 5},
	{Result: "landing.vertical", Short: "landing", Rank: 3},
}

// motorFact is a column of the list.
type motorFact struct{ view.Column }

// facts are the columns of a rocket's list.
func facts(r *rocket.Rocket) []motorFact {
	columns := view.Of(motorFacts, results.For(r))
	out := make([]motorFact, len(columns))
	for i, c := range columns {
		out[i] = motorFact{c}
	}
	return out
}

// value is the fact of a motor, SI; NaN where there is none.
func (f motorFact) value(e *motorEntry) float64 {
	if f.Long != bestDelay {
		return f.Value(e.Flight)
	}
	if d, ok := e.BestDelay(); ok {
		return d.Value
	}
	return math.NaN()
}

// judge is the verdict on a fact; a plain one where nothing bounds it.
func (f motorFact) judge(e *motorEntry) (string, gates.Level) {
	x := f.value(e)
	if _, bound := gates.LimitOn(e.Flight.Rocket, f.Result); !bound {
		return "", gates.Plain
	}
	if math.IsNaN(x) {
		return gates.WordNever, gates.Bad
	}
	return gates.JudgeResult(e.Flight.Rocket, f.Result, x)
}

// roomyMotors is how many columns give the figures their long names.
const roomyMotors = 110

// list is the table of the motors. A column of verdicts is there where one of
// them is not good.
func (v *View) list() draw.Table {
	set, sys := &v.set.Result, v.Scene.Units
	t := draw.Table{Tight: v.Columns < 70, Chosen: v.at(), Columns: []draw.Column{{Title: "motor", Left: true}, {Left: true}, {Title: "class", Left: true}}}
	listed := facts(v.Scene.File.Rocket())
	judged := make([]bool, len(listed))
	for i, f := range listed {
		title, unit := f.Title(v.Columns >= roomyMotors), f.UnitName(sys)
		if before, after, cut := strings.Cut(f.Title(true), "/"); cut && title == before+"/" {
			unit = after
		}
		t.Columns = append(t.Columns, draw.Column{Title: title, Unit: unit, Rank: f.Rank})
		for j := range set.motors {
			judged[i] = judged[i] || f.poor(&set.motors[j])
		}
		if judged[i] {
			t.Columns = append(t.Columns, draw.Column{Left: true, Rank: f.Rank})
		}
	}
	best := set.best()
	for i := range set.motors {
		t.Rows = append(t.Rows, v.row(i, i == best, judged))
	}
	return t
}

// figure is a value of the fact with its unit: a delay as it is set.
func (f motorFact) figure(x float64, u quantity.Unit) string {
	if f.Long == bestDelay {
		return draw.Exact(x, u, 5)
	}
	return draw.Reading(x, u)
}

// poor tells that a fact breaks its limit.
func (f motorFact) poor(e *motorEntry) bool {
	if e.Flight == nil {
		return false
	}
	_, lv := f.judge(e)
	return lv != gates.Plain && lv != gates.Good
}

// motorNameCells is the room for a motor's name where room is short.
const motorNameCells = 12

func (v *View) row(i int, best bool, judged []bool) draw.Row {
	theme, sys, e := v.Scene.Theme, v.Scene.Units, &v.set.Result.motors[i]
	row := draw.Row{Sign: " "}
	if i == v.at() {
		row.Sign, row.Role = theme.Pointer, draw.Focused
	}
	put := func(text string, r draw.Role) { row.Cells = append(row.Cells, draw.Cell{Text: text, Role: r}) }
	name := e.name
	if room := max(motorNameCells, v.Columns/5); draw.Width(name) > room {
		name = strings.TrimRight(theme.Fit(name, room), " ")
	}
	put(draw.Padded(motorLetter(i), 1)+" "+name, draw.Plain)
	if e.Flight == nil {
		row.Rest = draw.Cell{Text: againstSign + " " + e.fault, Role: draw.Bad}
		return row
	}
	switch {
	case e.Problem != "":
		put(againstSign+gates.WordLarge, draw.Bad)
	case best:
		put(string(draw.BestSign)+"best", draw.Plain)
	case e.own:
		put("today", draw.Plain)
	default:
		put("", draw.Plain)
	}
	paint := draw.Plain
	if v.set.Busy {
		paint = draw.Dim
	}
	put(e.Flight.Results.Drive.Class, paint)
	for j, f := range facts(v.Scene.File.Rocket()) {
		unit, x, text := f.In(sys), f.value(e), "-"
		if !math.IsNaN(x) {
			text = draw.Number(f.figure(x, unit), unit)
		}
		word, lv := f.judge(e)
		put(text, paint)
		if judged[j] {
			put(word, draw.Level(lv))
		}
	}
	return row
}
