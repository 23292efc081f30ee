package sim

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// made is what the parts of a model that take long were made from. They are kept for the
// next rocket that asks for the same.
type made struct {
	site     atmosphere.Site
	anywhere bool // there is a column, of that site
	chamber  thrust.Chamber
	shape    airframe.Shape
	aero     *airframe.Aero // of that shape
	steep    struct {       // its greatest angles, rad
		nose, taper float64
	}
	tables struct { // of the drag
		aero *airframe.Aero
		air  atmosphere.Air
		jet  float64
	}
	table, pushed []rocket.MachDrag
	body          rigidBody
}

// newRun makes a flight ready.
func newRun(from *rocket.Rocket, o Options) *run {
	r := new(run)
	r.prepare(from, o, &Flight{Rocket: from})
	return r
}

// prepare works out every constant of a flight.
func (r *run) prepare(from *rocket.Rocket, o Options, fl *Flight) {
	r.course = course{}
	r.course.rocket, r.course.options, r.course.flight, r.course.knownTop = from, o, fl, math.NaN()
	for i := range r.since {
		r.since[i] = math.NaN()
	}
	r.watched = r.room[:0]
	fl.dense.keep = o.Keep
	m := &r.model
	m.phase, m.calls, m.fast = phase{}, 0, 0
	if !r.made.anywhere || r.made.site != from.Site {
		m.column = from.Site.Column()
		r.made.site, r.made.anywhere = from.Site, true
	}
	m.profile.Turn(&from.Wind, &from.Gust)
	sin, cos := math.Sincos(from.Rail.Tilt)
	se, cn := math.Sincos(from.Rail.Heading)
	m.axis, m.cosTilt = vector{sin * se, sin * cn, cos}, cos
	m.guide = from.Rail.Length
	air := m.column.Air(0)
	m.gravity, m.padPressure = m.column.Gravity(0), air.Pressure
	if from.Shape != nil {
		r.made.take(from.Shape)
	}
	r.layDrag(from, air)
	m.body = nil
	if from.Balanced() {
		r.made.body.prepare(from, r.made.aero)
		m.body = &r.made.body
	}
	m.refArea = from.Body.DragFactor * math.Pi / 4 * from.Body.Diameter * from.Body.Diameter
	m.dryMass = from.BodyMass()
	m.canopies = m.canopies[:0]
	for i := range from.Canopies {
		c := &from.Canopies[i]
		m.canopies = append(m.canopies, canopyModel{c.Coefficient * c.NominalArea(), c.FillConstant * c.NominalDiameter()})
	}
	m.curve, m.propellant, m.total = nil, 0, 0
	m.hasChamber, m.chamber, m.liquid0, m.tube = false, 0, 0, 0
	if from.Power == rocket.MotorPower {
		m.loadMotor(from.Motor)
	} else {
		r.loadWater(from, air)
	}
	m.promise = max(m.promise, 1)
}

// take takes a shape, and its aerodynamics if it is another than before.
func (k *made) take(s *airframe.Shape) {
	if k.aero != nil && k.shape.Equal(s) {
		return
	}
	sections, fins := append(k.shape.Sections[:0], s.Sections...), append(k.shape.Fins[:0], s.Fins...)
	k.shape = *s
	k.shape.Sections, k.shape.Fins = sections, fins
	k.aero = s.Aero()
	k.steep.nose, k.steep.taper = k.shape.Forebody().JunctionAngle(), k.shape.SteepestTaper()
}

// layDrag lays out the drag table, the file's or the shape's.
func (r *run) layDrag(from *rocket.Rocket, air atmosphere.Air) {
	m, k := &r.model, &r.made
	if t := from.Body.Drag; len(t) > 0 {
		m.drag = pieces(m.drag[:0], t)
		m.pushedDrag = append(m.pushedDrag[:0], m.drag...)
		return
	}
	if t := &k.tables; t.aero != k.aero || t.air != air || t.jet != from.JetArea() {
		t.aero, t.air, t.jet = k.aero, air, from.JetArea()
		k.table, k.pushed = shapeDrag(k.aero, air, t.jet)
	}
	m.drag, m.pushedDrag = pieces(m.drag[:0], k.table), pieces(m.pushedDrag[:0], k.pushed)
}

func (m *model) loadMotor(motor *rocket.Motor) {
	m.dryMass += motor.Fittings + motor.Case
	m.curve, m.factor, m.propellant, m.total = motor.Curve, motor.ThrustFactor(), motor.Propellant, motor.Impulse()
	m.promise = m.total / (m.dryMass + m.propellant/2)
}

func (r *run) loadWater(from *rocket.Rocket, air atmosphere.Air) {
	m, w := &r.model, from.Water
	m.dryMass += w.Fittings
	c := from.Expulsion(air.Pressure, air.Temperature)
	if c != r.made.chamber {
		m.flow.Refit(c)
		r.made.chamber = c
	}
	m.hasChamber, m.chamber, m.liquid0 = true, c.Volume, c.LiquidVolume
	if m.liquid0 < 1e-9*w.Volume {
		m.liquid0 = 0 // a trace has no flow worth a step
	}
	m.promise = m.flow.Promise(m.dryMass, m.padPressure)
	if w.Tube != nil {
		m.tube = w.Tube.Length
		m.guide = max(m.guide, m.tube)
	}
}
