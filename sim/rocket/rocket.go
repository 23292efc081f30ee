package rocket

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/bench"
	"ullage/sim/chamber"
	"ullage/sim/layup"
	"ullage/thrust"
)

// Power says what drives a flight.
type Power string

// The two drives an airframe can have.
const (
	WaterPower Power = "water"
	MotorPower Power = "motor"
)

// Rocket is everything one flight depends on: the airframe, both drives it may
// carry, its canopies and the day. All values are SI, angles are radians.
// It is plain data, of which some may be missing: a number that has to be there and is not
// known yet is NaN, or 0 where that can be no value of it. Check and Validate tell.
type Rocket struct {
	Name       string
	Power      Power // which drive flies
	Body       Body
	Water      *Water // nil when the rocket has no chamber
	Motor      *Motor // nil when the rocket takes no motor
	MotorMount *MotorMount
	Canopies   []Canopy
	Holes      []Hole // in the body or on it: for drawings, no flight knows them
	Site       atmosphere.Site
	Rail       Rail
	Wind       atmosphere.Wind

	Shape     *airframe.Shape // nil when the file gives none: then only a point mass can fly
	Parts     []airframe.Part // mass list, for what was not measured
	Model     Model           // "" takes rigid with a shape, point without
	Alignment Alignment
	Gust      Gust

	Chamber  *chamber.Chamber // nil when the file does not describe it
	Recovery *chamber.Mount   // of the recovery gear; nil when not described
	Bench    bench.Bench      // small parts, and what fills the chamber
	Layup    layup.Practice   // how the chamber is laid up, and what its parts weighed
	Limits   Limits
	Field    Field
	Flyer    Flyer
}

// Flyer is who flies, for the card.
type Flyer struct {
	Name          string // empty when not given
	Certification string // number and level, as the certifying body writes them; empty when not given
}

// Becalm takes all wind away: what has been said of it is then that there is none.
func (r *Rocket) Becalm() {
	r.Wind.Blow(0)
	r.Gust.Speed = 0
}

// Model chooses the equations of motion in free flight.
type Model string

// A point mass, or a rigid body up to the first canopy.
const (
	PointModel Model = "point"
	RigidModel Model = "rigid"
)

// Rigid tells whether the flight is a rigid body's: a shape and a balance are known
// and no point mass was asked for.
func (r *Rocket) Rigid() bool {
	return r.Balanced() && r.Model != PointModel
}

// Flown is the model that flies.
func (r *Rocket) Flown() Model {
	if r.Rigid() {
		return RigidModel
	}
	return PointModel
}

// Alignment is how far the thrust is off the centreline: a nozzle or motor mount that
// is tilted or displaced, in one plane. Signs say whether the two add.
type Alignment struct {
	Angle  float64 // of the thrust's line to the centreline, rad
	Offset float64 // of the nozzle's centre from the centreline, m
}

// Gust is wind that sets in at a height.
type Gust = atmosphere.Gust

// Body is the airframe that every drive shares.
type Body struct {
	Diameter   float64    // largest outside diameter, m: reference for drag
	Mass       float64    // empty: without water, gas, motor and fittings, kg; 0 takes the sum of the parts
	Drag       []MachDrag // drag coefficient against Mach; one entry is a constant; none takes the shape's
	DragFactor float64    // multiplies Drag

	Balance     float64 // measured balance point from the tip of the nose, of Mass, m; 0 when not given
	Inertia     float64 // measured pitch inertia of Mass about it, kg·m²; 0 when not given
	RollInertia float64 // measured roll inertia of Mass, kg·m²; 0 when not given
}

// BodyMass is the body without what belongs to one drive, kg: as weighed, else the sum
// of the mass list.
func (r *Rocket) BodyMass() float64 {
	if r.Body.Mass != 0 {
		return r.Body.Mass
	}
	sum := 0.0
	for i := range r.Parts {
		sum += r.Parts[i].Mass
	}
	return sum
}

// MachDrag is one point of a drag table: linear between points, constant beyond.
type MachDrag struct{ Mach, Drag float64 }

// Water is the pressurised-chamber drive.
type Water struct {
	Volume      float64     // of the chamber, m³
	Bore        float64     // inside diameter of the chamber, m
	Throat      float64     // nozzle throat diameter, m
	Discharge   float64     // nozzle coefficient: velocity in the liquid, mass flow and thrust in the gas
	Fill        float64     // liquid volume over chamber volume, 0 to 1
	Pressure    float64     // gauge, at release, Pa
	Exponent    float64     // of the expansion p·Vⁿ; 0: what Expansion says
	Expansion   Expansion   // in place of an exponent; "" leaves it to that, and takes Saturated without one
	Gas         thrust.Gas  // the driving gas
	Temperature float64     // of the gas at release, K; 0 takes the site's
	Density     float64     // of the liquid, kg/m³
	Flow        Flow        // how the liquid's flow is modelled
	Fittings    float64     // what only this drive carries, kg
	FittingsAt  float64     // their balance point from the tip of the nose, m; 0 takes the nozzle's exit
	Nozzle      float64     // its exit plane from the tip of the nose, m; 0 takes the body's length
	Tube        *LaunchTube // nil without a launch tube
}

// Expansion says how the gas expands where no exponent is given.
type Expansion string

// Saturated is gas over water, which stays saturated with its vapour.
const Saturated Expansion = "saturated"

// Flow chooses the model of the liquid's flow.
type Flow string

// The liquid's flow with its inertia, and the textbook flow without.
const (
	UnsteadyFlow Flow = "unsteady"
	SteadyFlow   Flow = "steady"
)

