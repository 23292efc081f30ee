package card

import (
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report/card/form"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// order is the day, step by step. Common practice, no source.
func (p filler) order() form.Block {
	steps := p.motorSteps
	if p.Rocket.Power == rocket.WaterPower {
		steps = p.waterSteps
	}
	if !p.Verdict.Pass() {
		return form.Block{Title: "order of the day", Ticks: p.NoGo(&p.Verdict, "card")}
	}
	return form.Block{Title: "order of the day", Ticks: steps(), Notes: []string{"Common practice, no source; the rules of the range come first."}}
}

func (p filler) waterSteps() []string {
	r := p.Rocket
	service := r.Service()
	proof := "proof on record seen: " + p.ProofOnRecord(r)
	// A release that did not happen may still: it is vented through the line, never by hand.
	away := p.Farther(p.Chamber.Gas.StandoffFloor)
	water := service.Fill * service.Volume * r.Water.Density
	steps := []string{
		proof,
		"thread, bonds and skin looked at: no crack, no white patch, no edge that lifts",
		"recovery packed, what opens it set and tried, line and mount pulled at",
		"water weighed in: " + grams(water),
		"on the rail, buttons run free, tilt and heading set",
		"everyone " + p.Stand(p.clear()),
		"pressurised from afar to the gauge pressure above, the needle steady; nobody goes near any more",
		"sky and field looked at, the wind on a row without a mark",
		"count-down aloud, release",
	}
	return append(append(steps, words.NotReleased(away)...), "found: chamber open and empty before it is carried")
}

// chamberFails tells that the chamber is not to be filled to the pressure of the card.
func (p filler) chamberFails() bool {
	for i := range p.Verdict.Checks {
		if c := &p.Verdict.Checks[i]; c.About == gates.Chamber && !c.Pass {
			return true
		}
	}
	return false
}

func (p filler) motorSteps() []string {
	steps := []string{
		"motor and delay as on this card",
		"retainer on, the motor cannot slide either way",
		"recovery packed and shielded from the charge, line and mount pulled at",
	}
	if p.Rocket.Water != nil || p.Rocket.Chamber != nil {
		steps = append(steps, "chamber empty, dry and open to the air")
	}
	return append(steps,
		"on the rail, buttons run free, tilt and heading set",
		"igniter last, on the pad, launcher off and its leads shorted until then",
		"everyone "+p.Stand(p.clear()),
		"continuity looked at from there",
		"sky and field looked at, the wind on a row without a mark",
		"count-down aloud, launch",
		words.Misfire,
		"found: charge fired and motor cold before it is carried",
	)
}

// chamberCaution goes with the figures of a chamber.
const chamberCaution = "Laminates age, creep and soften with heat, and bonds fail at their edges: only a proof with water " +
	"tells what a chamber holds. Local codes and qualified people decide."

// cautions end the page.
func (p filler) cautions() form.Block {
	notes := words.Cautions(p.Rocket.Power)
	if p.Rocket.Power == rocket.WaterPower {
		notes = append(notes, chamberCaution)
	}
	return form.Block{Title: "cautions", Notes: []string{strings.Join(notes, " "), words.LeftOut(p.Rocket) + " " + words.Sources(&p.Verdict)}}
}
