package report

import (
	"math"
	"strconv"

	"ullage/sim"
)

// The sources of the default limits.
const (
	commonPractice = "common practice"
	usCodes        = "US codes (NFPA 1127)"
	usStudents     = "US student practice"
)

// Limit is one default limit that a flight is judged by. Values are SI; a side
// without a bound is infinite.
type Limit struct {
	Key    string
	Name   string  // what is judged
	Min    float64 // the least value that passes
	Max    float64 // the greatest value that passes
	Unit   string  // to show the bounds in; empty for a ratio
	Word   string  // the verdict when it does not pass
	Source string
}

// Keys of the limits.
const (
	LimitRailExit       = "rail-exit"
	LimitRailExitWind   = "rail-exit-wind"
	LimitThrustToWeight = "thrust-to-weight"
	LimitTilt           = "tilt"
	LimitWind           = "wind"
	LimitOpening        = "opening"
	LimitLanding        = "landing"
	LimitEnergy         = "landing-energy"
	LimitMarginLeast    = "margin-least"
	LimitMarginMost     = "margin-most"
	LimitAttack         = "attack"
)

// Exact by definition of the international foot, pound and mile.
const (
	footPound   = 1.3558179483314004 // J
	milePerHour = 0.44704            // m/s
)

var (
	noMin = math.Inf(-1)
	noMax = math.Inf(1)
)

// limits are the defaults. Common practice has no source and says so; the US
// figures are those of NFPA 1127 and of US student rocketry, from memory.
var limits = []Limit{
	{LimitRailExit, "rail exit speed", 15, noMax, "m/s", WordLow, commonPractice},
	{LimitRailExitWind, "rail exit speed over wind", 4, noMax, "", WordLow, commonPractice},
	{LimitThrustToWeight, "thrust/weight at rail exit", 5, noMax, "", WordLow, commonPractice},
	{LimitMarginLeast, "stability margin in calibres", 1, noMax, "", WordLow, commonPractice},
	{LimitMarginMost, "stability margin in calibres", noMin, 3, "", WordHigh, commonPractice},
	{LimitAttack, "angle of attack as the guide ends", noMin, 15 * math.Pi / 180, "deg", WordSteep, commonPractice},
	{LimitTilt, "tilt of the rail", noMin, 20 * math.Pi / 180, "deg", WordSteep, usCodes},
	{LimitWind, "wind", noMin, 20 * milePerHour, "m/s", WordStrong, usCodes},
	{LimitOpening, "airspeed as a canopy opens", noMin, 20, "m/s", WordFast, commonPractice},
	{LimitLanding, "vertical landing speed", noMin, 6, "m/s", WordHard, commonPractice},
	{LimitEnergy, "landing energy", noMin, 75 * footPound, "J", WordHigh, usStudents},
}

// DefaultLimits lists the limits, each with its source.
func DefaultLimits() []Limit { return append([]Limit(nil), limits...) }

// limit finds a limit by its key.
func limit(key string) Limit {
	for _, l := range limits {
		if l.Key == key {
			return l
		}
	}
	panic("report: no limit of this key")
}

// railExitLimit is the limit on a rocket's rail exit speed: a wind may ask for
// more than still air does.
func railExitLimit(r *sim.Rocket) Limit {
	l := limit(LimitRailExit)
	l.Min = math.Max(l.Min, limit(LimitRailExitWind).Min*r.Wind.Speed)
	return l
}

// Judge compares a value with the limit.
func (l Limit) Judge(v float64) (word string, level Level) {
	switch {
	case math.IsNaN(v):
		return WordUnknown, Caution
	case v < l.Min, v > l.Max:
		return l.Word, Bad
	}
	return WordGood, Good
}

// sentence says the limit and where it comes from: "At least 15 m/s: common practice."
func (l Limit) sentence(p printer) string {
	bound, v := "At least ", l.Min
	if math.IsInf(v, 0) {
		bound, v = "At most ", l.Max
	}
	shown := strconv.FormatFloat(v, 'g', digits, 64)
	if l.Unit != "" {
		shown = p.given(v, l.Unit)
	}
	return bound + shown + ": " + l.Source + "."
}
