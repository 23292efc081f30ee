package rocket

import (
	"math"

	"ullage/sim/quantity"
)

// AroundMount is the inside diameter of the tube around the motor mount, m; 0 where nothing
// says so.
func (r *Rocket) AroundMount() float64 {
	switch {
	case r.MotorMount != nil && r.MotorMount.Within != 0:
		return r.MotorMount.Within
	case r.Water != nil && r.Water.Bore > 0:
		return r.Water.Bore
	}
	return 0
}

// checkBench checks what drawings alone are made from.
func (r *Rocket) checkBench(c *checker) {
	c.take(r.Bench.Check())
	r.checkMount(c)
	r.checkHoles(c)
	for i := range r.Canopies {
		r.Canopies[i].checkSewing(c)
	}
}

// checkMount holds that what centres the motor mount fits between it and the body.
func (r *Rocket) checkMount(c *checker) {
	m := r.MotorMount
	if m == nil {
		return
	}
	if m.Liner != 0 && m.Diameter > 0 && m.Liner >= m.Diameter {
		c.add("motor_mount.liner", "is as wide as the mount or wider", "give the inside diameter of the liner, or leave it out where there is none")
	}
	if bore := m.Bore(); m.Retainer != 0 && bore > 0 && m.Retainer >= bore {
		c.add("motor_mount.retainer", "is as wide as what the motor slides into, and holds nothing", "give the clear opening through it: less than the motor, more than its nozzle")
	}
	if m.Within != 0 && r.Body.Diameter > 0 && m.Within > r.Body.Diameter {
		c.add("motor_mount.within", "is wider than the body", "give the inside diameter of the tube around the mount")
	}
	if around := r.AroundMount(); m.Wall != 0 && around != 0 && m.Diameter+2*m.Wall > around {
		c.add("motor_mount.wall", "makes the mount wider than the tube around it", "check motor_mount.diameter, wall and within")
	}
}

// checkHoles holds that what is drilled into the body lies on it.
func (r *Rocket) checkHoles(c *checker) {
	for i := range r.Holes {
		h := &r.Holes[i]
		name := "hole." + h.Name + "."
		if !quantity.Check(&c.faults, h, holeFields, name) || !(r.Body.Diameter > 0) {
			continue
		}
		if girth := math.Pi * r.Body.Diameter; float64(h.Number())*h.Diameter > girth {
			c.add(name+"diameter", "leaves no wall between them", "give fewer or smaller ones")
		}
		s := r.Shape
		if s == nil || !(s.Length > 0) {
			continue
		}
		if half := math.Max(h.Length, h.Diameter) / 2; h.Position-half < s.Nose.Length || h.Position+half > s.Length {
			c.add(name+"position", "is not on the body behind the nose", "give a place between nose.length and body.length, from the tip of the nose")
		}
	}
}

// checkSewing holds a canopy's construction.
func (k *Canopy) checkSewing(c *checker) {
	switch k.Shape {
	case "", FlatCanopy, HemisphereCanopy, EllipsoidCanopy:
	default:
		c.add("canopy."+k.Name+".shape", "is not a shape known here", "write flat, hemisphere or ellipsoid")
	}
	if d := k.NominalDiameter(); d > 0 && k.Vent >= d/2 {
		c.add("canopy."+k.Name+".vent", "is more than half the canopy", "give the diameter of the opening at its top")
	}
}
