package solve

import "math"

// Smoothed is a value with its slope there.
type Smoothed struct{ Value, Slope float64 }

// Smooth fits a parabola to the width samples around each one, by least squares, and reads
// its value and slope there: the filter of Savitzky and Golay, Analytical Chemistry 36
// (1964) 1627, for times that rise and need not be even. Near the ends it reads the parabola of the
// first or last width samples. Width is odd and at least 3; what is NaN takes no part, and where
// fewer than three of a window are there, or no two of three times differ, the result is NaN.
func Smooth(t, y []float64, width int) []Smoothed {
	out := make([]Smoothed, len(t))
	for i := range t {
		from := max(0, min(i-width/2, len(t)-width))
		to := min(len(t), from+width)
		out[i] = Parabola(t[from:to], y[from:to], t[i])
	}
	return out
}

// Parabola is the value and slope at a place of the parabola through the middle of samples, whose
// times rise; NaN as in Smooth.
func Parabola(t, y []float64, at float64) Smoothed {
	size := 0.0
	if n := len(t); n > 0 {
		size = max(at-t[0], t[n-1]-at)
	}
	var s [5]float64 // sums of the powers of time
	var b [3]float64
	for i, v := range y {
		if math.IsNaN(v) {
			continue
		}
		u := (t[i] - at) / size
		u2 := u * u
		u3 := u2 * u
		s[0]++
		s[1] += u
		s[2] += u2
		s[3] += u3
		s[4] += u3 * u
		b[0] += v
		b[1] += u * v
		b[2] += u2 * v
	}
	nothing := Smoothed{math.NaN(), math.NaN()}
	if s[0] < 3 {
		return nothing
	}
	// The normal equations of three unknowns, by cofactors.
	c00, c01, c02 := s[2]*s[4]-s[3]*s[3], s[2]*s[3]-s[1]*s[4], s[1]*s[3]-s[2]*s[2]
	det := s[0]*c00 + s[1]*c01 + s[2]*c02
	if !(det > 1e-12*s[0]*s[0]*s[0]) {
		return nothing
	}
	c11, c12 := s[0]*s[4]-s[2]*s[2], s[1]*s[2]-s[0]*s[3]
	return Smoothed{(c00*b[0] + c01*b[1] + c02*b[2]) / det, (c01*b[0] + c11*b[1] + c12*b[2]) / det / size}
}

// Huber is the weight of a residual, in standard deviations: 1 up to k, k/|r| beyond, so that
// what is far out pulls no harder than what is k out (Huber, Annals of Mathematical Statistics
// 35 (1964) 73).
func Huber(r, k float64) float64 {
	if a := math.Abs(r); a > k {
		return k / a
	}
	return 1
}

// HuberK lets errors that are normal keep 95 % of their worth: Huber's rule (1964), the figure
// from the normal distribution.
const HuberK = 1.345

// Bounded is a residual, in standard deviations, whose square is twice Huber's loss: what
// least squares take in its place to be robust. Far out it grows as the root.
func Bounded(r float64) float64 {
	a := math.Abs(r)
	if a <= HuberK {
		return r
	}
	return math.Copysign(math.Sqrt(2*HuberK*a-HuberK*HuberK), r)
}

// BoundedSlope is the derivative of Bounded.
func BoundedSlope(r float64) float64 {
	if math.Abs(r) <= HuberK {
		return 1
	}
	return HuberK / math.Abs(Bounded(r))
}
