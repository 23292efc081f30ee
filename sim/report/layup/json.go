package layup

import (
	"io"

	"ullage/sim/layup"
	"ullage/sim/report/machine"
)

type object = machine.Object

// WriteJSON writes the plan as one object in SI units; null is what is not known.
func (s *Sheet) WriteJSON(w io.Writer) error {
	doc := new(object).Add("name", s.rocket.Name).Add("material", s.vessel.Material)
	doc.Put("fibre_fraction", s.plan.Fibre)
	doc.Add("fibre_fraction_usual", s.plan.Usual)
	var parts machine.List
	for i := range s.plan.Parts {
		parts = append(parts, s.part(&s.plan.Parts[i]))
	}
	doc.Add("parts", parts)
	var rolls, bonds machine.List
	for _, r := range s.plan.Rolls {
		o := new(object).Add("ply", r.Ply).Add("sleeve", r.Sleeve)
		o.Put("cloth_kg_per_m2", r.Cloth)
		o.Put("area_m2", r.Area)
		o.Put("mass_kg", r.Mass)
		o.Put("length_m", r.Length)
		rolls = append(rolls, o)
	}
	for _, b := range s.plan.Bonds {
		o := new(object).Add("joint", b.Name)
		o.Put("area_m2", b.Area)
		o.Put("glue_line_m", b.GlueLine)
		mix(o, b.Mixed)
		bonds = append(bonds, o)
	}
	doc.Add("rolls", rolls).Add("bonds", bonds)
	doc.Put("peel_ply_m2", s.plan.Peel)
	mix(doc, s.plan.Mixed)
	t := &s.plan.Strength
	doc.Put("burst_planned_pa", t.Planned)
	doc.Put("burst_built_pa", t.Built)
	doc.Add("burst_built_from", t.From)
	return machine.WriteDocument(w, doc)
}

func mix(o *object, m layup.Mix) {
	o.Put("mixed_kg", m.Whole)
	o.Put("resin_kg", m.Resin)
	o.Put("hardener_kg", m.Hardener)
}

func (s *Sheet) part(p *layup.Part) *object {
	o := new(object).Add("part", p.Name).Add("layers", Layers(p))
	o.Put("wall_m", p.Wall)
	o.Put("area_m2", p.Area)
	o.Put("cloth_kg", p.Dry)
	o.Put("mass_kg", p.Mass)
	o.Put("peel_ply_m2", p.Peel)
	mix(o, p.Mixed)
	var plies, pots machine.List
	for i := range p.Plies {
		x := &p.Plies[i]
		y := new(object).Add("ply", x.Name).Add("first", x.First).Add("last", x.Last).Add("shape", x.Shape).Add("pieces", x.Pieces)
		y.Put("cloth_kg_per_m2", x.Cloth)
		y.Put("length_m", x.Length)
		y.Put("width_m", x.Width)
		y.Put("warp_rad", x.Warp)
		y.Put("area_m2", x.Area)
		plies = append(plies, y)
	}
	for _, q := range p.Pots {
		y := new(object).Add("first", q.First).Add("last", q.Last)
		mix(y, q.Mixed)
		pots = append(pots, y)
	}
	o.Add("plies", plies).Add("pots", pots)
	w := p.Weighed
	if w == nil {
		return o.Add("weighed", nil)
	}
	y := new(object)
	y.Put("mass_kg", w.Mass)
	y.Put("fibre_fraction_by_mass", w.ByMass)
	y.Put("fibre_fraction_by_wall", w.ByWall)
	y.Put("voids", w.Voids)
	y.Put("voids_error", w.Error)
	return o.Add("weighed", y)
}
