package rocket

import (
	"slices"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Answer is something that may be asked of a rocket. Each takes another part of its
// description, so that a rocket that is not all described yet gives some and not others.
type Answer int

// The answers.
const (
	ForFlight    Answer = iota // a flight on the drive that flies
	ForStability               // balance and margins on that drive
	ForChamber                 // strength of the chamber, its proof and what it stores
	ForCard                    // the page for the range officer, nothing on it left open
)

// Answers lists all of them.
func Answers() []Answer { return []Answer{ForFlight, ForStability, ForChamber, ForCard} }

// String is what the answer is about: "flight".
func (a Answer) String() string {
	return [...]string{"flight", "stability", "chamber", "card"}[a]
}

// Check tells all that keeps a rocket from an answer: what is missing of its description,
// which is marked so, and what is at odds with itself. It is nil when nothing is. Every
// fault has the dotted name of the input, or of the section, where it is to be mended.
//
// What the answer does not take may be missing, be it the drive that does not fly, the
// rail for stability, or all of the rocket but its chamber for that. A flight's is cheap:
// every flight begins with it.
func (r *Rocket) Check(a Answer) fault.List {
	var c checker
	switch a {
	case ForFlight:
		r.checkFlight(&c)
	case ForStability:
		r.checkStability(&c)
	case ForChamber:
		r.checkStrength(&c)
	case ForCard:
		r.checkCard(&c)
	}
	return c.faults
}

// FlightCheck is Check(ForFlight) for who flies thousands: it allocates nothing where nothing is wrong.
// The zero value is fit for use.
type FlightCheck struct{ checker checker }

// Of is what keeps a rocket from a flight.
func (k *FlightCheck) Of(r *Rocket) fault.List {
	k.checker.faults = nil
	r.checkFlight(&k.checker)
	return k.checker.faults
}

// checkStability asks for a shape, and for where body and drive have their mass.
func (r *Rocket) checkStability(c *checker) {
	r.checkDrives(c)
	r.checkBody(c)
	r.checkShape(c)
	if r.Shape == nil {
		c.faults.Need("body.length", "give the length from the tip of the nose to the aft end")
		c.faults.Need("nose", "add [nose] with shape and length")
	}
	if r.Body.Balance == 0 && len(r.Parts) == 0 {
		c.faults.Need("body.balance", "give where the body balances, or a mass list of [[part]]")
	}
}

// checkStrength asks for the chamber, and on water for what is filled into it.
func (r *Rocket) checkStrength(c *checker) {
	if r.Chamber == nil {
		c.faults.Need("chamber", "describe it: [chamber] with a material, and a wall or plies")
	}
	if r.Water != nil {
		quantity.Check(&c.faults, r.Water, filledFields)
	}
	r.checkChamber(c)
}

// checkCard asks for all that a flight is judged by.
func (r *Rocket) checkCard(c *checker) {
	r.checkFlight(c)
	r.checkStability(c)
	r.checkLimits(c)
	if r.Power == WaterPower {
		r.checkStrength(c)
		if r.Chamber != nil {
			r.checkProved(c)
		}
	} else {
		r.checkChamber(c)
	}
	if len(r.Canopies) == 0 {
		c.faults.Need("canopy", "add a [[canopy]]: nothing slows the fall")
	}
	if m := r.Recovery; m == nil || m.Pin == 0 && m.BondArea == 0 && m.Line == 0 {
		c.faults.Need("recovery", "describe the recovery mount: [recovery] with pin, bond_area or line")
	}
	if r.Field.Ceiling == 0 {
		c.faults.Need("field.ceiling", "give the height that the field is cleared for")
	}
	if !r.Field.Bounded() {
		c.faults.Need("field.radius", "give how far from the pad the field reaches, or its outline as field.boundary")
	}
	c.once()
}

// checkProved asks for a proof on record, and for what an estimate of the burst takes.
func (r *Rocket) checkProved(c *checker) {
	v := r.Chamber
	if v.Proof == 0 {
		c.faults.Need("chamber.proof", "prove the chamber with water, then give the pressure")
	}
	if v.ProofDate == "" {
		c.faults.Need("chamber.proof_date", "give the day of the proof")
	}
	if !v.BurstStated() {
		c.faults.Need("chamber.burst", `burst one made alike with water and give the pressure, or "estimated" where strengths of your own are all given`)
	}
	if v.Burst != 0 {
		return
	}
	if v.Forward == nil {
		c.faults.Need("chamber.forward", "describe the forward closure")
	}
	if v.Aft == nil {
		c.faults.Need("chamber.aft", "describe the aft closure")
	}
	if v.Thread == nil {
		c.faults.Need("chamber.thread", "describe the thread of the nozzle's retainer")
	}
}

// once leaves one of faults that are the same.
func (c *checker) once() {
	var kept fault.List
	for _, f := range c.faults {
		if !slices.Contains(kept, f) {
			kept = append(kept, f)
		}
	}
	c.faults = kept
}