// LaunchTube fills the throat at release and reaches Length into the chamber.
type LaunchTube struct {
	Length     float64 // m
	Outer      float64 // outside diameter, m
	Inner      float64 // inside diameter, m
	DeadVolume float64 // hoses and valve open to the chamber, m³
}

// Depth is how deep the liquid stands around the tube before release, m. What reaches the
// tube's tip, at its Length, runs down into it.
func (t *LaunchTube) Depth(w *Water) float64 {
	return w.Fill * w.Volume / (math.Pi / 4 * (w.Bore*w.Bore - t.Outer*t.Outer))
}

// Gap is the clearance between the tube and the throat around it on one side, m.
func (t *LaunchTube) Gap(w *Water) float64 { return (w.Throat - t.Outer) / 2 }

// LeakingGap is the gap beyond which a launch tube is no piston: gas and liquid pass it
// that the flight takes for held (common practice, no source), m.
const LeakingGap = 0.5e-3

// constantDragMach is how far a drag without a table holds: transonic drag rises from
// there (common practice, no source).
const constantDragMach = 0.8

// DragReach is the Mach number up to which the drag in force means something: where its
// table ends, or 0.8 without one.
func (r *Rocket) DragReach() float64 {
	if t := r.Body.Drag; len(t) > 1 {
		return t[len(t)-1].Mach
	}
	return constantDragMach
}

// ShapeDrags tells that the drag is worked out of the shape, no table standing for it.
func (r *Rocket) ShapeDrags() bool { return r.Shape != nil && len(r.Body.Drag) == 0 }

// Motor is a solid motor: its thrust curve and what it weighs.
type Motor struct {
	Name       string // what it is called; empty when not given
	Curve      *thrust.Curve
	Factor     float64   // multiplies the curve's thrust, and so its impulse; 0 takes 1
	Case       float64   // motor without propellant, kg
	Propellant float64   // kg
	Delay      float64   // burnout to ejection charge, s; NaN when the motor has no charge
	Delays     []float64 // delays that can be had or drilled, s
	Diameter   float64   // m; 0 when not given
	Length     float64   // m; 0 when not given
	Fittings   float64   // what only this drive carries, kg
	FittingsAt float64   // their balance point from the tip of the nose, m; 0 takes the motor's middle
	Position   float64   // of its aft end from the tip of the nose, m; 0 takes the body's length
}

// MotorMount is the tube a motor slides into.
type MotorMount struct {
	Diameter float64 // inside, m
	Length   float64 // m

	Wall   float64 // of its tube, m; 0 when not given
	Within float64 // inside diameter of the tube around it, m; 0 takes the chamber's bore
	Rings  int     // that centre it there; 0 takes UsualRings

	Liner    float64 // inside diameter of a liner in it, m; 0: none
	Retainer float64 // clear opening of what keeps the motor from sliding aft, m; 0 when not given
}

// UsualRings is how many rings centre a mount when nothing is said: one at either end.
const UsualRings = 2

// Hole is what is drilled into the body, or sits on it: so many alike, evenly around.
type Hole struct {
	Name     string
	Position float64 // of its middle from the tip of the nose, m
	Diameter float64 // m; the width of what has a length
	Length   float64 // along the axis, of a slot or of what sits there, m; 0 for a round one
	Count    int     // 0 takes 1
	Angle    float64 // of the first, around from the first fin, clockwise seen from behind, rad
}

// Number is how many there are.
func (h *Hole) Number() int { return max(h.Count, 1) }

// Canopy is a parachute with the rule that opens it on each drive.
// Either Diameter or Area is given, the other is 0.
type Canopy struct {
	Name                    string
	Diameter                float64 // nominal (constructed), m
	Area                    float64 // nominal (constructed), m²
	Coefficient             float64 // drag coefficient on the nominal area
	FillConstant            float64 // canopy diameters of air path to fill; 0 opens at once
	OpeningForceCoefficient float64 // opening force coefficient, for the infinite-mass bound only
	Water                   Rule    // when it opens on a water flight
	Motor                   Rule    // when it opens on a motor flight

	// How it is sewn, which no flight knows.
	Shape CanopyShape // as constructed; "" takes FlatCanopy
	Gores int         // 0 takes UsualGores
	Seam  float64     // allowance at every edge of a gore, m; 0 takes UsualSeam
	Vent  float64     // diameter of the opening at its top, m; 0: none
}

// CanopyShape is what a canopy is constructed as.
type CanopyShape string

// The shapes. An ellipsoid is half as deep as its radius.
const (
	FlatCanopy       CanopyShape = "flat"
	HemisphereCanopy CanopyShape = "hemisphere"
	EllipsoidCanopy  CanopyShape = "ellipsoid"
)

// What holds of a canopy's gores when nothing is said: common practice, no source.
const (
	UsualGores = 8
	UsualSeam  = 0.01 // m
)

// NominalArea is the constructed area, m².
func (c *Canopy) NominalArea() float64 {
	if c.Area > 0 {
		return c.Area
	}
	return math.Pi / 4 * c.Diameter * c.Diameter
}

// NominalDiameter is D₀ = √(4·S/π) of the nominal area, m.
func (c *Canopy) NominalDiameter() float64 {
	if c.Diameter > 0 {
		return c.Diameter
	}
	return math.Sqrt(4 * c.Area / math.Pi)
}

// MaxCanopies is the most a rocket may carry.
const MaxCanopies = 8

// Rule returns the rule for a drive.
func (c *Canopy) Rule(p Power) Rule {
	if p == MotorPower {
		return c.Motor
	}
	return c.Water
}

// Rail is the guide. Length is the travel until the last rail button leaves it.
type Rail struct {
	Length  float64 // m; 0 only with a launch tube
	Tilt    float64 // from vertical, rad
	Heading float64 // where the tilt points, clockwise from north, rad
}
