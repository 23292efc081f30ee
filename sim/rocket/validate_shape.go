package rocket

import (
	"cmp"
	"fmt"
	"math"

	"ullage/sim/airframe"
	"ullage/sim/quantity"
)

// standOut is how far a nozzle, a motor or what holds one may stand off the end of
// the body, m: a convergent part behind the tail does. Common sense, no source.
const standOut = 0.2

// checkShape checks the shape, the mass list, where things sit in it, and what only a
// rigid body feels.
func (r *Rocket) checkShape(c *checker) {
	r.checkAlignment(c)
	r.checkParts(c)
	s := r.Shape
	if s == nil {
		return
	}
	before := len(c.faults)
	if s.Diameter > 0 && r.Body.Diameter > 0 && s.Diameter != r.Body.Diameter {
		c.add("body.diameter", "differs from the shape's", "give both the largest outside diameter")
	}
	c.take(s.Check())
	if len(c.faults) > before {
		return // places and inertias have nothing to be held against
	}
	if len(r.Parts) > 0 {
		c.take(s.CheckParts(r.Parts))
	}
	r.checkBalance(c)
	if r.Water != nil {
		r.Water.checkPlaces(c, s)
	}
	if r.Motor != nil {
		r.Motor.checkPlaces(c, s)
	}
}

// checkAlignment checks how the thrust lies, the gust, and the choice of model.
func (r *Rocket) checkAlignment(c *checker) {
	switch r.Model {
	case "", PointModel:
	case RigidModel:
		switch {
		case r.Shape == nil:
			c.add("flight.model", "asks for a rigid body, and the file gives no shape", `give [nose], [[fins]], body.length and body.balance, or write "point"`)
		case !r.Balanced():
			c.odds("flight.model", "body.balance", "asks for a rigid body, and where it balances is not known", `give body.balance or a mass list of [[part]], or write "point"`)
		}
	default:
		c.add("flight.model", "is neither rigid nor point", `write "rigid" or "point"`)
	}
	quantity.Check(&c.faults, &r.Alignment, alignmentFields)
	quantity.Check(&c.faults, &r.Gust, gustFields)
}

// checkParts holds that the mass list has a mass, which it may have without a shape.
func (r *Rocket) checkParts(c *checker) {
	if r.Shape != nil {
		return // the shape looks at it
	}
	sound := true
	for i := range r.Parts {
		sound = quantity.Check(&c.faults, &r.Parts[i], partFields, "part.", r.Parts[i].Name, ".") && sound
	}
	if sound && len(r.Parts) > 0 && r.BodyMass() == 0 {
		c.add("part."+r.Parts[0].Name+".mass", "and all others are zero: the list has no mass", "weigh the parts")
	}
}

// checkBalance checks what was measured of the body.
func (r *Rocket) checkBalance(c *checker) {
	s, b := r.Shape, &r.Body
	if b.Balance > s.Length {
		c.odds("body.balance", "body.length", "out of range", "give where the body balances, from the tip of the nose, less than body.length, "+inMetres(s.Length))
		return
	}
	if !r.Balanced() || !(r.BodyMass() > 0) {
		return
	}
	pitch, roll := r.MostInertia()
	if b.Inertia > pitch && !c.faults.Has("body.inertia") {
		c.odds("body.inertia", "body.balance", "is more than a body of this mass, length and balance can have", "give at most "+inInertia(pitch)+"; check the unit, kg*m2")
	}
	if b.RollInertia > roll && !c.faults.Has("body.roll_inertia") {
		c.odds("body.roll_inertia", "body.diameter", "is more than a body of this mass and width can have", "give at most "+inInertia(roll)+"; check the unit, kg*m2")
	}
}

// MostInertia is the most that a body of its mass, length and balance can have in pitch and in roll,
// kg·m²: all mass at the two ends, and all of it as far out as anything reaches. It must be Balanced.
func (r *Rocket) MostInertia() (pitch, roll float64) {
	s := r.Shape
	at := cmp.Or(r.Body.Balance, s.Length/2)
	reach := s.Diameter / 2
	for i := range s.Fins {
		reach = math.Max(reach, s.Radius(s.Fins[i].Position+s.Fins[i].Root/2)+s.Fins[i].Span)
	}
	mass := r.BodyMass()
	return mass * (at*(s.Length-at) + reach*reach), mass * reach * reach
}

// checkPlaces holds that chamber, nozzle and fittings lie in the body.
func (w *Water) checkPlaces(c *checker, s *airframe.Shape) {
	exit := cmp.Or(w.Nozzle, s.Length)
	if w.Nozzle != 0 && !c.placed("water.nozzle", w.Nozzle, s, "the nozzle's exit") {
		return
	}
	if w.FittingsAt != 0 {
		c.placed("water.fittings_at", w.FittingsAt, s, "the balance point of the fittings")
	}
	if !(w.Bore > 0 && w.Volume > 0) {
		return
	}
	if length := w.Volume / (math.Pi / 4 * w.Bore * w.Bore); exit > 0 && length > exit {
		c.odds("water.volume", "water.bore", "makes a chamber longer than the rocket: "+inMetres(length)+" of it before the nozzle's exit at "+inMetres(exit),
			"check volume, bore, body.length and water.nozzle")
	}
}

// checkPlaces holds that motor and fittings lie in the body.
func (m *Motor) checkPlaces(c *checker, s *airframe.Shape) {
	aft := cmp.Or(m.Position, s.Length)
	if m.Position != 0 && !c.placed("motor.position", m.Position, s, "the motor's aft end") {
		return
	}
	if m.FittingsAt != 0 {
		c.placed("motor.fittings_at", m.FittingsAt, s, "the balance point of the fittings")
	}
	if aft > 0 && m.Length > aft {
		c.odds("motor.length", "motor.position", "reaches ahead of the tip of the nose", fmt.Sprintf("give at most %s, or correct motor.position", inMetres(aft)))
	}
}

// placed holds that something lies on the body or little off its end.
func (c *checker) placed(name string, at float64, s *airframe.Shape, what string) bool {
	ok := at <= s.Length+standOut
	if !ok {
		c.odds(name, "body.length", "is off the body, "+inMetres(s.Length)+" long", "give where "+what+" is, from the tip of the nose")
	}
	return ok
}

// inMetres writes a length for a message.
func inMetres(v float64) string { return fmt.Sprintf("%.4g m", v) }

func inInertia(v float64) string { return fmt.Sprintf("%.3g kg*m2", v) }
