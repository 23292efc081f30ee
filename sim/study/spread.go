package study

import (
	"ullage/sim"
	"ullage/sim/rocketfile"
)

// Spread is the uncertainty of one input: one standard deviation of a normal
// distribution around the rocket's value, SI (a difference, for a temperature).
type Spread = rocketfile.Spread

// DefaultSpread is what is uncertain about a rocket when nobody says: common
// practice, no source.
func DefaultSpread(r *sim.Rocket) []Spread { return nil }

// Spreads are those of a file over the defaults: a key of [spread] takes the place of
// the default for its input, and 0 takes it out.
func Spreads(f *rocketfile.File) []Spread { return nil }
