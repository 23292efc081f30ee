package report

import (
	"math"
	"strings"

	"ullage/sim/chamber"
)

// partsTable sets every way in which the chamber can fail beside its strength.
func (p *proof) partsTable() section {
	r := &p.Result
	at := p.pressure(p.Service.Working)
	if p.Service.Working == 0 {
		at = "no working pressure"
	}
	s := section{name: "Parts at " + at}
	g := grid{heads: []gridHead{{"part", true}, {"stress", false}, {"strength", false}, {"use", false}, {"strength is", true}}}
	for i := range r.Parts {
		x := &r.Parts[i]
		strength := "your own"
		if x.Typical {
			strength = "typical"
		}
		use := p.percent(x.Use)
		if math.IsInf(x.Use, 1) {
			use = "fails"
		}
		g.rows = append(g.rows, []string{x.Name, p.stress(x.Stress), p.stress(x.Strength), use, strength})
	}
	s.add(g)
	s.add(prose(p.weakestWords()))
	if r.HeatFactor != 1 || r.CycleFactor != 1 || r.BondFactor != 1 {
		s.add(prose(p.factorWords()))
	}
	if lines := p.partNotes(); len(lines) > 0 {
		s.add(lines)
	}
	switch {
	case r.Cracks:
		s.add(alarm("At the working pressure the wall is strained by " + p.percent(r.Strain) + ": " + crackWords))
	case r.CracksAtProof:
		s.add(alarm("At the proof pressure the wall is strained by " + p.percent(r.ProofStrain) + ": " + crackWords))
	}
	return s
}

// crackWords tell what a strain at or beyond chamber.CrackStrain means.
const crackWords = "from 0.4 % (common practice, no source) resin cracks, and a wall without a liner weeps."

func (p *proof) weakestWords() string {
	r := &p.Result
	if r.Weakest < 0 {
		return "No part can be judged: no strength is known."
	}
	text := "Weakest: " + r.Parts[r.Weakest].Name + "."
	if reserve := r.Burst / p.Service.Working; p.Service.Working > 0 && reserve > 0 {
		text += " What is counted on to burst it is " + p.number(reserve) + " times the working pressure."
	}
	var typical bool
	for i := range r.Parts {
		typical = typical || r.Parts[i].Typical
	}
	if typical {
		text += " Typical strengths are built in, " + typicalWords + "."
	}
	return text
}

// factorWords tell what heat and cycles leave.
func (p *proof) factorWords() string {
	r, v := &p.Result, &p.Vessel
	heat := p.percent(r.HeatFactor) + " of the wall's strength for heat"
	switch {
	case v.HeatFactor != 0:
		heat += " (as given)"
	case v.Temperature != 0:
		heat += " (wall at " + p.warmth(v.Temperature) + ")"
	}
	cycles := p.percent(r.CycleFactor) + " for cycles"
	if v.CycleFactor != 0 {
		cycles += " (as given)"
	} else {
		cycles += " (" + plural(v.Cycles, "pressurisation") + ")"
	}
	return "Strengths count " + heat + ", " + cycles + "; bonds " + p.percent(r.BondFactor) + " for both. The retainer is taken as metal."
}

// partNotes gather the parts that one note is about.
func (p *proof) partNotes() points {
	var order []chamber.Note
	names := map[chamber.Note][]string{}
	for i := range p.Result.Parts {
		x := &p.Result.Parts[i]
		if x.Note == "" {
			continue
		}
		if names[x.Note] == nil {
			order = append(order, x.Note)
		}
		names[x.Note] = append(names[x.Note], x.Name)
	}
	var out points
	for _, n := range order {
		out = append(out, strings.Join(names[n], ", ")+": "+string(n))
	}
	return out
}
