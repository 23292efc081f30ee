package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Opening is what opening a canopy at other moments does.
type Opening struct {
	Rocket  *rocket.Rocket
	Canopy  int    // index in Rocket.Canopies
	Rule    string // as the file has it
	Delays  []study.Delay
	Best    int // in Delays; -1 for none
	WhatIfs []study.WhatIf
	Speed   float64 // landing speed asked for, m/s; 0 for none
	Sized   study.Sized
	System  quantity.System
}

// trigger is what the canopy's rule waits for.
func (o *Opening) trigger() rocket.Trigger {
	return o.Rocket.Canopies[o.Canopy].Rule(o.Rocket.Power).Trigger
}

// falling tells whether the number in the rule is a height rather than a time.
func (o *Opening) falling() bool { return o.trigger().Falls() }

// groups are the results of the canopy and of the landing.
func (o *Opening) groups() (canopy, landing *results.Group) {
	t := results.For(o.Rocket)
	return t.Group("canopy." + o.Rocket.Canopies[o.Canopy].Name), t.Group("landing")
}

// WriteOpeningJSON writes one object, SI. The delays have delay_s, or set_height_m for
// a rule on height; best is the place of the best one among them.
func WriteOpeningJSON(w io.Writer, o Opening) error {
	canopy, landing := o.groups()
	delays, cases := machine.List{}, machine.List{}
	for _, x := range o.Delays {
		value, opened := any(number(machine.Tidy(x.Value))), func(v float64) any { return number(v) }
		delay, height := value, any(nil)
		if o.falling() {
			delay, height = nil, value
		}
		if !x.Opened {
			opened = func(float64) any { return nil }
		}
		var line machine.Object
		line.Add("delay_s", delay).Add("set_height_m", height).Add("opened", x.Opened).Add("listed", x.Listed).
			Add("under_thrust", x.Early).Add("out_of_turn", x.OutOfTurn).Add("since_apogee_s", opened(x.SinceTop))
		addNamed(&line, canopy, x.Flight, "height", "airspeed", "load", "load_bound")
		addResults(&line, landing, x.Flight)
		delays = append(delays, &line)
	}
	for i := range o.WhatIfs {
		cases = append(cases, o.whatIf(&o.WhatIfs[i]))
	}
	var best, sized any
	if o.Best >= 0 && o.Best < len(o.Delays) {
		best = o.Best
	}
	if z := o.Sized; o.Speed > 0 {
		sized = new(machine.Object).Add("asked_mps", number(o.Speed)).Add("diameter_m", number(z.Diameter)).Add("area_m2", number(z.Area)).
			Add("vertical_mps", number(z.Vertical)).Add("drift_m", number(z.Drift)).Add("time_s", number(z.Flight.Landing.Time))
	}
	var doc machine.Object
	doc.Add("canopy", o.Rocket.Canopies[o.Canopy].Name).Add("rule", o.Rule).Add("delays", delays).Add("best", best).
		Add("what_if", cases).Add("sized", sized).Add("model", string(o.Rocket.Flown()))
	words.AddPressure(&doc, o.Rocket)
	return machine.WriteLine(w, &doc)
}

// whatIf is one case: what the canopy of the report does, then every canopy, and the landing.
func (o *Opening) whatIf(x *study.WhatIf) *machine.Object {
	var problem any
	if x.Problem != "" {
		problem = x.Problem
	}
	fl := x.Flight
	if fl == nil {
		fl = &sim.Flight{Rocket: o.Rocket}
	}
	canopy, landing := o.groups()
	line := new(machine.Object).Add("case", string(x.Case)).Add("canopy", o.failing(x)).Add("problem", problem).Add("ballistic", x.Ballistic())
	addNamed(line, canopy, fl, "height", "airspeed", "load")
	var all machine.List
	table := results.For(o.Rocket)
	for i := range o.Rocket.Canopies {
		name := o.Rocket.Canopies[i].Name
		one := new(machine.Object).Add("name", name)
		addNamed(one, table.Group("canopy."+name), fl, "height", "airspeed", "load", "load_bound")
		all = append(all, one)
	}
	line.Add("canopies", all)
	addResults(line, landing, fl)
	return line
}

// everyCanopy is what all of them together are called.
const everyCanopy = "all"

// failing names what does not keep to its rule: nothing does as planned.
func (o *Opening) failing(x *study.WhatIf) any {
	switch {
	case x.Case == study.AsPlanned:
		return nil
	case x.Canopy == study.AllCanopies:
		return everyCanopy
	}
	return o.Rocket.Canopies[x.Canopy].Name
}

