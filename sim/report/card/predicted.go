package card

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/card/form"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/study"
)

// predicted is the day's flight with how sure its figures are.
func (p filler) predicted() form.Block {
	sc := &p.Scatter
	t := &form.Table{Columns: []form.Column{{Head: "figure"}, {Head: "predicted", Kind: form.Figures}, {Head: "spread"}}}
	for _, r := range p.figures() {
		value, spread := gates.WordNever, ""
		if v, happened := r.Defined(p.Verdict.Day); happened {
			value, spread = p.figure(r, v), p.deviation(r)
		}
		t.Rows = append(t.Rows, form.Row{Cells: []string{page.Printable(r.Label), value, spread}})
	}
	notes := fmt.Sprintf("a to b: 5 to 95 %% of %s, seed %d. ±: one standard deviation.", words.Plural(sc.Drawn, "flight"), p.Seed)
	if sc.Grounded > 0 {
		notes += fmt.Sprintf(" Rail exit %s in %d.", gates.WordNever, sc.Grounded)
	}
	if sc.Landing.Major > 0 {
		notes += " 90 % of the landings: " + signs(p.Ellipse(sc.Landing)) + "."
	}
	return form.Block{Title: "predicted", Table: t, Notes: []string{notes}}
}

// figures are the results on the card, in the order to read them; margins only where
// there are any.
func (p filler) figures() []*results.Row {
	all := results.For(p.Rocket)
	rows := func(names ...string) (out []*results.Row) {
		for _, name := range names {
			out = append(out, all.Must(name))
		}
		return out
	}
	out := rows("rail_exit.speed", "apogee.height", "apogee.time", "max.speed", "max.acceleration")
	for i := range all {
		if g := &all[i]; g.Canopy != "" {
			out = append(out, g.Row("airspeed"), g.Row("load"))
		}
	}
	out = append(out, rows("landing.vertical", "landing.energy", "landing.drift", "landing.time")...)
	for _, r := range rows("margin.release", "margin.rail_exit", "margin.liquid_out", "margin.burnout", "margin.least", "margin.at_angle") {
		if _, known := r.Defined(p.Verdict.Day); known {
			out = append(out, r)
		}
	}
	return out
}

// figure is a result as the card has it.
func (p filler) figure(r *results.Row, v float64) string {
	switch {
	case r.Name == "landing.drift":
		return p.landed(p.Verdict.Day.Landing)
	case r.Dimension == quantity.Acceleration:
		return p.Gravities(v)
	case r.Suffix == "calibres":
		return p.Number(v) + " cal"
	}
	return p.Row(r, v)
}

// landed is where a flight comes down from the pad.
func (p filler) landed(l sim.Landing) string {
	d := math.Hypot(l.East, l.North)
	if d < words.AtPad {
		return p.Height(0)
	}
	return toward(p.Height(d), words.Bearing(l.East, l.North))
}

// deviation is how far a result may be off: the range of nine flights in ten, or the
// standard deviation of the check of it; empty where there is neither.
func (p filler) deviation(r *results.Row) string {
	switch r.Name {
	case "rail_exit.speed":
		return p.band(r, p.Scatter.RailExit)
	case "apogee.height":
		return p.band(r, p.Scatter.Apogee)
	}
	for i := range p.Verdict.Checks {
		c := &p.Verdict.Checks[i]
		if c.Result == r.Name && c.SD > 0 && !math.IsInf(c.SD, 0) {
			return plusMinus(p.System.Unit(r.Metric()).FromSI(c.SD))
		}
	}
	return ""
}

// band is the range of nine flights in ten.
func (p filler) band(r *results.Row, s study.Summary) string {
	if s.Count == 0 {
		return ""
	}
	return p.BareRow(r, s.Q05) + " to " + p.BareRow(r, s.Q95)
}

// plusMinus is a deviation with two digits and no more than two decimals, since values
// have no more of them that count; empty when that leaves nothing.
func plusMinus(v float64) string {
	const fine = 0.1
	text, _, _ := strings.Cut(quantity.Format(v, quantity.Usual(quantity.Number), 2), " ")
	if v < fine {
		text = strconv.FormatFloat(v, 'f', 2, 64)
	}
	if text == "0.00" {
		return ""
	}
	return "± " + text
}

// chamber is what it was proved for, and what it stores on the pad.
func (p filler) chamber() form.Block {
	r := p.Rocket
	t := &form.Table{Columns: []form.Column{{}, {}}}
	add := func(what, text string) { t.Rows = append(t.Rows, form.Row{Cells: []string{what, text}}) }
	at := &p.Chamber
	burst, known := gates.WordUnknown, ""
	switch {
	case r.Chamber != nil && at.Burst > 0:
		burst, known = p.AtMost(at.Burst), ", "+words.BurstBasis(at.Basis, at.Stated)
	case r.Chamber != nil && at.Burst == 0:
		burst = gates.WordNone + ": too hot for its strength"
	}
	add("working", p.Given(r.Water.Pressure, "bar"))
	add("proof on record", p.ProofOnRecord(p.Rocket))
	p.history(add)
	add("burst"+known, burst)
	switch {
	case at.Cracks:
		add("resin", "cracks at the working pressure: an unlined wall weeps")
	case at.CracksAtProof:
		add("resin", "cracks in its proof: an unlined wall weeps")
	}
	add("energy of the gas", p.Energy(at.Gas.Isentropic))
	add("stand-off", p.Farther(at.Gas.StandoffFloor)+" for the blast; fragments go farther")
	return form.Block{Title: "chamber", Table: t}
}
