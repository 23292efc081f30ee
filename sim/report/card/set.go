package card

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report/card/form"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// settings are what to set before the flight.
func (p filler) settings() form.Block {
	r := p.Rocket
	t := &form.Table{Columns: []form.Column{{Head: "what"}, {Head: "set to"}, {Head: "done", Kind: form.ByHand}}}
	add := func(what, text string) { t.Rows = append(t.Rows, form.Row{Cells: []string{what, text}}) }
	if r.Power == rocket.WaterPower {
		w := r.Water
		column := r.Site.Column()
		open, sealed := p.FillTo(w.Pressure), p.FillTo(r.SealedGauge())
		if p.chamberFails() {
			open, sealed = "not pressurised", "not pressurised"
		}
		add("gauge open to the air", open)
		add("gauge sealed at sea level", sealed)
		if w.Temperature > 0 && !p.chamberFails() {
			if air := column.Air(0); w.Temperature != air.Temperature {
				add("cooled to the air", p.Text(r.ClosedAt(air.Temperature).Gauge, "bar")+" open to the air, pumped at "+signs(p.Given(w.Temperature, "degC")))
			}
		}
		if w.Gas != thrust.Air {
			add("gas", string(w.Gas))
		}
		add("throat", p.Size(w.Throat))
		if x := w.Tube; x != nil {
			add("launch tube", p.Size(x.Length)+", "+p.Size(x.Outer)+" across")
		}
	} else {
		p.motor(add)
	}
	for i := range r.Canopies {
		c := &r.Canopies[i]
		text := p.Opens(c.Rule(r.Power))
		if d := p.Verdict.Day.Canopies[i]; d.Opened {
			text += " (" + p.Time(d.Time) + ")"
		}
		add(page.Printable(c.Name)+" opens", text)
	}
	rail := "none"
	if r.Rail.Length > 0 {
		rail = p.Given(r.Rail.Length, "m")
	}
	add("rail", rail)
	tilt := tenths(r.Rail.Tilt)
	if r.Rail.Tilt > 0 {
		tilt += " towards " + compass(r.Rail.Heading)
	}
	add("tilt of the file", tilt)
	return form.Block{Title: "set", Table: t}
}

// motor says which motor, and what to do about its delay.
func (p filler) motor(add func(what, text string)) {
	m := p.Rocket.Motor
	text := p.Impulse(m.Impulse())
	if class := thrust.Class(m.Impulse()); class != "" {
		text = "class " + class + ", " + text
	}
	if m.Diameter > 0 {
		text += ", " + p.Size(m.Diameter) + " across"
	}
	name := "name not given (motor.name)"
	if m.Name != "" {
		name = page.Printable(m.Name)
	}
	add("motor", name+", "+text)
	add("delay", p.delay(m))
}

// delay is a motor's, how to come by it, and what else is listed. A delay is drilled
// shorter from the next longer one listed.
func (p filler) delay(m *rocket.Motor) string {
	if math.IsNaN(m.Delay) {
		return gates.WordNone + ": no charge"
	}
	text := p.Given(m.Delay, "s")
	if len(m.Delays) == 0 {
		return text
	}
	var listed []string
	longer := math.Inf(1)
	for _, d := range m.Delays {
		listed = append(listed, strings.TrimSuffix(p.Given(d, "s"), " s"))
		if d >= m.Delay {
			longer = min(longer, d)
		}
	}
	how := "nothing to drill"
	switch {
	case math.IsInf(longer, 1):
		how = "longer than any listed"
	case longer > m.Delay:
		how = fmt.Sprintf("drill %s off the %s one", p.Given(longer-m.Delay, "s"), p.Given(longer, "s"))
	}
	return text + ": " + how + "; listed " + strings.Join(listed, ", ") + " s"
}
