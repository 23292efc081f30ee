package study

import (
	"context"

	"ullage/sim"
)

// Variant is a rocket to set beside others.
type Variant struct {
	Name    string
	Rocket  *sim.Rocket
	Problem string // it does not fit the mount, or exceeds a class limit; empty for none
}

// Compared is a variant and what became of it.
type Compared struct {
	Variant
	Flight  *sim.Flight // nil when invalid
	Invalid error
	Best    *Best   // of water.fill, when asked for
	Delays  []Delay // of a motor with a charge: what each delay would do
	Delay   int     // the best of Delays; -1 for none
}

// CompareOptions say what to find for each variant besides its flight.
type CompareOptions struct {
	Options
	Fill          bool // find the best fill of each on water
	AllowLeftover bool
	Delays        bool // find the best delay of each on a motor
}

// Throats are variants of a rocket by the diameter of the throat, m.
func Throats(base *sim.Rocket, throats []float64) []Variant { return nil }

// NamedMotor is a motor with the name of its file.
type NamedMotor struct {
	Name  string
	Motor *sim.Motor
}

// Motors are variants of a rocket by its motor: those that do not fit the mount,
// or have more impulse (N·s) than the limit, say so. 0 is no limit.
func Motors(base *sim.Rocket, motors []NamedMotor, limit float64) []Variant { return nil }

// Compare flies variants side by side, in their order. It ends early with the
// context, and the rest then have no flight.
func Compare(ctx context.Context, variants []Variant, o CompareOptions) ([]Compared, error) {
	return nil, errLater
}
