package rocket

import (
	"fmt"
	"math"

	"ullage/sim/fault"
)

// checker gathers faults.
type checker struct{ faults fault.List }

func (c *checker) add(name, problem, remedy string) { c.faults.Add(name, problem, remedy) }

// The kinds of range, written so that NaN and infinities fail every one.
func (c *checker) positive(name string, v float64) bool {
	ok := v > 0 && !math.IsInf(v, 1)
	if !ok {
		c.add(name, "must be above zero", "give a value above zero")
	}
	return ok
}

func (c *checker) notNegative(name string, v float64) bool {
	ok := v >= 0 && !math.IsInf(v, 1)
	if !ok {
		c.add(name, "must not be negative", "give zero or more")
	}
	return ok
}

func (c *checker) within(name string, v, low, high float64, remedy string) bool {
	ok := v >= low && v <= high
	if !ok {
		c.add(name, "out of range", remedy)
	}
	return ok
}

// ValidateFlight checks all that a flight depends on and returns a fault.List, or nil. It is
// cheap: every flight begins with it.
func (r *Rocket) ValidateFlight() error {
	var c checker
	r.checkFlight(&c)
	return c.faults.Err()
}

// Validate checks everything that can be wrong with a rocket, the drive that does
// not fly, the chamber and the limits too, and returns a fault.List, or nil.
func (r *Rocket) Validate() error {
	var c checker
	r.checkFlight(&c)
	r.checkChamber(&c)
	r.checkLimits(&c)
	return c.faults.Err()
}

func (r *Rocket) checkFlight(c *checker) {
	r.checkDrive(c)
	r.checkBody(c)
	if r.Water != nil {
		r.Water.check(c)
	}
	if r.Motor != nil {
		r.Motor.check(c)
	}
	if r.MotorMount != nil {
		c.positive("motor_mount.diameter", r.MotorMount.Diameter)
		c.notNegative("motor_mount.length", r.MotorMount.Length)
	}
	r.checkCanopies(c)
	r.checkDay(c)
	r.checkShape(c)
}

func (r *Rocket) checkDrive(c *checker) {
	switch r.Power {
	case WaterPower:
		if r.Water == nil {
			c.add("power", "flies on water, but the rocket has no [water]", `add [water], or set power = "motor"`)
		}
	case MotorPower:
		if r.Motor == nil {
			c.add("power", "flies on a motor, but the rocket has no [motor]", `add [motor], or set power = "water"`)
		}
	default:
		c.add("power", "is neither water nor motor", `write "water" or "motor"`)
	}
}

func (r *Rocket) checkBody(c *checker) {
	c.positive("body.diameter", r.Body.Diameter)
	if len(r.Parts) == 0 || r.Body.Mass != 0 {
		c.positive("body.mass", r.Body.Mass)
	}
	c.within("body.drag_factor", r.Body.DragFactor, 0, 100, "give a factor from 0 to 100; 1 leaves the drag as it is")
	t := r.Body.Drag
	if len(t) == 0 && r.Shape == nil {
		c.add("body.drag", "is missing", "give a drag coefficient such as 0.5, or a table against Mach")
	}
	for i, p := range t {
		if !(p.Drag >= 0 && p.Drag <= 100) {
			c.add("body.drag", "drag coefficient out of range", "give 0 to 100; most rockets have 0.3 to 0.8")
		}
		if !(p.Mach >= 0 && p.Mach <= 100) {
			c.add("body.drag", "Mach number out of range", "give 0 to 100")
		}
		if i > 0 && !(p.Mach > t[i-1].Mach) {
			c.add("body.drag", "Mach numbers do not rise", "sort the table by Mach, each number once")
		}
	}
}

func (w *Water) check(c *checker) {
	c.positive("water.volume", w.Volume)
	bore := c.positive("water.bore", w.Bore)
	if c.positive("water.throat", w.Throat) && bore && !(w.Throat < w.Bore) {
		c.add("water.throat", "is as wide as the bore or wider", "give a throat narrower than the bore")
	}
	if !(w.Discharge > 0 && w.Discharge <= 1) {
		c.add("water.discharge", "out of range", "give a coefficient above 0 and up to 1; a smooth nozzle has 0.95 to 0.99")
	}
	if !(w.Fill >= 0 && w.Fill < 1) {
		c.add("water.fill", "out of range", "give a share of the volume from 0 up to but not including 1")
	}
	c.within("water.pressure", w.Pressure, 0, 1e8, "give a gauge pressure from 0 to 1000 bar")
	if w.Exponent != 0 && !(w.Exponent >= 1 && w.Exponent <= 2) {
		c.add("water.exponent", "out of range", "give 1 (isothermal) to 2; leave it out for the gas's own")
	}
	if !w.Gas.Known() {
		c.add("water.gas", "is not a gas known here", "write air, nitrogen, argon, helium or carbon dioxide")
	}
	if w.Temperature != 0 {
		c.within("water.temperature", w.Temperature, 150, 500, "give -123 to 227 degC; leave it out for the site's")
	}
	c.within("water.density", w.Density, 100, 20000, "give 100 to 20000 kg/m3; water has 998.2")
	if w.Flow != UnsteadyFlow && w.Flow != SteadyFlow {
		c.add("water.flow", "is neither unsteady nor steady", `write "unsteady" or "steady"`)
	}
	c.notNegative("water.fittings", w.Fittings)
	if w.Tube != nil {
		w.checkTube(c)
	}
}

