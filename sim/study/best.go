package study

import (
	"context"
	"slices"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/solve"
)

// Best is what FindBest found.
type Best struct {
	Values  []float64    // one a goal, SI
	Apogee  float64      // m
	Within  [][2]float64 // range of each within 1 % of the best value, the others held, inside the goal's range
	Flights int          // how many it took
	Flight  *sim.Flight  // the best one
	AtBound []bool       // the best is at an end of the goal's range: beyond it may be better
	CutOff  int          // of these had more pressure than the chamber is proved for, and may not be the best
	AtEdge  []bool       // right beyond the best, flights are refused or make no valid rocket
}

// FindBest finds the values of one or more inputs for the flight that an aim values most:
// of one by a scan and a search from its best place, of several by a simplex with
// restarts. When the aim refuses every flight in the ranges, the error is a
// *NoneAdmissible. What is wrong with the goals is a fault.List.
func FindBest(ctx context.Context, base *rocket.Rocket, goals []Goal, aim Aim, o Options) (Best, error) {
	if faults := goalFaults(base, goals, len(goals)); len(faults) > 0 {
		return Best{}, faults
	}
	s := &search{ctx: ctx, base: base, goals: goals, aim: aim.Within(base), options: o,
		chamber: slices.ContainsFunc(goals, func(g Goal) bool { return bearsOnChamber(g.Input) })}
	var seen []solve.Point
	var err error
	if len(goals) == 1 {
		seen, err = s.line()
	} else {
		err = s.simplex()
	}
	if err != nil {
		return Best{}, err
	}
	return s.result(seen)
}

// result describes the best found: how flat the top is, and what bounds it.
func (s *search) result(seen []solve.Point) (Best, error) {
	top := s.best
	var b Best
	for k := range s.goals {
		g := &s.goals[k]
		s.best = top // not what a look around may have found
		low, high, edge, err := s.band(k, seen)
		if err != nil {
			return Best{}, err
		}
		b.Values = append(b.Values, g.stretched(top.u[k]))
		b.Within = append(b.Within, [2]float64{g.stretched(low), g.stretched(high)})
		b.AtBound = append(b.AtBound, top.u[k] <= 2*bestTol || top.u[k] >= 1-2*bestTol)
		b.AtEdge = append(b.AtEdge, edge)
	}
	best := new(rocket.Rocket)
	err := s.put(top.u, best)
	if err == nil {
		b.Flight, err = sim.Fly(s.ctx, best, s.options.flight())
	}
	if err != nil {
		return Best{}, err
	}
	b.Apogee, b.Flights = b.Flight.Apogee.Height, s.tally.Flights+1
	b.CutOff = s.tally.Overpressed
	return b, nil
}
