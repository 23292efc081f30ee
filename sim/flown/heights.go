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

// ParseHeights reads what --height and a logbook's heights take.
func ParseHeights(text string) (Heights, error) {
	switch h := Heights(text); h {
	case StandardHeights, PadHeights, MeasuredHeights:
		return h, nil
	}
	return "", fault.Fault{Key: "--height", Value: text, Problem: "is none of the ways in which recorders make heights",
		Remedy: "there are standard, pad and measured"}
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
	a.zero = atmosphere.StandardHeight(a.pad / atmosphere.SeaLevelPressure)
	return a
}

// ofRatio is the height above the site where the pressure is a share of the pad's, m: by
// Newton's method, whose slope is the air's weight.
func (a *air) ofRatio(ratio float64) float64 {
	if !(ratio > 0) || math.IsInf(ratio, 0) {
		return math.NaN()
	}
	p := ratio * a.pad
	h := atmosphere.StandardHeight(p/atmosphere.SeaLevelPressure) - a.zero
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
		return a.ofRatio(atmosphere.StandardRatio(told))
	}
	return a.ofRatio(atmosphere.StandardRatio(told+a.zero) * atmosphere.SeaLevelPressure / a.pad)
}
