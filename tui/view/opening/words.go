package opening

import (
	"fmt"
	"math"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// limit is the airspeed that a canopy may open at, for plots.
func (v *View) limit() plot.Limit {
	most := gates.LimitFor(v.study.Result.of.Flight.Rocket, gates.LimitOpening).Max
	return plot.Limit{Y: v.Scene.Unit("m/s").FromSI(most), Label: "limit"}
}

// sameNumber tells that two values of an input are one.
func sameNumber(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(a)) }

// now is the number as it is set.
func (o *figures) now() (v float64, there bool) {
	r := o.of.Flight.Rocket
	rule := r.Canopies[o.canopy].Rule(r.Power)
	switch {
	case o.number == "", rule.Trigger.ByCharge() && r.Motor == nil:
		return 0, false
	case rule.Trigger.ByCharge():
		return r.Motor.Delay, !math.IsNaN(r.Motor.Delay)
	}
	return rule.Value, true
}

// rule is the rule of the canopy.
func (o *figures) rule() rocket.Rule {
	r := o.of.Flight.Rocket
	return r.Canopies[o.canopy].Rule(r.Power)
}

// numberUnit is the unit that the number is shown in.
func (v *View) numberUnit() quantity.Unit {
	o := &v.study.Result
	return v.Scene.Units.Unit(o.of.File.Unit(o.number))
}

// numberTitle says what the number is.
func (v *View) numberTitle() string {
	return v.study.Result.rule().Trigger.Title(v.study.Result.of.Flight.Rocket.Power)
}

// noNumber says why there is no curve.
func (v *View) noNumber() string {
	o := &v.study.Result
	r := o.of.Flight.Rocket
	c := &r.Canopies[o.canopy]
	switch {
	case c.Rule(r.Power).Trigger.ByCharge():
		return fmt.Sprintf("Canopy %s waits for a charge, and nothing that flies has one. Give motor.delay, or type another rule.", c.Name)
	case o.number == "":
		return fmt.Sprintf("Canopy %s has no rule for a flight on %s and stays shut. Type one, such as apogee + 1 s.", c.Name, r.Power)
	}
	return "The rocket does not leave its rail: there is no opening to choose."
}

// head says which canopy this is, its rule, and what comes of it.
func (v *View) head(w int) []string {
	o, theme := &v.study.Result, v.Scene.Theme
	fl := o.of.Flight
	c := fl.Rocket.Canopies[o.canopy]
	name := theme.Say(draw.Clean(c.Name))
	if n := len(fl.Rocket.Canopies); n > 1 {
		name += fmt.Sprintf(" (%d of %d)", o.canopy+1, n)
	}
	state := v.state()
	room := w - draw.Width(state) - 1
	out, used := theme.Paint(draw.Focused, name), draw.Width(name)
	add := func(r draw.Role, gap int, text string) {
		text = theme.Say(text)
		if text != "" && used+gap+draw.Width(text) <= room {
			out, used = out+draw.Blanks(gap)+theme.Paint(r, text), used+gap+draw.Width(text)
		}
	}
	res := fl.Results.Canopies[o.canopy]
	speed, word, lv := "", gates.WordNever, gates.Bad
	if res.Opened {
		speed = v.shown(res.Airspeed, "m/s")
		word, lv = gates.JudgeResult(fl.Rocket, "canopy."+res.Name+".airspeed", res.Airspeed)
	}
	// The figure never goes without its word: the rule does, which the input shows too.
	if rule := v.ruleText(); used+2+draw.Width(theme.Say(rule))+2+draw.Width(theme.Say(speed))+1+draw.Width(word) <= room {
		add(draw.Plain, 2, rule)
	}
	if res.Opened {
		add(draw.Strong, 2, speed)
		add(draw.Level(lv), 1, word)
		add(draw.Plain, 2, v.shown(res.Height, "m")+" high")
		add(draw.Plain, 2, "load "+v.shown(res.Load, "N"))
		add(draw.Dim, 1, "at most "+v.shown(res.LoadBound, "N"))
	} else {
		add(draw.Level(lv), 2, word)
	}
	return []string{draw.PadPainted(out, w-draw.Width(state)) + theme.Paint(draw.Caution, state)}
}

// state says that what is shown is an older rocket's.
func (v *View) state() string {
	switch {
	case !v.study.Busy:
		return ""
	case v.Columns >= draw.SideBySideFrom:
		return "the rocket before; computing" + v.Scene.Theme.Ellipsis
	}
	return "computing" + v.Scene.Theme.Ellipsis
}

// ruleText is the rule in words.
func (v *View) ruleText() string {
	o := &v.study.Result
	r := o.of.Flight.Rocket
	now, there := o.now()
	if !there {
		return ""
	}
	text := draw.Exact(math.Abs(now), v.numberUnit(), 6)
	return r.Canopies[o.canopy].Rule(r.Power).Trigger.Sentence(r.Power, text, now < 0)
}

// shown is an SI value in the units shown.
func (v *View) shown(x float64, unit string) string {
	return draw.Reading(x, v.Scene.Unit(unit))
}

// bearing is the direction of a vector on the compass, in letters; empty where
// it is too short to have one.
func bearing(east, north float64) string {
	if math.Hypot(east, north) < 0.5 {
		return ""
	}
	points := [...]string{"N", "NE", "E", "SE", "S", "SW", "W", "NW"}
	eighth := int(math.Round(math.Atan2(east, north)/(math.Pi/4))) + len(points)
	return points[eighth%len(points)]
}
