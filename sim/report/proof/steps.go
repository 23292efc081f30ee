package proof

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// stage is one step of pressure of the proof.
type stage struct {
	pressure float64 // Pa
	hold     float64 // s
}

// stages go up in even steps, the last of which is the proof.
func (p *proof) stages() []stage {
	out := make([]stage, chamber.ProofStages)
	for i := range out {
		out[i] = stage{p.proofPressure() * float64(i+1) / chamber.ProofStages, chamber.StageHold}
	}
	out[len(out)-1].hold = chamber.ProofHold
	return out
}

// hold is a time to wait.
func hold(seconds float64) string {
	if minutes := seconds / 60; minutes == math.Trunc(minutes) {
		return words.Plural(int(minutes), "minute")
	}
	return words.Plural(int(seconds), "second")
}

// procedure is the hydrostatic test, step by step. Without a pressure to prove to there
// is none.
func (p *proof) procedure() page.Section {
	s := page.Section{Name: "Proving it with water (hydrostatic test)"}
	if !p.provable() {
		why := "There is no working pressure to prove it for: give water.pressure."
		if p.Service.Working > 0 {
			why = "What it may be proved to is below the working pressure itself, so there is no procedure: build it stronger, or lower the pressure."
		}
		s.Add(page.Prose(why))
		return s
	}
	s.Add(page.Prose("Water only. Gas in the chamber would store " + p.timesMore() + ", and throw it. Common practice, no source; " +
		"where the law or a club has a procedure, that one holds. If anything is not as written here, release the pressure and stop."))
	if !p.Result.ProofEnough {
		s.Add(page.Alarm("This proof is for a working pressure of " + p.AtMost(p.proofPressure()*p.Result.HeatLeft/p.Result.ProofFactor) + " at most, not for " +
			p.workingFigure() + "."))
	}
	n := 1
	for _, x := range []struct {
		phase string
		does  []string
	}{{"Prepare", p.before()}, {"Fill", p.filling()}, {"Raise the pressure", p.raising()}, {"Release and look", p.after()}} {
		s.Add(page.Steps{Phase: x.phase, From: n, Does: x.does})
		n += len(x.does)
	}
	return s
}

// timesMore is how much more energy gas has than water at the proof pressure.
func (p *proof) timesMore() string {
	r := &p.Result
	if times := r.Pneumatic.Isentropic / r.Hydraulic.Isentropic; times > 0 && !math.IsInf(times, 0) {
		return quantity.Format(times, quantity.Usual(quantity.Number), 2) + " times the energy of water at the same pressure"
	}
	return p.Energy(r.Pneumatic.Isentropic) + ", many times the energy of water at the same pressure"
}

func (p *proof) before() []string {
	figure := p.proofFigure()
	full := p.Rough(1.3*p.proofPressure(), "bar") + " to " + p.Rough(2*p.proofPressure(), "bar")
	return []string{
		"Do it with two people: one pumps and reads, one writes and watches. Both wear eye and ear protection. Everybody else stays away.",
		"Look over wall, bonds and threads in good light. A chamber with cracks, dents, white patches or lifted edges is not tested.",
		"Close both ends as in flight: the same seal and the same thread, with a plug that holds " + figure + " in place of the nozzle. " +
			"Pump, hose, fittings and plug must be rated above " + figure + ".",
		"Use a gauge that was compared with another and whose full scale is " + full + ".",
		"Put the chamber, bleed upwards, behind a barrier that stops what flies: sand, brick or thick boards on all sides, with the ends " +
			"towards walls. Pump and gauge stand on the other side, at the full length of the hose. Nobody stands in line with the ends.",
	}
}

func (p *proof) filling() []string {
	gas := "No gas may stay"
	if times := p.Result.Pneumatic.Isentropic / p.Result.Hydraulic.Isentropic; times > 0 && !math.IsInf(times, 0) {
		// The bubble is pressed together as it is pumped up, at the temperature of the water.
		pressed := (p.Result.Proof + p.Service.Ambient) / p.Service.Ambient
		gas += ": a bubble of " + p.Rough(p.volume()/times*pressed, "mL") + ", once pressed, would store as much as water and wall together"
	}
	return []string{
		"Fill it completely with water, upright, through the lower end, with the bleed at the top open. Tap and turn it until no more " +
			"bubbles come, fill the hose too, then close the bleed. " + gas + ".",
		"Let it stand until water and wall are as warm as the room. Wipe the outside dry, so that any weeping shows.",
		"Measure the circumference at three places (or the diameter) and the length between two marks. Write them down.",
	}
}

// raising goes up the stages.
func (p *proof) raising() []string {
	d := &p.Result.Dilation
	out := []string{"Go behind the barrier, both of you. From here on nobody passes it until the pump is opened and the gauge has read nothing for a minute."}
	all := p.stages()
	for i, x := range all {
		text := "Raise the pressure slowly to " + p.Pressure(x.pressure) + " and hold for " + hold(x.hold) + "."
		switch i {
		case 0:
			text += " Listen, and watch the gauge. If it falls, release, then mend; nothing is tightened under pressure."
			if !math.IsNaN(d.Pump) {
				text += " If far more than " + p.Rough(d.Pump/float64(len(all)), "mL") + " of water went in by now, there is gas inside: release and bleed again."
			}
		case len(all) - 1:
			text = "Raise the pressure slowly to the proof pressure, " + p.proofFigure() + ", and no further. Hold for " + hold(x.hold) +
				". Write down the highest and the lowest reading."
		}
		out = append(out, text)
	}
	grown := "From where you stand, read the growth of circumference and length: by a pointer or a camera set up beforehand. " +
		"If that cannot be done from there, leave it out. Write down the water pumped in"
	if !math.IsNaN(d.Pump) {
		grown += "; " + p.Rough(d.Pump, "mL") + " is expected, and more for pump and hose"
	}
	return append(out, grown+".")
}

