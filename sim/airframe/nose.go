package airframe

import "math"

// contour is one family of noses: a body of revolution from a tip at 0 to its base,
// all of it in closed form but what no closed form gives.
type contour interface {
	radius(x float64) float64       // m, for x from 0 to the length
	volume() float64                // m³
	wetted() float64                // curved surface without the base, m²
	plan() (area, centroid float64) // side view: m², and m from the tip
}

// contour is the nose's family. A nose without length or width, or of a shape that is
// not known, is taken as a cone: Check names it.
func (n Nose) contour() contour {
	l, r := n.Length, n.Diameter/2
	if l > 0 && r > 0 {
		switch n.Shape {
		case TangentOgive:
			return newOgive(l, r)
		case Elliptical:
			return ellipsoid{l, r}
		case Parabolic:
			return parabola{l, r}
		case VonKarman:
			return haack{l, r}
		case PowerSeries:
			return power{l, r, n.Exponent}
		}
	}
	return cone{l, r}
}

// Radius is the nose's radius at x from the tip, m: 0 at the tip, half of Diameter at
// the base and behind it. Diameter must be given: Shape.Forebody fills it in.
func (n Nose) Radius(x float64) float64 {
	switch {
	case !(x > 0):
		return 0
	case x >= n.Length:
		return n.Diameter / 2
	}
	return n.contour().radius(x)
}

// Volume is the nose's outside volume, m³.
func (n Nose) Volume() float64 { return n.contour().volume() }

// Wetted is the nose's outside surface without the base, m².
func (n Nose) Wetted() float64 { return n.contour().wetted() }

// Plan is the area of the nose's side view, m², and where its centroid lies from the
// tip, m.
func (n Nose) Plan() (area, centroid float64) { return n.contour().plan() }

// pressureCentre is L − Vol/A_base from the tip, m (Barrowman 1967, from slender-body
// theory), and holds for every contour.
func (n Nose) pressureCentre() float64 {
	base := math.Pi / 4 * n.Diameter * n.Diameter
	if !(base > 0) {
		return n.Length
	}
	return n.Length - n.Volume()/base
}
