package atmosphere

import "math"

// Wind is a horizontal wind that grows with height by a power law.
type Wind struct {
	Speed    float64 // at Height, m/s
	Height   float64 // reference height above the ground, m
	Exponent float64 // of the power law
	From     float64 // the compass direction it blows from, clockwise from north, rad
}

// Faults lists everything wrong with the wind; nil when it is in order.
func (w Wind) Faults() []Fault { return nil }

// Profile prepares the wind.
func (w Wind) Profile() Profile {
	s, c := math.Sincos(w.From)
	return Profile{-w.Speed * s, -w.Speed * c, w.Height, w.Exponent}
}

// Profile is a prepared wind.
type Profile struct{ east, north, height, exponent float64 }

// At gives the wind's components at a height above the ground, m, in m/s.
func (p *Profile) At(h float64) (east, north float64) {
	if h <= 0 || (p.east == 0 && p.north == 0) {
		return 0, 0
	}
	f := math.Pow(h/p.height, p.exponent)
	return p.east * f, p.north * f
}
