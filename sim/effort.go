package sim

// leg is a part of a flight in the account of what it cost.
type leg uint8

const (
	onPad leg = iota
	onTube
	liquidGuided
	liquidFree
	gasChoked
	gasSubsonic
	motorRuns
	coasts
	falls
	fills
	descends
	legs
)

var legNames = [legs]string{"pad", "tube", "liquid guided", "liquid", "choked", "subsonic", "motor", "coast", "fall", "filling", "descent"}

// effort counts what a leg cost.
type effort struct {
	steps    int // accepted
	rejected int
	rates    int // calls of the right-hand side
}

// account begins a leg: calls so far belong to the one before.
func (r *run) account() {
	m := &r.model
	r.flight.effort[r.leg].rates += m.calls
	m.calls = 0
	switch {
	case m.held:
		r.leg = onPad
	case m.push == tubePush:
		r.leg = onTube
	case m.push.liquid() && m.guided:
		r.leg = liquidGuided
	case m.push.liquid():
		r.leg = liquidFree
	case m.push == chokedGas:
		r.leg = gasChoked
	case m.push == subsonicGas:
		r.leg = gasSubsonic
	case m.push == motorBurn:
		r.leg = motorRuns
	case m.open&^m.full != 0:
		r.leg = fills
	case m.open != 0:
		r.leg = descends
	case r.overTop:
		r.leg = falls
	default:
		r.leg = coasts
	}
}