// addNamed adds some of the results of a group, by their names in it.
func addNamed(to *machine.Object, g *results.Group, fl *sim.Flight, names ...string) {
	for _, name := range names {
		r := g.Row(name)
		addResult(to, r.Path()[0], r, fl)
	}
}

// WriteOpeningCSV writes the delays, a row each, SI; cells of a canopy that does not
// open are empty.
func WriteOpeningCSV(w io.Writer, o Opening) error {
	set := "delay_s"
	if o.falling() {
		set = "set_height_m"
	}
	canopy, landing := o.groups()
	rows := []*results.Row{canopy.Row("height"), canopy.Row("airspeed"), canopy.Row("load"), canopy.Row("load_bound")}
	b := []byte(set + ",best,listed,since_apogee_s")
	for _, r := range rows {
		b = append(append(b, ','), r.Path()[0]...) // no need to name the canopy
	}
	for _, name := range []string{"speed", "time", "drift"} {
		r := landing.Row(name)
		b = append(append(b, ','), r.Column()...)
		rows = append(rows, r)
	}
	b = append(b, '\n')
	for i, d := range o.Delays {
		b = machine.AppendNumber(b, machine.Tidy(d.Value))
		b = fmt.Appendf(b, ",%t,%t,", i == o.Best, d.Listed)
		if d.Opened {
			b = machine.AppendNumber(b, d.SinceTop)
		}
		for _, r := range rows {
			b = appendResult(append(b, ','), r, d.Flight)
		}
		b = append(b, '\n')
	}
	_, err := w.Write(b)
	return err
}

// Marks of the delays.
const (
	bestMark   = "*"
	listedMark = "+"
	turnMark   = "x"
)

// WriteOpeningText writes it for people.
func WriteOpeningText(w io.Writer, o Opening) error {
	p := words.In(o.System)
	var s sheet
	s.Hung("", fmt.Sprintf("%s: canopy %s opens by %q", words.Title(o.Rocket), page.Printable(o.Rocket.Canopies[o.Canopy].Name), o.Rule))
	s.Line("")
	if len(o.Delays) > 0 {
		s.delays(p, o)
	} else {
		s.Line("  The rocket does not leave its guide: there is no opening to choose.")
	}
	if len(o.WhatIfs) > 0 {
		s.Line("")
		s.whatIfs(p, o)
	}
	if o.Speed > 0 {
		z := o.Sized
		s.Line("")
		s.Field("to land at "+p.Given(o.Speed, "m/s"), fmt.Sprintf("a canopy of %s across, %s: %s down after %s, drift %s",
			p.Text(z.Diameter, "m"), squared(p.Text(z.Area, "m2")), p.Speed(z.Vertical), p.Time(z.Flight.Results.Landing.Time), p.Height(z.Drift)))
	}
	s.closing(p, o.Rocket)
	_, err := io.WriteString(w, s.String())
	return err
}

// delays is the table of the canopy's opening against the number in its rule.
func (s *sheet) delays(p words.Printer, o Opening) {
	unit := "s"
	if o.falling() {
		unit = "m"
	}
	canopy, landing := o.groups()
	counted := o.fromApogee()
	heads := []page.Heading{{Width: 2, Left: true},
		{Lines: strings.Fields(o.trigger().Title(o.Rocket.Power)), Unit: p.Unit(unit), Width: 7}}
	if !counted {
		heads = append(heads, shortColumn(p, canopy.Row("since_apogee"), 0))
	}
	t := page.NewTable(s, append(heads, shortColumn(p, canopy.Row("height"), 7),
		shortColumn(p, canopy.Row("airspeed"), 0), verdictColumn,
		shortColumn(p, canopy.Row("load"), 7), shortColumn(p, canopy.Row("load_bound"), 0),
		columnOf(p, landing.Row("vertical"), 6), verdictColumn, columnOf(p, landing.Row("drift"), 6))...)
	_ = t.Head()
	early, listed, turned := false, false, false
	for i, d := range o.Delays {
		mark := ""
		if i == o.Best {
			mark = bestMark
		}
		if d.Listed {
			mark, listed = mark+listedMark, true
		}
		since := "-"
		if d.Opened {
			since = p.Bare(d.SinceTop, "s")
			early, turned = early || d.Early, turned || d.OutOfTurn
			if d.OutOfTurn {
				mark += turnMark
			}
		}
		value := strings.TrimSuffix(p.Given(d.Value, unit), " "+p.Unit(unit))
		cells := []string{mark, value}
		if !counted {
			cells = append(cells, since)
		}
		cells = append(cells, cell(p, canopy.Row("height"), d.Flight))
		cells = append(cells, judgedCells(p, canopy.Row("airspeed"), d.Flight)...)
		cells = append(cells, cell(p, canopy.Row("load"), d.Flight), cell(p, canopy.Row("load_bound"), d.Flight))
		cells = append(cells, judgedCells(p, landing.Row("vertical"), d.Flight)...)
		_ = t.Row(append(cells, cell(p, landing.Row("drift"), d.Flight))...)
	}
	switch {
	case o.Best < 0:
		s.Hung("  ", "None opens as it should.")
	case o.falling():
		s.Hung("  ", bestMark+" is the lowest that leaves it time to fill and settle before landing.")
	default:
		s.Hung("  ", bestMark+" opens slowest after thrust has ended.")
	}
	if listed {
		s.Hung("  ", listedMark+" a delay that can be had.")
	}
	if turned {
		s.Hung("  ", turnMark+" out of turn: a smaller canopy, such as a drogue, opens before a larger one.")
	}
	if early {
		s.Hung("  ", "Some open while thrust lasts.")
	}
}

