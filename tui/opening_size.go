package tui

import (
	"errors"
	"fmt"
	"math"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/tui/draw"
)

// sizeProblem says why there is no such canopy.
func sizeProblem(err error) string {
	var faults fault.List
	if errors.As(err, &faults) && len(faults) > 0 {
		return draw.Clean(faults[0].Problem)
	}
	return faultText(err, "")
}

// sizeLine is the canopy that lands at the speed wanted, and how far it drifts.
func (v *openingView) sizeLine(w int) string {
	theme := v.scene.theme
	speed := v.scene.units.Unit(draw.Unit("m/s"))
	out := theme.Paint(draw.Heading, "to land at ") + theme.Paint(draw.Focused, theme.Say(draw.Shortly(v.wanted, speed)))
	switch {
	case v.sized.err != nil:
		return out + theme.Paint(draw.Bad, theme.Fit(theme.Say(": "+sizeProblem(v.sized.err)), w-ansi.StringWidth(out)))
	case !v.sized.ready:
		return draw.PadPainted(out, w)
	}
	s := &v.sized.result
	o := &v.study.result
	c := o.of.flight.Rocket.Canopies[o.canopy]
	u := v.scene.units.Unit(o.of.file.Unit("canopy." + c.Name + ".diameter"))
	text := ": " + quantity.Format(s.Diameter, u, 3) + " across, drift " + v.shown(s.Drift, "m")
	if v.sized.busy {
		text += " (old)"
	}
	out += theme.Paint(draw.Strong, theme.Say(text))
	landing := o.of.flight.Results.Landing
	now := fmt.Sprintf("  today %s, %s, drift %s", draw.Exact(c.NominalDiameter(), u, 5), v.shown(landing.Vertical, "m/s"),
		v.shown(math.Hypot(landing.East, landing.North), "m"))
	if now = theme.Say(now); ansi.StringWidth(out)+draw.Width(now) <= w {
		out += theme.Paint(draw.Dim, now)
	}
	return draw.PadPainted(out, w)
}
