package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocketfile"
)

// Goal is an input to find the best value of, and where to look, in SI.
type Goal struct {
	Input    rocketfile.Input
	From, To float64
}

// Best is what FindBest found.
type Best struct {
	Values  []float64    // one a goal, SI
	Apogee  float64      // m
	Within  [][2]float64 // range of each within 1 % of the best apogee, the others held, clipped to the goal's range
	Flights int          // how many it took
	Flight  *sim.Flight  // the best one
	AtBound []bool       // the best is at an end of the goal's range
	AtEdge  []bool       // beyond it, on one side, flights are no longer admissible
}

// NoneAdmissible says that no flight in the range may be a best one.
type NoneAdmissible struct {
	Flights      int // tried
	LiquidLeft   int // of these ended with liquid aboard
	NeverLeft    int // did not leave the rail
	InvalidCount int // made no valid rocket
}

func (e *NoneAdmissible) Error() string { return "no flight in the range may be a best one" }

// ParseGoal reads "water.fill" or "water.fill=0.2..0.6". Without a range it is the
// input's own, drawn in to what makes sense around today's value.
func ParseGoal(r *sim.Rocket, text string) (Goal, error) { return Goal{}, errLater }

// FindBest finds the values of one or more inputs for the highest apogee. A flight
// that does not leave the rail is never a best one, nor, unless allowLeftover, one
// that ends with liquid aboard.
func FindBest(ctx context.Context, base *sim.Rocket, goals []Goal, allowLeftover bool, o Options) (Best, error) {
	return Best{}, errLater
}
