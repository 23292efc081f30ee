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
	m      *mending
	base   *rocket.Rocket
	made   change // on the base already
	gate   *criterion
	pull   *pull
	flown  []results.Case
	worst  results.Case
	corner deviation
	apart  bool // no two values share a way up

	miss, closest, comes float64 // of what does not pass: how far outside, at which value, and what it comes to
}

// Settings of the search: places looked at towards an end, and steps tried beyond the
// first that passes in the worst case.
const (
	scans   = 10
	further = 4
)

// values gives values that pass, one at a time, since each is flown for: not ok when there are no more.
type values func() (x float64, ok bool, err error)

// nearest gives values that pass, the one nearest to today's first and then some beyond it, on the lever's steps;
// found tells whether there is any.
func (s *search) nearest() (all values, found bool, err error) {
	near := func(x float64) float64 { return math.Abs(x - s.pull.now) }
	if s.pull.values != nil { // the search is among these
		var list []float64
		for _, x := range s.pull.values {
			ok, err := s.passesAll(x)
			if err != nil {
				return nil, false, err
			}
			if ok {
				list = append(list, x)
			}
		}
		slices.SortStableFunc(list, func(a, b float64) int { return cmp.Compare(near(a), near(b)) })
		return func() (x float64, ok bool, err error) {
			if len(list) == 0 {
				return 0, false, nil
			}
			x, list = list[0], list[1:]
			return x, true, nil
		}, len(list) > 0, nil
	}
	first, beyond := 0.0, values(nil)
	for _, end := range s.pull.reach {
		next, err := s.towards(end)
		if err != nil {
			return nil, false, err
		}
		x, ok, err := next()
		if err != nil {
			return nil, false, err
		}
		if ok && (beyond == nil || near(x) < near(first)) {
			first, beyond = x, next
		}
	}
	told := false
	return func() (float64, bool, error) {
		switch {
		case beyond == nil:
			return 0, false, nil
		case !told:
			told = true
			return first, true, nil
		}
		return beyond()
	}, beyond != nil, nil
}

// towards looks on the lever's steps from today's value to an end: a scan, finer near
// today's value, finds a step that passes in the worst case, halving the first such one;
// from there on, by growing steps, those that pass in every case.
func (s *search) towards(end float64) (values, error) {
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
	for in >= 0 && in-out > 1 {
		if err := try((in + out) / 2); err != nil {
			return nil, err
		}
	}
	k, by := in, 1
	return func() (float64, bool, error) {
		for k >= 0 && k < steps.n && by <= 1<<further {
			x := steps.at(k)
			k, by = k+by, 2*by
			if ok, err := s.passesAll(x); ok || err != nil {
				return x, ok, err
			}
		}
		return 0, false, nil
	}, nil
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
	v, ok, err := s.look(x, c)
	if err != nil || !ok {
		return false, err
	}
	b := s.gate.limit.badness(v)
	if c == s.worst && b > 0 && b < s.miss {
		s.miss, s.closest, s.comes = b, x, v.V
	}
	return s.gate.warns || b <= 0, nil
}

// look is what the gate comes to with the lever at a value in a case; not ok where there is no such rocket.
func (s *search) look(x float64, c results.Case) (v Value, ok bool, err error) {
	far := s.gate.until
	if s.gate.still {
		far = untilReady
	}
	k := flightKey{power: s.base.Power, first: change{s.pull.kind, s.pull.in.Name, x}, is: c, until: far}
	if s.made != (change{}) {
		k.first, k.second = s.made, k.first
	}
	var fl *sim.Flight
	switch {
	case far == untilReady:
		fl, err = s.fly(x, c, far)
	case c == results.Corner: // of which nobody reads more than what it comes to
		k.corner = s.corner.key()
		values, err := orFarther(&s.m.corners, k, func() ([]Value, error) { return s.m.reads(k, func() (*sim.Flight, error) { return s.fly(x, c, far) }) })
		if values == nil {
			return v, false, err
		}
		return values[s.gate.number], true, nil
	default:
		fl, err = s.m.flight(k, func() (*sim.Flight, error) {
			r := s.pull.set(s.base, x)
			if r != nil {
				r = s.corner.rocket(r, c)
			}
			return far.flown(s.m.ctx, r, s.leads(r, c))
		})
	}
	if fl == nil {
		return v, false, err
	}
	return s.gate.look(fl), true, nil
}

// fly flies in memory that is used again.
func (s *search) fly(x float64, c results.Case, far until) (*sim.Flight, error) {
	r := &s.m.craft.Rocket
	switch {
	case !s.pull.onto(s.base, x, r), c == results.Corner && !s.corner.turn(r):
		return nil, nil
	case c == results.Calm:
		r.Becalm()
	}
	return far.onto(s.m.ctx, r, s.leads(r, c), &s.m.craft.Flight)
}

// leads has flights go on from one another's way up, in a case, where the lever moves nothing but what comes after it.
func (s *search) leads(r *rocket.Rocket, c results.Case) sim.Options {
	up := &s.m.ups[c]
	if s.apart = s.apart || r != nil && up.Other(r); s.apart {
		return sim.Options{}
	}
	return sim.Options{From: up, Keeps: up}
}
