package main

import (
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// modelOption chooses the equations of motion. Without it the rocket's own model flies: a
// rigid body where its file gives a shape and a balance.
type modelOption struct {
	Point bool `help:"Fly a point mass, which is quicker and has no attitude, even where the file gives a shape."`
	Rigid bool `hidden:""`
}

// check refuses what has become the rule.
func (o modelOption) check() error {
	if o.Rigid {
		return badInput("--rigid: that is the rule now, a rocket whose file gives a shape and a balance flies as a rigid body; " +
			"leave it out, or give --point for a point mass")
	}
	return nil
}

// pointMass is what to set so that a point mass flies: nothing where none other can.
func pointMass(f *rocketfile.File) []string {
	if f.Rocket().Shape == nil {
		return nil
	}
	return []string{"flight.model=" + string(rocket.PointModel)}
}
