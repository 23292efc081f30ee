package rocket

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/thrust"
)

// Validate checks everything that is described of a rocket and all that a flight of it
// takes: the drive that does not fly, the chamber and the limits too. It returns a
// fault.List, or nil.
func (r *Rocket) Validate() error {
	var c checker
	r.checkFlight(&c)
	r.checkChamber(&c)
	r.checkLimits(&c)
	r.checkBench(&c)
	return c.faults.Err()
}

// checker gathers what is wrong.
type checker struct{ faults fault.List }

func (c *checker) add(key, problem, remedy string) { c.faults.Add(key, problem, remedy) }

// odds adds that two inputs disagree.
func (c *checker) odds(key, with, problem, remedy string) { c.faults.Odds(key, with, problem, remedy) }

// take adds the faults that another room found.
func (c *checker) take(faults fault.List) { c.faults = append(c.faults, faults...) }

func (r *Rocket) checkFlight(c *checker) {
	r.checkDrives(c)
	r.checkBody(c)
	r.checkDrag(c)
	r.checkCanopies(c)
	r.checkDay(c)
	r.checkShape(c)
}

// checkDrives checks the drives that are there. The one that does not fly may lack
// something.
func (r *Rocket) checkDrives(c *checker) {
	switch r.Power {
	case WaterPower:
		if r.Water == nil {
			c.lack("water", `add [water], or set power = "motor"`)
		}
	case MotorPower:
		if r.Motor == nil {
			c.lack("motor", `add [motor], or set power = "water"`)
		}
	case "":
		c.faults.Need("power", "add [water] or [motor]")
	default:
		c.add("power", "is neither water nor motor", `write "water" or "motor"`)
	}
	if r.Water != nil {
		before := len(c.faults)
		r.Water.check(c)
		r.checkGas(c)
		if w := r.Water; r.Chamber == nil && r.Body.Diameter > 0 && w.Bore > r.Body.Diameter*(1+agree) { // of a chamber that is described with its wall
			c.odds("water.bore", "body.diameter", "is wider than the body", fmt.Sprintf("body.diameter is the largest outside diameter, %.4g mm now; check both", 1e3*r.Body.Diameter))
		}
		c.idle(before, r.Power != WaterPower)
	}
	if r.Motor != nil {
		before := len(c.faults)
		r.Motor.check(c)
		c.idle(before, r.Power != MotorPower)
	}
	if r.MotorMount != nil {
		quantity.Check(&c.faults, r.MotorMount, motorMountFields)
	}
}

// lack adds that the section of the drive that is to fly is missing.
func (c *checker) lack(drive, remedy string) {
	c.faults = append(c.faults, fault.Fault{Key: drive, Problem: "is missing, and power asks for it", Remedy: remedy, Missing: true})
}

// idle takes out what the faults from one on say is missing.
func (c *checker) idle(from int, is bool) {
	if is {
		told := slices.DeleteFunc(c.faults[from:], func(f fault.Fault) bool { return f.Missing })
		c.faults = c.faults[:from+len(told)]
	}
}

func (r *Rocket) checkBody(c *checker) {
	quantity.Check(&c.faults, &r.Body, bodyFields)
	if len(r.Parts) == 0 && r.Body.Mass == 0 {
		c.faults.Need("body.mass", "weigh the body, or give a mass list of [[part]]")
	}
}

func (r *Rocket) checkDrag(c *checker) {
	t := r.Body.Drag
	if len(t) == 0 && r.Shape == nil {
		c.faults.Need("body.drag", "give a drag coefficient such as 0.5, or a table against Mach")
	}
	for i := range t {
		quantity.Check(&c.faults, &t[i], dragFields)
		if i > 0 && t[i].Mach <= t[i-1].Mach {
			c.add("body.drag", "Mach numbers do not rise", "sort the table by Mach, each number once")
		}
	}
}

