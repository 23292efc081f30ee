package study

import (
	"context"

	"ullage/sim"
)

// RailExit says whether a rocket is fast enough as it leaves its rail, and what
// would make it so.
type RailExit struct {
	Limit    float64 // asked for, m/s
	Speed    float64 // as the guide ends; 0 if it never does
	Exited   bool
	Reached  bool    // the limit is reached on the guide as it is
	At       float64 // travel along the guide where it is reached, m; NaN when not
	Enough   float64 // rail length that would be enough, m; NaN when none up to Longest
	Pressure float64 // gauge pressure that would be enough with the rail as it is, Pa; NaN when none, and on a motor
	Wind     float64 // the strongest wind, m/s, for which Speed is WindFactor times as much
}

// WindFactor is the least rail exit speed over the wind's: common practice, no source.
const WindFactor = 4

// LongestRail is the longest rail looked at, m.
const LongestRail = 20.0

// RailExitFor looks along the rail for where the speed reaches a limit, m/s.
func RailExitFor(ctx context.Context, r *sim.Rocket, limit float64, o Options) (RailExit, error) {
	return RailExit{}, errLater
}
