package gates

import (
	"cmp"
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// search is the search for the nearest value of one lever that passes one gate.
type search struct {
	ctx    context.Context
	base   *rocket.Rocket
	gate   *criterion
	pull   *pull
	flown  []results.Case
	worst  results.Case
	corner deviation

	miss, closest, comes float64 // of what does not pass: how far outside, at which value, and what it comes to
}

// Settings of the search: places looked at towards an end, and steps tried beyond the
// first that passes in the worst case.
const (
	scans   = 10
	further = 4
)

// nearest are values that pass, the one nearest to today's first and then some beyond it, on
// the lever's steps.
func (s *search) nearest() ([]float64, error) {
	var best []float64
	near := func(x float64) float64 { return math.Abs(x - s.pull.now) }
	if s.pull.values != nil { // the search is among these
		for _, x := range s.pull.values {
			ok, err := s.passesAll(x)
			if err != nil {
				return nil, err
			}
			if ok {
				best = append(best, x)
			}
		}
		slices.SortStableFunc(best, func(a, b float64) int { return cmp.Compare(near(a), near(b)) })
		return best, nil
	}
	for _, end := range s.pull.reach {
		found, err := s.towards(end)
		if err != nil {
			return nil, err
		}
		if len(found) > 0 && (len(best) == 0 || near(found[0]) < near(best[0])) {
			best = found
		}
	}
	return best, nil
}

// towards looks on the lever's steps from today's value to an end: a scan, finer near
// today's value, finds a step that passes in the worst case, halving the first such one;
// from there on, by growing steps, those that pass in every case.
func (s *search) towards(end float64) (found []float64, err error) {
	steps := s.pull.steps(end)
	out, in := -1, -1
	try := func(k int) error {
		ok, err := s.try(steps.at(k), s.worst)
		if ok {
			in = k
		} else {
			out = k
		}
		return err
	}
	for i := 0; i <= scans && in < 0; i++ {
		if k := (steps.n - 1) * i * i / (scans * scans); k > out {
			if err := try(k); err != nil {
				return nil, err
			}
		}
	}
	if in < 0 {
		return nil, nil
	}
	for in-out > 1 {
		if err := try((in + out) / 2); err != nil {
			return nil, err
		}
	}
	for k, by := in, 1; k < steps.n && by <= 1<<further; k, by = k+by, 2*by {
		ok, err := s.passesAll(steps.at(k))
		if err != nil {
			return nil, err
		}
		if ok {
			found = append(found, steps.at(k))
		}
	}
	return found, nil
}

// passesAll tells whether a value passes in every case.
func (s *search) passesAll(x float64) (bool, error) {
	for _, c := range s.flown {
		if ok, err := s.try(x, c); !ok || err != nil {
			return false, err
		}
	}
	return true, nil
}

// try tells whether a value passes in a case, and keeps the nearest to passing of those that
// do not.
func (s *search) try(x float64, c results.Case) (bool, error) {
	r := s.pull.set(s.base, x)
	if r == nil {
		return false, nil
	}
	if r = s.corner.rocket(r, c); r == nil {
		return false, nil
	}
	var v Value
	if s.gate.still {
		if r.Validate() != nil {
			return false, nil
		}
		v = s.gate.look(&sim.Flight{Rocket: r})
	} else {
		fl, err := flown(s.ctx, r, sim.Options{Guide: s.gate.guide})
		if err != nil || fl == nil {
			return false, err
		}
		v = s.gate.look(fl)
	}
	b := s.gate.limit.badness(v)
	if c == s.worst && b > 0 && b < s.miss {
		s.miss, s.closest, s.comes = b, x, v.V
	}
	return s.gate.warns || b <= 0, nil
}

// flown is the flight of a rocket; nil of one that is not valid.
func flown(ctx context.Context, r *rocket.Rocket, o sim.Options) (*sim.Flight, error) {
	fl, err := sim.Fly(ctx, r, o)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, nil
	}
	return fl, nil
}
