package airframe

import "math"

// Pressure drag of what faces the flow, on its own area, at low speed. Slender and well rounded
// noses have next to none; what is told here is for those that are neither.

// flatFace is that of a flat face on a long body (Hoerner, Fluid-Dynamic Drag, from memory).
const flatFace = 0.8

// cones are those of cones by their half-angle: handbooks' drag of a cone with its own base,
// 0.34 at 15° and 0.51 at 30° (from memory), less the 0.2 to 0.25 that the base takes of it, and a flat face at the end.
var cones = [...]struct{ angle, drag float64 }{{15 * degree, 0.34 - coneBase}, {30 * degree, 0.51 - coneBase}, {90 * degree, flatFace}}

const (
	coneBase = 0.225 // the middle of 0.2 to 0.25
	degree   = math.Pi / 180
)

// coneDrag is the pressure drag of a cone of a half-angle on the area it faces the flow with: with the square
// of the angle up to the first of cones, linear between them.
func coneDrag(angle float64) float64 {
	first := cones[0]
	if angle <= first.angle {
		return first.drag * angle * angle / (first.angle * first.angle)
	}
	for i := 1; i < len(cones); i++ {
		a, b := cones[i-1], cones[i]
		if angle <= b.angle {
			return a.drag + (b.drag-a.drag)*(angle-a.angle)/(b.angle-a.angle)
		}
	}
	return flatFace
}

// Where the flow comes around the edge of a blunt face: the face is what is steeper than one
// angle, its edge what is between that and the other; an edge rounded by a fifth of the diameter leaves
// no pressure drag (Hoerner, from memory), which runs so far along the axis.
const (
	faceSlope  = 1.0    // tan 45°
	edgeSlope  = 0.1763 // tan 10°
	roundEnded = 0.106  // of the diameter: 0.2·(sin 45° − sin 10°)
)

// JunctionAngle is that between the nose's contour and the axis where it meets the tube, rad. 0 of those that
// are tangent to it.
func (n Nose) JunctionAngle() float64 {
	r := n.Diameter / 2
	switch n.Shape {
	case TangentOgive, Elliptical, Parabolic, VonKarman:
		return 0
	case PowerSeries:
		r *= n.Exponent
	}
	return math.Atan2(r, n.Length)
}

// pressureDrag is the nose's on its base area: that of a cone that meets the tube at the same angle, or
// that of the blunt face before its rounded edge, whichever is more. A choice of this program between
// the two; Diameter must be given.
func (n Nose) pressureDrag() float64 {
	drag := coneDrag(n.JunctionAngle())
	if n.Shape == Conical || !(n.Diameter > 0 && n.Length > 0) {
		return drag
	}
	face := n.steeperThan(faceSlope)
	edge := n.steeperThan(edgeSlope) - face
	ratio := 2 * n.Radius(face) / n.Diameter
	return max(drag, flatFace*ratio*ratio*max(0, 1-edge/(roundEnded*n.Diameter)))
}

// steeperThan is how far from the tip the contour rises faster than a slope, m: it flattens all the way
// aft.
func (n Nose) steeperThan(slope float64) float64 {
	c := n.contour()
	from, to := 0., n.Length
	for range 40 {
		x := (from + to) / 2
		h := 1e-4 * math.Min(x, n.Length-x)
		if c.radius(x+h)-c.radius(x-h) > 2*h*slope {
			from = x
		} else {
			to = x
		}
	}
	return from
}

// SteepTaper is the half-angle of a boat-tail beyond which the flow leaves it (common practice, no source).
const SteepTaper = 12 * degree

// SteepJunction is the angle at which a nose meets the tube beyond which the flow leaves it there, and its drag is
// anybody's guess (common practice, no source).
const SteepJunction = 30 * degree

// taperAngle is the half-angle of a transition, rad: above 0 where it widens, below where it tapers.
func (f frustum) taperAngle() float64 { return math.Atan2((f.aft-f.fore)/2, f.length) }

// SteepestTaper is the half-angle of the steepest boat-tail, rad; 0 when there is none.
func (s *Shape) SteepestTaper() float64 {
	most := 0.
	for f := range s.trunk {
		most = max(most, -f.taperAngle())
	}
	return most
}

// wakeDiameter is how wide the flow leaves the body, m: the aft end, or what lies before a boat-tail too
// steep to follow, unless it comes back to something as wide behind it.
func (s *Shape) wakeDiameter() float64 {
	wake := s.noseDiameter()
	for f := range s.trunk {
		follows := wake <= f.fore*(1+step) && -f.taperAngle() <= SteepTaper
		if follows || f.aft >= wake {
			wake = f.aft
		}
	}
	return wake
}
