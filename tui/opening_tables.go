package tui

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/plot"
)

// hadSign marks a delay that can be had.
const hadSign = '+'

// limitOf is a default limit by its key.
func limitOf(key string) report.Limit {
	all := report.DefaultLimits()
	return all[slices.IndexFunc(all, func(l report.Limit) bool { return l.Key == key })]
}

// openingLimit is the airspeed that a canopy may open at, for plots.
func openingLimit(sys quantity.System) plot.Limit {
	return plot.Limit{Y: sys.Unit(unitNamed("m/s")).FromSI(limitOf(report.LimitOpening).Max), Label: "limit"}
}

// sameNumber tells that two values of an input are one.
func sameNumber(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(a)) }

// now is the number as it is set.
func (o *opening) now() (v float64, there bool) {
	r := o.of.flight.Rocket
	rule := r.Canopies[o.canopy].Rule(r.Power)
	switch {
	case o.number == "":
		return 0, false
	case byCharge(rule):
		return r.Motor.Delay, !math.IsNaN(r.Motor.Delay)
	}
	return rule.Value, true
}

// rule is the rule of the canopy.
func (o *opening) rule() sim.Rule {
	r := o.of.flight.Rocket
	return r.Canopies[o.canopy].Rule(r.Power)
}

// numberUnit is the unit that the number is shown in.
func (v *openingView) numberUnit() quantity.Unit {
	o := &v.study.result
	return v.scene.units.Unit(o.of.file.Unit(o.number))
}

// numberTitle says what the number is.
func (v *openingView) numberTitle() string {
	return map[sim.Trigger]string{
		sim.AfterLaunch: "after launch", sim.AfterBurnout: "after burnout", sim.AfterApogee: "after the top",
		sim.Falling: "height falling through", sim.Ejection: "delay",
	}[v.study.result.rule().Trigger]
}

// noNumber says why there is no curve.
func (v *openingView) noNumber() string {
	o := &v.study.result
	r := o.of.flight.Rocket
	c := &r.Canopies[o.canopy]
	switch {
	case byCharge(c.Rule(r.Power)):
		return fmt.Sprintf("Canopy %s waits for a charge, and nothing that flies has one. Give motor.delay, or type another rule.", c.Name)
	case o.number == "":
		return fmt.Sprintf("Canopy %s has no rule for a flight on %s and stays shut. Type one, such as apogee + 1 s.", c.Name, r.Power)
	}
	return "The rocket does not leave its rail: there is no opening to choose."
}

// head says which canopy this is, its rule, and what comes of it.
func (v *openingView) head(w int) []string {
	o, look := &v.study.result, v.scene.look
	fl := o.of.flight
	c := fl.Rocket.Canopies[o.canopy]
	name := look.say(clean(c.Name))
	if n := len(fl.Rocket.Canopies); n > 1 {
		name += fmt.Sprintf(" (%d of %d)", o.canopy+1, n)
	}
	state := v.state()
	room := w - width(state) - 1
	out, used := look.in(focused, name), width(name)
	add := func(r role, gap int, text string) {
		text = look.say(text)
		if text != "" && used+gap+width(text) <= room {
			out, used = out+blanks(gap)+look.in(r, text), used+gap+width(text)
		}
	}
	add(plainText, 2, v.ruleText())
	if res := fl.Results.Canopies[o.canopy]; res.Opened {
		word, lv := limitOf(report.LimitOpening).Judge(res.Airspeed)
		add(strongText, 2, v.shown(res.Airspeed, "m/s"))
		add(level(lv), 1, word)
		add(plainText, 2, v.shown(res.Height, "m")+" high")
		add(plainText, 2, "load "+v.shown(res.Load, "N"))
		add(dimText, 1, "at most "+v.shown(res.LoadBound, "N"))
	} else {
		add(badWord, 2, report.WordNever)
	}
	return []string{padPainted(out, w-width(state)) + look.in(cautionWord, state)}
}

// state says that what is shown is an older rocket's.
func (v *openingView) state() string {
	switch {
	case !v.study.busy:
		return ""
	case v.columns >= sideBySideFrom:
		return "the rocket before; computing" + v.scene.look.ellipsis
	}
	return "computing" + v.scene.look.ellipsis
}

// ruleText is the rule in words.
func (v *openingView) ruleText() string {
	o := &v.study.result
	r := o.of.flight.Rocket
	now, there := o.now()
	if !there {
		return ""
	}
	text := exact(math.Abs(now), v.numberUnit(), 6)
	switch rule := r.Canopies[o.canopy].Rule(r.Power); rule.Trigger {
	case sim.AfterLaunch:
		return text + " after launch"
	case sim.AfterBurnout, sim.Ejection:
		return text + " after burnout"
	case sim.Falling:
		return "falling through " + text
	case sim.AfterApogee:
		if now < 0 {
			return text + " before the top"
		}
		return text + " after the top"
	}
	return ""
}

// shown is an SI value in the units shown.
func (v *openingView) shown(x float64, unit string) string {
	return reading(x, v.scene.units.Unit(unitNamed(unit)))
}

// openingCase is one way of opening, and the flight that comes of it.
type openingCase struct {
	name    string
	flight  *sim.Flight
	problem string // why there is no flight
	planned bool
	best    bool
}

// listed are the ways of opening worth a row: as planned, the best, and what may
// go wrong.
func (v *openingView) listed() []openingCase {
	o := &v.study.result
	var out []openingCase
	now, there := o.now()
	best := o.best >= 0
	for _, c := range o.cases {
		one := openingCase{name: string(c.Case), flight: c.Flight, problem: c.Problem, planned: c.Case == study.AsPlanned}
		one.best = one.planned && best && there && sameNumber(now, o.values[o.best].Value)
		if out = append(out, one); one.planned && best && !one.best {
			b := &o.values[o.best]
			out = append(out, openingCase{name: "best " + exact(b.Value, v.numberUnit(), 4), flight: b.Flight, best: true})
		}
	}
	return out
}

