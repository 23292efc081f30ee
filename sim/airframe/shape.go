// Package airframe turns the shape of a rocket into balance, inertia and
// aerodynamic coefficients. It knows nothing of flights: lengths, masses and
// angles go in as numbers, SI units, angles in radians; positions count from the
// tip of the nose, aft positive.
package airframe

// Shape is the outside of a rocket: a nose, then sections in order, then what stands
// on them. Angles are radians.
type Shape struct {
	Length    float64   // from the tip of the nose to the aft end, m
	Diameter  float64   // largest outside diameter, m: the reference
	Roughness float64   // height of the surface's roughness, m
	Nose      Nose      //
	Sections  []Section // from the nose's base aft; what they leave of Length is a tube of the last diameter
	Fins      []Fins    //
}

// NoseShape names a nose's contour as the aerodynamic literature does.
type NoseShape string

// The contours.
const (
	Conical      NoseShape = "conical"
	TangentOgive NoseShape = "tangent ogive"
	Elliptical   NoseShape = "elliptical"
	Parabolic    NoseShape = "parabolic"
	VonKarman    NoseShape = "von Karman"
	PowerSeries  NoseShape = "power series"
)

// Nose is the fore end.
type Nose struct {
	Shape    NoseShape
	Length   float64 // m
	Exponent float64 // of a power series, 0 < n ≤ 1
	Diameter float64 // of its base, m; 0 takes the first section's fore diameter, or the body's
}

// Section is a tube or a conical transition.
type Section struct {
	Name      string
	Length    float64 // m
	Fore, Aft float64 // diameters, m; 0 takes the one before, or Fore
}

// FinSection names the profile of a fin.
type FinSection string

// The profiles.
const (
	FlatSection    FinSection = "flat"
	RoundedSection FinSection = "rounded"
	WedgeSection   FinSection = "wedge"
	AirfoilSection FinSection = "airfoil"
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
}

// Part is one entry of a mass list.
type Part struct {
	Name     string
	Mass     float64 // kg
	Position float64 // of its own balance point from the tip of the nose, m
	Length   float64 // along the axis, m; 0 for a lump
	Diameter float64 // across, m; 0 takes the body's
}
