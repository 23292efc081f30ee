package report

import (
	"fmt"
	"io"
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
			Add("under_thrust", x.Early).Add("since_apogee_s", opened(x.SinceTop))
		addNamed(&line, canopy, x.Flight, "height", "airspeed", "load", "load_bound")
		addResults(&line, landing, x.Flight)
		delays = append(delays, &line)
	}
	for _, x := range o.WhatIfs {
		var problem any
		if x.Problem != "" {
			problem = x.Problem
		}
		fl := x.Flight
		if fl == nil {
			fl = &sim.Flight{Rocket: o.Rocket}
		}
		var line machine.Object
		line.Add("case", string(x.Case)).Add("problem", problem)
		addNamed(&line, canopy, fl, "height", "airspeed", "load")
		addResults(&line, landing, fl)
		cases = append(cases, &line)
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
		Add("what_if", cases).Add("sized", sized)
	return machine.WriteLine(w, &doc)
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
	s.closing(o.Rocket)
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
	t := page.NewTable(s, page.Heading{Width: 2, Left: true},
		page.Heading{Lines: strings.Fields(o.trigger().Title(o.Rocket.Power)), Unit: p.Unit(unit), Width: 7},
		shortColumn(p, canopy.Row("since_apogee"), 0), shortColumn(p, canopy.Row("height"), 7),
		shortColumn(p, canopy.Row("airspeed"), 0), verdictColumn,
		shortColumn(p, canopy.Row("load"), 7), shortColumn(p, canopy.Row("load_bound"), 0),
		columnOf(p, landing.Row("vertical"), 6), verdictColumn, columnOf(p, landing.Row("drift"), 6))
	_ = t.Head()
	early, listed := false, false
	for i, d := range o.Delays {
		mark := ""
		if i == o.Best {
			mark = bestMark
		}
		if d.Listed {
			mark, listed = mark+listedMark, true
		}
		cells := []string{mark, strings.TrimSuffix(p.Given(d.Value, unit), " "+p.Unit(unit))}
		since := "-"
		if d.Opened {
			since = p.Bare(d.SinceTop, "s")
			early = early || d.Early
		}
		cells = append(cells, since, cell(p, canopy.Row("height"), d.Flight))
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
	if early {
		s.Hung("  ", "Some open while thrust lasts.")
	}
}

// whatIfs is the table of what happens when it opens otherwise than planned.
func (s *sheet) whatIfs(p words.Printer, o Opening) {
	canopy, landing := o.groups()
	t := page.NewTable(s, page.Heading{Lines: []string{"if it opens"}, Left: true, Width: 12},
		shortColumn(p, canopy.Row("height"), 7), shortColumn(p, canopy.Row("airspeed"), 0), verdictColumn,
		shortColumn(p, canopy.Row("load"), 7), columnOf(p, landing.Row("vertical"), 6), verdictColumn,
		shortColumn(p, landing.Row("energy"), 7), verdictColumn, columnOf(p, landing.Row("drift"), 6))
	_ = t.Head()
	for _, x := range o.WhatIfs {
		if x.Flight == nil {
			s.Hung(fmt.Sprintf("  %-12s ", x.Case), x.Problem)
			continue
		}
		cells := append([]string{string(x.Case), cell(p, canopy.Row("height"), x.Flight)}, judgedCells(p, canopy.Row("airspeed"), x.Flight)...)
		cells = append(cells, cell(p, canopy.Row("load"), x.Flight))
		cells = append(cells, judgedCells(p, landing.Row("vertical"), x.Flight)...)
		if energy := landing.Row("energy"); x.Flight.Landing.Happened {
			cells = append(cells, judgedCells(p, energy, x.Flight)...)
		} else {
			cells = append(cells, "-", "")
		}
		_ = t.Row(append(cells, cell(p, landing.Row("drift"), x.Flight))...)
	}
}

// squared writes a unit of area as print does.
func squared(text string) string {
	if strings.HasSuffix(text, "2") {
		return strings.TrimSuffix(text, "2") + "²"
	}
	return text
}