func (p *proof) after() []string {
	d := &p.Result.Dilation
	limit := "more stays in than " + p.Given(chamber.SetShare, "%") + " of what the chamber grew by, it has set"
	if !math.IsNaN(d.Set) {
		limit = "more stays in than " + p.Given(chamber.SetShare, "%") + " of what the chamber grew by (the water pumped in, less " + p.Rough(d.Water, "mL") +
			" for its own squeeze and what pump and hose take), or more than " + p.Rough(d.Set, "mL") + " if that is less, it has set"
	}
	booked := p.Rocket.Chamber != nil && p.Rocket.Chamber.Logbook != ""
	count := ""
	if !booked {
		count = " Add one to chamber.cycles."
	}
	return []string{
		"Release slowly to nothing, still from behind the barrier, and collect the water that comes back. If " + limit +
			": write it off (49 CFR 180.205, from memory).",
		"When the gauge has read nothing for a minute, go to it from the side and open the bleed first. Measure circumference and length again.",
		"Drain and dry it. Look at every bond and all of the wall, inside with a lamp, for what is listed below.",
		"If it passed, " + words.WriteProofDown(booked) + ". Write pressure and day on the chamber too." + count,
	}
}

// growth is what to expect at the proof pressure.
func (p *proof) growth() page.Section {
	if !p.provable() {
		return page.Section{}
	}
	s := page.Section{Name: "Expected at " + p.proofFigure()}
	d := &p.Result.Dilation
	if math.IsNaN(d.Pump) {
		s.Add(page.Prose("How much it grows is not known: give chamber.modulus. Measure it all the same; the share that stays is what counts."))
		return s
	}
	g := page.Grid{Heads: []page.GridHead{page.Words("what"), page.Figures("grows by"), page.Figures("may stay")}}
	row := func(name, unit string, v float64) {
		g.Rows = append(g.Rows, []string{name, p.Text(v, unit), p.Text(chamber.SetShare*v, unit)})
	}
	row("diameter outside", "mm", d.Diameter)
	row("circumference", "mm", math.Pi*d.Diameter)
	row("length of the tube", "mm", d.Length)
	row("volume of the chamber", "mL", d.Volume)
	s.Add(g, page.Prose("The water itself is pressed together by "+p.Liquid(d.Water)+": pump in "+p.Liquid(d.Pump)+
		" beyond a full chamber, "+p.Liquid(d.Water)+" of it and the growth come back. Estimates: pump and hose take some too, and what gas was left. "+
		"Water tells the set best; a tape hardly shows it."))
	return s
}

// writeOff is when a chamber has failed its proof.
func (p *proof) writeOff() page.Section {
	if !p.provable() {
		return page.Section{}
	}
	return page.Section{Name: "Write the chamber off if", Blocks: []page.Block{page.Points{
		"water comes through wall or bond anywhere, if only as a mist or a wet patch (weeping)",
		"it crackles more than a little on the way up, or at all while the pressure is held",
		"the gauge falls while it is held, and it is neither a fitting nor warmth",
		"more stays of its growth than the limit (set)",
		"wall or bond turned white, cracked, lifted, or shows a bulge",
		"it was dropped, dented or overheated since, or its history is not known",
	}, page.Prose("Cut a chamber that is written off in two, so that nobody fills it again. It is not proved a second time in the hope of a better result.")}}
}

// record is where the figures of the test go, on paper only.
func (p *proof) record() page.Section {
	if !p.provable() {
		return page.Section{}
	}
	s := page.Section{Name: "Record of the test", Print: true}
	s.Add(page.Grid{Heads: page.AllWords("", ""), Rows: [][]string{
		{"date", ""}, {"place", ""}, {"pumped and read by", ""}, {"written and watched by", ""}, {"gauge, compared on", ""},
		{"air and water temperature", ""}, {"passed or written off", ""}, {"signed", ""},
	}})
	readings := page.Grid{Heads: page.AllWords("stage", "hold", "begun at", "highest reading", "lowest reading", "water pumped in", "heard or seen")}
	for _, x := range p.stages() {
		readings.Rows = append(readings.Rows, []string{p.Pressure(x.pressure), hold(x.hold), "", "", "", "", ""})
	}
	s.Add(readings)
	measured := page.Grid{Heads: page.AllWords("measured", "before", "at the proof", "after", "stays")}
	for _, what := range []string{"circumference, forward", "circumference, middle", "circumference, aft", "length between marks", "water in, water back"} {
		measured.Rows = append(measured.Rows, []string{what, "", "", "", ""})
	}
	s.Add(measured)
	return s
}
