package thrust

import (
	"slices"
	"sort"

	"gonum.org/v1/gonum/integrate"
)

// Point is one row of a thrust table.
type Point struct {
	Time   float64 // after ignition, s
	Thrust float64 // N
}

// Curve is the tabulated thrust of a solid motor: linear between its points,
// zero before ignition and after the last point. A Curve does not change once
// made, so any number of goroutines may read it.
type Curve struct {
	times, thrusts []float64
	impulses       []float64 // of the thrust from ignition up to each point, N·s
	peak           float64
	rise, fall     float64 // the burn time's start and end, s
}

// burnThreshold is the share of the peak thrust that bounds the burn time
// (NFPA 1125).
const burnThreshold = 0.05

// NewCurve makes a curve from 2 to [MaxPoints] points. Their times, 0 to
// [MaxTime], rise by at least [MinStep] from one to the next (a first point
// after 0 keeps that distance from 0 too); their thrusts are 0 to [MaxThrust],
// the greatest at least [MinPeak]. A table that starts after ignition gets the
// point (0, 0) in front. The error is a [fault.List] whose lines count the
// points from 1.
func NewCurve(points []Point) (*Curve, error) {
	var check checker
	for i, p := range points {
		if check.full() {
			break
		}
		check.rows++
		check.point(i+1, reading{value: p.Time, ok: true}, reading{value: p.Thrust, ok: true})
	}
	return check.curve()
}

// newCurve makes a curve of points that have been checked.
func newCurve(points []Point) *Curve {
	if points[0].Time > 0 {
		points = slices.Insert(points, 0, Point{})
	}
	n := len(points)
	c := &Curve{
		times:    make([]float64, n),
		thrusts:  make([]float64, n),
		impulses: make([]float64, n),
	}
	for i, p := range points {
		c.times[i], c.thrusts[i] = p.Time, p.Thrust
		c.peak = max(c.peak, p.Thrust)
	}
	for i := 1; i < n; i++ {
		// The trapezoid rule is exact for a thrust that is linear between points.
		c.impulses[i] = c.impulses[i-1] + integrate.Trapezoidal(c.times[i-1:i+1], c.thrusts[i-1:i+1])
	}
	c.rise, c.fall = c.burn(burnThreshold * c.peak)
	return c
}

// burn returns when the thrust first rises above a threshold and when it last
// falls below it. The threshold is under the peak, so both exist.
func (c *Curve) burn(threshold float64) (rise, fall float64) {
	first, last := 0, len(c.times)-1
	for c.thrusts[first] <= threshold {
		first++
	}
	for c.thrusts[last] <= threshold {
		last--
	}
	rise, fall = c.times[first], c.times[last]
	if first > 0 {
		rise = c.crossing(first-1, threshold)
	}
	if last < len(c.times)-1 {
		fall = c.crossing(last, threshold)
	}
	return rise, fall
}

// crossing returns when the thrust passes through a value between points i and i+1.
func (c *Curve) crossing(i int, thrust float64) float64 {
	share := (thrust - c.thrusts[i]) / (c.thrusts[i+1] - c.thrusts[i])
	return c.times[i] + share*(c.times[i+1]-c.times[i])
}

// Len is the number of points, (0, 0) in front included.
func (c *Curve) Len() int { return len(c.times) }

// Points returns a copy of the points, with (0, 0) in front if the table starts
// after ignition.
func (c *Curve) Points() []Point {
	points := make([]Point, len(c.times))
	for i := range points {
		points[i] = Point{c.times[i], c.thrusts[i]}
	}
	return points
}

// Knot returns point i, 0 ≤ i < Len, with the impulse delivered up to it, N·s.
func (c *Curve) Knot(i int) (time, thrust, impulse float64) {
	return c.times[i], c.thrusts[i], c.impulses[i]
}

// Thrust returns the thrust at a time after ignition, N. At the last point it is
// that point's thrust, later it is 0.
func (c *Curve) Thrust(t float64) float64 {
	i, ok := c.interval(t)
	if !ok {
		return 0
	}
	return c.within(i, t)
}

// ImpulseAt returns the impulse delivered up to a time after ignition, N·s: the
// exact integral of the thrust.
func (c *Curve) ImpulseAt(t float64) float64 {
	i, ok := c.interval(t)
	switch {
	case ok:
		return c.impulses[i] + (t-c.times[i])*(c.thrusts[i]+c.within(i, t))/2
	case t > c.End():
		return c.Impulse()
	default:
		return 0
	}
}

// interval returns the i for which t lies between points i and i+1; not ok
// outside the table.
func (c *Curve) interval(t float64) (i int, ok bool) {
	if !(t >= 0 && t <= c.End()) { // so that NaN is outside
		return 0, false
	}
	i = sort.SearchFloat64s(c.times, t) - 1
	return max(i, 0), true
}

// within returns the thrust at a time between points i and i+1.
func (c *Curve) within(i int, t float64) float64 {
	share := (t - c.times[i]) / (c.times[i+1] - c.times[i])
	return c.thrusts[i]*(1-share) + c.thrusts[i+1]*share
}

// Impulse is the total impulse, N·s.
func (c *Curve) Impulse() float64 { return c.impulses[len(c.impulses)-1] }

// Peak is the greatest thrust, N.
func (c *Curve) Peak() float64 { return c.peak }

// BurnTime is the time from the first rise above to the last fall below 5 % of
// the peak thrust, s (NFPA 1125).
func (c *Curve) BurnTime() float64 { return c.fall - c.rise }

// Average is the mean thrust over the burn time, N: the impulse delivered within
// the burn time over the burn time. The little impulse outside it is left out,
// so it is the plain mean of what the thrust was.
func (c *Curve) Average() float64 {
	return (c.ImpulseAt(c.fall) - c.ImpulseAt(c.rise)) / c.BurnTime()
}

// End is the time of the last point, s: the burnout from which a delay counts.
func (c *Curve) End() float64 { return c.times[len(c.times)-1] }

// EndsAbove is the thrust at the last point, N, which drops to 0 there. A whole
// table ends at 0.
func (c *Curve) EndsAbove() float64 { return c.thrusts[len(c.thrusts)-1] }
