package tui

import (
	"ullage/tui/view"
	"ullage/tui/view/airframe"
	"ullage/tui/view/bench"
	"ullage/tui/view/chamber"
	"ullage/tui/view/check"
	"ullage/tui/view/day"
	"ullage/tui/view/fill"
	"ullage/tui/view/flight"
	"ullage/tui/view/layup"
	"ullage/tui/view/log"
	"ullage/tui/view/motors"
	"ullage/tui/view/opening"
	"ullage/tui/view/pad"
	"ullage/tui/view/patterns"
	"ullage/tui/view/throats"
)

// views are the ways of looking at a rocket, in the order of their keys in the title. The
// first is shown at the start.
func views(k view.Keys, o Options) []view.View {
	return []view.View{
		flight.New(k),
		fill.New(k),
		throats.New(k),
		opening.New(k),
		motors.New(k),
		airframe.New(k),
		chamber.New(k),
		layup.New(k),
		patterns.New(k, o.Drawing),
		bench.New(k),
		check.New(k, check.Options{Clock: o.clock()}),
		day.New(k, day.Options{Forecast: o.Forecast, Clock: o.clock()}),
		pad.New(k, o.clock()),
		log.New(k, log.Options{Logs: o.Logs, Clock: o.clock()}),
	}
}
