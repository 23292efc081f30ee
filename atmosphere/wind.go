package atmosphere

import (
	"math"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Wind is a horizontal wind that grows with height above the ground by a power
// law, Speed·(h/Height)^Exponent. It is plain data: Faults tells what is out of
// range. The zero Wind is a calm.
//
// An exponent of 1/7 for open grass and a reference height of 10 m are common
// practice; over the lowest 100 m they keep within 1 % of the logarithmic law.
type Wind struct {
	Speed    float64 // at Height, m/s
	Stated   bool    // somebody said so: a Speed of 0 is calm air, else nobody knows
	Height   float64 // above the ground, where Speed was measured, m; 0: the usual 10 m
	Exponent float64 // 0: the same wind at all heights
	From     float64 // the compass direction it blows from, clockwise from north, rad
}

// Known tells whether the wind is stated: any but the calm that nobody spoke of.
func (w *Wind) Known() bool { return w.Stated || w.Speed != 0 }

const (
	usualHeight = 10.0 // m
	windCeiling = 1e5  // m; beyond, the wind no longer grows: there is no air to blow
)

// Faults lists everything that is wrong with the wind; nil when nothing is.
func (w Wind) Faults() fault.List {
	var faults fault.List
	w.Check(&faults)
	return faults
}

// Check adds them to a list; it allocates nothing where there is nothing wrong.
func (w *Wind) Check(to *fault.List) { quantity.Check(to, w, windFields) }

// Profile prepares the wind. Values out of range are held at its ends.
func (w Wind) Profile() Profile {
	var p Profile
	p.Turn(w)
	return p
}

// Turn makes a profile that of another wind. The table of its growth is kept as long as
// the exponent is the same: it takes most of the time.
func (p *Profile) Turn(w Wind) {
	speed := speedRange.Hold(w.Speed)
	p.blows, p.east, p.north = speed != 0, 0, 0
	if !p.blows {
		return
	}
	height := heldIfGiven(&heightRange, w.Height)
	if height == 0 {
		height = usualHeight
	}
	// A wind from the west, 270°, blows to the east.
	sin, cos := math.Sincos(fromRange.Hold(w.From))
	p.east, p.north, p.inverse = -speed*sin, -speed*cos, 1/height
	p.growth.fit(exponentRange.Hold(w.Exponent))
}

// Profile is a prepared wind, made by Wind.Profile or Turn; the zero Profile is a calm.
// At does not change it.
type Profile struct {
	blows       bool
	east, north float64 // at the reference height, m/s
	inverse     float64 // of the reference height, 1/m
	growth      power
}

// Calm says that there is no wind at any height.
func (p *Profile) Calm() bool { return !p.blows }

// At gives the direction the air moves to and how fast, m/s, at a height above
// the ground, m. At the ground and below it the air is still.
func (p *Profile) At(h float64) (east, north float64) {
	if !p.blows || !(h > 0) {
		return 0, 0
	}
	f := p.growth.of(min(h, windCeiling) * p.inverse)
	return p.east * f, p.north * f
}
