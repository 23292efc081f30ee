package sim

import (
	"math"

	"ullage/sim/rocket"
)

// newRun works out every constant of a flight.
func newRun(from *rocket.Rocket, o Options) *run {
	r := &run{
		rocket: from, options: o, knownTop: math.NaN(),
		flight: &Flight{Rocket: from},
	}
	r.watched = r.room[:0]
	r.flight.dense.keep = o.Keep
	m := &r.model
	m.column = from.Site.Column()
	m.profile = from.Wind.Profile()
	sin, cos := math.Sincos(from.Rail.Tilt)
	se, cn := math.Sincos(from.Rail.Heading)
	m.axis, m.cosTilt = [3]float64{sin * se, sin * cn, cos}, cos
	m.guide = from.Rail.Length
	table, pushed := from.Body.Drag, from.Body.Drag
	if len(table) == 0 {
		table, pushed = shapeDrag(from.Shape, m.column.Air(0), from.JetArea())
	}
	m.drag, m.pushedDrag = pieces(table), pieces(pushed)
	if from.Balanced() && !o.Point {
		m.body = newRigidBody(from)
	}
	gs, gc := math.Sincos(from.Gust.From)
	m.gust = [2]float64{-from.Gust.Speed * gs, -from.Gust.Speed * gc}
	m.refArea = from.Body.DragFactor * math.Pi / 4 * from.Body.Diameter * from.Body.Diameter
	m.gravity = m.column.Gravity(0)
	m.padPressure, _ = m.column.At(0)
	m.dryMass = from.BodyMass()
	m.canopies = make([]canopyModel, len(from.Canopies))
	for i := range from.Canopies {
		c := &from.Canopies[i]
		m.canopies[i] = canopyModel{c.Coefficient * c.NominalArea(), c.FillConstant * c.NominalDiameter()}
	}
	if from.Power == rocket.MotorPower {
		m.loadMotor(from.Motor)
	} else {
		m.loadWater(from)
	}
	return r
}

func (m *model) loadMotor(motor *rocket.Motor) {
	m.dryMass += motor.Fittings + motor.Case
	m.curve, m.propellant, m.total = motor.Curve, motor.Propellant, motor.Curve.Impulse()
}

func (m *model) loadWater(r *rocket.Rocket) {
	w := r.Water
	m.dryMass += w.Fittings
	air := m.column.Air(0)
	c := w.Chamber(air.Pressure, air.Temperature)
	m.flow = c.Prepare()
	m.hasChamber, m.chamber, m.liquid0 = true, w.Volume, c.LiquidVolume
	if m.liquid0 < 1e-9*w.Volume {
		m.liquid0 = 0 // a trace has no flow worth a step
	}
	if w.Tube != nil {
		m.tube = w.Tube.Length
		m.guide = math.Max(m.guide, m.tube)
	}
}

// begin puts the rocket on the pad and opens the flight.
func (r *run) begin() {
	m := &r.model
	res := &r.flight.Results
	m.guided, m.held = true, true
	for i := range r.rocket.Canopies {
		res.Canopies = append(res.Canopies, CanopyResult{Name: r.rocket.Canopies[i].Name})
		r.pending |= 1 << i
		r.due[i] = math.Inf(1)
		if _, wait, ok := r.rocket.Waits(i); ok && wait < 0 && !math.IsNaN(r.knownTop) {
			r.due[i] = math.Max(0, r.knownTop+wait)
		}
	}
	r.countFrom(rocket.Launch)
	if len(r.rocket.Canopies) == 0 {
		r.warn(Warning{Code: NoCanopy})
	}
	if r.rocket.Power == rocket.MotorPower {
		if v := m.curve.EndsAbove(); v > 0 {
			r.warn(Warning{Code: CurveEndsAbove, Value: v})
		}
		m.push = motorBurn
		m.loadSegment(0)
	} else {
		res.WaterFlew = true
		r.y[store] = m.liquid0
		r.beginWater()
	}
	r.enter()
	res.LiftOffMass = r.now.mass
	r.beginStability()
	if r.now.lift > 0 {
		r.letGo()
	} else if m.push == tubePush || (m.push == noPush && r.nothingToCome()) {
		r.rest()
	}
}

// beginWater chooses what pushes first.
func (r *run) beginWater() {
	m, w := &r.model, r.rocket.Water
	if w.Tube == nil {
		r.beginLiquid()
		return
	}
	m.push = tubePush
	depth := m.liquid0 / (math.Pi / 4 * (w.Bore*w.Bore - w.Tube.Outer*w.Tube.Outer))
	if depth >= w.Tube.Length {
		r.warn(Warning{Code: TubeTipWet, Value: depth, Limit: w.Tube.Length})
	}
}
