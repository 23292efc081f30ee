package draw

import (
	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/tui/plot"
)

// EventName is how an event is marked: in words, in short, and how much its
// label matters where room is scarce.
func EventName(fl *sim.Flight, e sim.Event) (long, short string, priority int) {
	canopy := ""
	if e.Canopy < len(fl.Rocket.Canopies) {
		canopy = Clean(fl.Rocket.Canopies[e.Canopy].Name)
	}
	switch e.Kind {
	case sim.LiftOffEvent:
		return "lift-off", "", 0
	case sim.TubeExitEvent:
		return "tube end", "tube", 2
	case sim.RailExitEvent:
		return "rail end", "rail", 3
	case sim.LiquidOutEvent:
		return "liquid out", "liq", 5
	case sim.BurnoutEvent:
		if fl.Rocket.Power == rocket.WaterPower {
			return "gas out", "gas", 4
		}
		return "burnout", "burn", 4
	case sim.ApogeeEvent:
		return "top", "top", 7
	case sim.CanopyEvent:
		return canopy, canopy, 6
	case sim.CanopyFullEvent:
		return canopy + " full", "", 0
	case sim.LandingEvent:
		return "landing", "land", 1
	}
	return "", "", 0
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
