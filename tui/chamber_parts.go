package tui

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/tui/plot"
)

// partLines are bars of how much of its strength the working pressure takes of every
// part, with a mark where proving takes it.
func (v *chamberView) partLines() []string {
	const figure, word, least, most = 7, 5, 10, 60 // cells: the percentage, the verdict, the bar
	look, res := v.scene.look, &v.result
	names := 0
	for i := range res.Parts {
		names = max(names, width(res.Parts[i].Name))
	}
	room := v.columns - 1 - names - 1 - figure - 1 - word // of bar and remarks
	remarks, widest := v.remarks(room - 2*least)
	cells := min(max(room-widest, least), most)
	factor := v.atProof()
	out := []string{look.in(heading, look.fit(look.say(v.partsHeading(factor)), v.columns))}
	for i := range res.Parts {
		p := &res.Parts[i]
		sign, text, lev := " ", gates.WordGood, gates.Good
		if v.overtaxed(p) {
			text, lev = gates.WordHigh, gates.Bad
		}
		if i == res.Weakest {
			sign = string(weakSign)
		}
		r := level(lev)
		line := look.in(r, sign) + padded(p.Name, names) + " " + look.in(r, v.bar(p.Use, p.Use*factor, cells)) +
			aligned(quantity.Format(p.Use, unitNamed("%"), 2), figure) + " " + look.in(r, padded(text, word)) +
			look.in(dimText, remarks[i])
		out = append(out, padPainted(line, v.columns))
	}
	return out
}

// partsHeading explains the bars: as much of it as has room.
func (v *chamberView) partsHeading(factor float64) string {
	at, sign := v.given(v.rocket.Service().Working, "bar"), string(weakSign)
	if factor == 0 {
		return "Strength taken at " + at + "; " + sign + " weakest"
	}
	proof := v.scene.look.bar + " in a proof at " + v.inUnit(v.result.Proof, "bar", 3)
	if full := "Strength taken at " + at + "; " + proof + "; " + sign + " weakest"; width(full) <= v.columns {
		return full
	}
	return "At " + at + "; " + v.scene.look.bar + " proof " + v.inUnit(v.result.Proof, "bar", 3) + "; " + sign + " weakest"
}

// remarks are stress, strength and notes of every part, as much of that as has room for
// all of them, and the cells it takes.
func (v *chamberView) remarks(room int) (texts []string, widest int) {
	look := v.scene.look
	texts = make([]string, len(v.result.Parts))
	for detail := 3; detail > 0; detail-- {
		widest = 0
		for i := range v.result.Parts {
			p := &v.result.Parts[i]
			text := ""
			if p.Typical {
				text = "  typical"
			}
			if detail > 1 {
				text = aligned(v.bareStress(p.Stress), 8) + " of " + aligned(v.inUnit(p.Strength, "MPa", 3), 9) + padded(text, 9)
			}
			if p.Note != "" && detail > 2 {
				text += "  " + string(p.Note)
			}
			texts[i] = look.say(text)
			widest = max(widest, width(texts[i]))
		}
		if widest <= room {
			return texts, widest
		}
	}
	return make([]string, len(v.result.Parts)), 0
}

// bareStress is a stress without its unit.
func (v *chamberView) bareStress(stress float64) string {
	return quantity.Format(stress, bare(v.scene.units.Unit(unitNamed("MPa"))), 3)
}

// atProof is how many times the working pressure proving takes; 0 when it cannot be told.
func (v *chamberView) atProof() float64 {
	f := v.result.Proof / v.rocket.Service().Working
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return 0
	}
	return f
}

// overtaxed tells of a part that keeps the chamber from being proved for its working
// pressure: it would fail, or take more of an estimate than a proof may. Where a burst
// was measured, or a proof was held beyond the estimate, that outranks the estimate.
func (v *chamberView) overtaxed(p *chamber.Part) bool {
	return p.Use >= 1 || v.result.Basis == chamber.FromEstimate && v.result.ProofFactor*p.Use > chamber.EstimatedShare
}

// bar is a bar with a mark at another share.
func (v *chamberView) bar(share, mark float64, cells int) string {
	look := v.scene.look
	bar := []rune(plot.Bar(share, cells, look.charset))
	at := int(mark * float64(cells))
	if mark > 0 && at < len(bar) && bar[at] == ' ' {
		bar[at] = []rune(look.bar)[0]
	}
	return string(bar)
}
