package words

import (
	"fmt"
	"strings"

	"ullage/atmosphere"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
)

// wind is the unit that winds are told in.
func wind() quantity.Unit { return quantity.Usual(quantity.Wind) }

// WindSpeed writes the speed of a wind that somebody has told, m/s.
func (p Printer) WindSpeed(v float64) string { return p.Value(v, wind(), digits) }

// WindAtMost writes a wind that must not be gone beyond, m/s: rounded down, never up.
func (p Printer) WindAtMost(v float64) string { return p.beyond(v, wind(), false) }

// WindFigure is WindSpeed without the unit, which the head of a column has.
func (p Printer) WindFigure(v float64) string {
	figure, _, _ := strings.Cut(p.WindSpeed(v), " ")
	return figure
}

// WindUnit is the name of that unit.
func (p Printer) WindUnit() string { return p.UnitOf(wind()) }

// Wind says what wind there is near the ground, and in how many layers it is known.
func (p Printer) Wind(w *atmosphere.Wind) string {
	speed, from := w.Surface()
	n := len(w.Layers)
	switch {
	case !w.Known():
		return "no wind stated"
	case n == 0 && speed == 0:
		return "calm"
	case n == 0:
		return "wind " + p.WindSpeed(speed) + " from " + p.Given(from, "deg")
	}
	near := "calm"
	if speed > 0 {
		near = p.WindSpeed(speed) + " from " + p.Given(from, "deg")
	}
	high := w.Top()
	text := fmt.Sprintf("wind %s at %s", near, p.Given(w.Reference(), "m"))
	if n == 1 {
		return text + ", one layer"
	}
	return text + fmt.Sprintf(", %d layers up to %s from %s at %s", n, p.WindSpeed(high.Speed), p.Given(high.From, "deg"), p.Given(high.Height, "m"))
}

// DayWind is Wind with the gust of the day and the turbulence of scatters, where there are any.
func (p Printer) DayWind(r *rocket.Rocket) string {
	text := p.Wind(&r.Wind)
	if gust := p.Gust(r); gust != "" {
		text += ", " + gust
	}
	if v := r.Wind.Turbulence; v > 0 {
		text += ", turbulence of " + p.Given(v, "%") + " where flights are drawn"
	}
	return text
}

// Gust says what gust there is on top of the wind; empty of none.
func (p Printer) Gust(r *rocket.Rocket) string {
	g := &r.Gust
	if g.Speed == 0 {
		return ""
	}
	text := "a gust of " + p.WindSpeed(g.Speed) + " from " + p.Given(g.From, "deg") + " above " + p.Given(g.Height, "m")
	if g.Length > 0 {
		text += ", full " + p.Given(g.Length, "m") + " higher"
	}
	return text
}

// MostWind says up to which wind near the ground every check passes in every case, without a
// full stop.
func (p Printer) MostWind(w *plan.WindLimit) string {
	text := ""
	switch {
	case !w.Passes && len(w.Fails) > 0:
		return "do not fly in any wind: " + fail(w.Fails) + " in all that were tried"
	case !w.Passes:
		return gates.WordOpen + " in any wind: " + page.Listed(w.Unjudged)
	case w.Most == 0:
		text = "fly in calm air only"
	case w.Least > 0:
		text = "do not fly below " + p.beyond(w.Least, wind(), true) + " of wind, nor above " + p.WindAtMost(w.Most)
	default:
		text = "do not fly above " + p.WindAtMost(w.Most) + " of wind"
	}
	if len(w.Above) > 0 {
		text += "; beyond it " + fail(w.Above)
	}
	return text
}

// fail tells of checks that they fail.
func fail(checks []string) string {
	if len(checks) == 1 {
		return page.Listed(checks) + " fails"
	}
	return page.Listed(checks) + " fail"
}
