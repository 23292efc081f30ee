package study

import (
	"cmp"
	"math"
	"slices"

	"ullage/sim/solve"
)

// Settings of the search over one input, in shares of its range.
const (
	scanned   = 11   // points looked at first
	rescanned = 41   // when none of those is admissible
	bestTol   = 5e-4 // to which the best value is found
	bandTol   = 1e-3 // to which an end of the band is found
	bandStep  = 0.05 // the first towards an end where nothing is known
	bandMore  = 2    // times as long is each after it
	bandDrop  = 0.01 // of the value, at the ends of the band
)

// line finds the best of one input: a scan finds the hill and where flights are
// admissible, then a search climbs it. It returns every place seen.
func (s *search) line() ([]solve.Point, error) {
	seen, err := s.scan(scanned)
	if err == nil && !s.best.flown {
		seen, err = s.scan(rescanned)
	}
	if err != nil {
		return nil, err
	}
	if !s.best.flown {
		return nil, &s.tally
	}
	known := slices.Clone(seen)
	for i := range known {
		known[i].Y = -known[i].Y
	}
	value := s.along([]float64{0}, 0)
	_, err = solve.Least(func(x float64) (float64, error) {
		y, err := value(x)
		seen = append(seen, solve.Point{X: x, Y: y})
		return -y, err
	}, known, bestTol)
	return seen, err
}

// scan looks at n evenly spaced places, both ends included.
func (s *search) scan(n int) ([]solve.Point, error) {
	places := make([][]float64, n)
	for i := range places {
		places[i] = []float64{between(0, 1, i, n)}
	}
	tried, err := s.all(places)
	seen := make([]solve.Point, len(tried))
	for i, a := range tried {
		seen[i] = solve.Point{X: a.u[0], Y: a.value}
	}
	return seen, err
}

// band finds how far the k-th input can go either way from the best, the others
// held, before the value drops by bandDrop or a flight is no longer admissible.
// seen are places known on that line, if any. edge tells that flights end being
// admissible right at the best.
func (s *search) band(k int, seen []solve.Point) (low, high float64, edge bool, err error) {
	top := solve.Point{X: s.best.u[k], Y: s.best.value}
	value := s.along(s.best.u, k)
	// The drop is about a parabola: its root is nearly straight, which false
	// position likes. 1 at the top, 0 at the end of the band.
	within := func(y float64) float64 {
		return 1 - math.Sqrt(math.Max(0, top.Y-y)/s.aim.drop(top.Y))
	}
	f := func(x float64) (float64, error) {
		y, err := value(x)
		return within(y), err
	}
	ends := [2]float64{0, 1}
	for i, end := range ends {
		if top.X == end {
			continue
		}
		b := solve.Bracket{In: solve.Point{X: top.X, Y: 1}, Out: solve.Point{X: top.X, Y: 1}}
		for _, p := range beyond(seen, top.X, end) {
			p.Y = within(p.Y)
			if p.Y <= 0 {
				b.Out = p
				break
			}
			b.In = p
		}
		ok := b.Out.Y <= 0
		if !ok {
			if b, ok, err = solve.Outward(f, b.In, end, bandStep, bandMore); err != nil {
				return 0, 0, false, err
			}
		}
		if !ok {
			continue // all the way
		}
		if b, err = solve.Root(f, b, solve.Tolerance{X: bandTol}); err != nil {
			return 0, 0, false, err
		}
		ends[i] = b.In.X
		edge = edge || math.IsInf(b.Out.Y, -1) && math.Abs(b.In.X-top.X) <= 4*bestTol
	}
	return ends[0], ends[1], edge, nil
}

// beyond are the places on the way from one to an end, the nearest first.
func beyond(seen []solve.Point, from, end float64) []solve.Point {
	way := func(p solve.Point) float64 { return (p.X - from) * math.Copysign(1, end-from) }
	on := slices.DeleteFunc(slices.Clone(seen), func(p solve.Point) bool { return way(p) <= 0 })
	slices.SortFunc(on, func(a, b solve.Point) int { return cmp.Compare(way(a), way(b)) })
	return on
}