func (w *Water) checkTube(c *checker) {
	t := w.Tube
	length := c.positive("water.tube.length", t.Length)
	outer := c.positive("water.tube.outer", t.Outer)
	inner := c.notNegative("water.tube.inner", t.Inner)
	c.notNegative("water.tube.dead_volume", t.DeadVolume)
	if outer && t.Outer > w.Throat {
		c.add("water.tube.outer", "is fatter than the throat", "give at most the throat's diameter")
	}
	if outer && inner && !(t.Inner < t.Outer) {
		c.add("water.tube.inner", "is not inside the tube's outside", "give less than the outer diameter")
	}
	if !length || !outer || !(w.Bore > 0 && w.Volume > 0) {
		return
	}
	bore := math.Pi / 4 * w.Bore * w.Bore
	if chamber := w.Volume / bore; t.Length > chamber {
		c.add("water.tube.length", "is longer than the chamber", fmt.Sprintf("give at most %.3g m, the volume over the bore's area", chamber))
		return
	}
	if tube := math.Pi / 4 * t.Outer * t.Outer * t.Length; !(w.Volume*(1-w.Fill)-tube > 0) {
		c.add("water.tube.length", "leaves no room for gas beside the liquid", "shorten the tube or lower water.fill")
	}
}

func (m *Motor) check(c *checker) {
	if m.Curve == nil {
		c.add("motor.curve", "is missing", "name a CSV file with time_s,thrust_n")
	} else if !(m.Curve.Impulse() > 0) {
		c.add("motor.curve", "has no impulse", "give a curve whose thrust is above zero somewhere")
	}
	c.notNegative("motor.case", m.Case)
	c.positive("motor.propellant", m.Propellant)
	if !math.IsNaN(m.Delay) {
		c.within("motor.delay", m.Delay, 0, 1000, "give 0 to 1000 s")
	}
	for _, d := range m.Delays {
		c.within("motor.delays", d, 0, 1000, "give 0 to 1000 s")
	}
	c.notNegative("motor.diameter", m.Diameter)
	c.notNegative("motor.length", m.Length)
	c.notNegative("motor.fittings", m.Fittings)
}

func (r *Rocket) checkCanopies(c *checker) {
	if len(r.Canopies) > MaxCanopies {
		c.add("canopy", "are more than a rocket may carry here", fmt.Sprintf("give at most %d", MaxCanopies))
	}
	for i := range r.Canopies {
		p := &r.Canopies[i]
		at := func(key string) string { return "canopy." + p.Name + "." + key }
		switch {
		case p.Diameter != 0 && p.Area != 0:
			c.add(at("area"), "is given beside the diameter", "give one of the two")
		case p.Area != 0:
			c.within(at("area"), p.Area, 1e-6, 1e6, "give a nominal area above zero")
		default:
			c.within(at("diameter"), p.Diameter, 1e-3, 1e3, "give a nominal diameter from 1 mm to 1 km")
		}
		c.within(at("coefficient"), p.Coefficient, 1e-3, 10, "give 0.001 to 10; flat circular canopies have about 0.75")
		c.within(at("fill_constant"), p.FillConstant, 0, 1000, "give 0 to 1000; 0 opens at once")
		c.within(at("opening_force_coefficient"), p.OpeningForceCoefficient, 0, 100, "give 0 to 100; flat circular canopies have 1.7 to 1.8")
		p.Water.check(c, at("deploy.water"))
		p.Motor.check(c, at("deploy.motor"))
	}
}

func (u Rule) check(c *checker, name string) {
	switch u.Trigger {
	case AfterLaunch, AfterBurnout:
		c.within(name, u.Value, 0, 1e5, "give 0 to 100000 s")
	case AfterApogee:
		c.within(name, u.Value, -1e5, 1e5, "give -100000 to 100000 s")
	case Falling:
		c.within(name, u.Value, 0, 1e6, "give a height above the site")
	}
}

func (r *Rocket) checkDay(c *checker) {
	if r.Rail.Length == 0 && (r.Power != WaterPower || r.Water == nil || r.Water.Tube == nil) {
		c.add("rail.length", "is missing", "give the travel until the last rail button leaves the rail, at least 1 cm")
	} else if r.Rail.Length != 0 {
		c.within("rail.length", r.Rail.Length, 0.01, 1000, "give 1 cm to 1000 m")
	}
	c.within("rail.tilt", r.Rail.Tilt, 0, 85*math.Pi/180, "give 0 to 85 deg from vertical")
	c.within("rail.heading", r.Rail.Heading, -2*math.Pi, 2*math.Pi, "give 0 to 360 deg, clockwise from north")
	c.take(r.Site.Faults())
	c.take(r.Wind.Faults())
}
