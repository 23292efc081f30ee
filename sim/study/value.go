package study

import (
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Value is one setting of an input: a number in SI, or a word as in a file when the
// input takes no number.
type Value struct {
	Number float64
	Word   string // "" for a number
}

// Set puts a value into a rocket. The error is a fault.List.
func (v Value) set(in rocketfile.Input, r *rocket.Rocket) error {
	if v.Word != "" {
		return in.SetText(r, v.Word)
	}
	return in.Set(r, v.Number)
}
