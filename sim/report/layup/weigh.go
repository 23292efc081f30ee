package layup

import (
	"math"

	"ullage/sim/layup"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// weighIn is what the scales and the tape said, and what follows for the strength.
func (s *Sheet) weighIn() page.Section {
	x := page.Section{Name: "Weigh-in"}
	g := page.Grid{Heads: []page.GridHead{page.Words("part"), page.Figures("weighs"), page.Figures("meant"), page.Figures("wall"), page.Figures("fibre, scales"), page.Figures("by wall"), page.Figures("voids")}}
	var hints []page.Block
	for i := range s.plan.Parts {
		p := &s.plan.Parts[i]
		w := p.Weighed
		if w == nil {
			continue
		}
		wall := "-"
		if p.Measured > 0 {
			wall = s.Text(p.Measured, "mm")
		}
		g.Rows = append(g.Rows, []string{string(p.Name), s.Mass(w.Mass), s.Mass(p.Mass), wall, s.share(w.ByMass), s.share(w.ByWall), s.voids(w)})
		for _, h := range s.Hints(p) {
			hints = append(hints, page.Alarm(h))
		}
	}
	if len(g.Rows) == 0 {
		x.Add(page.Prose("Nothing is weighed yet: give layup.tube, layup.forward and layup.aft once the parts are trimmed, and chamber.wall as measured."))
	} else {
		x.Add(g)
		x.Add(hints...)
		x.Add(page.Prose("Fibre by the scales is what the volume would hold of it without voids; by wall, what the cloth fills of the wall as measured. Voids are the difference between the two " +
			"(ASTM D2734, from memory), and no better than the tape: " + s.Size(layup.TapeError) + " of wall makes some per cent. They are a hint, no measurement."))
	}
	x.Add(page.Facts(s.strength()))
	x.Add(page.Prose("Resin beyond what is meant is weight: it never makes a wall stronger here. The proof with water tells what holds."))
	return x
}

func (s *Sheet) share(v float64) string {
	if math.IsNaN(v) {
		return "unknown"
	}
	return s.Percent(v)
}

// voids are a share, or that there are none as far as can be told.
func (s *Sheet) voids(w *layup.Weighed) string {
	switch {
	case w.Voids < -2*w.Error:
		return "disagree"
	case w.Voids < 0:
		return "none"
	}
	return s.share(w.Voids)
}

// Hints say what a part's weight and wall tell of it; none where it is as it was meant.
func (s *Sheet) Hints(p *layup.Part) []string {
	w := p.Weighed
	if w == nil {
		return nil
	}
	name := "The " + string(p.Name)
	if math.IsNaN(w.ByMass) {
		return []string{name + " weighs no more than its cloth, " + s.Mass(p.Dry) + ": it was trimmed shorter, has fewer layers, or the scales are wrong. Nothing follows from it."}
	}
	var out []string
	const apart = 0.9 // of the share that is meant: a tenth less is rich in resin (common practice, no source)
	switch {
	case w.ByMass > layup.DryFrom:
		out = append(out, name+" has more fibre than a hand lay-up wets, "+s.Percent(w.ByMass)+": it is taken as starved of resin (common practice, from "+
			s.Given(layup.DryFrom, "%")+" on). Strengths of the file are not those of dry cloth: throw it away, or cut it up for coupons.")
	case w.ByMass < apart*s.plan.Fibre:
		out = append(out, name+" is rich in resin, by "+s.Mass(w.Mass-p.Mass)+": heavier, and no stronger.")
	}
	if key := layersKey(p.Name); p.Counted && key != "" && p.Measured > 0 {
		out = append(out, name+" is taken to have "+words.Plural(Layers(p), "layer")+", counted from its wall as measured: give "+key+", or resin counts as cloth.")
	}
	switch {
	case w.Voids < -2*w.Error:
		out = append(out, name+" is heavier than its wall has room for: weight and wall disagree, measure both again.")
	case w.Voids > layup.ManyVoids+w.Error:
		out = append(out, name+" has "+s.Percent(w.Voids)+" of voids by this, give or take "+s.Percent(w.Error)+": more than "+s.Given(layup.ManyVoids, "%")+
			" is a poor lay-up (common practice). Look at it against a lamp; voids are not counted in any strength here.")
	}
	return out
}

// strength is what the tube and the rest burst at by estimate.
func (s *Sheet) strength() [][2]string {
	t := &s.plan.Strength
	as := func(v float64) string {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return "unknown"
		}
		return "burst, an estimate, " + s.AtMost(v)
	}
	out := [][2]string{{"as planned", as(t.Planned)}}
	switch t.From {
	case layup.FromPlan:
		return append(out, [2]string{"as built", "not known before the wall is measured or the tube weighed"})
	case layup.FromMass:
		return append(out, [2]string{"as built", as(t.Built) + ", by the tube's weight, without voids; weakest " + t.Weakest + ". Measure the wall and give chamber.wall: everything else goes by that"})
	}
	return append(out, [2]string{"as built", as(t.Built) + ", by the wall as measured; weakest " + t.Weakest})
}

// record is what is written down by hand.
func (s *Sheet) record() page.Section {
	x := page.Section{Name: "Record", Print: true}
	x.Add(page.Grid{Heads: page.AllWords("", ""), Rows: [][]string{
		{"chamber, serial", page.Printable(s.vessel.Serial)}, {"date", ""}, {"laid up by", ""}, {"resin, batch", ""}, {"hardener, batch", ""}, {"cloth, batch", ""},
		{"room temperature", ""}, {"cured, from and to, at", ""},
	}})
	g := page.Grid{Heads: page.AllWords("part", "dry cloth", "first stir", "gelled", "wall, least and mean", "weight", "looked over by")}
	for i := range s.plan.Parts {
		g.Rows = append(g.Rows, []string{string(s.plan.Parts[i].Name), "", "", "", "", "", ""})
	}
	x.Add(g)
	return x
}
