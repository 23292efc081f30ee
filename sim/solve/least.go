package solve

import "math"

// Least closes in on the least value near the lowest of some places known, in rising
// order, and gives the least seen: Minimum between its neighbours; at an end, only if the
// function falls from there inwards, for which it looks twice the tolerance inside. Of
// places that are equally low it takes the first. Where the function has no value at any,
// it looks no further. No places are ErrBracket.
func Least(f Func, known []Point, tol float64) (Point, error) {
	if len(known) == 0 {
		return Point{math.NaN(), math.NaN()}, ErrBracket
	}
	k := 0
	for i := range known {
		if below(known[i], known[k]) {
			k = i
		}
	}
	low, middle, high := known[max(k-1, 0)], known[k], known[min(k+1, len(known)-1)]
	if !(middle.Y < math.Inf(1)) || high.X-low.X <= 2*tol {
		return middle, nil
	}
	inside := 0.0
	switch middle.X {
	case low.X:
		inside = 2 * tol
	case high.X:
		inside = -2 * tol
	}
	if inside != 0 {
		p, err := f.At(middle.X + inside)
		if err != nil || !below(p, middle) {
			return middle, err
		}
		middle = p
	}
	return Minimum(f, low, middle, high, tol)
}
