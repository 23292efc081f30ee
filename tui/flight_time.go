package tui

import (
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/tui/plot"
)

// span is how much of the flight the time axis shows.
type span int

// The spans, from the shortest.
const (
	thrustSpan span = iota
	ascentSpan
	wholeSpan
	spans
)

func (s span) String() string { return [spans]string{"thrust", "ascent", "whole flight"}[s] }

// end is the last second of the span: a little after what it is named for, and
// the whole flight where that never came.
func (s span) end(fl *sim.Flight) float64 {
	const after = 1.08
	whole := fl.Duration()
	end := whole
	switch r := &fl.Results; {
	case s == thrustSpan && r.Burnout.Happened:
		end = r.Burnout.Time * after
	case s == ascentSpan && r.Apogee.Happened:
		end = r.Apogee.Time * after
	}
	if end = min(end, whole); end > 0 && !math.IsInf(end, 0) {
		return end
	}
	return 1
}

// cursor is a time, and perhaps the event whose time it is: then it stays with
// the event from flight to flight.
type cursor struct {
	time   float64
	stuck  bool
	kind   sim.EventKind
	canopy int
}

// follow brings the cursor to a new flight.
func (c *cursor) follow(fl *sim.Flight) {
	if c.stuck {
		for _, e := range fl.Events {
			if e.Kind == c.kind && e.Canopy == c.canopy {
				c.time = e.Time
			}
		}
	}
	c.time = min(max(c.time, 0), fl.Duration())
}

// jump goes to the next event (by = 1) or to the one before (by = −1). Events
// at one time count as one.
func (c *cursor) jump(fl *sim.Flight, by int) {
	best := -1
	for i, e := range fl.Events {
		if d := (e.Time - c.time) * float64(by); d > 1e-9 &&
			(best < 0 || d < (fl.Events[best].Time-c.time)*float64(by)) {
			best = i
		}
	}
	if best >= 0 {
		e := fl.Events[best]
		*c = cursor{time: e.Time, stuck: true, kind: e.Kind, canopy: e.Canopy}
	}
}

// event names the event at the cursor; empty when it stands at none.
func (c *cursor) event(fl *sim.Flight) string {
	if !c.stuck {
		return ""
	}
	for _, e := range fl.Events {
		if e.Kind == c.kind && e.Canopy == c.canopy && e.Time == c.time {
			long, _, _ := eventName(fl, e)
			return long
		}
	}
	return ""
}

// eventName is how an event is marked: in words, in short, and how much its
// label matters where room is scarce.
func eventName(fl *sim.Flight, e sim.Event) (long, short string, priority int) {
	canopy := ""
	if e.Canopy < len(fl.Rocket.Canopies) {
		canopy = clean(fl.Rocket.Canopies[e.Canopy].Name)
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

// eventMarks are the marks of a flight's events. Lift-off is where the axis
// begins, and a full canopy stands too close to its release.
func eventMarks(fl *sim.Flight, marks []plot.VerticalMark) []plot.VerticalMark {
	for _, e := range fl.Events {
		if long, short, priority := eventName(fl, e); priority > 0 {
			marks = append(marks, plot.VerticalMark{X: e.Time, Label: long, Short: short, Priority: priority})
		}
	}
	return marks
}
