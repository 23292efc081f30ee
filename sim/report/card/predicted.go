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
	"ullage/sim/study"
)

// Keys of checks that are no limit's.
const (
	ceilingCheck = "ceiling"
	radiusCheck  = "radius"
	marginCheck  = "margin."
)

// predicted is the day's flight with how sure its figures are.
func (p filler) predicted() form.Block {
	day, sc := p.Verdict.Day, &p.Scatter
	t := &form.Table{Columns: []form.Column{{Head: "figure"}, {Head: "predicted", Kind: form.Figures}, {Head: "spread"}}}
	add := func(figure string, happened bool, value, spread string) {
		if !happened {
			value, spread = gates.WordNever, ""
		}
		t.Rows = append(t.Rows, form.Row{Cells: []string{figure, value, spread}})
	}
	add("rail exit speed", day.RailExit.Happened, p.Speed(day.RailExit.Speed), p.band(sc.RailExit, "m/s"))
	add("apogee", day.Apogee.Happened, p.Height(day.Apogee.Height), p.band(sc.Apogee, "m"))
	add("time to apogee", day.Apogee.Happened, p.Time(day.Apogee.Time), "")
	add("greatest speed", true, p.Speed(day.Max.Speed), "")
	add("greatest acceleration", true, p.Gravities(day.Max.Acceleration), "")
	for i := range day.Canopies {
		c := &day.Canopies[i]
		name := page.Printable(c.Name)
		add("airspeed as "+name+" opens", c.Opened, p.Speed(c.Airspeed), p.deviation(gates.LimitOpening+"."+c.Name, "m/s"))
		add("opening load of "+name, c.Opened, p.Force(c.Load), p.deviation(gates.LimitMount+"."+c.Name, "N"))
	}
	l := day.Landing
	add("landing speed, down", l.Happened, p.Speed(l.Vertical), p.deviation(gates.LimitLanding, "m/s"))
	add("landing energy", l.Happened, p.Energy(l.Energy), p.deviation(gates.LimitEnergy, "J"))
	add("drift", l.Happened, p.landed(l), p.deviation(radiusCheck, "m"))
	add("flight time", l.Happened, p.Time(l.Time), "")
	if s := &day.Stability; s.Known {
		for _, x := range []struct {
			name, key string
			at        sim.StabilityAt
		}{
			{"margin at release", "release", s.Release}, {"margin at rail exit", "rail-exit", s.RailExit},
			{"margin at liquid out", "liquid-out", s.LiquidOut}, {"margin at burnout", "burnout", s.Burnout},
		} {
			if x.at.Happened {
				add(x.name, true, p.Number(x.at.Margin)+" cal", p.deviation(marginCheck+x.key, ""))
			}
		}
		add("least margin on the way up", true, p.Number(s.Least)+" cal", p.deviation(marginCheck+"least", ""))
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

// landed is where a flight comes down from the pad.
func (p filler) landed(l sim.Landing) string {
	d := math.Hypot(l.East, l.North)
	if d < words.AtPad {
		return p.Height(0)
	}
	return toward(p.Height(d), words.Bearing(l.East, l.North))
}

// band is the range of nine flights in ten.
func (p filler) band(s study.Summary, unit string) string {
	if s.Count == 0 {
		return ""
	}
	return p.Bare(s.Q05, unit) + " to " + p.Bare(s.Q95, unit)
}

// deviation is the standard deviation of a check's number; empty where it has none.
func (p filler) deviation(key, unit string) string {
	for i := range p.Verdict.Checks {
		c := &p.Verdict.Checks[i]
		if c.Key != key || !(c.SD > 0) || math.IsInf(c.SD, 0) {
			continue
		}
		return plusMinus(p.Shown(c.SD, unit))
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
func (p filler) chamber() form.Block {
	r := p.Rocket
	t := &form.Table{Columns: []form.Column{{}, {}}}
	add := func(what, text string) { t.Rows = append(t.Rows, form.Row{Cells: []string{what, text}}) }
	at := &p.Chamber
	burst := gates.WordUnknown
	switch {
	case r.Chamber != nil && at.Burst > 0:
		burst = p.AtMost(at.Burst) + ", " + string(at.Basis)
	case r.Chamber != nil && at.Burst == 0:
		burst = gates.WordNone + ": too hot for its strength"
	}
	add("working", p.Given(r.Water.Pressure, "bar"))
	add("proof on record", p.proof())
	add("burst counted on", burst)
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

// proof is the one on record.
func (p filler) proof() string {
	c := p.Rocket.Chamber
	if c == nil || c.Proof == 0 {
		return gates.WordNone
	}
	text := p.Given(c.Proof, "bar")
	if c.ProofDate != "" {
		text += " on " + page.Printable(c.ProofDate)
	}
	return text
}
