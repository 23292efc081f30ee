package study

import (
	"errors"

	"ullage/sim"
	"ullage/sim/rocketfile"
)

// Value is one setting of an input: a number in SI, or a word when the input
// takes no number.
type Value struct {
	Number float64
	Word   string // "" for a number
}

// Axis is an input with the values it goes through.
type Axis struct {
	Input  rocketfile.Input
	Values []Value
}

// MaxFlights bounds a sweep: more is a slip of the pen.
const MaxFlights = 10_000_000

// LargeSweep is where a sweep is worth a word before it starts.
const LargeSweep = 100_000

// ParseAxis reads "water.fill=0.2..0.4/21" (both ends included), or a list such as
// "water.throat=9mm,11mm,13mm" or "water.gas=air,helium". A unit on the last value
// serves those before it that have none. The error is rocketfile.Faults.
func ParseAxis(r *sim.Rocket, text string) (Axis, error) { return Axis{}, errLater }

// ParseAxes reads one or two axes over different inputs; all faults at once.
func ParseAxes(r *sim.Rocket, texts []string) ([]Axis, error) { return nil, errLater }

// Linear is an axis of n values from one number to another, both included.
func Linear(in rocketfile.Input, from, to float64, n int) Axis { return Axis{Input: in} }

// Count is how many flights a sweep over the axes takes.
func Count(axes []Axis) int { return 0 }

// Set puts a value into a rocket. The error is rocketfile.Faults.
func (v Value) Set(in rocketfile.Input, r *sim.Rocket) error { return errLater }

// Text writes a value as in a file.
func (v Value) Text(in rocketfile.Input) string { return v.Word }

var errLater = errors.New("study: not there yet")