// casesTable is what becomes of the rocket when the canopy opens as planned or
// otherwise. Where there are other canopies it says how fast those open then.
func (v *openingView) casesTable(w, h int) []string {
	t := table{tight: w < 70, columns: []tableColumn{
		{title: "if it opens", left: true}, {title: "airspeed"}, {left: true, rank: 4}, {title: "height", rank: 6}, {title: "load", rank: 7},
	}}
	others := len(v.study.result.of.flight.Rocket.Canopies) > 1
	if others {
		t.columns = append(t.columns, tableColumn{title: "others"}, tableColumn{left: true, rank: 2})
	}
	t.columns = append(t.columns, tableColumn{title: "lands"}, tableColumn{left: true, rank: 3}, tableColumn{title: "drift", rank: 1},
		tableColumn{left: true, rank: 8})
	for _, c := range v.listed() {
		t.rows = append(t.rows, v.caseRow(c, others))
	}
	return t.draw(v.scene.look, w, h)
}

func (v *openingView) caseRow(c openingCase, others bool) tableRow {
	row := tableRow{sign: " "}
	if c.planned {
		row.role = strongText
	}
	if c.best {
		row.sign = string(bestSign)
	}
	put := func(r role, text string) { row.cells = append(row.cells, tableCell{text, r}) }
	judged := func(key string, x float64) {
		word, lv := limitOf(key).Judge(x)
		if lv == report.Good {
			put(plainText, v.shown(x, "m/s"))
		} else {
			put(level(lv), v.shown(x, "m/s"))
		}
		put(level(lv), word)
	}
	put(plainText, c.name)
	if c.flight == nil {
		row.rest = tableCell{c.problem, dimText}
		return row
	}
	res, canopy := &c.flight.Results, v.study.result.canopy
	if own := res.Canopies[canopy]; own.Opened {
		judged(report.LimitOpening, own.Airspeed)
		put(plainText, v.shown(own.Height, "m"))
		put(plainText, v.shown(own.Load, "N"))
	} else {
		put(dimText, "shut")
		put(plainText, "")
		put(plainText, "")
		put(plainText, "")
	}
	if fastest, any := fastestOther(res, canopy); any {
		judged(report.LimitOpening, fastest)
	} else if others {
		put(dimText, "shut")
		put(plainText, "")
	}
	if land := res.Landing; land.Happened {
		judged(report.LimitLanding, land.Vertical)
		put(plainText, v.shown(math.Hypot(land.East, land.North), "m"))
		put(dimText, bearing(land.East, land.North))
	}
	return row
}

// fastestOther is the greatest airspeed at which another canopy opens.
func fastestOther(res *sim.Results, canopy int) (airspeed float64, any bool) {
	for i, c := range res.Canopies {
		if i != canopy && c.Opened {
			airspeed, any = max(airspeed, c.Airspeed), true
		}
	}
	return airspeed, any
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

// delays are the values listed in a table: a motor's, of which there are few.
func (v *openingView) delays() []study.Delay {
	if o := &v.study.result; v.study.ready && o.number != "" && byCharge(o.rule()) {
		return o.values
	}
	return nil
}

// delaysTable is the whole-second delays of a motor, those that can be had
// marked, and the best of them.
func (v *openingView) delaysTable(w, h int) []string {
	o := &v.study.result
	t := table{tight: w < 70, columns: []tableColumn{
		{title: "delay"}, {left: true}, {title: "airspeed"}, {left: true, rank: 1}, {title: "height"}, {title: "load"},
		{title: "from the top", rank: 4}, {title: "lands", rank: 2}, {title: "drift", rank: 3},
	}}
	now, there := o.now()
	for i, d := range o.values {
		row := tableRow{sign: " "}
		note := ""
		if d.Listed {
			row.sign, note = string(hadSign), "can be had"
		}
		if i == o.best {
			row.role, note = goodWord, "best"
		}
		if there && sameNumber(d.Value, now) {
			t.chosen, row.role = i, strongText
			if note = "as set"; i == o.best {
				note = "as set, best"
			}
		}
		put := func(r role, text string) { row.cells = append(row.cells, tableCell{text, r}) }
		put(plainText, exact(d.Value, v.numberUnit(), 6))
		put(plainText, note)
		switch {
		case !d.Opened:
			put(dimText, "shut")
			t.rows = append(t.rows, row)
			continue
		case d.Early:
			put(badWord, "thrusting")
			put(plainText, "")
		default:
			word, lv := limitOf(report.LimitOpening).Judge(d.Airspeed)
			put(plainText, v.shown(d.Airspeed, "m/s"))
			put(level(lv), word)
		}
		put(plainText, v.shown(d.Height, "m"))
		put(plainText, v.shown(d.Load, "N"))
		put(plainText, fmt.Sprintf("%+.1f s", d.SinceTop))
		put(plainText, v.shown(d.Landing.Vertical, "m/s"))
		put(plainText, v.shown(math.Hypot(d.Landing.East, d.Landing.North), "m"))
		t.rows = append(t.rows, row)
	}
	return t.draw(v.scene.look, w, h)
}

// shortly is a value to the last digit where that takes four characters, else to
// three digits.
func shortly(v float64, u quantity.Unit) string {
	const longest = 4
	if text := quantity.Exact(v, u); len(number(text, u)) <= longest {
		return text
	}
	return quantity.Format(v, u, 3)
}

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
