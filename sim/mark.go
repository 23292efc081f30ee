package sim

// EventKind names what an Event marks.
type EventKind int

// The events of a flight, in no order.
const (
	LiftOffEvent EventKind = iota
	TubeExitEvent
	RailExitEvent
	LiquidOutEvent
	BurnoutEvent
	ApogeeEvent
	CanopyEvent     // a canopy is released
	CanopyFullEvent // a canopy has filled
	LandingEvent
)

// Event marks a moment on the time axis.
type Event struct {
	Kind   EventKind
	Canopy int // index into Rocket.Canopies for the canopy events
	Time   float64
	Height float64
}
