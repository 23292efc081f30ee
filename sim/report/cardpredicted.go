package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/card"
	"ullage/sim/study"
)

// Keys of checks that are no limit's.
const (
	ceilingCheck = "ceiling"
	radiusCheck  = "radius"
	marginCheck  = "margin."
)

// predicted is the day's flight with how sure its figures are.
func (p cardPage) predicted() card.Block {
	day, sc := p.Verdict.Day, &p.Scatter
	t := &card.Table{Columns: []card.Column{{Head: "figure"}, {Head: "predicted", Kind: card.Figures}, {Head: "spread"}}}
	add := func(figure string, happened bool, value, spread string) {
		if !happened {
			value, spread = gates.WordNever, ""
		}
		t.Rows = append(t.Rows, card.Row{Cells: []string{figure, value, spread}})
	}
	add("rail exit speed", day.RailExit.Happened, p.speed(day.RailExit.Speed), p.band(sc.RailExit, "m/s"))
	add("apogee", day.Apogee.Happened, p.height(day.Apogee.Height), p.band(sc.Apogee, "m"))
	add("time to apogee", day.Apogee.Happened, p.time(day.Apogee.Time), "")
	add("greatest speed", true, p.speed(day.Max.Speed), "")
	add("greatest acceleration", true, p.gravities(day.Max.Acceleration), "")
	for i := range day.Canopies {
		c := &day.Canopies[i]
		name := printable(c.Name)
		add("airspeed as "+name+" opens", c.Opened, p.speed(c.Airspeed), p.deviation(gates.LimitOpening+"."+c.Name, "m/s"))
		add("opening load of "+name, c.Opened, p.force(c.Load), p.deviation(gates.LimitMount+"."+c.Name, "N"))
	}
	l := day.Landing
	add("landing speed, down", l.Happened, p.speed(l.Vertical), p.deviation(gates.LimitLanding, "m/s"))
	add("landing energy", l.Happened, p.energy(l.Energy), p.deviation(gates.LimitEnergy, "J"))
	add("drift", l.Happened, p.landed(l), p.deviation(radiusCheck, "m"))
	add("flight time", l.Happened, p.time(l.Time), "")
	if s := &day.Stability; s.Known {
		for _, x := range []struct {
			name, key string
			at        sim.StabilityAt
		}{
			{"margin at release", "release", s.Release}, {"margin at rail exit", "rail-exit", s.RailExit},
			{"margin at liquid out", "liquid-out", s.LiquidOut}, {"margin at burnout", "burnout", s.Burnout},
		} {
			if x.at.Happened {
				add(x.name, true, p.number(x.at.Margin)+" cal", p.deviation(marginCheck+x.key, ""))
			}
		}
		add("least margin on the way up", true, p.number(s.Least)+" cal", p.deviation(marginCheck+"least", ""))
	}
	notes := fmt.Sprintf("a to b: 5 to 95 %% of %s, seed %d. ±: one standard deviation.", plural(sc.Drawn, "flight"), p.Seed)
	if sc.Grounded > 0 {
		notes += fmt.Sprintf(" Rail exit %s in %d.", gates.WordNever, sc.Grounded)
	}
	if sc.Landing.Major > 0 {
		notes += " 90 % of the landings: " + signs(ellipseText(p.printer, sc.Landing)) + "."
	}
	return card.Block{Title: "predicted", Table: t, Notes: []string{notes}}
}

// landed is where a flight comes down from the pad.
func (p cardPage) landed(l sim.Landing) string {
	d := math.Hypot(l.East, l.North)
	if d < atPad {
		return p.height(0)
	}
	return toward(p.height(d), bearing(l.East, l.North))
}

// band is the range of nine flights in ten.
func (p cardPage) band(s study.Summary, unit string) string {
	if s.Count == 0 {
		return ""
	}
	return p.bare(s.Q05, unit) + " to " + p.bare(s.Q95, unit)
}

// deviation is the standard deviation of a check's number; empty where it has none.
func (p cardPage) deviation(key, unit string) string {
	for i := range p.Verdict.Checks {
		c := &p.Verdict.Checks[i]
		if c.Key != key || !(c.SD > 0) || math.IsInf(c.SD, 0) {
			continue
		}
		u := quantity.Usual(quantity.Number)
		if unit != "" {
			u = p.sys.Unit(unitNamed(unit))
		}
		return plusMinus(u.FromSI(c.SD))
	}
	return ""
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
func (p cardPage) chamber() card.Block {
	r := p.Rocket
	t := &card.Table{Columns: []card.Column{{}, {}}}
	add := func(what, text string) { t.Rows = append(t.Rows, card.Row{Cells: []string{what, text}}) }
	at := &p.Chamber
	burst := gates.WordUnknown
	switch {
	case r.Chamber != nil && at.Burst > 0:
		burst = p.atMost(at.Burst) + ", " + string(at.Basis)
	case r.Chamber != nil && at.Burst == 0:
		burst = gates.WordNone + ": too hot for its strength"
	}
	add("working", p.given(r.Water.Pressure, "bar"))
	add("proof on record", p.proof())
	add("burst counted on", burst)
	switch {
	case at.Cracks:
		add("resin", "cracks at the working pressure: an unlined wall weeps")
	case at.CracksAtProof:
		add("resin", "cracks in its proof: an unlined wall weeps")
	}
	add("energy of the gas", p.energy(at.Gas.Isentropic))
	add("stand-off", p.farther(at.Gas.StandoffFloor)+" for the blast; fragments go farther")
	return card.Block{Title: "chamber", Table: t}
}

// proof is the one on record.
func (p cardPage) proof() string {
	c := p.Rocket.Chamber
	if c == nil || c.Proof == 0 {
		return gates.WordNone
	}
	text := p.given(c.Proof, "bar")
	if c.ProofDate != "" {
		text += " on " + printable(c.ProofDate)
	}
	return text
}
