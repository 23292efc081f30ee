package tui

import (
	"time"

	"ullage/tui/view"
	"ullage/tui/view/airframe"
	"ullage/tui/view/chamber"
	"ullage/tui/view/check"
	"ullage/tui/view/fill"
	"ullage/tui/view/flight"
	"ullage/tui/view/layup"
	"ullage/tui/view/log"
	"ullage/tui/view/motors"
	"ullage/tui/view/opening"
	"ullage/tui/view/pad"
	"ullage/tui/view/throats"
)

// views are the ways of looking at a rocket, in the order of their keys in the title. The
// first is shown at the start.
func views(k view.Keys, clock func() time.Time, logs log.Options) []view.View {
	return []view.View{
		flight.New(k),
		fill.New(k),
		throats.New(k),
		opening.New(k),
		motors.New(k),
		airframe.New(k),
		chamber.New(k),
		layup.New(k),
		check.New(k),
		pad.New(k, clock),
		log.New(k, logs),
	}
}
