package study

import (
	"context"

	"ullage/sim"
)

// Delay is one value of the number in a canopy's rule, and what it does.
type Delay struct {
	Value     float64 // s, or m for a rule on height
	Opened    bool
	Early     bool    // it opens under thrust
	SinceTop  float64 // of the opening after apogee, s; negative before
	Airspeed  float64 // as it opens, m/s
	Height    float64 // as it opens, above the pad, m
	Load      float64 // N
	LoadBound float64 // N
	Landing   sim.Landing
	Listed    bool // among the delays of the motor that can be had
	Flight    *sim.Flight
}

// OpeningValues are the values worth a look for a canopy's rule: whole seconds for a
// motor's charge with those that can be had, tenths of a second around the top for a
// timer, steps of height for an altimeter.
func OpeningValues(ctx context.Context, r *sim.Rocket, canopy int, o Options) ([]float64, error) {
	return nil, errLater
}

// Opening flies a rocket over the number in a canopy's rule for the drive that flies,
// and tells which is best: the least airspeed at opening of those that open after
// thrust has ended; -1 when none does.
func Opening(ctx context.Context, r *sim.Rocket, canopy int, values []float64, o Options) (delays []Delay, best int, err error) {
	return nil, -1, errLater
}
