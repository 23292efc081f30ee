package report

import (
	"fmt"

	"ullage/sim/rocket"
)

// study closes the report of a study: what the flights are, and the cautions.
func (s *sheet) study(r *rocket.Rocket, rigid bool) {
	flown := *r
	if r.Rigid() && !rigid {
		flown.Model = rocket.PointModel
		s.line("")
		s.hung("  ", "These are flights of a point mass; fly flies this rocket as a rigid body, as --rigid does here.")
	}
	s.closing(&flown)
}

// titleOf names a rocket and its drive.
func titleOf(r *rocket.Rocket) string {
	name := printable(r.Name)
	if name == "" {
		name = "A rocket without a name"
	}
	return name + " on " + string(r.Power) + " power"
}

// plural is a count with its noun.
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
