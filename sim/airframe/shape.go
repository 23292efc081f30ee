// Package airframe turns the shape of a rocket into balance, inertia and
// aerodynamic coefficients. It knows nothing of flights: lengths, masses and
// angles go in as numbers, SI units, angles in radians; positions count from the
// tip of the nose, aft positive.
//
// Check tells what is wrong with a Shape. Aero makes one that passed ready for a
// flight: centre of pressure and damping (Barrowman 1967, NASA NTRS 20010047838),
// cross-flow (NACA Report 1048), roll by strip theory, and drag by its parts
// (Schlichting, DATCOM, Hoerner). Lump, Estimate and Sum are the masses.
//
// All of it is for slender bodies at subsonic speed and small angles; the results are
// estimates, and what a real rocket does is for measurement to tell.
package airframe

import "slices"

// Shape is the outside of a rocket: a nose, then sections in order, then what stands
// on them. Angles are radians.
type Shape struct {
	Length      float64   // from the tip of the nose to the aft end, m
	Diameter    float64   // largest outside diameter, m: the reference
	Roughness   float64   // height of the surface's roughness, m; 0 is smooth
	RailButtons float64   // frontal area of all rail buttons together, m², at a drag coefficient of 1 (common practice, no source)
	Nose        Nose      //
	Sections    []Section // from the nose's base aft; what they leave of Length is a tube of the last diameter
	Fins        []Fins    //
}

// Equal tells whether two shapes are the same in everything.
func (s *Shape) Equal(o *Shape) bool {
	return s.Length == o.Length && s.Diameter == o.Diameter && s.Roughness == o.Roughness && s.RailButtons == o.RailButtons &&
		s.Nose == o.Nose && slices.Equal(s.Sections, o.Sections) && slices.Equal(s.Fins, o.Fins)
}

// NoseShape names a nose's contour as the aerodynamic literature does.
type NoseShape string

// The contours.
const (
	Conical      NoseShape = "conical"
	TangentOgive NoseShape = "tangent ogive" // a circular arc tangent to the tube; at least half a diameter long
	Elliptical   NoseShape = "elliptical"    // half an ellipsoid
	Parabolic    NoseShape = "parabolic"     // a parabola tangent to the tube
	VonKarman    NoseShape = "von Karman"    // Haack's series with C = 0
	PowerSeries  NoseShape = "power series"  // radius over base radius is (x/length)^Exponent; 1/2 is the paraboloid
)

// NoseShapes lists the contours in a fixed order.
func NoseShapes() []NoseShape {
	return []NoseShape{Conical, TangentOgive, Elliptical, Parabolic, VonKarman, PowerSeries}
}

// Nose is the forward end.
type Nose struct {
	Shape    NoseShape
	Length   float64 // m
	Exponent float64 // of a power series, 0 < n ≤ 1; not read for the others
	Diameter float64 // of its base, m; 0 takes the first section's forward diameter, or the body's
	Wall     float64 // thickness, m; 0 when not given
}

// Section is a tube or a conical transition.
type Section struct {
	Name         string
	Length       float64 // m
	Forward, Aft float64 // diameters, m; 0 takes the one before, or Forward
}

// FinSection names the profile of a fin.
type FinSection string

// The profiles.
const (
	FlatSection    FinSection = "flat"    // square edges
	RoundedSection FinSection = "rounded" // both edges rounded
	WedgeSection   FinSection = "wedge"   // sharp in front, thickest at the trailing edge
	AirfoilSection FinSection = "airfoil" // streamlined, sharp behind
)

// Fins is one set of equal fins around the body.
type Fins struct {
	Name      string
	Count     int        // 3 to 6
	Root, Tip float64    // chords, m
	Span      float64    // exposed semi-span, m
	Sweep     float64    // the tip's leading edge lies this far aft of the root's, m
	Thickness float64    // m
	Section   FinSection //
	Position  float64    // of the root's leading edge from the tip of the nose, m
	Cant      float64    // to the body's axis, rad

	ShearModulus float64 // of the fin's material, Pa; 0 when not given
}

// Part is one entry of a mass list.
type Part struct {
	Name     string
	Mass     float64 // kg
	Position float64 // of its own balance point from the tip of the nose, m
	Length   float64 // along the axis, m; 0 for a lump
	Diameter float64 // across, m; 0 takes the body's
}
