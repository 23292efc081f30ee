package study

import "math"

// moments are the count, mean and variance of numbers that come one by one, after
// Welford, Technometrics 4 (1962) 419.
type moments struct {
	n       int
	mean, m float64 // m is the sum of squares about the mean
}

func (w *moments) add(x float64) {
	w.n++
	d := x - w.mean
	w.mean += d / float64(w.n)
	w.m += d * (x - w.mean)
}

// sd is the sample's standard deviation; NaN of fewer than two.
func (w *moments) sd() float64 {
	if w.n < 2 {
		return math.NaN()
	}
	return math.Sqrt(w.m / float64(w.n-1))
}

// plane is the same for points of a plane, with their covariance.
type plane struct {
	x, y moments
	c    float64 // sum of products about the means
}

func (p *plane) add(x, y float64) {
	dx := x - p.x.mean
	p.x.add(x)
	p.y.add(y)
	p.c += dx * (y - p.y.mean)
}

// Ellipse holds 90 % of the landings if they are normally distributed.
type Ellipse struct {
	East, North  float64 // its centre, m from the pad
	Major, Minor float64 // semi-axes, m
	Heading      float64 // of the major axis, clockwise from north, 0 to π, rad
}

// chiSquare90 is the square of the Mahalanobis distance that holds 90 % of a plane
// normal distribution: the 0.90 quantile of χ² with 2 degrees of freedom, −2 ln 0.1.
const chiSquare90 = 4.605170185988091

// ellipse is the plane's 90 % ellipse: the eigenvectors of the covariance, scaled.
// The axes of fewer than three points, and the centre of none, are NaN.
func (p *plane) ellipse() Ellipse {
	n := p.x.n
	if n < 3 {
		nan := math.NaN()
		e := Ellipse{nan, nan, nan, nan, nan}
		if n > 0 {
			e.East, e.North = p.x.mean, p.y.mean
		}
		return e
	}
	f := 1 / float64(n-1)
	xx, yy, xy := p.x.m*f, p.y.m*f, p.c*f
	middle, half := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	e := Ellipse{
		East: p.x.mean, North: p.y.mean,
		Major: math.Sqrt(chiSquare90 * (middle + half)),
		Minor: math.Sqrt(chiSquare90 * math.Max(0, middle-half)),
	}
	// Twice the angle from north (y) towards east (x).
	e.Heading = math.Atan2(2*xy, yy-xx) / 2
	if e.Heading < 0 {
		e.Heading += math.Pi
	}
	return e
}
