package checklist

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/report/layup"
	"ullage/sim/report/page"
	"ullage/sim/report/proof"
	"ullage/sim/report/words"
)

// layup is the order of work of the lay-up's own sheet.
func (w *writer) layup() {
	sheet, err := layup.For(w.Rocket, w.System)
	if err != nil {
		w.list.Notes = append(w.list.Notes, err.Error())
		return
	}
	w.fact("sizes and pots", "ullage layup has the cutting list and every pot; these are the steps")
	x := page.Section{Name: "Order of work"}
	x.Add(sheet.Work()...)
	w.list.whole = []page.Section{x}
}

// proof is the proof's own procedure.
func (w *writer) proof() {
	w.pressureAlarm()
	if text := w.chamberFails(); text != "" {
		w.fact("checks", text)
	}
	w.stands("pump and gauge", "behind the barrier, at the full length of the hose: one person")
	w.stands("writes, watches", "behind the barrier, beside the pump: one person")
	w.stands("everyone else", "out of sight of it, away; nobody in line with the ends")
	w.list.whole = proof.Procedure(w.Structure, w.System)
}

// leak is a test at the pressure of the flight with water, of a chamber that was proved: never beyond what that proof
// is for.
func (w *writer) leak() {
	r := w.Rocket
	proved := r.ProvedFor()
	if math.IsNaN(proved) {
		w.alarm("No proof of the chamber is on record: no leak test before it was proved with water (ullage checklist FILE proof).")
		w.add("What is left to do", "Prove it with water. The proof shows leaks too.")
		return
	}
	w.pressureAlarm()
	if text := w.chamberFails(); text != "" {
		w.alarm("No leak test by this file: " + text + ".")
		w.add("What is left to do", "Mend that, or prove the chamber anew: the proof shows leaks too (ullage checklist FILE proof).")
		return
	}
	at := math.Min(w.service(), proved)
	if !(at > 0) {
		at = proved
	}
	figure := w.AtMost(at)
	w.fact("test pressure", figure+", with water: the pressure of the flight, and never more than the "+w.AtMost(proved)+" that the proof on record is for")
	w.fact("proof on record", w.ProofOnRecord(r))
	w.cautioned()
	w.stands("pump and gauge", "behind the barrier, at the full length of the hose: one person")
	w.stands("everyone else", "away; nobody in line with the ends")
	full := w.Rough(1.3*at, "bar") + " to " + w.Rough(2*at, "bar")
	w.add("Prepare",
		"Look over wall, bonds, thread and seal in good light. "+w.ring()+" out of its groove: no cut, no flat, no grit; greased, and back without a twist. Damage, a blow or a hot day since the proof: prove it again instead.",
		"Close it as for the flight, nozzle end by its own seal, with a plug rated above "+figure+". Gauge compared with another, full scale "+full+".",
		"Fill it completely with water, bleed on top, tap and turn it until no bubbles come, close the bleed, wipe it dry. Water only: gas that leaks does so with all its energy behind it.",
		"Put it behind the barrier, ends towards walls. Go behind the barrier with the pump.",
	)
	minutes := words.Plural(chamber.ProofHold/60, "minute")
	w.add("Test",
		"Raise the pressure slowly to "+w.Rough(at/2, "bar")+". Hold for 1 minute and watch the gauge.",
		"Raise it slowly to "+figure+", and no further. Wait 1 minute for hose and wall to settle, then close the pump off and read the gauge. Read it again after "+minutes+".",
		"Write both readings down, with the temperature. A gauge that falls and goes on falling is a leak; one that falls, then stands, was the hose or warmth: test again.",
	)
	w.add("Release and look",
		"Release slowly to nothing from behind the barrier. When the gauge has read nothing for a minute, go to it from the side and open the bleed first.",
		"Wipe along seal, bonds and wall with dry paper: where it is wet, it leaks. A seal is changed. A bond or a wall that weeps is written off, or mended and proved again: nothing is tightened under pressure.",
		"Drain and dry it. Add one to chamber.cycles, or ullage record FILE test: it was under pressure.",
	)
	w.list.Print = []page.Section{{Name: "Record of the leak test", Print: true, Blocks: []page.Block{page.Grid{Heads: page.AllWords("", ""), Rows: [][]string{
		{"date, by", ""}, {"temperature", ""}, {"gauge after settling", ""}, {"gauge after " + minutes, ""}, {"wet where", ""}}}}}}
}

// chamberFails tells the checks about the chamber that fail or are not judged; empty where none is.
func (w *writer) chamberFails() string {
	return w.Outside(&w.Verdict, func(c *gates.Check) bool { return c.About == gates.Chamber })
}

// service is the pressure of the flight, gauge, Pa; 0 where the file does not fill it.
func (w *writer) service() float64 { return w.Rocket.Service().Working }
