package view

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// RailExitSpeed is NaN for a flight that never leaves its rail.
func RailExitSpeed(fl *sim.Flight) float64 {
	if !fl.Results.RailExit.Happened {
		return math.NaN()
	}
	return fl.Results.RailExit.Speed
}

// Simpler says of a rocket that it flies as a point mass though it could as a rigid body;
// empty else, for the rule needs no words.
func Simpler(r *rocket.Rocket) string {
	if r.Rigid() || !r.Balanced() {
		return ""
	}
	return "flown as " + words.Model(r)
}

// RailWord is the verdict on a rail exit speed that is not enough; empty for one
// that is.
func RailWord(speed, limit float64) string {
	if speed < limit {
		return gates.WordLow
	}
	return ""
}
