package study

import (
	"math"
	"slices"
)

// Settings of the search over one input, in shares of its range.
const (
	scanned   = 11   // points looked at first
	rescanned = 41   // when none of those is admissible
	bestTol   = 5e-4 // to which the best value is found
	bandTol   = 1e-3 // to which an end of the band is found
	bandDrop  = 0.01 // of the apogee, at the ends of the band
)

// line finds the best of one input: a scan finds the hill and where flights are
// admissible, then Brent's method climbs it. It returns every spot seen.
func (s *search) line() ([]spot, error) {
	seen, err := s.scan(scanned)
	if err == nil && s.best.flight == nil {
		seen, err = s.scan(rescanned)
	}
	if err != nil {
		return nil, err
	}
	if s.best.flight == nil {
		return nil, &s.tally
	}
	value := s.along([]float64{0}, 0)
	f := func(x float64) (float64, error) {
		y, err := value(x)
		seen = append(seen, spot{x, y})
		return y, err
	}
	top := 0
	for i := range seen {
		if seen[i].y > seen[top].y {
			top = i
		}
	}
	low, high := seen[max(top-1, 0)], seen[min(top+1, len(seen)-1)]
	best := seen[top]
	if low.x == best.x || high.x == best.x {
		// At an end of the range: unless it rises inwards, that is the best.
		inner := spot{x: math.Abs(best.x - 2*bestTol)}
		if inner.y, err = f(inner.x); err != nil {
			return nil, err
		}
		if !(inner.y > best.y) {
			return seen, nil
		}
		if low.x == best.x {
			low, best = best, inner
		} else {
			high, best = best, inner
		}
	}
	second, third := low, high
	if third.y > second.y {
		second, third = third, second
	}
	_, err = maximum(f, low.x, high.x, best, second, third, bestTol)
	return seen, err
}

// scan looks at n evenly spaced places, both ends included.
func (s *search) scan(n int) ([]spot, error) {
	places := make([][]float64, n)
	for i := range places {
		places[i] = []float64{between(0, 1, i, n)}
	}
	tried, err := s.all(places)
	seen := make([]spot, len(tried))
	for i, a := range tried {
		seen[i] = spot{a.u[0], a.value()}
	}
	return seen, err
}

// band finds how far the k-th input can go either way from the best, the others
// held, before the apogee drops by bandDrop or a flight is no longer admissible.
// seen are spots known on that line, if any. edge tells that flights end being
// admissible right at the best.
func (s *search) band(k int, seen []spot) (low, high float64, edge bool, err error) {
	top := spot{s.best.u[k], s.best.apogee}
	value := s.along(s.best.u, k)
	// The drop is about a parabola: its root is nearly straight, which false
	// position likes. 1 at the top, 0 at the end of the band.
	height := func(y float64) float64 {
		return 1 - math.Sqrt(math.Max(0, top.y-y)/(bandDrop*top.y))
	}
	f := func(x float64) (float64, error) {
		y, err := value(x)
		return height(y), err
	}
	ends := [2]float64{0, 1}
	for i, end := range ends {
		if top.x == end {
			continue
		}
		in := spot{top.x, 1}
		out, ok, err := s.outer(f, &in, end, seen, height)
		if err != nil {
			return 0, 0, false, err
		}
		if ok {
			if in, out, err = crossing(f, in, out, bandTol); err != nil {
				return 0, 0, false, err
			}
			edge = edge || math.IsInf(out.y, -1) && math.Abs(in.x-top.x) <= 4*bestTol
		}
		ends[i] = in.x
	}
	return ends[0], ends[1], edge, nil
}

// outer finds a place out of the band on the way to an end of the range, and moves
// in as far as it is known to be within; not ok when the band reaches the end.
func (s *search) outer(f func(x float64) (float64, error), in *spot, end float64, seen []spot, height func(y float64) float64) (spot, bool, error) {
	top := in.x
	toward := math.Copysign(1, end-top)
	beyond := slices.DeleteFunc(slices.Clone(seen), func(p spot) bool { return (p.x-top)*toward <= 0 })
	slices.SortFunc(beyond, func(a, b spot) int { return int(math.Copysign(1, math.Abs(a.x-top)-math.Abs(b.x-top))) })
	for _, p := range beyond {
		p.y = height(p.y)
		if p.y <= 0 {
			return p, true, nil
		}
		*in = p
	}
	for step := 0.05; in.x != end; step *= 2 {
		p := spot{x: in.x + toward*step}
		if (end-p.x)*toward < 0 {
			p.x = end
		}
		var err error
		if p.y, err = f(p.x); err != nil {
			return p, false, err
		}
		if p.y <= 0 {
			return p, true, nil
		}
		*in = p
	}
	return spot{}, false, nil
}
