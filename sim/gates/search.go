package gates

import (
	"cmp"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// search is the search for the nearest value of one lever that passes one gate.
type search struct {
	m      *mender
	base   *rocket.Rocket
	made   change // on the base already
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
	fl, err := s.look(x, c)
	if err != nil || fl == nil {
		return false, err
	}
	v := s.gate.look(fl)
	b := s.gate.limit.badness(v)
	if c == s.worst && b > 0 && b < s.miss {
		s.miss, s.closest, s.comes = b, x, v.V
	}
	return s.gate.warns || b <= 0, nil
}

// look is the flight with the lever at a value in a case, or for what needs none the rocket of it; nil where there is none.
func (s *search) look(x float64, c results.Case) (*sim.Flight, error) {
	made := func() *rocket.Rocket {
		if r := s.pull.set(s.base, x); r != nil {
			return s.corner.rocket(r, c)
		}
		return nil
	}
	if s.gate.still {
		if r := made(); r != nil && r.Validate() == nil {
			return &sim.Flight{Rocket: r}, nil
		}
		return nil, nil
	}
	k := flightKey{power: s.base.Power, first: change{s.pull.kind, s.pull.in.Name, x}, is: c, guide: s.gate.guide}
	if s.made != (change{}) {
		k.first, k.second = s.made, k.first
	}
	if c == results.Corner {
		k.corner = s.corner.key()
	}
	return s.m.flight(k, made)
}
