package proof

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/report/page"
)

// storedEnergy is what a burst would set free, and how far away from it to be.
func (p *proof) storedEnergy() page.Section {
	s := page.Section{Name: "Stored energy"}
	if p.Service.Working == 0 {
		return s
	}
	r := &p.Result
	g := page.Grid{Heads: []page.GridHead{page.Words(""), page.Figures("pressure"), page.Figures("isentropic"), page.Figures("Brode"), page.Figures("TNT"), page.Figures("stand-off")}}
	row := func(name, pressure string, e chamber.Stored, distance string) {
		g.Rows = append(g.Rows, []string{name, pressure, p.Energy(e.Isentropic), p.Energy(e.Brode), p.Mass(e.TNT), distance})
	}
	filled := "filled for flight"
	if p.Service.Fill == 0 {
		filled = "all gas at working"
	}
	row(filled, p.workingFigure(), r.Gas, p.Farther(r.Gas.StandoffFloor))
	if p.provable() {
		row("all gas at proof", p.proofFigure(), r.Pneumatic, p.Farther(r.Pneumatic.StandoffFloor))
		row("water at proof", p.proofFigure(), r.Hydraulic, "-")
	}
	s.Add(g)
	if p.provable() {
		s.Add(page.Prose("Gas at the proof pressure would store " + p.timesMore() + ": that is why it is proved with water, and never with gas. " +
			"No distance is given for water: be behind a barrier all the same, for a closure can fly."))
	}
	s.Add(page.Prose("Fragments go farther than any stand-off here: it is for the blast alone, 20 m times the cube root of twice the TNT in kg and never below 30 m " +
		"(ASME PCC-2, article 501, from memory). The energy is that of a gas that expands without loss, or Brode's (Physics of Fluids 2 (1959) 217). " +
		"Your range may ask for more."))
	return s
}

// sealed is what builds up in the closed chamber beside a motor.
func (p *proof) sealed() page.Section {
	h := p.Result.Heated
	if h == nil {
		return page.Section{}
	}
	s := page.Section{Name: "Sealed beside a motor"}
	v := p.Vessel.Heating
	reached := v.Reached(p.Service.AirTemperature)
	s.Add(page.Prose("Closed at " + p.Warmth(p.Service.AirTemperature) + ", its air at " + p.Warmth(reached) + " after " + p.Given(v.Time, "s") + ":"))
	g := page.Grid{Heads: []page.GridHead{page.Words("air inside"), page.Figures("gauge pressure"), page.Figures("of its limit"), page.Figures("vent hole")}}
	for _, x := range []struct {
		name          string
		pressure, use float64
		vent          chamber.Vent
	}{{"dry", h.Dry, h.DryUse, h.Vent}, {"damp, water left in it", h.Damp, h.DampUse, h.DampVent}} {
		hole := p.known(p.Size, x.vent.Hole, "none is enough")
		switch {
		case v.Rise == 0:
			hole = "-"
		case x.vent.Hole == 0:
			hole = "none needed"
		}
		g.Rows = append(g.Rows, []string{x.name, p.Pressure(x.pressure), p.Percent(x.use), hole})
	}
	s.Add(g)
	limit := "Its limit is the working pressure it can be proved for, " + p.known(p.AtMost, p.mostWorking(), gates.WordUnknown) + "."
	if v.Rise > 0 {
		limit += " The hole is one round one that keeps the rise below " + p.Given(v.Rise, "bar") + "."
	} else {
		limit += " Give chamber.heating.rise to have a vent worked out."
	}
	s.Add(page.Prose(limit + " Leave the chamber open beside a motor where you can."))
	if share := p.Vessel.HeatLeftAt(reached); share < p.Vessel.HeatLeft() {
		s.Add(page.Alarm("The shares are for wall and bonds as hot as the air, where " + p.Given(share, "%") + " of their strength counts."))
	}
	if p.Vessel.BesideMotor == chamber.Open {
		s.Add(page.Prose("The file has it open beside a motor (chamber.beside_motor): as long as it is, none of this builds up."))
	}
	if math.Max(h.DryUse, h.DampUse) > 1 {
		s.Add(page.Alarm("Sealed, it would go beyond that limit: vent it or leave it open."))
	}
	return s
}
