package tui

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim"
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
	judge             func(e *motorEntry, v float64) (string, report.Level) // nil without a verdict
}

func resultFact(short, name, unit string, rank int, of func(r *sim.Results) (float64, bool)) motorFact {
	return motorFact{short: short, name: name, unit: unit, rank: rank,
		of: func(e *motorEntry) (float64, bool) { return of(&e.Flight.Results) }}
}

// judgedBy gives a fact the verdict of a limit.
func (f motorFact) judgedBy(key string) motorFact {
	f.judge = func(_ *motorEntry, v float64) (string, report.Level) { return limitOf(key).Judge(v) }
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
		func(e *motorEntry, v float64) (string, report.Level) {
			if v < report.RailExitLimit(e.Flight.Rocket) {
				return report.WordLow, report.Bad
			}
			return report.WordGood, report.Good
		}},
	resultFact("thr/wt", "thrust/weight", "", 2, func(r *sim.Results) (float64, bool) {
		return r.RailExit.ThrustToWeight, r.RailExit.Happened
	}).judgedBy(report.LimitThrustToWeight),
	{"delay", "best delay", "s", 1, func(e *motorEntry) (float64, bool) {
		d, ok := e.bestDelay()
		return d.Value, ok
	}, nil},
	resultFact("top", "top speed", "m/s", 4, func(r *sim.Results) (float64, bool) { return r.Max.Speed, true }),
	resultFact("Mach", "Mach", "", 5, func(r *sim.Results) (float64, bool) { return r.Max.Mach, true }),
	resultFact("lands", "lands", "m/s", 3, func(r *sim.Results) (float64, bool) {
		return r.Landing.Vertical, r.Landing.Happened
	}).judgedBy(report.LimitLanding),
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
		t.columns = append(t.columns, tableColumn{title: title, unit: sys.Unit(unitNamed(f.unit)).Name, rank: f.rank})
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
	return !happened || lv != report.Good
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
		put(againstSign+report.WordLarge, badWord)
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
		text, word, lv := "-", report.WordNever, report.Bad
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

// reading says of the chosen motor what speaks against it, what it is, and what
// the list has no room for.
func (v *motorsView) reading(t *table) []string {
	set, e := &v.set.result, v.entry()
	var words []string
	switch {
	case v.set.err != nil:
		return []string{"no figures: " + faultText(v.set.err, "")}
	case v.set.busy:
		words = append(words, "figures of the rocket before; computing")
	}
	if e.Flight == nil {
		return append(words, e.name+": "+e.fault)
	}
	if e.Problem != "" {
		words = append(words, e.name+" is too large: "+v.against(e))
	}
	words = append(words, v.about(e)...)
	words = append(words, v.unseen(e, t)...)
	if best := set.best(); best >= 0 && best != v.at() {
		words = append(words, string(bestSign)+" "+set.motors[best].name+" flies highest")
	}
	if set.of.Rocket().Power != sim.MotorPower {
		words = append(words, "flights on the motors in place of the water")
	}
	return words
}

// against says what speaks against a motor.
func (v *motorsView) against(e *motorEntry) string {
	out := e.Problem
	if e.Flight.Results.Drive.Impulse > report.FirstCertification {
		out += fmt.Sprintf(" (%.0f N·s: US practice for a first high-power certification)", report.FirstCertification)
	}
	return out
}

// about says what a motor is and its best delay.
func (v *motorsView) about(e *motorEntry) []string {
	sys, m, d := v.scene.units, e.Rocket.Motor, e.Flight.Results.Drive
	u := func(name string) quantity.Unit { return sys.Unit(unitNamed(name)) }
	out := []string{fmt.Sprintf("%s: %s %s N·s, %s for %s", e.name, d.Class, quantity.Format(d.Impulse, unitNamed(""), 3),
		quantity.Format(d.Average, u("N"), 3), quantity.Format(d.BurnTime, u("s"), 3))}
	if m.Diameter > 0 {
		size := exact(m.Diameter, u("mm"), 5)
		if m.Length > 0 {
			size = number(size, u("mm")) + " × " + exact(m.Length, u("mm"), 5)
		}
		out = append(out, size)
	}
	out = append(out, quantity.Format(m.Case+m.Propellant, u("g"), 3))
	delay, ok := e.bestDelay()
	if !ok {
		if math.IsNaN(m.Delay) {
			return append(out, "no charge")
		}
		return out
	}
	had := ""
	if delay.Listed {
		had = " of those that can be had"
	}
	return append(out, fmt.Sprintf("best delay %s%s: the canopy opens at %s, %s from the top", exact(delay.Value, unitNamed("s"), 5), had,
		reading(delay.Airspeed, u("m/s")), signedTime(delay.SinceTop)))
}

// signedTime is a time with its sign.
func signedTime(t float64) string { return fmt.Sprintf("%+.1f s", t) }

// unseen are the chosen motor's figures that the list leaves out.
func (v *motorsView) unseen(e *motorEntry, t *table) []string {
	_, shown := t.fit(v.scene.look, v.columns)
	var out []string
	for _, f := range motorFacts {
		for i, c := range t.columns {
			if shown[i] || c.title != f.short && c.title != f.name {
				continue
			}
			x, happened := f.of(e)
			text := f.name + " " + f.figure(x, v.scene.units.Unit(unitNamed(f.unit)))
			if !happened {
				text = f.name + " " + report.WordNever
			}
			if f.poor(e) && happened {
				word, _ := f.judge(e, x)
				text += " " + word
			}
			out = append(out, text)
		}
	}
	return out
}
