package report

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gates"
)

// storedEnergy is what a burst would set free, and how far away from it to be.
func (p *proof) storedEnergy() section {
	s := section{name: "Stored energy"}
	if p.Service.Working == 0 {
		return s
	}
	r := &p.Result
	g := grid{heads: []gridHead{{"", true}, {"pressure", false}, {"isentropic", false}, {"Brode", false}, {"TNT", false}, {"stand-off", false}}}
	row := func(name, pressure string, e chamber.Stored, distance string) {
		g.rows = append(g.rows, []string{name, pressure, p.energy(e.Isentropic), p.energy(e.Brode), p.mass(e.TNT), distance})
	}
	filled := "filled for flight"
	if p.Service.Fill == 0 {
		filled = "all gas at working"
	}
	row(filled, p.workingFigure(), r.Gas, p.farther(r.Gas.StandoffFloor))
	if p.provable() {
		row("all gas at proof", p.proofFigure(), r.Pneumatic, p.farther(r.Pneumatic.StandoffFloor))
		row("water at proof", p.proofFigure(), r.Hydraulic, "-")
	}
	s.add(g)
	if p.provable() {
		s.add(prose("Gas at the proof pressure would store " + p.timesMore() + ": that is why it is proved with water, and never with gas. " +
			"No distance is given for water: be behind a barrier all the same, for a closure can fly."))
	}
	s.add(prose("Fragments go farther than any stand-off here: it is for the blast alone, 20 m times the cube root of twice the TNT in kg and never below 30 m " +
		"(ASME PCC-2, article 501, from memory). The energy is that of a gas that expands without loss, or Brode's (Physics of Fluids 2 (1959) 217). " +
		"Your range may ask for more."))
	return s
}

// sealed is what builds up in the closed chamber beside a motor.
func (p *proof) sealed() section {
	h := p.Result.Heated
	if h == nil {
		return section{}
	}
	s := section{name: "Sealed beside a motor"}
	v := p.Vessel.Heating
	s.add(prose("Closed at " + p.warmth(p.Service.AirTemperature) + ", its air at " + p.warmth(v.Temperature) + " after " + p.given(v.Time, "s") + ":"))
	g := grid{heads: []gridHead{{"air inside", true}, {"gauge pressure", false}, {"of its limit", false}, {"vent hole", false}}}
	for _, x := range []struct {
		name          string
		pressure, use float64
		vent          chamber.Vent
	}{{"dry", h.Dry, h.DryUse, h.Vent}, {"damp, water left in it", h.Damp, h.DampUse, h.DampVent}} {
		hole := p.known(p.size, x.vent.Hole, "none is enough")
		switch {
		case v.Rise == 0:
			hole = "-"
		case x.vent.Hole == 0:
			hole = "none needed"
		}
		g.rows = append(g.rows, []string{x.name, p.pressure(x.pressure), p.percent(x.use), hole})
	}
	s.add(g)
	limit := "Its limit is the working pressure it can be proved for, " + p.known(p.atMost, p.mostWorking(), gates.WordUnknown) + "."
	if v.Rise > 0 {
		limit += " The hole is one round one that keeps the rise below " + p.given(v.Rise, "bar") + "."
	} else {
		limit += " Give chamber.heating.rise to have a vent worked out."
	}
	s.add(prose(limit + " Leave the chamber open beside a motor where you can."))
	if share := p.Vessel.HeatLeftAt(v.Temperature); share < p.Vessel.HeatLeft() {
		s.add(alarm("The shares are for wall and bonds as hot as the air, where " + p.given(share, "%") + " of their strength counts."))
	}
	if math.Max(h.DryUse, h.DampUse) > 1 {
		s.add(alarm("Sealed, it would go beyond that limit: vent it or leave it open."))
	}
	return s
}
