package study

import "math"

// golden is the share of the golden section, (3 − √5)/2.
const golden = 0.3819660112501051

// spot is a place and the value of a function there.
type spot struct{ x, y float64 }

// maximum narrows a bracket [a, b] around the best of three known spots to within
// tol and returns the best seen, by parabolas through the three best with golden
// sections between: Brent, Algorithms for Minimization without Derivatives (1973),
// chapter 5. The function may be −∞ at places, which only golden sections leave.
func maximum(f func(x float64) (float64, error), a, b float64, best, second, third spot, tol float64) (spot, error) {
	last, before := b-a, b-a // lengths of the last step and of the one before
	x, w, v := best, second, third
	for {
		middle := (a + b) / 2
		if math.Abs(x.x-middle)+(b-a)/2 <= 2*tol {
			return x, nil
		}
		step, ok := vertex(x, w, v)
		if !ok || math.Abs(step) >= math.Abs(before)/2 || x.x+step <= a || x.x+step >= b {
			before = b - x.x
			if x.x >= middle {
				before = a - x.x
			}
			step = golden * before
			last = step
		} else {
			before, last = last, step
			if x.x+step-a < tol || b-x.x-step < tol {
				step = math.Copysign(tol, middle-x.x)
			}
		}
		if math.Abs(step) < tol {
			step = math.Copysign(tol, step)
		}
		u := spot{x: x.x + step}
		var err error
		if u.y, err = f(u.x); err != nil {
			return x, err
		}
		if u.y >= x.y {
			if u.x >= x.x {
				a = x.x
			} else {
				b = x.x
			}
			x, w, v = u, x, w
			continue
		}
		if u.x < x.x {
			a = u.x
		} else {
			b = u.x
		}
		switch {
		case u.y >= w.y || w.x == x.x:
			w, v = u, w
		case u.y >= v.y || v.x == x.x || v.x == w.x:
			v = u
		}
	}
}

// vertex is the way from x to the vertex of the parabola through three spots; not ok
// when they make none that opens downward.
func vertex(x, w, v spot) (float64, bool) {
	r := (x.x - w.x) * (x.y - v.y)
	q := (x.x - v.x) * (x.y - w.y)
	p := (x.x-v.x)*q - (x.x-w.x)*r
	d := 2 * (q - r)
	step := -p / d
	return step, d != 0 && !math.IsNaN(step) && !math.IsInf(step, 0)
}

// crossing finds where a function that is positive at in and not at out changes
// sign, to within tol, by the Illinois variant of false position (Dowell and
// Jarratt, BIT 11 (1971) 168), or by halving while it is infinite out there. It
// returns the last place known to be in and the first known to be out.
func crossing(f func(x float64) (float64, error), in, out spot, tol float64) (lastIn, firstOut spot, err error) {
	side := 0
	scaleIn, scaleOut := 1.0, 1.0
	for n := 0; math.Abs(out.x-in.x) > tol && n < 60; n++ {
		x := (in.x + out.x) / 2
		if a, b := in.y*scaleIn, out.y*scaleOut; n < 30 && !math.IsInf(b, 0) && !math.IsInf(a, 0) && a > b {
			x = in.x + (out.x-in.x)*a/(a-b)
			// Keep off the ends, so that both come closer.
			edge := 0.4 * tol
			if d := math.Abs(x - in.x); d < edge {
				x = in.x + math.Copysign(edge, out.x-in.x)
			} else if math.Abs(out.x-x) < edge {
				x = out.x - math.Copysign(edge, out.x-in.x)
			}
		}
		y, err := f(x)
		if err != nil {
			return in, out, err
		}
		if y > 0 {
			if in, scaleIn = (spot{x, y}), 1; side > 0 {
				scaleOut /= 2
			}
			side = 1
		} else {
			if out, scaleOut = (spot{x, y}), 1; side < 0 {
				scaleIn /= 2
			}
			side = -1
		}
	}
	return in, out, nil
}
