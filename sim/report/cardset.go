package report

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report/card"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// sealedReference is what a gauge sealed at sea level counts from, Pa: the standard
// atmosphere.
const sealedReference = 101325

// settings are what to set before the flight.
func (p cardPage) settings() card.Block {
	r := p.Rocket
	t := &card.Table{Columns: []card.Column{{Head: "what"}, {Head: "set to"}, {Head: "done", Kind: card.ByHand}}}
	add := func(what, text string) { t.Rows = append(t.Rows, card.Row{Cells: []string{what, text}}) }
	if r.Power == rocket.WaterPower {
		w := r.Water
		column := r.Site.Column()
		open, sealed := p.given(w.Pressure, "bar"), p.text(w.Pressure+column.Air(0).Pressure-sealedReference, "bar")
		if p.chamberFails() {
			open, sealed = "not pressurised", "not pressurised"
		}
		add("gauge open to the air", open)
		add("gauge sealed at sea level", sealed)
		if w.Gas != thrust.Air {
			add("gas", string(w.Gas))
		}
		add("throat", p.size(w.Throat))
		if x := w.Tube; x != nil {
			add("launch tube", p.size(x.Length)+", "+p.size(x.Outer)+" across")
		}
	} else {
		p.motor(add)
	}
	for i := range r.Canopies {
		c := &r.Canopies[i]
		text := p.rule(c.Rule(r.Power))
		if d := p.Verdict.Day.Canopies[i]; d.Opened {
			text += " (" + p.time(d.Time) + ")"
		}
		add(printable(c.Name)+" opens", text)
	}
	rail := "none"
	if r.Rail.Length > 0 {
		rail = p.given(r.Rail.Length, "m")
	}
	add("rail", rail)
	lean := tenths(r.Rail.Tilt)
	if r.Rail.Tilt > 0 {
		lean += " towards " + compass(r.Rail.Heading)
	}
	add("tilt of the file", lean)
	return card.Block{Title: "set", Table: t}
}

// motor says which motor, and what to do about its delay.
func (p cardPage) motor(add func(what, text string)) {
	m := p.Rocket.Motor
	text := p.impulse(m.Curve.Impulse())
	if class := thrust.Class(m.Curve.Impulse()); class != "" {
		text = "class " + class + ", " + text
	}
	if m.Diameter > 0 {
		text += ", " + p.size(m.Diameter) + " across"
	}
	add("motor", text)
	add("delay", p.delay(m))
}

// delay is a motor's, how to come by it, and what else is listed. A delay is drilled
// shorter from the next longer one listed.
func (p cardPage) delay(m *rocket.Motor) string {
	if math.IsNaN(m.Delay) {
		return gates.WordNone + ": no charge"
	}
	text := p.given(m.Delay, "s")
	if len(m.Delays) == 0 {
		return text
	}
	var listed []string
	longer := math.Inf(1)
	for _, d := range m.Delays {
		listed = append(listed, strings.TrimSuffix(p.given(d, "s"), " s"))
		if d >= m.Delay {
			longer = min(longer, d)
		}
	}
	how := "nothing to drill"
	switch {
	case math.IsInf(longer, 1):
		how = "longer than any listed"
	case longer > m.Delay:
		how = fmt.Sprintf("drill %s off the %s one", p.given(longer-m.Delay, "s"), p.given(longer, "s"))
	}
	return text + ": " + how + "; listed " + strings.Join(listed, ", ") + " s"
}

// rule is when a canopy opens.
func (p cardPage) rule(r rocket.Rule) string {
	after := func(from string) string {
		if r.Value < 0 {
			return from + " − " + p.given(-r.Value, "s")
		}
		return from + " + " + p.given(r.Value, "s")
	}
	switch r.Trigger {
	case rocket.AfterLaunch:
		return after("launch")
	case rocket.AfterBurnout:
		return after("burnout")
	case rocket.AfterApogee:
		return after("apogee")
	case rocket.Falling:
		return "falling through " + p.given(r.Value, "m")
	case rocket.Ejection:
		return "ejection"
	}
	return gates.WordNever
}
