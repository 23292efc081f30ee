package card

import (
	"fmt"

	"ullage/sim/quantity"
	"ullage/sim/report/card/form"
	"ullage/sim/rocket"
)

// weighIn is what to put on the scales, with room for what they say.
func (p filler) weighIn() form.Block {
	r := p.Rocket
	day := p.Verdict.Day
	t := &form.Table{Columns: []form.Column{{Head: "part"}, {Head: "should be", Kind: form.Figures}, {Head: "measured", Kind: form.ByHand}}}
	add := func(part, text string) { t.Rows = append(t.Rows, form.Row{Cells: []string{part, text}}) }
	body := r.BodyMass()
	add("empty", p.weighed(body))
	empty, loaded := "balance, case burnt out", "balance, motor in"
	if r.Power == rocket.WaterPower {
		w := r.Water
		water := w.Fill * w.Volume * w.Density
		add("fittings of the drive", p.weighed(w.Fittings))
		add(fmt.Sprintf("water, %s of %s", p.Given(w.Fill, "%"), p.Given(w.Volume, "L")), p.poured(water, w.Fill*w.Volume))
		add("gas, not weighed", p.weighed(max(0, day.LiftOffMass-body-w.Fittings-water)))
		empty, loaded = "balance, water out", "balance, water in"
	} else {
		m := r.Motor
		add("fittings of the drive", p.weighed(m.Fittings))
		add("motor case", p.weighed(m.Case))
		add("propellant", p.weighed(m.Propellant))
	}
	add("lift-off", p.weighed(day.LiftOffMass))
	b := form.Block{Title: "weigh in", Table: t}
	if s := &day.Stability; s.Known {
		add(empty, p.Size(s.Dry.Balance))
		add(loaded, p.Size(s.Release.Balance))
		add("centre of pressure", p.Size(s.Release.PressureCentre))
		b.Notes = []string{"Balance and centre of pressure count from the tip of the nose; where they are marked on the body is measured."}
	}
	return b
}

// weighed is a mass to the gram, as a field scale shows it.
func (p filler) weighed(v float64) string {
	const small, large = 0.1, 10 // kg
	if p.System == quantity.US || v < small || v >= large {
		return p.Mass(v)
	}
	return grams(v)
}

func grams(v float64) string { return fmt.Sprintf("%.0f g", 1e3*v) }

// poured is water by mass, in grams whatever the system, and by volume.
func (p filler) poured(mass, volume float64) string {
	text := grams(mass)
	if p.System == quantity.US {
		return text + ", " + p.Mass(mass) + ", " + p.Text(volume, "L")
	}
	return text + ", " + fmt.Sprintf("%.0f mL", 1e6*volume)
}
