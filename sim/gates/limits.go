package gates

import (
	"math"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// The sources of the default limits.
const (
	CommonPractice = "common practice"
	usCodes        = "US codes (NFPA 1127), from memory"
	usPractice     = "US practice, first high-power certification, from memory"
	usStudents     = "US student practice, from memory"
	theFile        = "the rocket file"
)

// Limit is what one number of a flight is judged by. Values are SI; a side without a
// bound is infinite.
type Limit struct {
	Key    string
	Name   string  // what is judged
	Min    float64 // the least value that passes
	Max    float64 // the greatest value that passes
	Unit   string  // to show the bounds in; empty for a ratio
	Word   string  // the verdict when it does not pass
	Source string  // where the bound comes from
	Either bool    // met or not: how far inside the bound tells nothing, as of what should not be there at all
}

// In is the unit to show the bounds in: a wind is told in other units than a rocket's speed is.
func (l *Limit) In() quantity.Unit {
	if l.Key == LimitWind {
		return quantity.Usual(quantity.Wind)
	}
	u, _ := quantity.Lookup(l.Unit) // a ratio has none
	return u
}

// Keys of the limits.
const (
	LimitRailExit       = "rail-exit"
	LimitRailExitWind   = "rail-exit-wind"
	LimitThrustToWeight = "thrust-to-weight"
	LimitFlutter        = "flutter"
	LimitTilt           = "tilt"
	LimitWind           = "wind"
	LimitImpulse        = "impulse"
	LimitOpening        = "opening"
	LimitMount          = "opening-load"
	LimitLanding        = "landing"
	LimitEnergy         = "landing-energy"
	LimitMarginLeast    = "margin-least"
	LimitMarginMost     = "margin-most"
	LimitMarginAngle    = "margin-at-angle"
	LimitAttack         = "attack"
	LimitAttackMost     = "attack-most"
	LimitProof          = "proof"
	LimitProofAge       = "proof-age"
	LimitProofCycles    = "proof-cycles"
)

// CheckDamage is the key of the check that counts the damage in a logbook; what it was is in chamber.Booked.
const CheckDamage = "damage-booked"

var (
	noMin = math.Inf(-1)
	noMax = math.Inf(1)
)

// row is one limit: which of the numbers of rocket.Limits bounds what, on which side, and
// the result it holds to account, * standing for a canopy's name; empty for something else.
type row struct {
	key, result, name, unit, word, source string
	least                                 bool
	at                                    func(*rocket.Limits) *float64
}

var rows = []row{
	{LimitRailExit, "rail_exit.speed", "rail exit speed", "m/s", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.RailExit }},
	{LimitRailExitWind, "rail_exit.wind_ratio", "rail exit speed over wind", "", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.RailExitWind }},
	{LimitThrustToWeight, "rail_exit.thrust_to_weight", "thrust/weight at rail exit", "", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.ThrustToWeight }},
	{LimitMarginLeast, "margin.least", "stability margin in calibres", "", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.MarginLeast }},
	{LimitMarginMost, "", "stability margin in calibres", "", WordHigh, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.MarginMost }},
	{LimitMarginAngle, "margin.at_angle", "margin at the angle of rail exit", "", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.MarginAtAngle }},
	{LimitAttack, "attack.rail_exit", "angle of attack at rail exit", "deg", WordHigh, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.Attack }},
	{LimitAttackMost, "attack.most", "greatest angle of attack", "deg", WordHigh, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.AttackMost }},
	{LimitFlutter, "max.flutter", "greatest speed over that of flutter", "", WordHigh, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.Flutter }},
	{LimitTilt, "", "tilt of the rail", "deg", WordOver, usCodes, false, func(l *rocket.Limits) *float64 { return &l.Tilt }},
	{LimitWind, "", "wind", "m/s", WordStrong, usCodes, false, func(l *rocket.Limits) *float64 { return &l.Wind }},
	{LimitImpulse, "", "impulse of the motor", "N*s", WordHigh, usPractice, false, func(l *rocket.Limits) *float64 { return &l.Impulse }},
	{LimitOpening, "canopy.*.airspeed", "airspeed as a canopy opens", "m/s", WordFast, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.Opening }},
	{LimitMount, "", "mount strength over the opening load", "", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.MountFactor }},
	{LimitLanding, "landing.vertical", "vertical landing speed", "m/s", WordHard, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.Landing }},
	{LimitEnergy, "landing.energy", "landing energy", "J", WordHigh, usStudents, false, func(l *rocket.Limits) *float64 { return &l.Energy }},
	{LimitProof, "", "proof on record over the pressure", "", WordLow, CommonPractice, true, func(l *rocket.Limits) *float64 { return &l.ProofFactor }},
	{LimitProofAge, "", "days since the proof", "", WordOld, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.ProofDays }},
	{LimitProofCycles, "", "pressurisations since the proof", "", WordOld, CommonPractice, false, func(l *rocket.Limits) *float64 { return &l.ProofCycles }},
}

