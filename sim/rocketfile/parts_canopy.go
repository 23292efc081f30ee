package rocketfile

import (
	"math"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Sizes of canopies beside each other: common practice, no source.
const (
	mainShare   = 0.6 // of the usual canopy's diameter, from which one lands the rocket by itself
	drogueShare = 0.3 // of the main's diameter: the rocket falls three times as fast on it
)

// largest is the largest of some canopies; nil of none.
func largest(all []rocket.Canopy) *rocket.Canopy {
	var most *rocket.Canopy
	for i := range all {
		if most == nil || all[i].NominalDiameter() > most.NominalDiameter() {
			most = &all[i]
		}
	}
	return most
}

// drogueFor is the diameter, m, of a drogue beside a main of one.
func drogueFor(main float64) float64 {
	const step = 0.05
	return math.Max(math.Round(drogueShare*main/step), 1) * step
}

// ruleBefore opens a canopy a second before another, on every drive that the file has.
func (f *File) ruleBefore(main *rocket.Canopy) string {
	r := f.rd.rocket
	var pairs []pair
	for _, drive := range []struct {
		power rocket.Power
		there bool
	}{{rocket.WaterPower, r.Water != nil}, {rocket.MotorPower, r.Motor != nil}} {
		if rule := ruleEarlier(main.Rule(drive.power), r); drive.there && rule.Trigger != rocket.Never {
			s := quantity.Usual(quantity.Time)
			if rule.Trigger.Falls() {
				s = quantity.Usual(quantity.Length)
			}
			pairs = append(pairs, pair{string(drive.power), quoted(strings.TrimSuffix(ruleText(rule, s), " + 0 s"), `"`)})
		}
	}
	switch {
	case len(pairs) == 0:
		return f.usualRule()
	case len(pairs) == 1 && (r.Water == nil || r.Motor == nil), len(pairs) == 2 && pairs[0].value == pairs[1].value:
		return pairs[0].value
	}
	return inBraces(pairs)
}

// ruleEarlier is a rule that opens a second before another does, at the top where that waits for the way down.
func ruleEarlier(rule rocket.Rule, r *rocket.Rocket) rocket.Rule {
	const second = 1
	switch row := rule.Trigger.Row(); {
	case row == nil:
		return rule
	case rule.Trigger.Falls():
		return rocket.Rule{Trigger: rocket.AfterApogee}
	case row.Charge:
		if r.Motor == nil || !(r.Motor.Delay > second) {
			return rocket.Rule{Trigger: rocket.AfterBurnout}
		}
		return rocket.Rule{Trigger: rocket.AfterBurnout, Value: r.Motor.Delay - second}
	}
	rule.Value = math.Max(rule.Value-second, rule.Trigger.Row().Range.Min)
	return rule
}
