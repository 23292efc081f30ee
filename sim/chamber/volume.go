package chamber

import "math"

// Volume is that of the tube, of its laps within the closures' skirts, and of what the
// closures hold beyond it, m³.
func (c *Chamber) Volume() float64 {
	d := c.Diameter
	v := math.Pi / 4 * d * d * c.Length
	for _, e := range []*Closure{c.Forward, c.Aft} {
		if e != nil {
			within := math.Max(0, d-2*c.ClosureWall(e))
			v += math.Pi/4*within*within*e.Overlap + e.volume(d)
		}
	}
	return v
}

// volume is a closure's beyond the end of a tube of inside diameter d.
func (e *Closure) volume(d float64) float64 {
	switch e.Shape {
	case Hemisphere:
		return math.Pi / 12 * d * d * d
	case Ellipsoid:
		return math.Pi / 24 * d * d * d
	case Cone:
		return math.Pi / 12 * d * d * d / 2 / math.Tan(e.HalfAngle)
	}
	return 0
}
