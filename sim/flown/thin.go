package flown

import (
	"math"

	"gonum.org/v1/gonum/integrate"

	"ullage/thrust"
)

// thinTo is the share of the impulse that thinning may change.
const thinTo = 0.001

// Curve is the thrust as a motor's curve: from the onset to the last moment, not negative, and
// with no more points than it takes to keep its shape within the noise and its impulse within
// a thousandth.
func (x *Stand) Curve() []thrust.Point {
	var t, f []float64
	long := x.End - x.Onset
	for i, at := range x.T {
		if at > 0 && at < long {
			t, f = append(t, at), append(f, math.Max(x.F[i], 0))
		}
	}
	if len(t) < 3 {
		return nil
	}
	t, f = append(t, long), append(f, 0)
	whole := integrate.Trapezoidal(append([]float64{0}, t...), append([]float64{0}, f...))
	for tolerance := math.Max(2*x.Noise, 0.01*x.Peak); ; tolerance /= 2 {
		keep := thinned(t, f, tolerance)
		kt, kf := []float64{0}, []float64{0}
		for _, i := range keep {
			kt, kf = append(kt, t[i]), append(kf, f[i])
		}
		if math.Abs(integrate.Trapezoidal(kt, kf)-whole) <= thinTo*whole || tolerance < 1e-9*x.Peak {
			points := make([]thrust.Point, 0, len(keep))
			for _, i := range keep {
				points = append(points, thrust.Point{Time: t[i], Thrust: f[i]})
			}
			return points
		}
	}
}

// thinned are the places of a course that keep it within a tolerance of the lines between them
// (Douglas and Peucker, The Canadian Cartographer 10 (1973) 112).
func thinned(t, f []float64, tolerance float64) []int {
	keep := make([]bool, len(t))
	keep[0], keep[len(t)-1] = true, true
	stack := [][2]int{{0, len(t) - 1}}
	for len(stack) > 0 {
		a, b := stack[len(stack)-1][0], stack[len(stack)-1][1]
		stack = stack[:len(stack)-1]
		worst, at := tolerance, -1
		for i := a + 1; i < b; i++ {
			line := f[a] + (f[b]-f[a])*(t[i]-t[a])/(t[b]-t[a])
			if d := math.Abs(f[i] - line); d > worst {
				worst, at = d, i
			}
		}
		if at >= 0 {
			keep[at] = true
			stack = append(stack, [2]int{a, at}, [2]int{at, b})
		}
	}
	var out []int
	for i, in := range keep {
		if in {
			out = append(out, i)
		}
	}
	return out
}
