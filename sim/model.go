package sim

import (
	"math"

	"ullage/atmosphere"
	"ullage/thrust"

	"ullage/sim/rocket"
)

// push is what drives the rocket in a phase.
type push uint8

const (
	noPush push = iota
	tubePush
	unsteadyLiquid
	steadyLiquid
	chokedGas
	subsonicGas
	motorBurn
)

// liquid tells whether the phase's store is a liquid volume.
func (p push) liquid() bool { return p == unsteadyLiquid || p == steadyLiquid }

// gas tells whether the phase's store is a gas mass.
func (p push) gas() bool { return p == chokedGas || p == subsonicGas }

// phase is a stretch of flight over which the equations are smooth: no event
// lies inside one.
type phase struct {
	push       push
	guided     bool   // on rail or launch tube: motion along the guide only
	rigid      bool   // a rigid body: attitude and spin are states
	gusty      bool   // above the gust's height
	held       bool   // at rest on the pad, thrust not above the weight along the guide
	segment    int    // of the thrust curve, for motorBurn
	settled    bool   // the jet has gathered its speed: the start-up surge is over
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
	leaving           float64 // mass flow out of the nozzle, kg/s
	liquid, gas       float64 // aboard, m³ and kg
	grain             float64 // propellant aboard, kg
	axial             float64 // airspeed along the axis, forward (rigid)
	attack            float64 // total angle of attack, rad (rigid)
	laden             laden   // where the mass lies (rigid)
}

// model holds every constant of one rocket's flight and the phase it is in. It is
// the right-hand side of the equations of motion of a point mass.
type model struct {
	phase
	column  atmosphere.Column
	profile atmosphere.Profile

	axis       [3]float64 // of the guide
	cosTilt    float64
	guide      float64           // guided length, m
	tube       float64           // launch tube's length, m
	table      []rocket.MachDrag // drag coefficients
	pushed     []rocket.MachDrag // the same while the drive pushes: no base drag over the jet
	refArea    float64           // drag factor included
	dryMass    float64           // body, fittings, motor case: all that never leaves
	gravity    float64           // at the pad
	canopies   []canopyModel
	flow       thrust.Expulsion
	hasChamber bool
	chamber    float64 // volume, m³: its buoyancy
	liquid0    float64 // liquid volume at release, m³
	curve      *thrust.Curve
	propellant float64
	total      float64      // impulse of the curve, N·s
	knot       [2]curveKnot // ends of the thrust curve's present segment

	body *rigidBody // nil when only a point mass flies
	gust [2]float64 // its components, m/s
	fast float64    // airspeed as the guide ends, m/s

	last forces // of the latest rates
}

type curveKnot struct{ time, thrust, impulse float64 }

type canopyModel struct {
	area float64 // C_D S, m²
	fill float64 // n·D₀, m
}

// rates is dy/dt; it also leaves the forces in m.last.
func (m *model) rates(t float64, y, dy *state) {
	f := &m.last
	f.pressure, f.density = m.column.At(y[up])
	f.thrust, f.jetRate, f.drive, f.lift = 0, 0, 0, 0
	g := m.column.Gravity(y[up])
	dy[store], dy[jet] = 0, 0
	switch {
	case m.guided:
		m.guidedRates(t, g, y, dy)
	case m.rigid:
		m.rigidRates(t, g, y, dy)
	default:
		m.freeRates(t, g, y, dy)
	}
	dy[impulse] = f.thrust
}

// guidedRates: along the guide only, no wind, no sideways force.
func (m *model) guidedRates(t, g float64, y, dy *state) {
	f := &m.last
	speed := y[vEast]*m.axis[0] + y[vNorth]*m.axis[1] + y[vUp]*m.axis[2]
	f.airspeed = math.Abs(speed)
	m.bodyAndCanopies(y)
	f.drag = 0.5 * f.density * speed * speed * f.area
	drag := math.Copysign(f.drag, speed)
	m.pushAndMass(t, g, drag, y, dy)
	weight := f.mass * g * m.cosTilt
	if m.held {
		// Without the chamber's buoyancy: the jet's equations know f without it too,
		// and held and free must agree on the moment they change places.
		f.lift = f.thrust - weight
		f.acceleration2 = 0
		clear(dy[:impulse])
		return
	}
	f.lift = f.thrust - weight + f.density*m.chamber*g*m.cosTilt
	a := (f.lift - drag) / f.mass
	f.acceleration2 = a * a
	for i, c := range m.axis {
		dy[east+i] = speed * c
		dy[vEast+i] = a * c
	}
	dy[airPath] = f.airspeed
}

