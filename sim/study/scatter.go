package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocketfile"
)

// LandingPoint is where one flight of a scatter came down.
type LandingPoint struct {
	Draw        int     // from 0
	East, North float64 // from the pad, m
	Apogee      float64 // m
}

// Summary is the distribution of one number.
type Summary struct {
	Count         int
	Mean, SD      float64 // over all flights
	Q05, Q50, Q95 float64
}

// Ellipse holds 90 % of the landings if they are normally distributed.
type Ellipse struct {
	East, North  float64 // its centre, m
	Major, Minor float64 // semi-axes, m
	Heading      float64 // of the major axis, clockwise from north, 0 to π, rad
}

// Influence is how much one uncertain input moves the apogee.
type Influence struct {
	Input rocketfile.Input
	SD    float64
	Rank  float64 // Spearman's correlation with apogee, -1 to 1; NaN when there is none
}

// ScatterResult sums up the flights of a scatter.
type ScatterResult struct {
	Asked        int     // flights asked for
	Drawn        int     // drawn so far: fewer when interrupted
	Invalid      int     // of these made no valid rocket
	Grounded     int     // of these did not leave the rail
	FirstInvalid error   // the first of Invalid
	Apogee       Summary // m
	RailExit     Summary // m/s
	Landing      Ellipse
	Landed       int
	Importance   []Influence // the greatest first
	Reservoir    int         // flights behind quantiles and ranks: fewer than those flown past ReservoirSize
	Partial      bool        // interrupted
}

// ReservoirSize bounds the flights kept for quantiles and ranks.
const ReservoirSize = 100_000

// RunScatter flies a rocket n times with its uncertain inputs drawn at random. The
// result depends on the seed alone, not on the workers. each, if there is one, is
// given every landing in the order of the draws. An interrupted scatter returns what
// it has beside the error.
func RunScatter(ctx context.Context, r *sim.Rocket, spreads []Spread, n int, seed uint64, o Options, each func(LandingPoint) error) (ScatterResult, error) {
	return ScatterResult{}, errLater
}
