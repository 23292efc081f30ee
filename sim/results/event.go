package results

import (
	"ullage/sim"
	"ullage/sim/rocket"
)

// events are what the events of a flight are called, but for those of canopies.
var events = map[sim.EventKind]func(p rocket.Power) string{
	sim.LiftOffEvent:   always("lift-off"),
	sim.TubeExitEvent:  always("tube exit"),
	sim.RailExitEvent:  always("rail exit"),
	sim.LiquidOutEvent: always("liquid out"),
	sim.BurnoutEvent:   EndOfThrust,
	sim.ApogeeEvent:    always("apogee"),
	sim.LandingEvent:   always("landing"),
}

func always(name string) func(rocket.Power) string {
	return func(rocket.Power) string { return name }
}

// EventName is what an event of a flight is called: as the group of its results, or by the
// canopy that opens or has filled.
func EventName(fl *sim.Flight, e sim.Event) string {
	if of, there := events[e.Kind]; there {
		return of(fl.Rocket.Power)
	}
	name := ""
	if e.Canopy < len(fl.Rocket.Canopies) {
		name = fl.Rocket.Canopies[e.Canopy].Name
	}
	if e.Kind == sim.CanopyFullEvent {
		return name + " full"
	}
	return name
}
