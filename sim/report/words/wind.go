package words

import (
	"fmt"

	"ullage/atmosphere"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report/page"
)

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
		return "wind " + p.Given(speed, "m/s") + " from " + p.Given(from, "deg")
	}
	near := "calm"
	if speed > 0 {
		near = p.Given(speed, "m/s") + " from " + p.Given(from, "deg")
	}
	high := w.Top()
	text := fmt.Sprintf("wind %s at %s", near, p.Given(w.Reference(), "m"))
	if n == 1 {
		return text + ", one layer"
	}
	return text + fmt.Sprintf(", %d layers up to %s from %s at %s", n, p.Given(high.Speed, "m/s"), p.Given(high.From, "deg"), p.Given(high.Height, "m"))
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
		text = "do not fly below " + p.beyond(w.Least, "m/s", true) + " of wind, nor above " + p.beyond(w.Most, "m/s", false)
	default:
		text = "do not fly above " + p.beyond(w.Most, "m/s", false) + " of wind"
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
