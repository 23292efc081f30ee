package opening

import (
	"errors"
	"fmt"
	"math"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// sizeProblem says why there is no such canopy.
func sizeProblem(err error) string {
	var faults fault.List
	if errors.As(err, &faults) && len(faults) > 0 {
		return draw.Clean(faults[0].Problem)
	}
	return view.FaultText(err, "")
}

// sizeLine is the canopy that lands at the speed wanted, and how far it drifts.
func (v *View) sizeLine(w int) string {
	theme := v.Scene.Theme
	speed := v.Scene.Unit("m/s")
	out := theme.Paint(draw.Heading, "to land at ") + theme.Paint(draw.Focused, theme.Say(draw.Shortly(v.wanted, speed)))
	switch {
	case v.sized.Err != nil:
		return out + theme.Paint(draw.Bad, theme.Fit(theme.Say(": "+sizeProblem(v.sized.Err)), w-ansi.StringWidth(out)))
	case !v.sized.Ready:
		return draw.PadPainted(out, w)
	}
	s := &v.sized.Result
	o := &v.study.Result
	c := o.of.Flight.Rocket.Canopies[o.canopy]
	u := v.Scene.Units.Unit(o.of.File.Unit("canopy." + c.Name + ".diameter"))
	size, drift := ": "+quantity.Format(s.Diameter, u, 3), ", drift "+v.shown(s.Drift, "m")
	if v.sized.Busy {
		drift += " (old)"
	}
	text := size + " across" + drift
	if ansi.StringWidth(out)+draw.Width(theme.Say(text)) > w {
		text = size + drift
	}
	out += theme.Paint(draw.Strong, theme.Say(text))
	landing := o.of.Flight.Results.Landing
	now := fmt.Sprintf("  today %s, %s, drift %s", draw.Exact(c.NominalDiameter(), u, 5), v.shown(landing.Vertical, "m/s"),
		v.shown(math.Hypot(landing.East, landing.North), "m"))
	if now = theme.Say(now); ansi.StringWidth(out)+draw.Width(now) <= w {
		out += theme.Paint(draw.Dim, now)
	}
	return draw.PadPainted(out, w)
}
