package draw

import (
	"ullage/sim"
	"ullage/sim/results"
	"ullage/tui/plot"
)

// eventSigns are how an event is marked in short, and how much its label matters where
// room is scarce; none of priority 0 is marked on an axis.
var eventSigns = map[sim.EventKind]struct {
	short    string
	priority int
}{
	sim.TubeExitEvent:  {"tube", 2},
	sim.RailExitEvent:  {"rail", 3},
	sim.LiquidOutEvent: {"liq", 5},
	sim.BurnoutEvent:   {"end", 4},
	sim.ApogeeEvent:    {"apo", 7},
	sim.CanopyEvent:    {"", 6}, // its name
	sim.LandingEvent:   {"land", 1},
}

// EventName is how an event is marked: in words, in short, and how much its
// label matters where room is scarce.
func EventName(fl *sim.Flight, e sim.Event) (long, short string, priority int) {
	sign := eventSigns[e.Kind]
	long = Clean(results.EventName(fl, e))
	if sign.short == "" {
		sign.short = long
	}
	return long, sign.short, sign.priority
}

// EventMarks are the marks of a flight's events. Lift-off is where the axis
// begins, and a full canopy stands too close to its release.
func EventMarks(fl *sim.Flight, marks []plot.VerticalMark) []plot.VerticalMark {
	for _, e := range fl.Events {
		if long, short, priority := EventName(fl, e); priority > 0 {
			marks = append(marks, plot.VerticalMark{X: e.Time, Label: long, Short: short, Priority: priority})
		}
	}
	return marks
}