func (w *Water) check(c *checker) {
	quantity.Check(&c.faults, w, filledFields)
	quantity.Check(&c.faults, w, waterFields)
	if w.Bore > 0 && w.Throat >= w.Bore {
		c.odds("water.throat", "water.bore", "is as wide as the bore or wider", "give a throat narrower than the bore")
	}
	if !w.Gas.Known() {
		c.add("water.gas", "is not a gas known here", "write air, nitrogen, argon, helium or carbon dioxide")
	}
	if w.Flow != UnsteadyFlow && w.Flow != SteadyFlow {
		c.add("water.flow", "is neither unsteady nor steady", `write "unsteady" or "steady"`)
	}
	if w.Tube != nil {
		w.checkTube(c)
	}
}

// checkGas holds that what drives the liquid out is a gas.
func (r *Rocket) checkGas(c *checker) {
	w := r.Water
	if w.Gas != thrust.CarbonDioxide || !(w.Pressure > 0) {
		return
	}
	column := r.Site.Column()
	air := column.Air(0)
	most := w.Gas.Saturation(cmp.Or(w.Temperature, air.Temperature)) - air.Pressure
	if w.Pressure >= most {
		c.odds("water.pressure", "water.gas", "turns carbon dioxide liquid at its temperature", fmt.Sprintf("give less than %.3g bar, or another gas", most/1e5))
	}
}

func (w *Water) checkTube(c *checker) {
	t := w.Tube
	if !quantity.Check(&c.faults, t, tubeFields) {
		return
	}
	if w.Throat > 0 && t.Outer > w.Throat {
		c.odds("water.tube.outer", "water.throat", "is fatter than the throat", "give at most the throat's diameter")
	}
	if t.Inner >= t.Outer {
		c.odds("water.tube.inner", "water.tube.outer", "is not inside the tube's outside", "give less than the outer diameter")
	}
	if !(w.Bore > 0 && w.Volume > 0) {
		return
	}
	bore := math.Pi / 4 * w.Bore * w.Bore
	if chamber := w.Volume / bore; t.Length > chamber {
		c.odds("water.tube.length", "water.volume", "is longer than the chamber", fmt.Sprintf("give at most %.3g m, the volume over the bore's area", chamber))
		return
	}
	if tube := math.Pi / 4 * t.Outer * t.Outer * t.Length; w.Volume*(1-w.Fill) <= tube {
		c.odds("water.tube.length", "water.fill", "leaves no room for gas beside the liquid", "shorten the tube or lower water.fill")
	}
}

func (m *Motor) check(c *checker) {
	if m.Curve == nil {
		c.faults.Need("motor.curve", "name a CSV file with time_s,thrust_n")
	} else if !(m.Curve.Impulse() > 0) {
		c.add("motor.curve", "has no impulse", "give a curve whose thrust is above zero somewhere")
	}
	quantity.Check(&c.faults, m, motorFields)
	for i := range m.Delays {
		quantity.Check(&c.faults, &m.Delays[i], delayFields)
	}
}

func (r *Rocket) checkCanopies(c *checker) {
	if len(r.Canopies) > MaxCanopies {
		c.add("canopy", "are more than a rocket may carry here", fmt.Sprintf("give at most %d", MaxCanopies))
	}
	for i := range r.Canopies {
		p := &r.Canopies[i]
		quantity.Check(&c.faults, p, canopyFields, "canopy.", p.Name, ".")
		switch {
		case p.Diameter != 0 && p.Area != 0:
			c.add("canopy."+p.Name+".area", "is given beside the diameter", "give one of the two")
		case p.Diameter == 0 && p.Area == 0:
			c.faults.Need("canopy."+p.Name+".diameter", "give the nominal diameter or the nominal area")
		}
		p.Water.check(c, p.Name, "water")
		p.Motor.check(c, p.Name, "motor")
	}
}

func (r *Rocket) checkDay(c *checker) {
	quantity.Check(&c.faults, &r.Rail, railFields)
	if r.Rail.Length == 0 && (r.Power != WaterPower || r.Water == nil || r.Water.Tube == nil) {
		c.faults.Need("rail.length", "give the travel until the last rail button leaves the rail, at least 1 cm")
	}
	r.Site.Check(&c.faults)
	r.Wind.Check(&c.faults)
}
