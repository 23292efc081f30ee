package report

import (
	"ullage/sim/rocket"
)

// study closes the report of a study: what the flights are, and the cautions.
func (s *sheet) study(r *rocket.Rocket, rigid bool) {
	flown := *r
	if r.Rigid() && !rigid {
		flown.Model = rocket.PointModel
		s.Line("")
		s.Hung("  ", "These are flights of a point mass; fly flies this rocket as a rigid body, as --rigid does here.")
	}
	s.closing(&flown)
}
