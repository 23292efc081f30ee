package words

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
)

// Remedy says in one sentence what would make a check pass, without a full stop.
func (p Printer) Remedy(m gates.Remedy) string {
	text := p.remedy(m)
	if m.And != nil {
		text += " together with " + p.remedy(*m.And)
	}
	return text
}

// nothing says how near the inputs come that were tried, and what would have to change.
func (p Printer) nothing(m gates.Remedy) string {
	text := "no input within reach passes it without failing another, one or two at a time"
	switch {
	case m.Input.Name == "motor.delay" && !math.IsNaN(m.From):
		text = "no delay of this motor comes nearer than " + p.Text(m.From, "m/s") + ", at " + p.Given(m.To, "s")
	case m.Input.Name != "" && len(m.Breaks) > 0:
		text = "no input within reach passes it alone: " + p.setInput(gates.Remedy{Input: m.Input, Rule: m.Rule, From: m.To, To: m.To}) + " would " + breaks(m)
	case m.Input.Name != "":
		text = "no input within reach passes it, one or two at a time"
	}
	if m.Why != "" {
		text += ": " + m.Why
	}
	return text
}

// breaks says what a value that passes would fail, and what fails already and would be worse.
func breaks(m gates.Remedy) string {
	var parts []string
	if lost := slices.DeleteFunc(slices.Clone(m.Breaks), func(name string) bool { return slices.Contains(m.Worse, name) }); len(lost) > 0 {
		parts = append(parts, "fail "+page.Listed(lost))
	}
	if len(m.Worse) > 0 {
		already := "which fails already"
		if len(m.Worse) > 1 {
			already = "which fail already"
		}
		parts = append(parts, "make "+page.Listed(m.Worse)+" worse, "+already)
	}
	return strings.Join(parts, ", and ")
}

// leftOpen is how a file says that nothing builds up in a chamber beside a motor.
const leftOpen = `chamber.beside_motor = "open"`

func (p Printer) remedy(m gates.Remedy) string {
	switch m.Kind {
	case gates.SetInput:
		return p.setInput(m)
	case gates.OtherDelay:
		return p.setInput(m) + ", which is not among those that can be had"
	case gates.Rebuild:
		return p.setInput(m) + ": another chamber, to be weighed and proved anew"
	case gates.TiltIntoWind:
		return "tilt the rail " + p.Given(m.To, "deg") + " into the wind instead of " + p.Given(m.From, "deg")
	case gates.AddNoseWeight:
		return p.Mass(m.To) + " of weight half-way along the nose"
	case gates.StrongerMount:
		return "a recovery mount that holds " + p.Force(m.To)
	case gates.ProveTo:
		return "prove the chamber with water to " + p.AtLeast(m.To) + " (ullage proof), then " + WriteProofDown(m.Booked)
	case gates.ProveFor:
		return "the chamber can be proved for " + p.AtMost(p.Floor(m.From)*m.To/m.From) + " at most: make it stronger or lower water.pressure, then prove it"
	case gates.ProveAgain:
		if m.Booked {
			return "prove the chamber again (ullage proof) and " + WriteProofDown(m.Booked)
		}
		return "prove the chamber again (ullage proof)"
	case gates.CutVent:
		if math.IsInf(m.To, 0) || math.IsNaN(m.To) {
			return "keep the chamber open beside the motor, and say so: " + leftOpen
		}
		return "a vent of " + p.Size(m.To) + " across, or leave the chamber open, and say so: " + leftOpen
	case gates.LeaveTheRail:
		return "it has to leave its rail to have it judged"
	case gates.Give:
		text := "give " + page.Listed(m.Keys) + " to have it judged"
		if m.Why != "" {
			text += ": " + m.Why
		}
		return text
	case gates.GiveCanopy:
		return "add a [[canopy]]: nothing slows the fall"
	case gates.GiveChamber:
		return "describe the chamber under [chamber], prove it with water (ullage proof) and " + WriteProofDown(m.Booked)
	case gates.GiveProof:
		return "prove the chamber with water (ullage proof) and " + WriteProofDown(m.Booked) + " to have it judged"
	case gates.GiveBurst:
		return "it held more than is estimated of it: correct its figures, or burst a chamber made alike with water and give chamber.burst"
	case gates.BuildAlike:
		return "another chamber made like this one, weighed, and proved to " + p.AtLeast(m.To) + ", as its pressure asks, and not much further: this one was proved too far, or is too old, for its burst"
	case gates.CheckBurst:
		return "was the chamber that burst made alike, and is this one described as it is?"
	case gates.CheckStrengths:
		return "what is given makes it " + p.Number(m.To) + " times as strong as its material's typical strengths do: look at their figures and units, or burst one made alike with water and give chamber.burst"
	case gates.GiveDate:
		if m.Booked {
			return "put the day of the proof right in the logbook and in chamber.proof_date, of which the older counts; none that lies ahead is judged"
		}
		return "give the day of the proof as chamber.proof_date, none that lies ahead, to have it judged"
	}
	return p.nothing(m)
}

// setInput tells the input's own words for a value that passes.
func (p Printer) setInput(m gates.Remedy) string {
	if m.Rule != "" { // all of it, since a file takes nothing less
		return m.Input.Name + " \"" + m.Rule + "\""
	}
	value := Ratio(m.To)
	if m.Input.Unit.Name != "" {
		exact := digits + 1 // it is typed: what is a round number in one system is none in the other, and beyond it another check may fail
		if m.Waits() {
			exact = digits
		}
		value = p.beyondTo(m.To, m.Input.Unit, m.To > m.From, exact)
	}
	word := "or more"
	switch {
	case m.To < m.From:
		word = "or less"
	case m.To == m.From:
		word = ""
	}
	if m.Input.Name == "motor.delay" {
		word = "" // either way from there it gets worse again
	}
	switch {
	case !m.Waits():
	case m.Input.Dimension == quantity.Wind:
		return "wait for a wind of " + value + " or less"
	default:
		return "wait for " + value + " times the wind of the layers or less"
	}
	return strings.TrimSpace(m.Input.Name + " " + value + " " + word)
}