// freeRates: thrust and drag along the air-relative velocity.
func (m *model) freeRates(t, g float64, y, dy *state) {
	f := &m.last
	we, wn := m.wind(y[up])
	re, rn, ru := y[vEast]-we, y[vNorth]-wn, y[vUp]
	f.airspeed = math.Sqrt(re*re + rn*rn + ru*ru)
	m.bodyAndCanopies(y)
	k := 0.5 * f.density * f.airspeed * f.area // drag over airspeed
	f.drag = k * f.airspeed
	m.pushAndMass(t, g, f.drag, y, dy)
	along := -k
	if f.airspeed > 0 {
		along += f.thrust / f.airspeed
	}
	along /= f.mass
	dy[east], dy[north], dy[up] = y[vEast], y[vNorth], y[vUp]
	ae, an := along*re, along*rn
	au := along*ru - g*(1-f.density*m.chamber/f.mass)
	dy[vEast], dy[vNorth], dy[vUp] = ae, an, au
	f.acceleration2 = ae*ae + an*an + au*au
	dy[airPath] = f.airspeed
}

// windFloor: the power law has an infinite slope at the ground, which no step could
// follow; below this height it is held, m.
const windFloor = 0.01

func (m *model) wind(height float64) (east, north float64) {
	east, north = m.profile.At(math.Max(height, windFloor))
	if m.gusty {
		east += m.gust[0]
		north += m.gust[1]
	}
	return east, north
}

// bodyAndCanopies sets the drag area of the body and of what has opened.
func (m *model) bodyAndCanopies(y *state) {
	f := &m.last
	t := m.table
	if m.push != noPush {
		t = m.pushed
	}
	c := t[0].Drag
	if len(t) > 1 {
		c = dragAt(t, f.mach())
	}
	f.area = c * m.refArea
	f.bodyDrag = f.area
	if m.open == 0 {
		return
	}
	for i := range m.canopies {
		f.area += m.canopyArea(i, y[airPath])
	}
}

// canopyArea is the drag area of one canopy: it grows linearly with the distance
// through the air since release (the fill distance behind Knacke's t_f = n·D₀/v,
// NWC TP 6575).
func (m *model) canopyArea(i int, path float64) float64 {
	bit := uint64(1) << i
	switch c := &m.canopies[i]; {
	case m.open&bit == 0:
		return 0
	case m.full&bit != 0:
		return c.area
	default:
		return c.area * math.Min(math.Max((path-m.airFrom[i])/c.fill, 0), 1)
	}
}

// mach is the Mach number from the ambient state: a² = γp/ρ.
func (f *forces) mach() float64 {
	return f.airspeed * math.Sqrt(f.density/(atmosphere.Gamma*f.pressure))
}

// dragAt interpolates a drag table.
func dragAt(t []rocket.MachDrag, mach float64) float64 {
	if mach <= t[0].Mach {
		return t[0].Drag
	}
	for i := 1; i < len(t); i++ {
		if mach < t[i].Mach {
			a, b := t[i-1], t[i]
			return a.Drag + (b.Drag-a.Drag)*(mach-a.Mach)/(b.Mach-a.Mach)
		}
	}
	return t[len(t)-1].Drag
}

