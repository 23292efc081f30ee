package view

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// RailExitSpeed is NaN for a flight that never leaves its rail.
func RailExitSpeed(fl *sim.Flight) float64 {
	if !fl.Results.RailExit.Happened {
		return math.NaN()
	}
	return fl.Results.RailExit.Speed
}

// RailWord is the verdict on a rail exit speed that is not enough; empty for one
// that is.
func RailWord(speed, limit float64) string {
	if speed < limit {
		return gates.WordLow
	}
	return ""
}

// AsFlown are options to fly a rocket as the flight on the screen is flown, so
// that the figures are the same.
func AsFlown(r *rocket.Rocket) study.Options { return study.Options{Rigid: r.Rigid()} }
