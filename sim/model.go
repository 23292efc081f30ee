package sim

import (
	"math"
	"ullage/atmosphere"
	"ullage/thrust"

	"ullage/sim/rocket"
)

// phase is a stretch of flight over which the equations are smooth: no event
// lies inside one.
type phase struct {
	push       push
	guided     bool   // on rail or launch tube: motion along the guide only
	rigid      bool   // a rigid body: attitude and spin are states
	faces      facing // of a rigid body
	stretch    int    // of the wind
	held       bool   // at rest on the pad, thrust not above the weight along the guide
	segment    int    // of the thrust curve, for motorBurn
	piece      int    // of the drag table
	settled    bool   // the jet has gathered its speed: the start-up surge is over
	fallen     bool   // past the top
	open       uint64 // canopies released, a bit each
	full       uint64 // canopies that have filled
	airFrom    [rocket.MaxCanopies]float64
	left       float64 // liquid and gas aboard once the flow is over, kg
	leftLiquid float64 // liquid aboard then, m³
}

// forces are what the rates were made from: read for results, samples and events.
type forces struct {
	pressure, density float64 // ambient
	airspeed          float64
	thrust, drag      float64
	mass              float64
	acceleration2     float64 // |dv/dt|²
	chamber           float64 // absolute; NaN without a chamber
	jetRate           float64 // dq/dt
	drive             float64 // steady liquid: what falls to 0 as its flow ends
	lift              float64 // thrust less weight along the guide (guided phases)
	area              float64 // C_D·A of body and open canopies
	bodyDrag          float64
	against           float64        // drag along the axis, against the motion (liquid)
	leaving           float64        // mass flow out of the nozzle, kg/s
	liquid, gas       float64        // aboard, m³ and kg
	grain             float64        // propellant aboard, kg
	axial             float64        // airspeed along the axis, forward (rigid)
	across            float64        // and across it
	inertia           massProperties // where the mass lies (rigid)
	turn, damping     float64        // its moments over the speed across and over the spin (rigid)
	sideways, ahead   float64        // its forces across, over the speed across, and along (rigid)
	swing             float64        // how fast it swings about the wind, rad/s; 0 where it does not (rigid; set by stiffness)
	machs             slope          // of the Mach number, once it has been asked for; the rate is NaN before
}

// attack is the total angle of attack, rad (rigid).
func (f *forces) attack() float64 { return math.Atan2(f.across, f.axial) }

// model holds every constant of one rocket's flight and the phase it is in. It is
// the right-hand side of the equations of motion of a point mass.
type model struct {
	phase
	column  atmosphere.Column
	profile atmosphere.Profile

	axis              vector // of the guide
	cosTilt           float64
	guide             float64     // guided length, m
	tube              float64     // launch tube's length, m
	drag              []dragPiece // of the body
	pushedDrag        []dragPiece // the same while the drive pushes: no base drag over the jet
	refArea           float64     // drag factor included
	dryMass           float64     // body, fittings, motor case: all that never leaves
	gravity           float64     // at the pad
	padPressure       float64     // of the air there
	canopies          []canopyModel
	flow              thrust.Expulsion
	hasChamber        bool
	chamber           float64 // volume, m³: its buoyancy
	liquid0           float64 // liquid volume at release, m³
	curve             *thrust.Curve
	propellant        float64
	promise           float64      // about the speed that the drive will give: the impulse over the mass; at least 1 m/s
	factor            float64      // on the curve's thrust
	total             float64      // impulse of the motor, N·s
	knot              [2]curveKnot // ends of the thrust curve's present segment
	slope, perImpulse float64      // of its thrust, N/s; propellant burnt for an impulse, kg/(N·s)

	body  *rigidBody // nil when only a point mass flies
	calls int        // of rates, since the account was last made
	fast  float64    // airspeed as the guide ends, m/s: the angle of attack counts from there on; +Inf after the top
}

// rates is dy/dt, and the forces it was made from.
func (m *model) rates(t float64, y, dy *state, f *forces) {
	m.calls++
	var g float64
	f.pressure, f.density, g = m.column.Around(y[up])
	f.thrust, f.jetRate, f.drive, f.lift = 0, 0, 0, 0
	f.machs.rate = math.NaN()
	dy[store], dy[jet] = 0, 0
	switch {
	case m.guided:
		m.guidedRates(t, g, y, dy, f)
	case m.rigid:
		m.rigidRates(t, g, y, dy, f)
	default:
		m.freeRates(t, g, y, dy, f)
	}
	dy[impulse] = f.thrust
}
