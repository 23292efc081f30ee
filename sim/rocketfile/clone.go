package rocketfile

import (
	"slices"

	"ullage/sim"
)

// Clone copies a rocket with everything that an input can change. Thrust curves
// are shared, since they do not change.
func Clone(r *sim.Rocket) *sim.Rocket { return clone(r) }

// clone copies a rocket with everything that can be changed in it.
func clone(r *sim.Rocket) *sim.Rocket {
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
	if r.Mount != nil {
		mount := *r.Mount
		c.Mount = &mount
	}
	c.Parts = slices.Clone(r.Parts)
	if r.Shape != nil {
		shape := *r.Shape
		shape.Sections = slices.Clone(r.Shape.Sections)
		shape.Fins = slices.Clone(r.Shape.Fins)
		c.Shape = &shape
	}
	return &c
}
