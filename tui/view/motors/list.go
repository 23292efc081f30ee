package motors

import (
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/tui/draw"
)

// againstSign marks a motor that something speaks against, on the list.
const againstSign = report.MotorMark

// motorFact is something to know of a flight on a motor.
type motorFact struct {
	short, name, unit string
	rank              int // the higher, the sooner it gives way
	of                func(e *motorEntry) (v float64, happened bool)
	judge             func(e *motorEntry, v float64) (string, gates.Level) // nil without a verdict
}

func resultFact(short, name, unit string, rank int, of func(r *sim.Results) (float64, bool)) motorFact {
	return motorFact{short: short, name: name, unit: unit, rank: rank,
		of: func(e *motorEntry) (float64, bool) { return of(&e.Flight.Results) }}
}

// judgedBy gives a fact the verdict of a limit.
func (f motorFact) judgedBy(key string) motorFact {
	f.judge = func(e *motorEntry, v float64) (string, gates.Level) {
		return gates.LimitFor(e.Flight.Rocket, key).Judge(v)
	}
	return f
}

// motorFacts are in the order of the columns.
var motorFacts = []motorFact{
	resultFact("apogee", "apogee", "m", 0, func(r *sim.Results) (float64, bool) { return r.Apogee.Height, r.Apogee.Happened }),
	{"rail", "rail exit", "m/s", 0,
		func(e *motorEntry) (float64, bool) {
			r := &e.Flight.Results.RailExit
			return r.Speed, r.Happened
		},
		func(e *motorEntry, v float64) (string, gates.Level) {
			if v < gates.RailExit(e.Flight.Rocket).Min {
				return gates.WordLow, gates.Bad
			}
			return gates.WordGood, gates.Good
		}},
	resultFact("thrust/", "thrust/weight", "", 2, func(r *sim.Results) (float64, bool) {
		return r.RailExit.ThrustToWeight, r.RailExit.Happened
	}).judgedBy(gates.LimitThrustToWeight),
	{"delay", "best delay", "s", 1, func(e *motorEntry) (float64, bool) {
		d, ok := e.bestDelay()
		return d.Value, ok
	}, nil},
	resultFact("top", "top speed", "m/s", 4, func(r *sim.Results) (float64, bool) { return r.Max.Speed, true }),
	resultFact("Mach", "Mach", "", 5, func(r *sim.Results) (float64, bool) { return r.Max.Mach, true }),
	resultFact("lands", "lands", "m/s", 3, func(r *sim.Results) (float64, bool) {
		return r.Landing.Vertical, r.Landing.Happened
	}).judgedBy(gates.LimitLanding),
}

// roomyMotors is how many columns give the figures their long names.
const roomyMotors = 110

// list is the table of the motors. A column of verdicts is there where one of
// them is not good.
func (v *View) list() draw.Table {
	set, sys := &v.set.Result, v.Scene.Units
	t := draw.Table{Tight: v.Columns < 70, Chosen: v.at(), Columns: []draw.Column{{Title: "motor", Left: true}, {Left: true}, {Title: "class", Left: true}}}
	judged := make([]bool, len(motorFacts))
	for i, f := range motorFacts {
		title := f.short
		if v.Columns >= roomyMotors {
			title = f.name
		}
		unit := sys.Unit(draw.Unit(f.unit)).Name
		if before, after, cut := strings.Cut(f.name, "/"); cut && title == before+"/" {
			unit = after
		}
		t.Columns = append(t.Columns, draw.Column{Title: title, Unit: unit, Rank: f.rank})
		for j := range set.motors {
			judged[i] = judged[i] || f.poor(&set.motors[j])
		}
		if judged[i] {
			t.Columns = append(t.Columns, draw.Column{Left: true, Rank: f.rank})
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
	if f.unit == "s" {
		return draw.Exact(x, u, 5)
	}
	return draw.Reading(x, u)
}

// poor tells that a fact breaks its limit.
func (f motorFact) poor(e *motorEntry) bool {
	if f.judge == nil || e.Flight == nil {
		return false
	}
	x, happened := f.of(e)
	_, lv := f.judge(e, x)
	return !happened || lv != gates.Good
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
	for j, f := range motorFacts {
		unit := sys.Unit(draw.Unit(f.unit))
		x, happened := f.of(e)
		text, word, lv := "-", gates.WordNever, gates.Bad
		if happened {
			text = draw.Number(f.figure(x, unit), unit)
		}
		if happened && f.judge != nil {
			word, lv = f.judge(e, x)
		}
		put(text, paint)
		if judged[j] {
			put(word, draw.Level(lv))
		}
	}
	return row
}
