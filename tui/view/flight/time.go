package flight

import (
	"ullage/sim"
	"ullage/tui/draw"
)

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
