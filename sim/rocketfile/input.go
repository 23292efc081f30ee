package rocketfile

import (
	"ullage/sim"
	"ullage/sim/quantity"
)

// Kind says how an input is edited.
type Kind int

const (
	NumberKind Kind = iota // a number with a unit
	ChoiceKind             // one of Choices
	TextKind               // free text: a name, a table
	RuleKind               // a canopy's opening rule, with a number inside
)

// Input is one value of a rocket that a user can change. All numbers are SI.
// Every function is present whatever the kind.
type Input struct {
	Name      string // dotted, fixed: water.fill
	Group     string // heading on the screen
	Label     string // short name on the screen, at most 12 characters
	Help      string // one sentence
	Kind      Kind
	Dimension quantity.Dimension
	Unit      quantity.Unit // default unit
	Min, Max  float64       // SI, inclusive
	Step      float64       // a nudge, SI
	Coarse    float64       // a coarse nudge, SI
	Choices   []string
	Drive     sim.Power // the drive it belongs to; empty for both

	// Get gives the number (a choice: its place in Choices; a rule: the number
	// inside). When given is false v is the value in force, 0 if there is none.
	Get func(r *sim.Rocket) (v float64, given bool)
	// Set changes the number; it checks the range of this input alone.
	Set func(r *sim.Rocket, v float64) error
	// Text is the value as a file would write it.
	Text func(r *sim.Rocket) string
	// SetText takes a value as a file would write it.
	SetText func(r *sim.Rocket, text string) error
}

// Inputs lists every input a rocket has, in the order of the screen.
func Inputs(r *sim.Rocket) []Input { return nil }

// Find gives one input by its dotted name; the error suggests the nearest.
func Find(r *sim.Rocket, name string) (Input, error) { return Input{}, errNotYet }
