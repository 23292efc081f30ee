package chart

import (
	"strings"

	"ullage/sim"
	"ullage/sim/results"
)

// event is something that happened, as a page marks it.
type event struct {
	time  float64
	label string
	push  bool // it happened under thrust
}

// joined are the events to mark, in the order of time. Those of one moment share a
// mark. Release is where the axis begins; a canopy is full too soon after it opens.
func joined(fl *sim.Flight, look Look) []event {
	var out []event
	for _, e := range fl.Events {
		name, reading := look.event(fl, e)
		if name == "" {
			continue
		}
		push := e.Kind != sim.BurnoutEvent && (!fl.Burnout.Happened || e.Time < fl.Burnout.Time)
		if n := len(out); n > 0 && out[n-1].time == e.Time {
			// "liquid out and end of thrust, 0.41 s"
			before, after, _ := strings.Cut(out[n-1].label, ",")
			out[n-1].label = before + " and " + name + "," + after
			out[n-1].push = out[n-1].push && push
			continue
		}
		label := name + ", " + look.text(e.Time, "s")
		if reading != "" {
			label = name + " " + reading + ", " + look.text(e.Time, "s")
		}
		out = append(out, event{e.Time, label, push})
	}
	return out
}

// event names an event, and gives what is read at it; no name: not marked.
func (l Look) event(fl *sim.Flight, e sim.Event) (name, reading string) {
	r := &fl.Results
	name = results.EventName(fl, e)
	switch e.Kind {
	case sim.TubeExitEvent:
		return name, l.text(r.TubeExit.Speed, "m/s")
	case sim.RailExitEvent:
		return name, l.text(r.RailExit.Speed, "m/s")
	case sim.LiquidOutEvent, sim.BurnoutEvent:
		return name, ""
	case sim.ApogeeEvent:
		return name, l.text(r.Apogee.Height, "m")
	case sim.CanopyEvent:
		if e.Canopy < len(r.Canopies) {
			return name + " opens", "at " + l.text(r.Canopies[e.Canopy].Airspeed, "m/s")
		}
	case sim.LandingEvent:
		return name, l.text(r.Landing.Vertical, "m/s") + " down"
	}
	return "", ""
}
