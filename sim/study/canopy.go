package study

import (
	"context"

	"ullage/sim"
)

// Sized is a canopy that lands the rocket at a chosen speed.
type Sized struct {
	Diameter float64 // nominal, m
	Area     float64 // nominal, m²
	Vertical float64 // at landing, m/s
	Drift    float64 // from the pad, m
	Time     float64 // of landing, s
	Flights  int
	Flight   *sim.Flight
}

// CanopyFor finds the nominal diameter of a canopy on which the rocket lands at a
// vertical speed, m/s, from flights.
func CanopyFor(ctx context.Context, r *sim.Rocket, canopy int, vertical float64, o Options) (Sized, error) {
	return Sized{}, errLater
}
