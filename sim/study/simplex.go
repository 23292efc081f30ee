package study

import (
	"cmp"
	"context"
	"math"
	"slices"

	"ullage/sim/solve"
)

// Settings of the search over several inputs.
const (
	startsPerGoal = 12   // places looked at first, for each input
	climbs        = 3    // of the best of those climb
	simplexSize   = 0.08 // of a climb, in shares of the ranges
	simplexAgain  = 0.02 // of a restart from the best
	restarts      = 4    // at most
	climbFlights  = 60   // for each input, at most, of one climb
	climbTol      = 1e-5 // of the value: a gain not worth a flight
)

// simplex finds the best of several inputs by Nelder and Mead's method
// from the best of a fixed set of places, and again from the best found until that
// gains nothing. Inputs are held inside their ranges.
func (s *search) simplex() error {
	starts, err := s.all(s.starts())
	if err != nil {
		return err
	}
	if !s.best.flown {
		return &s.tally
	}
	starts = slices.DeleteFunc(starts, func(a attempt) bool { return !a.admissible() })
	s.measure(starts)
	slices.SortStableFunc(starts, func(a, b attempt) int { return cmp.Compare(b.value, a.value) })
	starts = starts[:min(climbs, len(starts))]
	quiet := s.options
	quiet.Progress = nil
	first := func(ctx context.Context, i int) (climb, error) { return s.climb(ctx, starts[i], simplexSize) }
	err = inOrder(s.ctx, len(starts), quiet, first, func(_ int, c climb) error {
		s.noteClimb(c)
		return nil
	})
	for range restarts {
		if err != nil {
			return err
		}
		before := s.best.value
		var c climb
		if c, err = s.climb(s.ctx, s.best, simplexAgain); err == nil {
			s.noteClimb(c)
		}
		if s.best.value-before <= s.aim.gain()*math.Abs(before) {
			break
		}
	}
	return err
}

// starts are the first places of a Halton sequence (J. H. Halton, Numerische
// Mathematik 2 (1960) 84), which fills any number of dimensions evenly, and today's
// values.
func (s *search) starts() [][]float64 {
	primes := [maxGoals]int{2, 3, 5, 7, 11, 13}
	n := len(s.goals)
	today := make([]float64, n)
	for k := range s.goals {
		v, _ := s.goals[k].Input.Get(s.base)
		today[k] = s.goals[k].place(v)
	}
	places := [][]float64{today}
	for i := 1; i <= startsPerGoal*n; i++ {
		u := make([]float64, n)
		for k := range u {
			for j, f := i, 1.0; j > 0; j /= primes[k] {
				f /= float64(primes[k])
				u[k] += f * float64(j%primes[k])
			}
		}
		places = append(places, u)
	}
	return places
}

// climb is what one run of the simplex came to.
type climb struct {
	best  attempt
	tally NoneAdmissible
}

func (s *search) noteClimb(c climb) {
	s.note(c.best)
	s.tally.Flights += c.tally.Flights - 1
}

// climb runs the simplex from a place. It may run on several goroutines.
func (s *search) climb(ctx context.Context, from attempt, size float64) (climb, error) {
	c := climb{best: from}
	_, _, err := solve.Simplex(func(x []float64) (float64, error) {
		u := make([]float64, len(x))
		outside := 0.0
		for k := range x {
			u[k] = math.Min(1, math.Max(0, x[k]))
			outside += math.Abs(x[k] - u[k])
		}
		a, err := s.fly(ctx, u)
		if err != nil {
			return 0, err
		}
		c.tally.count(&a)
		if a.admissible() && a.value > c.best.value {
			c.best = a
		}
		return outside*math.Max(math.Abs(from.value), s.span) - s.graded(&a), nil
	}, from.u, solve.Descent{Size: size, Gain: s.aim.gain(), Most: climbFlights * len(s.goals)})
	return c, err
}
