package tui

import (
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
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
func (v *motorsView) list() table {
	set, sys := &v.set.result, v.scene.units
	t := table{tight: v.columns < 70, chosen: v.at(), columns: []tableColumn{{title: "motor", left: true}, {left: true}, {title: "class", left: true}}}
	judged := make([]bool, len(motorFacts))
	for i, f := range motorFacts {
		title := f.short
		if v.columns >= roomyMotors {
			title = f.name
		}
		unit := sys.Unit(unitNamed(f.unit)).Name
		if before, after, cut := strings.Cut(f.name, "/"); cut && title == before+"/" {
			unit = after
		}
		t.columns = append(t.columns, tableColumn{title: title, unit: unit, rank: f.rank})
		for j := range set.motors {
			judged[i] = judged[i] || f.poor(&set.motors[j])
		}
		if judged[i] {
			t.columns = append(t.columns, tableColumn{left: true, rank: f.rank})
		}
	}
	best := set.best()
	for i := range set.motors {
		t.rows = append(t.rows, v.row(i, i == best, judged))
	}
	return t
}

// figure is a value of the fact with its unit: a delay as it is set.
func (f motorFact) figure(x float64, u quantity.Unit) string {
	if f.unit == "s" {
		return exact(x, u, 5)
	}
	return reading(x, u)
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

func (v *motorsView) row(i int, best bool, judged []bool) tableRow {
	look, sys, e := v.scene.look, v.scene.units, &v.set.result.motors[i]
	row := tableRow{sign: " "}
	if i == v.at() {
		row.sign, row.role = look.pointer, focused
	}
	put := func(text string, r role) { row.cells = append(row.cells, tableCell{text, r}) }
	name := e.name
	if room := max(motorNameCells, v.columns/5); width(name) > room {
		name = strings.TrimRight(look.fit(name, room), " ")
	}
	put(padded(motorLetter(i), 1)+" "+name, plainText)
	if e.Flight == nil {
		row.rest = tableCell{againstSign + " " + e.fault, badWord}
		return row
	}
	switch {
	case e.Problem != "":
		put(againstSign+gates.WordLarge, badWord)
	case best:
		put(string(bestSign)+"best", plainText)
	case e.own:
		put("today", plainText)
	default:
		put("", plainText)
	}
	paint := plainText
	if v.set.busy {
		paint = dimText
	}
	put(e.Flight.Results.Drive.Class, paint)
	for j, f := range motorFacts {
		unit := sys.Unit(unitNamed(f.unit))
		x, happened := f.of(e)
		text, word, lv := "-", gates.WordNever, gates.Bad
		if happened {
			text = number(f.figure(x, unit), unit)
		}
		if happened && f.judge != nil {
			word, lv = f.judge(e, x)
		}
		put(text, paint)
		if judged[j] {
			put(word, level(lv))
		}
	}
	return row
}
