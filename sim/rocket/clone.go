package rocket

import (
	"slices"

	"ullage/sim/chamber"
)

// Clone copies a rocket with everything that an input can change. Thrust curves
// are shared, since they do not change.
func (r *Rocket) Clone() *Rocket {
	c := new(Rocket)
	r.CopyTo(c)
	return c
}

// CopyTo is Clone into a rocket that is there, whose memory it uses again: for who flies
// thousands. That rocket is itself a clone, or empty: it shares nothing with another.
func (r *Rocket) CopyTo(c *Rocket) {
	old := *c
	*c = *r
	c.Body.Drag = recopied(old.Body.Drag, r.Body.Drag)
	c.Field.Boundary = recopied(old.Field.Boundary, r.Field.Boundary)
	c.Wind.Layers = recopied(old.Wind.Layers, r.Wind.Layers)
	c.Canopies = recopied(old.Canopies, r.Canopies)
	c.Parts = recopied(old.Parts, r.Parts)
	c.Holes = recopied(old.Holes, r.Holes)
	c.Water = copyWater(old.Water, r.Water)
	c.Motor = copyMotor(old.Motor, r.Motor)
	c.MotorMount = copied(old.MotorMount, r.MotorMount)
	c.Recovery = copied(old.Recovery, r.Recovery)
	c.Chamber = copyChamber(old.Chamber, r.Chamber)
	if r.Shape != nil {
		sections, fins := r.Shape.Sections[:0:0], r.Shape.Fins[:0:0]
		if old.Shape != nil {
			sections, fins = old.Shape.Sections, old.Shape.Fins
		}
		c.Shape = copied(old.Shape, r.Shape)
		c.Shape.Sections, c.Shape.Fins = recopied(sections, r.Shape.Sections), recopied(fins, r.Shape.Fins)
	}
}

func copyWater(to, from *Water) *Water {
	if from == nil {
		return nil
	}
	var tube *LaunchTube
	if to != nil {
		tube = to.Tube
	}
	to = copied(to, from)
	to.Tube = copied(tube, from.Tube)
	return to
}

func copyMotor(to, from *Motor) *Motor {
	if from == nil {
		return nil
	}
	var delays []float64
	if to != nil {
		delays = to.Delays
	}
	to = copied(to, from)
	to.Delays = recopied(delays, from.Delays)
	return to
}

func copyChamber(to, from *chamber.Chamber) *chamber.Chamber {
	if from == nil {
		return nil
	}
	var old chamber.Chamber
	if to != nil {
		old = *to
	}
	to = copied(to, from)
	to.Plies = recopied(old.Plies, from.Plies)
	to.Forward, to.Aft = copied(old.Forward, from.Forward), copied(old.Aft, from.Aft)
	to.Thread, to.Heating = copied(old.Thread, from.Thread), copied(old.Heating, from.Heating)
	to.Adhesive, to.Boss = copied(old.Adhesive, from.Adhesive), copied(old.Boss, from.Boss)
	if from.Booked != nil {
		var damage, keys []string
		if old.Booked != nil {
			damage, keys = old.Booked.Damage, old.Booked.Disagrees
		}
		to.Booked = copied(old.Booked, from.Booked)
		to.Booked.Damage, to.Booked.Disagrees = recopied(damage, from.Booked.Damage), recopied(keys, from.Booked.Disagrees)
	}
	return to
}

// copied is what a pointer points to, in the memory of another one if there is any.
func copied[T any](to, from *T) *T {
	if from == nil {
		return nil
	}
	if to == nil {
		to = new(T)
	}
	*to = *from
	return to
}

// recopied is the same for a slice.
func recopied[T any](to, from []T) []T {
	if len(from) == 0 {
		return slices.Clone(from) // nil stays nil
	}
	return append(to[:0], from...)
}
