package study

import (
	"context"
	"fmt"
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
)

// NoneAdmissible says that no flight in the range may be a best one.
type NoneAdmissible struct {
	Flights      int   // tried
	LiquidLeft   int   // of these ended with liquid aboard
	NeverLeft    int   // did not leave the rail
	InvalidCount int   // made no valid rocket
	First        error // why the first of these did not
}

func (e *NoneAdmissible) Error() string {
	text := fmt.Sprintf("none of %d flights in the range may be a best one:", e.Flights)
	sep := " "
	for _, c := range []struct {
		n    int
		what string
	}{{e.LiquidLeft, "ended with liquid aboard"}, {e.NeverLeft, "did not leave the rail"}, {e.InvalidCount, "made no valid rocket"}} {
		if c.n > 0 {
			text += fmt.Sprintf("%s%d %s", sep, c.n, c.what)
			sep = ", "
		}
	}
	if e.First != nil {
		text += " (" + e.First.Error() + ")"
	}
	return text
}

func (e *NoneAdmissible) count(a *attempt) {
	e.Flights++
	switch a.verdict {
	case leftover:
		e.LiquidLeft++
	case grounded:
		e.NeverLeft++
	case invalid:
		if e.InvalidCount++; e.First == nil {
			e.First = a.why
		}
	}
}

// verdict says whether a flight may be a best one, and why not.
type verdict int

const (
	admissible verdict = iota
	leftover           // it ended with liquid aboard
	grounded           // it did not leave the rail, or has no apogee
	invalid            // no valid rocket
)

// attempt is one flight of a search.
type attempt struct {
	u       []float64 // where, each from 0 to 1
	apogee  float64
	left    float64 // of the liquid, the share still aboard
	verdict verdict
	flight  *sim.Flight // nil when invalid
	why     error       // invalid
}

// value is what a line search climbs: −∞ for what may not be a best one.
func (a *attempt) value() float64 {
	if a.verdict == admissible {
		return a.apogee
	}
	return math.Inf(-1)
}

// graded is the apogee, or below every apogee a number that says how far the
// flight is from being admissible, so that a simplex can turn back.
func (a *attempt) graded() float64 {
	switch a.verdict {
	case admissible:
		return a.apogee
	case leftover:
		return -1 - a.left
	case grounded:
		return -3
	}
	return -4
}

// search is a search for the best flight.
type search struct {
	ctx       context.Context
	base      *rocket.Rocket
	goals     []Goal
	leftovers bool // allowed
	options   Options
	tally     NoneAdmissible
	best      attempt
}

// fly tries a place. It may run on several goroutines; the caller notes the attempt.
func (s *search) fly(ctx context.Context, u []float64) (attempt, error) {
	a := attempt{u: u}
	rocket := s.base.Clone()
	for k := range s.goals {
		g := &s.goals[k]
		if err := g.Input.Set(rocket, g.stretched(u[k])); err != nil {
			a.verdict, a.why = invalid, err
			return a, nil
		}
	}
	o := s.options.flight()
	o.Keep = false
	flight, bad, err := fly(ctx, rocket, o)
	if err != nil {
		return a, err
	}
	a.flight, a.why = flight, bad
	switch {
	case bad != nil:
		a.verdict = invalid
	case !flight.RailExit.Happened || !flight.Apogee.Happened:
		a.verdict = grounded
	case flight.LiquidLeft > 0 && !s.leftovers:
		a.verdict = leftover
		w := rocket.Water
		a.left = flight.LiquidLeft / (w.Fill * w.Volume * w.Density)
	}
	if flight != nil {
		a.apogee = flight.Apogee.Height
	}
	return a, nil
}

// note counts an attempt and keeps it if it is the best so far.
func (s *search) note(a attempt) {
	s.tally.count(&a)
	if s.options.Progress != nil {
		s.options.Progress(s.tally.Flights, 0)
	}
	if a.verdict == admissible && (s.best.flight == nil || a.apogee > s.best.apogee) {
		s.best = a
	}
}

// along is the value along one goal from a place, the others held.
func (s *search) along(place []float64, k int) func(x float64) (float64, error) {
	return func(x float64) (float64, error) {
		u := append([]float64(nil), place...)
		u[k] = x
		a, err := s.fly(s.ctx, u)
		if err != nil {
			return 0, err
		}
		s.note(a)
		return a.value(), nil
	}
}

// all tries many places on the workers and notes them in order.
func (s *search) all(places [][]float64) ([]attempt, error) {
	tried := make([]attempt, 0, len(places))
	quiet := s.options
	quiet.Progress = nil // note tells it
	err := inOrder(s.ctx, len(places), quiet,
		func() func(context.Context, int) (attempt, error) {
			return func(ctx context.Context, i int) (attempt, error) { return s.fly(ctx, places[i]) }
		},
		func(_ int, a attempt) error {
			s.note(a)
			tried = append(tried, a)
			return nil
		})
	return tried, err
}
