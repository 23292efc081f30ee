package proof

import (
	"math"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// partsTable sets every way in which the chamber can fail beside its strength.
func (p *proof) partsTable() page.Section {
	r := &p.Result
	s := page.Section{Name: "Parts at " + p.workingFigure()}
	if p.Service.Working == 0 {
		s.Name = "Parts"
	}
	g := page.Grid{Heads: []page.GridHead{page.Words("part"), page.Figures("stress"), page.Figures("strength"), page.Figures("use"), page.Words("strength is")}}
	for i := range r.Parts {
		x := &r.Parts[i]
		strength := "your own"
		if x.Typical {
			strength = "typical"
		}
		stress, use := p.Stress(x.Stress), p.Percent(x.Use)
		switch {
		case p.Service.Working == 0:
			stress, use = "-", "-"
		case math.IsInf(x.Use, 1):
			use = "over 100 %"
		}
		g.Rows = append(g.Rows, []string{x.Name, stress, p.Stress(x.Strength), use, strength})
	}
	s.Add(g)
	s.Add(page.Prose(p.weakestWords()))
	if r.HeatFactor != 1 || r.CycleFactor != 1 || r.BondFactor != 1 {
		s.Add(page.Prose(p.factorWords()))
	}
	if missing := p.undescribed(); missing != "" {
		s.Add(page.Alarm("Not described, and so not in any of this: " + missing + ". Ends and their bonds often go first."))
	}
	if lines := append(p.partNotes(), p.lapLines()...); len(lines) > 0 {
		s.Add(lines)
	}
	if w := p.Service.Working; w > 0 && r.Burst <= w {
		s.Add(page.Alarm("It is expected to burst before it reaches its working pressure."))
	}
	switch {
	case r.Cracks:
		s.Add(page.Alarm("At the working pressure the wall is strained by " + p.Percent(r.Strain) + ": " + crackWords))
	case r.CracksAtProof:
		s.Add(page.Alarm("At the proof pressure the wall is strained by " + p.Percent(r.ProofStrain) + ": " + crackWords))
	}
	return s
}

// undescribed lists what the file does not tell of.
func (p *proof) undescribed() string {
	var names []string
	for _, x := range []struct {
		name  string
		lacks bool
	}{{"forward closure", p.Vessel.Forward == nil}, {"aft closure", p.Vessel.Aft == nil}, {"retainer and its thread", p.Vessel.Thread == nil},
		{"boss that the retainer is screwed into", p.Vessel.Boss == nil && p.Vessel.Weeps()}} {
		if x.lacks {
			names = append(names, x.name)
		}
	}
	return strings.Join(names, ", ")
}

// crackWords tell what a strain at or beyond chamber.CrackStrain means.
const crackWords = "from 0.3 to 0.4 % (common practice, no source) resin cracks, and a wall without a liner weeps."

// lapLines tell of each lap what limits it, and from where more of it does nothing.
func (p *proof) lapLines() page.Points {
	var out page.Points
	for i := range p.Result.Laps {
		l := &p.Result.Laps[i]
		text := l.End + " bond: "
		switch {
		case math.IsNaN(l.Ends):
			out = append(out, text+"its ends are not known without chamber.modulus, and may carry less")
			continue
		case l.EndsGovern():
			text += "Hart-Smith's limit governs"
		default:
			text += "the average strength governs"
		}
		text += "; an overlap beyond " + p.Size(l.Useful) + " does nothing more"
		if p.Service.Working > 0 {
			text += "; elastic peak after Volkersen " + p.Stress(l.Peak) + ", reported, not judged: adhesives yield"
		}
		out = append(out, text)
	}
	return out
}

func (p *proof) weakestWords() string {
	r := &p.Result
	if r.Weakest < 0 {
		return "No part can be judged: no strength is known."
	}
	text := "Weakest: " + r.Parts[r.Weakest].Name + "."
	if reserve := r.Burst / p.Service.Working; p.Service.Working > 0 && reserve > 0 {
		text += " The burst pressure, " + words.BurstBasis(r.Basis, r.Stated) + ", is " + p.Number(reserve) + " times the working pressure."
	}
	var typical bool
	for i := range r.Parts {
		typical = typical || r.Parts[i].Typical
	}
	if typical {
		text += " Strengths marked typical are built in and unverified: test your own."
	}
	return text
}

// factorWords tell what heat and cycles leave.
func (p *proof) factorWords() string {
	r, v := &p.Result, &p.Vessel
	heat := p.Given(r.HeatFactor, "%") + " counts for heat"
	switch {
	case v.HeatFactor != 0:
		heat += " (as given)"
	case v.Temperature != 0:
		heat += " (wall at " + p.Warmth(v.Temperature) + ")"
	}
	cycles := p.Given(r.CycleFactor, "%") + " for cycles"
	if v.CycleFactor != 0 {
		cycles += " (as given)"
	} else {
		cycles += " (" + words.Plural(v.Cycles, "pressurisation") + ")"
	}
	return "Of the wall's strength " + heat + " and " + cycles + "; of the bonds' " + p.Given(r.BondFactor, "%") +
		" for both. They are in the strengths above. The retainer is taken as metal."
}

// partNotes gather the parts that one note is about.
func (p *proof) partNotes() page.Points {
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
	var out page.Points
	for _, n := range order {
		out = append(out, strings.Join(names[n], ", ")+": "+string(n))
	}
	return out
}
