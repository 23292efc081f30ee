package view

import (
	"context"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// Scene is what every view shows: the rocket as it stands and how it flies.
// What it points to is never changed.
type Scene struct {
	Ctx     context.Context // ends with the program
	File    *rocketfile.File
	Now     *Outcome        // the last good flight; nil before the first
	Older   bool            // that flight is of an older file: the present one has none, or none yet
	Kept    *Outcome        // kept for comparison; nil when there is none
	Corners *Work[Cornered] // go or no-go with the worst corners, often of the same flight
	// Mends judges the flight once more, with what would mend it, which takes longest; nil before the first.
	Mends func(context.Context) (Cornered, error)
	Units quantity.System
	Theme *draw.Theme
}

// Unit is the unit shown for one of the program's own, by its name; empty is no unit.
func (s *Scene) Unit(name string) quantity.Unit { return s.Units.Unit(draw.Unit(name)) }

// Cornered is go or no-go of one flight with the worst corners, and with mends where they were asked for.
type Cornered struct {
	Of      *Outcome
	Verdict gates.Verdict
}
