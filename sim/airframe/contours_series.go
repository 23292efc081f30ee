package airframe

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// The contours given by a series or a power: areas that have no short closed form are
// Gauss–Legendre integrals over a parameter in which the contour is smooth.

// points is the order of those integrals: it leaves less than 1e-8.
const points = 48

func integral(f func(float64) float64) float64 {
	return quad.Fixed(f, 0, 1, points, quad.Legendre{}, 0)
}

// parabola is tangent to the tube behind it: r = R(2ξ − ξ²), ξ = x/L. (The paraboloid
// of revolution, r = R√ξ, is the power series of exponent 1/2.)
type parabola struct{ length, base float64 }

func (p parabola) radius(x float64) float64 {
	xi := x / p.length
	return p.base * xi * (2 - xi)
}

func (p parabola) volume() float64 { return math.Pi * 8 / 15 * p.base * p.base * p.length }

func (p parabola) wetted() float64 {
	return 2 * math.Pi * p.base * integral(func(xi float64) float64 {
		return xi * (2 - xi) * math.Hypot(p.length, 2*p.base*(1-xi))
	})
}

func (p parabola) plan() (area, centroid float64) {
	return 4. / 3 * p.base * p.length, 5. / 8 * p.length
}

// power has r = R·ξⁿ, 0 < n ≤ 1 (Perkins, Jorgensen and Sommer, NACA Report 1386).
type power struct{ length, base, n float64 }

func (p power) radius(x float64) float64 { return p.base * math.Pow(x/p.length, p.n) }

func (p power) volume() float64 {
	return math.Pi * p.base * p.base * p.length / (2*p.n + 1)
}

// wetted integrates over r = R·w², x = L·w^(2/n): the slope at the tip, which has no
// bound, falls out.
func (p power) wetted() float64 {
	m := 2 / p.n
	return 2 * math.Pi * p.base * integral(func(w float64) float64 {
		return w * w * math.Hypot(2*p.base*w, p.length*m*math.Pow(w, m-1))
	})
}

func (p power) plan() (area, centroid float64) {
	return 2 * p.base * p.length / (p.n + 1), p.length * (p.n + 1) / (p.n + 2)
}

// haack is von Kármán's ogive, the least wave drag for a length and a base: Haack's
// series with C = 0 (W. Haack, Lilienthal-Gesellschaft Bericht 139, 1941; Th. von
// Kármán, Volta Congress 1935):
//
//	r = (R/√π)·√(θ − sin 2θ/2), θ = arccos(1 − 2x/L)
type haack struct{ length, base float64 }

// lobe is √((θ − sin 2θ/2)/π): radius over base, and its slope against θ.
func lobe(theta float64) (radius, slope float64) {
	area := theta - math.Sin(2*theta)/2
	if theta < 1e-3 {
		area = 2. / 3 * theta * theta * theta // where the difference would lose digits
	}
	radius = math.Sqrt(area / math.Pi)
	if radius > 0 {
		s := math.Sin(theta)
		slope = s * s / (math.Pi * radius)
	}
	return radius, slope
}

func (h haack) radius(x float64) float64 {
	r, _ := lobe(2 * math.Asin(math.Sqrt(x/h.length)))
	return h.base * r
}

// volume is πR²L/2, exact for C = 0.
func (h haack) volume() float64 { return math.Pi / 2 * h.base * h.base * h.length }

// over integrates f(r/R, dr/dθ/R, θ) over θ = πw², in which the tip is smooth.
func (h haack) over(f func(r, slope, theta float64) float64) float64 {
	return integral(func(w float64) float64 {
		theta := math.Pi * w * w
		r, slope := lobe(theta)
		return f(r, slope, theta) * 2 * math.Pi * w
	})
}

func (h haack) wetted() float64 {
	return 2 * math.Pi * h.base * h.over(func(r, slope, theta float64) float64 {
		return r * math.Hypot(h.base*slope, h.length/2*math.Sin(theta))
	})
}

func (h haack) plan() (area, centroid float64) {
	width := h.over(func(r, _, theta float64) float64 { return r * math.Sin(theta) })
	first := h.over(func(r, _, theta float64) float64 {
		return r * math.Sin(theta) * (1 - math.Cos(theta)) / 2
	})
	return h.base * h.length * width, h.length * first / width
}
