package tui

import (
	"errors"
	"fmt"
	"math"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// sizeProblem says why there is no such canopy.
func sizeProblem(err error) string {
	var faults rocketfile.Faults
	if errors.As(err, &faults) && len(faults) > 0 {
		return clean(faults[0].Problem)
	}
	return faultText(err, "")
}

// sizeLine is the canopy that lands at the speed wanted, and how far it drifts.
func (v *openingView) sizeLine(w int) string {
	look := v.scene.look
	speed := v.scene.units.Unit(unitNamed("m/s"))
	out := look.in(heading, "to land at ") + look.in(focused, look.say(shortly(v.wanted, speed)))
	switch {
	case v.sized.err != nil:
		return out + look.in(badWord, look.fit(look.say(": "+sizeProblem(v.sized.err)), w-ansi.StringWidth(out)))
	case !v.sized.ready:
		return padPainted(out, w)
	}
	s := &v.sized.result
	o := &v.study.result
	c := o.of.flight.Rocket.Canopies[o.canopy]
	u := v.scene.units.Unit(o.of.file.Unit("canopy." + c.Name + ".diameter"))
	text := ": " + quantity.Format(s.Diameter, u, 3) + " across, drift " + v.shown(s.Drift, "m")
	if v.sized.busy {
		text += " (old)"
	}
	out += look.in(strongText, look.say(text))
	landing := o.of.flight.Results.Landing
	now := fmt.Sprintf("  today %s, %s, drift %s", exact(c.NominalDiameter(), u, 5), v.shown(landing.Vertical, "m/s"),
		v.shown(math.Hypot(landing.East, landing.North), "m"))
	if now = look.say(now); ansi.StringWidth(out)+width(now) <= w {
		out += look.in(dimText, now)
	}
	return padPainted(out, w)
}