// pushAndMass sets thrust and mass and the rates of store and jet. Drag is along
// the axis, positive against the motion.
func (m *model) pushAndMass(t, g, drag float64, y, dy *state) {
	f := &m.last
	f.chamber = math.NaN()
	f.liquid, f.gas, f.grain, f.leaving = 0, 0, 0, 0
	switch m.push {
	case noPush:
		if m.hasChamber {
			f.chamber = f.pressure // the nozzle is open
		}
		f.mass = m.dryMass + m.left
		f.liquid, f.gas = m.leftLiquid, m.left-m.leftLiquid*m.flow.Density()
	case tubePush:
		f.mass = m.dryMass + m.flow.Density()*y[store] + m.flow.CarriedGas()
		f.liquid, f.gas = y[store], m.flow.CarriedGas()
		s := y[east]*m.axis[0] + y[north]*m.axis[1] + y[up]*m.axis[2]
		f.chamber, f.thrust = m.flow.TubePush(s, f.pressure)
	case unsteadyLiquid, steadyLiquid:
		f.mass = m.dryMass + m.flow.Density()*y[store] + m.flow.CarriedGas()
		f.liquid, f.gas = y[store], m.flow.CarriedGas()
		m.liquidPush(g, drag, y, dy)
		f.leaving = -m.flow.Density() * dy[store]
	case chokedGas, subsonicGas:
		f.mass = m.dryMass + y[store]
		flow := m.flow.Gas(y[store], f.pressure, m.push == chokedGas)
		f.chamber, f.thrust = flow.Pressure, flow.Thrust
		dy[store] = -flow.MassRate
		f.gas, f.leaving = y[store], flow.MassRate
	case motorBurn:
		a, b := &m.knot[0], &m.knot[1]
		dt := t - a.time
		slope := (b.thrust - a.thrust) / (b.time - a.time)
		f.thrust = a.thrust + slope*dt
		burnt := a.impulse + dt*(a.thrust+slope*dt/2)
		f.grain = m.propellant * (1 - burnt/m.total)
		f.leaving = m.propellant * f.thrust / m.total
		f.mass = m.dryMass + f.grain
	}
}

// liquidPush is the flow of the liquid, held or free, with inertia or without.
func (m *model) liquidPush(g, drag float64, y, dy *state) {
	f := &m.last
	var j thrust.Jet
	switch {
	case m.push == unsteadyLiquid && m.held:
		j = m.flow.UnsteadyJetHeld(y[store], y[jet], f.pressure, g*m.cosTilt)
	case m.push == unsteadyLiquid:
		j = m.flow.UnsteadyJet(y[store], y[jet], f.pressure, drag, f.mass)
	case m.held:
		j, f.drive = m.flow.SteadyJetHeld(y[store], f.pressure, g*m.cosTilt)
	default:
		j, f.drive = m.flow.SteadyJet(y[store], f.pressure, drag, f.mass)
	}
	f.chamber, f.thrust, f.jetRate = j.Pressure, j.Thrust, j.Acceleration
	dy[jet] = j.Acceleration
	dy[store] = -m.flow.ThroatArea() * j.Speed
}

// stiffness sets the part of the equations that a step must solve exactly: the
// jet's relaxation, and the drag of an open canopy. Called with m.last of y.
func (m *model) stiffness(y *state, p *stiffPart) {
	f := &m.last
	*p = stiffPart{}
	switch {
	case m.push == unsteadyLiquid:
		relaxation, kick := m.flow.Stiffness(y[store], y[jet], f.mass, m.held)
		p.add(jet, relaxation)
		if kick == 0 {
			return
		}
		p.kick, p.push = true, m.axis
		switch {
		case m.rigid:
			p.push = m.thrustLine(y)
		case !m.guided:
			p.push = m.airAxis(y)
		}
		for i := range p.push {
			p.push[i] *= kick
		}
	case m.open != 0 && f.airspeed > 0:
		// ∂(−k|w|w)/∂w, w the velocity through the air: −2k along it, −k across; the
		// fall is near enough to straight down for its diagonal.
		a := y[vUp] / f.airspeed
		k := 0.5 * f.density * f.area * f.airspeed / f.mass
		p.add(vEast, -k*(1.5-a*a/2))
		p.add(vNorth, -k*(1.5-a*a/2))
		p.add(vUp, -k*(1+a*a))
	}
}

// airAxis is the direction of the air-relative velocity; the guide's where there is none.
func (m *model) airAxis(y *state) [3]float64 {
	we, wn := m.wind(y[up])
	r := [3]float64{y[vEast] - we, y[vNorth] - wn, y[vUp]}
	v := math.Sqrt(r[0]*r[0] + r[1]*r[1] + r[2]*r[2])
	if v == 0 {
		return m.axis
	}
	for i := range r {
		r[i] /= v
	}
	return r
}

// travel is the distance along the guide.
func (m *model) travel(y *state) float64 {
	return y[east]*m.axis[0] + y[north]*m.axis[1] + y[up]*m.axis[2]
}

// along is the speed along the guide.
func (m *model) along(y *state) float64 {
	return y[vEast]*m.axis[0] + y[vNorth]*m.axis[1] + y[vUp]*m.axis[2]
}