// limit is the limit of a row: as given, or the default.
func (w *row) limit(given *rocket.Limits) Limit {
	l := Limit{Key: w.key, Name: w.name, Min: noMin, Max: noMax, Unit: w.unit, Word: w.word, Source: theFile}
	v := *w.at(given)
	if v == 0 {
		defaults := rocket.DefaultLimits()
		v, l.Source = *w.at(&defaults), w.source
	}
	if w.least {
		l.Min = v
	} else {
		l.Max = v
	}
	return l
}

// DefaultLimits lists the limits that hold when a file says nothing.
func DefaultLimits() []Limit {
	out := make([]Limit, len(rows))
	for i := range rows {
		out[i] = rows[i].limit(&rocket.Limits{})
	}
	return out
}

// LimitFor is the limit of a key that holds for a rocket: its file's, or the default.
func LimitFor(r *rocket.Rocket, key string) Limit {
	for i := range rows {
		if rows[i].key == key {
			return rows[i].limit(&r.Limits)
		}
	}
	panic("gates: no limit of this key")
}

// anyCanopy begins the name of a result of every canopy.
const anyCanopy = "canopy.*."

// LimitOn is the limit that a result is held to, by its dotted name; there is none on most.
func LimitOn(r *rocket.Rocket, result string) (l Limit, there bool) {
	if result == "" { // what is no result of a flight
		return Limit{}, false
	}
	of := "" // a canopy's
	if strings.HasPrefix(result, "canopy.") {
		of = result[strings.LastIndexByte(result, '.')+1:]
	}
	for i := range rows {
		if on := rows[i].result; result != on && !(strings.HasPrefix(on, anyCanopy) && of == on[len(anyCanopy):]) {
			continue
		}
		if rows[i].key == LimitRailExit {
			return RailExit(r), true
		}
		return rows[i].limit(&r.Limits), true
	}
	return Limit{}, false
}

// JudgeResult is the verdict on a value of a result, by its dotted name: no word where
// nothing bounds it.
func JudgeResult(r *rocket.Rocket, result string, v float64) (word string, level Level) {
	switch result {
	case "margin.rail_exit", "margin.liquid_out", "margin.burnout": // on both sides
		return JudgeMargin(r, v)
	}
	if l, there := LimitOn(r, result); there {
		return l.Judge(v)
	}
	return "", Plain
}

// RailExit is the limit on a rocket's rail exit speed on its day: a wind may ask for
// more than still air does.
func RailExit(r *rocket.Rocket) Limit {
	l, wind := LimitFor(r, LimitRailExit), LimitFor(r, LimitRailExitWind)
	if asked := wind.Min * r.GroundWind(); asked > l.Min {
		l.Min, l.Source = asked, wind.Source
	}
	return l
}

// wordAbove is the verdict on a value above the limit: where it bounds both sides its word
// is for what is below.
func (l Limit) wordAbove() string {
	if math.IsInf(l.Min, 0) {
		return l.Word
	}
	return WordHigh
}

// Judge compares a value with the limit.
func (l Limit) Judge(v float64) (word string, level Level) {
	switch {
	case math.IsNaN(v):
		return WordUnknown, Caution
	case v < l.Min-slack(l.Min), v > l.Max+slack(l.Max):
		return l.Word, Bad
	}
	return WordGood, Good
}

// slack is what arithmetic may add to a value that is right on its limit: 1.5 times 12.6
// bar is a hair more than 18.9 bar.
func slack(limit float64) float64 {
	if math.IsInf(limit, 0) {
		return 0
	}
	return 1e-9 * math.Abs(limit)
}

// JudgeMargin is the verdict on a stability margin, calibres.
func JudgeMargin(r *rocket.Rocket, margin float64) (word string, level Level) {
	if word, level = LimitFor(r, LimitMarginLeast).Judge(margin); level == Good {
		word, level = LimitFor(r, LimitMarginMost).Judge(margin)
	}
	return word, level
}