// fromApogee tells whether the rule itself says how long after apogee each opens, so that the table need not.
func (o Opening) fromApogee() bool {
	for _, d := range o.Delays {
		if d.Opened && math.Abs(d.SinceTop-d.Value) > 1e-6 {
			return false
		}
	}
	return !o.falling()
}

// whatIfs is the table of what happens when a canopy opens otherwise than planned: of one
// canopy a row a case, of several a row a canopy below each case.
func (s *sheet) whatIfs(p words.Printer, o Opening) {
	canopy, landing := o.groups()
	t := page.NewTable(s, page.Heading{Lines: []string{"if it opens"}, Left: true, Width: 12},
		shortColumn(p, canopy.Row("height"), 7), shortColumn(p, canopy.Row("airspeed"), 0), verdictColumn,
		shortColumn(p, canopy.Row("load"), 7), columnOf(p, landing.Row("vertical"), 6), verdictColumn,
		shortColumn(p, landing.Row("energy"), 7), verdictColumn, columnOf(p, landing.Row("drift"), 6))
	_ = t.Head()
	alone := len(o.Rocket.Canopies) == 1
	table := results.For(o.Rocket)
	falls := false
	for i := range o.WhatIfs {
		x := &o.WhatIfs[i]
		falls = falls || x.Case == study.NotAtAll
		label := string(x.Case)
		if who, ok := o.failing(x).(string); ok && !alone {
			label = page.Printable(who) + " " + label
		}
		if x.Ballistic() && !alone {
			label += ", ballistic"
		}
		switch {
		case x.Flight == nil:
			s.Hung("  ", label+": "+x.Problem)
		case alone:
			_ = t.Row(whatIfCells(p, label, canopy, landing, x.Flight, true)...)
		default:
			s.Line("  " + label)
			for k := range o.Rocket.Canopies {
				name := o.Rocket.Canopies[k].Name
				_ = t.Row(whatIfCells(p, "  "+page.Printable(name), table.Group("canopy."+name), landing, x.Flight, k == len(o.Rocket.Canopies)-1)...)
			}
		}
	}
	if falls {
		s.Hung("  ", "Where the first to open never does, the rocket falls nose first from the top until another does; where none does it is ballistic.")
	}
}

// whatIfCells are what one canopy does in a case, and the landing beside the last of them.
func whatIfCells(p words.Printer, label string, canopy, landing *results.Group, fl *sim.Flight, last bool) []string {
	cells := append([]string{label, cell(p, canopy.Row("height"), fl)}, judgedCells(p, canopy.Row("airspeed"), fl)...)
	cells = append(cells, cell(p, canopy.Row("load"), fl))
	if !last {
		return append(cells, "", "", "", "", "")
	}
	cells = append(cells, judgedCells(p, landing.Row("vertical"), fl)...)
	if energy := landing.Row("energy"); fl.Landing.Happened {
		cells = append(cells, judgedCells(p, energy, fl)...)
	} else {
		cells = append(cells, "-", "")
	}
	return append(cells, cell(p, landing.Row("drift"), fl))
}

// squared writes a unit of area as print does.
func squared(text string) string {
	if strings.HasSuffix(text, "2") {
		return strings.TrimSuffix(text, "2") + "²"
	}
	return text
}
