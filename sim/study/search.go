package study

import (
	"context"
	"fmt"
	"math"
	"strings"
	"sync"

	"ullage/sim"
	"ullage/sim/rocket"
)

// NoneAdmissible says that no flight in the range may be a best one.
type NoneAdmissible struct {
	Flights      int   // tried
	LiquidLeft   int   // of these ended with liquid aboard
	NeverLeft    int   // did not leave the rail
	Overpressed  int   // had more pressure than the chamber is proved for
	Leaking      int   // had a launch tube that is no piston in its throat
	Undefined    int   // did not have the result that was wished for
	Failing      int   // did not pass every check
	InvalidCount int   // made no valid rocket
	First        error // why the first of these did not
}

// Reasons are why, each with how many flights.
func (e *NoneAdmissible) Reasons() []string {
	var why []string
	for _, c := range []struct {
		n    int
		what string
	}{{e.NeverLeft, "did not leave the rail"}, {e.LiquidLeft, "ended with liquid aboard"},
		{e.Overpressed, "had more pressure than the chamber is proved for"}, {e.Leaking, "had a launch tube that leaks"}, {e.Undefined, "did not have the result wished for"},
		{e.Failing, "did not pass every check"},
		{e.InvalidCount, "made no rocket"}} {
		if c.n > 0 {
			why = append(why, fmt.Sprintf("%d %s", c.n, c.what))
		}
	}
	return why
}

func (e *NoneAdmissible) Error() string {
	text := fmt.Sprintf("none of %d flights in the range may be a best one: %s", e.Flights, strings.Join(e.Reasons(), ", "))
	if e.First != nil {
		text += " (" + e.First.Error() + ")"
	}
	return text
}

func (e *NoneAdmissible) count(a *attempt) {
	e.Flights++
	switch {
	case !a.flown:
		if e.InvalidCount++; e.First == nil {
			e.First = a.invalid
		}
	case a.refused == LiquidLeft:
		e.LiquidLeft++
	case a.refused == NeverLeft:
		e.NeverLeft++
	case a.refused == Overpressed:
		e.Overpressed++
	case a.refused == Leaking:
		e.Leaking++
	case a.refused == Undefined:
		e.Undefined++
	case a.refused == Failing:
		e.Failing++
	}
}

// attempt is one flight of a search.
type attempt struct {
	u       []float64 // where, each from 0 to 1
	value   float64   // −∞ for what may not be the best, as a line search takes it
	refused Refusal
	far     float64 // from being admissible
	flown   bool    // there is a valid rocket
	invalid error   // why there is none
}

func (a *attempt) admissible() bool { return a.flown && a.refused == Accepted }

// graded is the value, or below the worst of those seen first a number that says how far the
// flight is from being admissible, so that a simplex can turn back.
func (s *search) graded(a *attempt) float64 {
	switch {
	case !a.flown:
		return s.worst - 4*s.span
	case a.refused == NeverLeft || a.refused == Undefined:
		return s.worst - 3*s.span
	case a.refused != Accepted:
		return s.worst - (1+a.far)*s.span
	}
	return a.value
}

// measure takes the measure of the values by the flights seen first.
func (s *search) measure(seen []attempt) {
	s.worst, s.span = 0, 1
	for i := range seen {
		s.worst = math.Min(s.worst, seen[i].value)
		s.span = math.Max(s.span, math.Abs(seen[i].value))
	}
}

// search is a search for the best flight.
type search struct {
	ctx     context.Context
	base    *rocket.Rocket
	goals   []Goal
	aim     Aim
	options Options
	tally   NoneAdmissible
	best    attempt
	worst   float64   // value of the flights seen first that may be the best, 0 at most
	span    float64   // of these values, 1 at least
	trials  sync.Pool // of *trial, one for each goroutine that flies
	chamber bool      // what is turned bears on the chamber
}

// trial is what one flight of a search after another takes place in.
type trial struct {
	rocket rocket.Rocket
	flyer  sim.Flyer
}

// fly tries a place. It may run on several goroutines; the caller notes the attempt.
func (s *search) fly(ctx context.Context, u []float64) (attempt, error) {
	a := attempt{u: u, value: math.Inf(-1)}
	t, _ := s.trials.Get().(*trial)
	if t == nil {
		t = new(trial)
	}
	defer s.trials.Put(t)
	if a.invalid = s.put(u, &t.rocket); a.invalid != nil {
		return a, nil
	}
	fl, err := t.flyer.Fly(ctx, &t.rocket, s.options.unkept())
	if err != nil {
		a.invalid, err = parted(err)
		return a, err
	}
	a.flown = true
	if a.refused, a.far = s.aim.Refuse(fl); a.refused == Accepted {
		a.value = s.aim.Value(fl)
	}
	return a, nil
}

// put makes the rocket of a place. The error is a fault.List.
func (s *search) put(u []float64, r *rocket.Rocket) error {
	s.base.CopyTo(r)
	for k := range s.goals {
		g := &s.goals[k]
		if err := g.Input.Set(r, g.stretched(u[k])); err != nil {
			return err
		}
	}
	if s.chamber {
		return ofChamber(r)
	}
	return nil
}

// note counts an attempt and keeps it if it is the best so far.
func (s *search) note(a attempt) {
	s.tally.count(&a)
	if s.options.Progress != nil {
		s.options.Progress(s.tally.Flights, 0)
	}
	if a.admissible() && (!s.best.flown || a.value > s.best.value) {
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
		return a.value, nil
	}
}

// all tries many places on the workers and notes them in order.
func (s *search) all(places [][]float64) ([]attempt, error) {
	quiet := s.options
	quiet.Progress = nil // note tells it
	tried := make([]attempt, 0, len(places))
	do := func(ctx context.Context, i int) (attempt, error) { return s.fly(ctx, places[i]) }
	err := inOrder(s.ctx, len(places), quiet, do, func(_ int, a attempt) error {
		s.note(a)
		tried = append(tried, a)
		return nil
	})
	return tried, err
}
