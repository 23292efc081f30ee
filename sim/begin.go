package sim

import (
	"math"

	"ullage/thrust"
)

// newRun works out every constant of a flight.
func newRun(rocket *Rocket, o Options) *run {
	r := &run{
		rocket: rocket, options: o, knownTop: math.NaN(),
		flight: &Flight{Rocket: rocket},
	}
	r.watched = r.room[:0]
	r.flight.record.keep = o.Keep
	m := &r.model
	m.column = rocket.Site.Column()
	m.profile = rocket.Wind.Profile()
	sin, cos := math.Sincos(rocket.Rail.Tilt)
	se, cn := math.Sincos(rocket.Rail.Heading)
	m.axis, m.cosTilt = [3]float64{sin * se, sin * cn, cos}, cos
	m.guide = rocket.Rail.Length
	m.table, m.pushed = rocket.Body.Drag, rocket.Body.Drag
	if len(m.table) == 0 {
		m.table, m.pushed = shapeDrag(rocket.Shape, m.column.Air(0), rocket.jetArea())
	}
	if rocket.Balanced() && !o.Point {
		m.body = newRigidBody(rocket)
	}
	gs, gc := math.Sincos(rocket.Gust.From)
	m.gust = [2]float64{-rocket.Gust.Speed * gs, -rocket.Gust.Speed * gc}
	m.refArea = rocket.Body.DragFactor * math.Pi / 4 * rocket.Body.Diameter * rocket.Body.Diameter
	m.gravity = m.column.Gravity(0)
	m.dryMass = rocket.BodyMass()
	m.canopies = make([]canopyModel, len(rocket.Canopies))
	for i := range rocket.Canopies {
		c := &rocket.Canopies[i]
		m.canopies[i] = canopyModel{c.Coefficient * c.NominalArea(), c.FillConstant * c.NominalDiameter()}
	}
	if rocket.Power == MotorPower {
		m.loadMotor(rocket.Motor)
	} else {
		m.loadWater(rocket)
	}
	return r
}

// jetArea is what a running jet covers of the base, m².
func (r *Rocket) jetArea() float64 {
	d := 0.0
	if r.Power == MotorPower {
		d = r.Motor.Diameter
	} else {
		d = r.Water.Throat
	}
	return math.Pi / 4 * d * d
}

func (m *model) loadMotor(motor *Motor) {
	m.dryMass += motor.Fittings + motor.Case
	m.curve, m.propellant, m.total = motor.Curve, motor.Propellant, motor.Curve.Impulse()
}

func (m *model) loadWater(rocket *Rocket) {
	w := rocket.Water
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

// Chamber is the drive at release as thrust takes it, on a pad with the given
// ambient pressure (Pa) and temperature (K).
func (w *Water) Chamber(pressure, temperature float64) thrust.Chamber {
	c := thrust.Chamber{
		Volume: w.Volume, Bore: w.Bore, Throat: w.Throat, Discharge: w.Discharge,
		LiquidVolume: w.Fill * w.Volume, LiquidDensity: w.Density,
		Pressure: w.Pressure + pressure, Temperature: w.Temperature,
		GasConstant: w.Gas.Constant(), Gamma: w.Gas.Gamma(), Exponent: w.Exponent,
	}
	if c.Temperature == 0 {
		c.Temperature = temperature
	}
	if t := w.Tube; t != nil {
		c.Tube = &thrust.Tube{Length: t.Length, Outer: t.Outer,
			InnerVolume: math.Pi/4*t.Inner*t.Inner*t.Length + t.DeadVolume}
	}
	return c
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
		switch rule := r.rocket.Canopies[i].Rule(r.rocket.Power); {
		case rule.Trigger == AfterLaunch:
			r.due[i] = rule.Value
		case rule.Trigger == AfterApogee && rule.Value < 0 && !math.IsNaN(r.knownTop):
			r.due[i] = math.Max(0, r.knownTop+rule.Value)
		}
	}
	if len(r.rocket.Canopies) == 0 {
		r.warn(Warning{Code: NoCanopy})
	}
	if r.rocket.Power == MotorPower {
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
