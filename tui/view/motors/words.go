package motors

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// reading says of the chosen motor what speaks against it, its figures that the
// list has no room for, what it is, and which one is best.
func (v *View) reading(t *draw.Table) []string {
	set, e := &v.set.Result, v.entry()
	switch {
	case v.set.Err != nil:
		return []string{"no figures: " + view.FaultText(v.set.Err, "")}
	case e.Flight == nil:
		return []string{e.name + ": " + e.fault}
	}
	words := []string{e.name}
	if e.Problem != "" {
		words[0] += ": " + v.against(e)
	}
	if v.set.Busy {
		words = append(words, "figures of the rocket before; computing")
	}
	words = append(words, v.unseen(e, t)...)
	words = append(words, v.delayWords(e)...)
	words = append(words, v.about(e)...)
	if best := set.best(); best >= 0 && best != v.at() {
		words = append(words, string(draw.BestSign)+" "+set.motors[best].name+" flies highest")
	}
	if set.of.Rocket().Power != rocket.MotorPower {
		words = append(words, "flown on the motors, not on water")
	}
	return words
}

// against says what speaks against a motor.
func (v *View) against(e *motorEntry) string {
	out := gates.WordLarge + ", " + e.Problem
	if limit := gates.LimitFor(e.Rocket, gates.LimitImpulse); e.Flight.Results.Drive.Impulse > limit.Max {
		out += fmt.Sprintf(" of %.0f N·s (%s)", limit.Max, limit.Source)
	}
	return out
}

// unseen are the chosen motor's figures that the list leaves out.
func (v *View) unseen(e *motorEntry, t *draw.Table) []string {
	_, shown := t.Fit(v.Scene.Theme, v.Columns)
	var out []string
	for _, f := range facts(v.Scene.File.Rocket()) {
		for i, c := range t.Columns {
			if shown[i] || c.Title != f.Title(false) && c.Title != f.Title(true) {
				continue
			}
			x := f.value(e)
			text := f.Title(true) + " " + f.figure(x, f.In(v.Scene.Units))
			if math.IsNaN(x) {
				text = f.Title(true) + " " + gates.WordNever
			} else if f.poor(e) {
				word, _ := f.judge(e)
				text += " " + word
			}
			out = append(out, text)
		}
	}
	return out
}

// delayWords say what the best delay does.
func (v *View) delayWords(e *motorEntry) []string {
	delay, ok := e.BestDelay()
	switch {
	case ok:
		word, lv := gates.LimitFor(e.Rocket, gates.LimitOpening).Judge(delay.Airspeed)
		if word = " " + word; lv == gates.Good {
			word = ""
		}
		return []string{fmt.Sprintf("delay %s opens at %s%s, %s", draw.Exact(delay.Value, draw.Unit("s"), 5),
			draw.Reading(delay.Airspeed, v.Scene.Unit("m/s")), word, besideTop(delay.SinceTop))}
	case math.IsNaN(e.Rocket.Motor.Delay):
		return []string{"no charge"}
	}
	return nil
}

// besideTop places a time beside apogee: at it where the one decimal would be 0.0.
func besideTop(t float64) string {
	switch {
	case math.Abs(t) < 0.05:
		return "at apogee"
	case t < 0:
		return fmt.Sprintf("%.1f s before apogee", -t)
	}
	return fmt.Sprintf("%.1f s after apogee", t)
}

// about says what a motor is.
func (v *View) about(e *motorEntry) []string {
	m, d := e.Rocket.Motor, e.Flight.Results.Drive
	u := v.Scene.Unit
	out := []string{fmt.Sprintf("%s N·s, %s for %s", quantity.Format(d.Impulse, draw.Unit(""), 3),
		quantity.Format(d.Average, u("N"), 3), quantity.Format(d.BurnTime, u("s"), 3))}
	if m.Diameter > 0 {
		size := draw.Shortly(m.Diameter, u("mm"))
		if m.Length > 0 {
			size = draw.Number(size, u("mm")) + " × " + draw.Shortly(m.Length, u("mm"))
		}
		out = append(out, size)
	}
	return append(out, quantity.Format(m.Case+m.Propellant, u("g"), 3))
}

// motorFault says in one line why a motor file cannot be used.
func motorFault(path string, err error) string {
	var all fault.List
	if !errors.As(err, &all) || len(all) == 0 {
		return draw.Clean(err.Error())
	}
	f := all[0]
	out := ""
	if f.File != "" && f.File != path {
		out = filepath.Base(f.File) + " "
	}
	if f.Line > 0 {
		out += fmt.Sprintf("line %d: ", f.Line)
	}
	for _, part := range []string{f.Key, f.Value} {
		if part != "" {
			out += part + " = "
		}
	}
	out = strings.TrimSuffix(out, " = ") + ": " + f.Problem
	if f.Remedy != "" {
		out += "; " + f.Remedy
	}
	if len(all) > 1 {
		out += fmt.Sprintf(" (and %d more)", len(all)-1)
	}
	return draw.Clean(out)
}
