package proof

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// pressures say what bursts it as far as is known, and to what it may be proved.
func (p *proof) pressures() page.Section {
	s := page.Section{Name: "Burst and proof"}
	r, v := &p.Result, &p.Vessel
	limit := "half of an estimated burst, cold as a proof is made"
	switch r.Basis {
	case chamber.FromBurst:
		limit = words.Ratio(chamber.MeasuredShare) + " of a measured burst, cold"
	case chamber.FromProof:
		limit = "half of that: what it held is no measured burst"
	}
	f := page.Facts{
		{"burst", p.known(p.AtMost, r.Burst, gates.WordUnknown) + ", " + p.basisWords()},
		{"proof limit", p.known(p.AtMost, r.ProofLimit, gates.WordUnknown) + ", " + limit},
	}
	if p.Service.Working > 0 {
		f = append(f, [2]string{"proof wanted", p.AtLeast(r.ProofWanted) + ", " + words.Ratio(r.ProofFactor) + " times the working pressure" + p.coldShare()})
		if r.Proof > 0 {
			f = append(f, [2]string{"prove to", p.proofFigure() + p.proofWord()})
		}
	}
	f = append(f, [2]string{"most working", p.known(p.AtMost, p.mostWorking(), gates.WordUnknown) + ", what it can be proved for"})
	on := gates.WordNone + ": once it is proved, " + words.WriteProofDown(v.Logbook != "")
	if v.Proof > 0 {
		date := "no date given"
		if v.ProofDate != "" {
			date = "on " + page.Printable(v.ProofDate)
		}
		on = p.Given(v.Proof, "bar") + ", " + date + ": for " + p.AtMost(r.MostOnRecord) + " of working pressure at most"
		if p.Service.Working > 0 {
			word, _ := gates.LimitFor(p.Rocket, gates.LimitProof).Judge(gates.ProofRatio(p.Rocket))
			on += ", " + word
		}
	}
	f = append(f, [2]string{"proof on record", on})
	s.Add(f)
	if b := v.Booked; b != nil && b.Missing == "" {
		s.Add(page.Facts{{"logbook", words.Plural(b.Cycles, "time") + " under pressure, " + words.Plural(b.Since, "time") + " since the proof"}})
	}
	for _, text := range append(words.Booked(v), p.proofAlarms()...) {
		s.Add(page.Alarm(text))
	}
	if r.ProofFactor < chamber.ProofFactor {
		s.Add(page.Alarm("The file asks for a proof of " + words.Ratio(r.ProofFactor) + " times the working pressure only (limits.proof_factor): common practice is " +
			words.Ratio(chamber.ProofFactor) + " times."))
	}
	s.Add(page.Prose("Pressures are gauge. Factors and shares are common practice, no source. " + p.coldWords()))
	return s
}

// coldShare says what a cold proof has to make up for.
func (p *proof) coldShare() string {
	if left := p.Result.HeatLeft; left > 0 && left < 1 {
		return ", over the " + p.Percent(left) + " that heat leaves of a cold strength"
	}
	return ""
}

// mostWorking is the working pressure that the limit allows a proof for, of the limit as
// it is shown, so that the two agree on paper.
func (p *proof) mostWorking() float64 {
	return p.Floor(p.Result.ProofLimit) * p.Result.HeatLeft / p.Result.ProofFactor
}

// basisWords say what the burst pressure rests on.
func (p *proof) basisWords() string {
	v, r := &p.Vessel, &p.Result
	less := ""
	if share := math.Min(r.HeatFactor*r.CycleFactor, r.BondFactor); share < 1 {
		less = ", less what heat and cycles take"
	}
	switch r.Basis {
	case chamber.FromBurst:
		return "from " + p.Given(v.Burst, "bar") + " measured on a chamber made alike" + less
	case chamber.FromProof:
		text := "the proof it held" + less
		if !math.IsNaN(r.Estimate) {
			text += "; the estimate, " + p.Pressure(r.Estimate) + ", is lower"
		}
		return text
	}
	text := "an estimate"
	if r.Weakest >= 0 {
		text += " from its weakest part, " + r.Parts[r.Weakest].Name
	}
	if p.Typical() {
		text += "; its strength is " + typicalWords
	}
	if !r.Stated {
		text += "; the file does not state chamber.burst, a measured one or that the estimate counts: not judged"
	}
	return text
}

// provable tells whether there is a pressure to prove to. One below the working pressure
// would teach nothing.
func (p *proof) provable() bool {
	r := &p.Result
	return r.Proof > 0 && !math.IsInf(r.Proof, 0) && r.Proof >= p.Service.Working
}

// proofFigure is the pressure to prove to: all that is wanted, and never over the limit.
func (p *proof) proofFigure() string { return p.ProofFigure(&p.Result) }

func (p *proof) proofPressure() float64 { return p.ProofPressure(&p.Result) }

func (p *proof) proofWord() string {
	if p.proofPressure() >= p.Result.ProofWanted*(1-1e-9) {
		return ", " + gates.WordGood + ": within the limit"
	}
	return ", " + gates.WordLow + ": the limit allows no more"
}

// proofAlarms are what stands in the way of a proof.
func (p *proof) proofAlarms() []string {
	r := &p.Result
	if r.Burst == 0 {
		return []string{"No strength is left at this wall temperature: keep it without pressure."}
	}
	var out []string
	v := &p.Vessel
	switch {
	case r.Basis == chamber.FromBurst && r.ColdBurst > gates.FarApart*r.ColdEstimate:
		out = append(out, "The burst that was measured is "+p.Number(r.ColdBurst/r.ColdEstimate)+" times what is estimated of this chamber: was that one really made alike, "+
			"and is this one described as it is?")
	case r.Basis == chamber.FromProof:
		out = append(out, "It held "+p.Given(v.Proof, "bar")+", more than is estimated of it: a figure given is too low, or it had luck. Correct the figures, "+
			"or burst one made alike with water and give chamber.burst. Until then a new proof stops at half of what it held.")
	case v.Proof > r.ProofLimit:
		out = append(out, "The proof on record is over today's limit, for heat, for age or for its figures: do not go there again.")
	}
	if p.Service.Working > 0 && !r.ProofEnough {
		text := "The limit forbids the proof that is wanted. It can be proved to " + p.AtMost(r.ProofLimit) +
			" and used at " + p.AtMost(p.mostWorking()) + " at most: lower the working pressure"
		if r.Weakest >= 0 {
			text += ", or strengthen what is weakest, " + r.Parts[r.Weakest].Name
		}
		if r.Basis == chamber.FromEstimate {
			text += ", or burst one made alike with water and give chamber.burst"
		}
		out = append(out, text+".")
	}
	return out
}

// coldWords tell what a cold proof is worth to a warm chamber.
func (p *proof) coldWords() string {
	text := "A proof tells of the day it was made; ullage check judges its age."
	if h := p.Vessel.HeatLeft(); h > 0 && h < 1 {
		text = "A proof is made cold: at its working temperature this chamber has " + p.Percent(h) + " of that strength, and its proof on record counts for so much less."
	}
	return text
}
