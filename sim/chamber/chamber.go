// Package chamber is the structure of a pressure chamber: what its wall of cloth and
// resin holds, how to prove it, and what it stores. It knows nothing of flights or
// files: lengths, strengths and loads go in as numbers, SI units, angles in radians,
// pressures gauge unless called absolute.
//
// Check tells what is wrong with a Chamber. Of one that passed, At gives everything at a
// working pressure: stresses and use of strength part by part, the weakest of them, the
// burst pressure and what that figure rests on, the pressure to prove it at, dilation
// and stored energy. The recovery mount is looked at here too, since it is bonded to the
// chamber.
//
// A laid-up wall is worked out from its fibres: classical lamination theory while it is
// whole, which gives strains and dilation, and with its resin cracked for what it holds.
//
// All of it is an estimate for thin, well-made tubes. Hand lay-ups scatter, laminates
// age, creep and soften with heat, and bonds fail at their edges: what a chamber holds is
// for a hydrostatic test to tell, under local law and qualified people.
package chamber

// Chamber is a tube with two closures. What is 0 is not given; see each field.
type Chamber struct {
	Diameter float64 // inside, m
	Length   float64 // of the tube between the closures, their laps left out, m
	Material Material

	Plies         []Ply   // the wall, from the inside out; none: Wall is given, and a composite's fibres lie along and around
	FibreFraction float64 // by volume; 0 takes the material's usual one
	Wall          float64 // measured, m; 0 takes the plies' sum; beside plies it settles the fibre fraction
	Waste         float64 // cloth and resin bought beyond what is in the tube, as a share

	Around  float64 // tensile strength of the wall around the tube, from coupons or a burst, Pa; 0 takes the material's
	Along   float64 // the same along the tube, Pa
	Density float64 // of the wall, kg/m³; 0 takes the material's
	Modulus float64 // of the wall, Pa, taken the same both ways; 0 takes the material's

	Temperature float64 // the wall's greatest under pressure, K; 0: nothing said, no softening
	HeatFactor  float64 // share of the strength left at that temperature; 0: estimated from Temperature
	CycleFactor float64 // share of the strength left after Cycles; 0: estimated
	Cycles      int     // pressurisations so far
	Counted     bool    // somebody stated Cycles, 0 too

	Burst     float64 // measured on a chamber made alike, Pa; 0: none
	BurstWord Word    // in its place, what counts for it; "" says nothing
	Proof     float64 // to which this chamber was proved with water, Pa; 0: no proof on record
	ProofDate string  // of that, 2026-05-01; empty when not given

	Serial  string  // of this chamber, by which the logbook knows it; empty when not given
	Logbook string  // the file that keeps its pressurisations; empty for none
	Booked  *Booked // what that says; nil without a logbook

	Forward, Aft *Closure  // nil: not described
	Adhesive     *Adhesive // of the laps; nil: typical
	Boss         *Boss     // bonded into the aft closure; nil: not described
	Liner        Lining    // "" when nothing is said
	Thread       *Thread   // of the retainer that holds nozzle or adapter; nil: not described
	Heating      *Heating  // of the sealed chamber beside a motor; nil: not described
	BesideMotor  Closing   // "" when nothing is said
}

// Word is what a file says of a burst that nobody measured.
type Word string

// Estimated declares that the estimate counts. It does where all strengths that it takes are stated, of own specimens: see
// [Chamber.Unstated].
const Estimated Word = "estimated"

// Material names what a wall is made of.
type Material string

// The materials. The figures behind all but Own are typical, unverified.
const (
	GlassEpoxy  Material = "E-glass/epoxy"
	CarbonEpoxy Material = "carbon/epoxy"
	PETBottle   Material = "PET bottle" // stretch-blown
	Aluminium   Material = "aluminium"  // heat-treated tube
	Own         Material = "own"        // strengths and density are given
)

// Ply is some layers of one cloth. Its direction is the angle between the tube's axis
// and the warp of a woven cloth (the weft stands across it), either family of a braid, or
// the fibres of a unidirectional one.
type Ply struct {
	Name      string
	Cloth     float64 // areal mass of one layer of dry cloth, kg/m²
	Count     int     // layers
	Direction float64 // 0 to π/2, rad
	Weave     Weave
}

// Weave says how the fibres of a cloth lie.
type Weave string

// The weaves.
const (
	Woven          Weave = "woven"          // half the fibres along the direction, half across it
	Braided        Weave = "braided"        // half at plus, half at minus the direction
	Unidirectional Weave = "unidirectional" // all along it
)

// Closure is an end of the chamber, bonded into the tube.
type Closure struct {
	Shape        ClosureShape
	Wall         float64 // thickness, m; 0 takes the tube's
	Strength     float64 // tensile strength of its wall, Pa; 0 takes that of cloth lying both ways, or the wall's weaker way as given
	HalfAngle    float64 // of a cone, from the axis, rad
	Overlap      float64 // length of the bonded lap, m
	BondStrength float64 // shear strength of the adhesive as applied, Pa; 0 takes a typical one
}

// ClosureShape names a closure's shape.
type ClosureShape string

// The shapes.
const (
	Hemisphere ClosureShape = "hemisphere"
	Ellipsoid  ClosureShape = "ellipsoid" // 2:1, half as deep as its radius
	Cone       ClosureShape = "cone"
	Flat       ClosureShape = "flat" // a plate, simply supported at its edge
)

// Thread is an ISO metric or unified 60° thread.
type Thread struct {
	Diameter float64 // major, m
	Pitch    float64 // m
	Engaged  float64 // length engaged, m
	Strength float64 // tensile strength of the male part, Pa; 0 takes a typical one
	Female   float64 // tensile strength of the female part, Pa; 0 takes Strength
	Seal     float64 // diameter the pressure acts on, m; 0 takes Diameter
	Hole     float64 // through the male part, m; 0: solid
}

// Heating is how a sealed chamber warms up beside a motor.
type Heating struct {
	Temperature float64 // that its air reaches, K
	Time        float64 // in which it does, s
	Rise        float64 // of pressure that a vent is to allow, Pa; 0: no vent is worked out
}

// Mount is what holds the recovery gear to the rocket: a cross pin, a bond, a line. What
// is 0 is not described.
type Mount struct {
	Pin         float64 // diameter of the cross pin, m
	PinStrength float64 // its shear strength, Pa; 0 takes a typical one
	Planes      int     // in which the pin is sheared, 1 or 2
	BondArea    float64 // m²
	Bond        float64 // shear strength of the bond, Pa; 0 takes a typical one
	Line        float64 // breaking strength of the line as rigged, knots in it, N
	LineLength  float64 // m
	LineStretch float64 // at its breaking strength, as a share of its length; 0 takes a typical one
	CanopyMass  float64 // at the end of the line, kg

	// None says of what is 0 that somebody stated so: that there is no such thing. Otherwise
	// nobody knows, and the mount may be weaker than what is known of it.
	None struct{ Pin, Bond, Line bool }
}
