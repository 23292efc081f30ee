package rocket

import (
	"cmp"

	"ullage/sim/airframe"
)

// DryBody is the body without its drive: what was measured as measured, the rest from
// the mass list, or estimated from the shape. The rocket must be Balanced.
func (r *Rocket) DryBody() airframe.Lump {
	b := &r.Body
	var l airframe.Lump
	if len(r.Parts) == 0 {
		l = airframe.Estimate(r.Shape, b.Mass, b.Balance)
	} else {
		l = airframe.Sum(r.Shape, r.Parts)
		if share := cmp.Or(b.Mass, l.Mass) / l.Mass; share != 1 { // the scales outrank the list
			l.Mass, l.Pitch, l.Roll = l.Mass*share, l.Pitch*share, l.Roll*share
		}
		l.At = cmp.Or(b.Balance, l.At)
	}
	l.Pitch = cmp.Or(b.Inertia, l.Pitch)
	l.Roll = cmp.Or(b.RollInertia, l.Roll)
	return l
}

// Balanced tells whether shape and balance are known well enough to speak of
// stability and to fly a rigid body.
func (r *Rocket) Balanced() bool {
	return r.Shape != nil && (r.Body.Balance > 0 || len(r.Parts) > 0)
}
