package chamber

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// partLines are bars of how much of its strength the working pressure takes of every
// part, with a mark where proving takes it.
func (v *View) partLines() []string {
	const figure, word, least, most = 7, 5, 10, 60 // cells: the percentage, the verdict, the bar
	theme, res := v.Scene.Theme, &v.result
	names := 0
	for i := range res.Parts {
		names = max(names, draw.Width(res.Parts[i].Name))
	}
	room := v.Columns - 1 - names - 1 - figure - 1 - word // of bar and remarks
	remarks, widest := v.remarks(room - 2*least)
	cells := min(max(room-widest, least), most)
	factor := v.atProof()
	out := []string{theme.Paint(draw.Heading, theme.Fit(theme.Say(v.partsHeading(factor)), v.Columns))}
	for i := range res.Parts {
		p := &res.Parts[i]
		sign, text, lev := " ", gates.WordGood, gates.Good
		if v.overtaxed(p) {
			text, lev = gates.WordHigh, gates.Bad
		}
		if i == res.Weakest {
			sign = string(weakSign)
		}
		r := draw.Level(lev)
		line := theme.Paint(r, sign) + draw.Padded(p.Name, names) + " " + theme.Paint(r, v.bar(p.Use, p.Use*factor, cells)) +
			draw.Aligned(quantity.Format(p.Use, draw.Unit("%"), 2), figure) + " " + theme.Paint(r, draw.Padded(text, word)) +
			theme.Paint(draw.Dim, remarks[i])
		out = append(out, draw.PadPainted(line, v.Columns))
	}
	return out
}

// partsHeading explains the bars: as much of it as has room.
func (v *View) partsHeading(factor float64) string {
	at, sign := v.given(v.rocket.Service().Working, "bar"), string(weakSign)
	if factor == 0 {
		return "Strength taken at " + at + "; " + sign + " weakest"
	}
	proof := v.Scene.Theme.Bar + " in a proof at " + v.inUnit(v.result.Proof, "bar", 3)
	if full := "Strength taken at " + at + "; " + proof + "; " + sign + " weakest"; draw.Width(full) <= v.Columns {
		return full
	}
	return "At " + at + "; " + v.Scene.Theme.Bar + " in proof at " + v.inUnit(v.result.Proof, "bar", 3) + "; " + sign + " weakest"
}

// remarks are stress, strength and notes of every part, as much of that as has room for
// all of them, and the cells it takes.
func (v *View) remarks(room int) (texts []string, widest int) {
	theme := v.Scene.Theme
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
				text = draw.Aligned(v.bareStress(p.Stress), 8) + " of " + draw.Aligned(v.inUnit(p.Strength, "MPa", 3), 9) + draw.Padded(text, 9)
			}
			if p.Note != "" && detail > 2 {
				text += "  " + string(p.Note)
			}
			texts[i] = theme.Say(text)
			widest = max(widest, draw.Width(texts[i]))
		}
		if widest <= room {
			return texts, widest
		}
	}
	return make([]string, len(v.result.Parts)), 0
}

// bareStress is a stress without its unit.
func (v *View) bareStress(stress float64) string {
	return quantity.Format(stress, draw.Bare(v.Scene.Unit("MPa")), 3)
}

// atProof is how many times the working pressure proving takes; 0 when it cannot be told.
func (v *View) atProof() float64 {
	f := v.result.Proof / v.rocket.Service().Working
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return 0
	}
	return f
}

// overtaxed tells of a part that keeps the chamber from being proved for its working
// pressure: it would fail, or take more of an estimate than a proof may. Where a burst
// was measured, or a proof was held beyond the estimate, that outranks the estimate.
func (v *View) overtaxed(p *chamber.Part) bool {
	return p.Use >= 1 || v.result.Basis == chamber.FromEstimate && v.result.ProofFactor*p.Use > chamber.EstimatedShare
}

// bar is a bar with a mark at another share.
func (v *View) bar(share, mark float64, cells int) string {
	theme := v.Scene.Theme
	bar := []rune(plot.Bar(share, cells, theme.Charset))
	at := int(mark * float64(cells))
	if mark > 0 && at < len(bar) && bar[at] == ' ' {
		bar[at] = []rune(theme.Bar)[0]
	}
	return string(bar)
}
