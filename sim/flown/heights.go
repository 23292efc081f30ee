package flown

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim/fault"
)

// Heights is how a recorder made its heights.
type Heights string

// The ways: from pressure by the standard atmosphere, zeroed on the pad; the same with the
// pad's pressure for that of sea level; or not from pressure at all.
const (
	StandardHeights Heights = "standard"
	PadHeights      Heights = "pad"
	MeasuredHeights Heights = "measured"
)

// ParseHeights reads what --height takes.
func ParseHeights(text string) (Heights, error) {
	switch h := Heights(text); h {
	case StandardHeights, PadHeights, MeasuredHeights:
		return h, nil
	}
	return "", fault.Fault{Key: "--height", Value: text, Problem: "is none of the ways in which recorders make heights",
		Remedy: "there are standard, pad and measured"}
}

// The lowest layer of the standard atmosphere (ISO 2533).
const (
	seaLevelTemperature = 288.15 // K
	seaLevelPressure    = 101325 // Pa
	lapse               = 0.0065 // K/m, its size
	power               = atmosphere.GasConstant * lapse / atmosphere.StandardGravity
)

// standardHeight is what the standard atmosphere makes of a pressure over that at its zero:
// (T0/L)·[1 − (p/p0)^(R·L/g0)], m.
func standardHeight(ratio float64) float64 {
	return seaLevelTemperature / lapse * (1 - math.Pow(ratio, power))
}

// standardRatio is the pressure over that at zero that makes a standard height.
func standardRatio(height float64) float64 {
	return math.Pow(math.Max(1-height*lapse/seaLevelTemperature, 1e-3), 1/power)
}

// air turns pressures and heights told above a site into heights in the air that is there.
type air struct {
	column atmosphere.Column
	pad    float64 // pressure there, Pa
	zero   float64 // the pad's height by the standard, m
}

func newAir(site atmosphere.Site) *air {
	a := &air{column: site.Column()}
	a.pad, _ = a.column.At(0)
	a.zero = standardHeight(a.pad / seaLevelPressure)
	return a
}

// ofRatio is the height above the site where the pressure is a share of the pad's, m: by
// Newton's method, whose slope is the air's weight.
func (a *air) ofRatio(ratio float64) float64 {
	if !(ratio > 0) || math.IsInf(ratio, 0) {
		return math.NaN()
	}
	p := ratio * a.pad
	h := standardHeight(p/seaLevelPressure) - a.zero
	for range 20 {
		now, density := a.column.At(h)
		step := (now - p) / (density * a.column.Gravity(h))
		h += step
		if !(math.Abs(step) > 1e-9*math.Max(1, math.Abs(h))) {
			break
		}
	}
	return h
}

// ofTold is the height above the site of one that a recorder tells above the pad, m.
func (a *air) ofTold(told float64, as Heights) float64 {
	switch as {
	case MeasuredHeights:
		return told
	case PadHeights:
		return a.ofRatio(standardRatio(told))
	}
	return a.ofRatio(standardRatio(told+a.zero) * seaLevelPressure / a.pad)
}
