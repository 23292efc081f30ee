package flight

import (
	"math"

	"ullage/sim"
	"ullage/tui/draw"
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
			long, _, _ := draw.EventName(fl, e)
			return long
		}
	}
	return ""
}
