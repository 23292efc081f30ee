package chamber

import "math"

// Volume is that of the tube and of what the closures hold beyond it, m³.
func (c *Chamber) Volume() float64 {
	d := c.Diameter
	return math.Pi/4*d*d*c.Length + c.Forward.volume(d) + c.Aft.volume(d)
}

// volume is a closure's on a tube of inside diameter d; nil has none.
func (e *Closure) volume(d float64) float64 {
	if e == nil {
		return 0
	}
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
