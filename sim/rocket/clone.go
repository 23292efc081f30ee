package rocket

import (
	"slices"

	"ullage/sim/chamber"
)

// Clone copies a rocket with everything that an input can change. Thrust curves
// are shared, since they do not change.
func (r *Rocket) Clone() *Rocket {
	c := *r
	c.Body.Drag = slices.Clone(r.Body.Drag)
	c.Canopies = slices.Clone(r.Canopies)
	if r.Water != nil {
		water := *r.Water
		c.Water = &water
		if r.Water.Tube != nil {
			tube := *r.Water.Tube
			water.Tube = &tube
		}
	}
	if r.Motor != nil {
		motor := *r.Motor
		motor.Delays = slices.Clone(r.Motor.Delays)
		c.Motor = &motor
	}
	if r.MotorMount != nil {
		mount := *r.MotorMount
		c.MotorMount = &mount
	}
	c.Parts = slices.Clone(r.Parts)
	if r.Shape != nil {
		shape := *r.Shape
		shape.Sections = slices.Clone(r.Shape.Sections)
		shape.Fins = slices.Clone(r.Shape.Fins)
		c.Shape = &shape
	}
	if r.Chamber != nil {
		c.Chamber = cloneChamber(r.Chamber)
	}
	if r.Recovery != nil {
		mount := *r.Recovery
		c.Recovery = &mount
	}
	return &c
}

func cloneChamber(c *chamber.Chamber) *chamber.Chamber {
	out := *c
	out.Plies = slices.Clone(c.Plies)
	out.Forward, out.Aft = copied(c.Forward), copied(c.Aft)
	out.Thread, out.Heating = copied(c.Thread), copied(c.Heating)
	return &out
}

// copied is what a pointer points to, anew.
func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	c := *p
	return &c
}
