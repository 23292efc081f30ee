package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
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
	Rigid   bool // flights are not those of a point mass
}

// falling tells whether the number in the rule is a height rather than a time.
func (o *Opening) falling() bool {
	return o.Rocket.Canopies[o.Canopy].Rule(o.Rocket.Power).Trigger == rocket.Falling
}

// numberName says what the number in the rule is.
func (o *Opening) numberName() string {
	switch o.Rocket.Canopies[o.Canopy].Rule(o.Rocket.Power).Trigger {
	case rocket.Ejection, rocket.AfterBurnout:
		return "after burnout"
	case rocket.AfterLaunch:
		return "after launch"
	case rocket.AfterApogee:
		return "after apogee"
	case rocket.Falling:
		return "falling through"
	}
	return "rule"
}

type (
	openingJSON struct {
		Canopy string       `json:"canopy"`
		Rule   string       `json:"rule"`
		Delays []delayJSON  `json:"delays"`
		Best   *int         `json:"best"`
		WhatIf []whatIfJSON `json:"what_if"`
		Sized  *sizedJSON   `json:"sized"`
	}
	delayJSON struct {
		Delay     *number      `json:"delay_s"`
		Height    *number      `json:"set_height_m"`
		Opened    bool         `json:"opened"`
		Listed    bool         `json:"listed"`
		Early     bool         `json:"under_thrust"`
		SinceTop  *number      `json:"since_apogee_s"`
		At        *number      `json:"height_m"`
		Airspeed  *number      `json:"airspeed_mps"`
		Load      *number      `json:"load_n"`
		LoadBound *number      `json:"load_bound_n"`
		Landing   *landingJSON `json:"landing"`
	}
	whatIfJSON struct {
		Case     study.WhatIfCase `json:"case"`
		Problem  *string          `json:"problem"`
		Height   *number          `json:"height_m"`
		Airspeed *number          `json:"airspeed_mps"`
		Load     *number          `json:"load_n"`
		Landing  *landingJSON     `json:"landing"`
	}
	sizedJSON struct {
		Asked    number `json:"asked_mps"`
		Diameter number `json:"diameter_m"`
		Area     number `json:"area_m2"`
		Vertical number `json:"vertical_mps"`
		Drift    number `json:"drift_m"`
		Time     number `json:"time_s"`
	}
)

func newLanding(l sim.Landing) *landingJSON {
	if !l.Happened {
		return nil
	}
	return &landingJSON{
		number(l.Time), number(l.Speed), number(l.Vertical), number(l.Energy), number(l.East), number(l.North),
	}
}

// WriteOpeningJSON writes one object, SI. The delays have delay_s, or set_height_m for
// a rule on height; best is the place of the best one among them.
func WriteOpeningJSON(w io.Writer, o Opening) error {
	d := openingJSON{
		Canopy: o.Rocket.Canopies[o.Canopy].Name, Rule: o.Rule,
		Delays: []delayJSON{}, WhatIf: []whatIfJSON{},
	}
	for _, x := range o.Delays {
		j := delayJSON{Opened: x.Opened, Listed: x.Listed, Early: x.Early, Landing: newLanding(x.Landing)}
		if o.falling() {
			j.Height = machine.Pointer(machine.Tidy(x.Value))
		} else {
			j.Delay = machine.Pointer(machine.Tidy(x.Value))
		}
		if x.Opened {
			j.SinceTop, j.At, j.Airspeed = machine.Pointer(x.SinceTop), machine.Pointer(x.Height), machine.Pointer(x.Airspeed)
			j.Load, j.LoadBound = machine.Pointer(x.Load), machine.Pointer(x.LoadBound)
		}
		d.Delays = append(d.Delays, j)
	}
	if o.Best >= 0 && o.Best < len(o.Delays) {
		d.Best = &o.Best
	}
	for _, x := range o.WhatIfs {
		d.WhatIf = append(d.WhatIf, newWhatIf(x, o.Canopy))
	}
	if o.Speed > 0 {
		z := o.Sized
		d.Sized = &sizedJSON{number(o.Speed), number(z.Diameter), number(z.Area), number(z.Vertical), number(z.Drift), number(z.Flight.Results.Landing.Time)}
	}
	return machine.WriteLine(w, d)
}

func newWhatIf(x study.WhatIf, canopy int) whatIfJSON {
	j := whatIfJSON{Case: x.Case}
	if x.Problem != "" {
		j.Problem = &x.Problem
	}
	if x.Flight != nil {
		r := &x.Flight.Results
		j.Landing = newLanding(r.Landing)
		if c := r.Canopies[canopy]; c.Opened {
			j.Height, j.Airspeed, j.Load = machine.Pointer(c.Height), machine.Pointer(c.Airspeed), machine.Pointer(c.Load)
		}
	}
	return j
}

// WriteOpeningCSV writes the delays, a row each, SI; cells of a canopy that does not
// open are empty.
func WriteOpeningCSV(w io.Writer, o Opening) error {
	set := "delay_s"
	if o.falling() {
		set = "set_height_m"
	}
	var b strings.Builder
	b.WriteString(set + ",best,listed,since_apogee_s,height_m,airspeed_mps,load_n,load_bound_n,landing_mps,landing_s,drift_m\n")
	for i, d := range o.Delays {
		row := machine.AppendNumber(nil, machine.Tidy(d.Value))
		row = append(row, fmt.Sprintf(",%t,%t", i == o.Best, d.Listed)...)
		for _, v := range [...]float64{d.SinceTop, d.Height, d.Airspeed, d.Load, d.LoadBound} {
			row = append(row, ',')
			if d.Opened {
				row = machine.AppendNumber(row, v)
			}
		}
		for _, v := range [...]float64{d.Landing.Speed, d.Landing.Time, math.Hypot(d.Landing.East, d.Landing.North)} {
			row = append(row, ',')
			if d.Landing.Happened {
				row = machine.AppendNumber(row, v)
			}
		}
		b.Write(append(row, '\n'))
	}
	_, err := io.WriteString(w, b.String())
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
	s.study(o.Rocket, o.Rigid)
	_, err := io.WriteString(w, s.String())
	return err
}

// delays is the table of the canopy's opening against the number in its rule.
func (s *sheet) delays(p words.Printer, o Opening) {
	unit := "s"
	if o.falling() {
		unit = "m"
	}
	t := page.NewTable(s, page.Heading{Width: 2, Left: true},
		page.Heading{Lines: strings.Fields(o.numberName()), Unit: p.Unit(unit), Width: 7},
		page.Heading{Lines: []string{"after", "the top"}, Unit: "s"},
		page.Heading{Lines: []string{"height"}, Unit: p.Unit("m"), Width: 7},
		page.Heading{Lines: []string{"airspeed"}, Unit: p.Unit("m/s")},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"opening", "load"}, Unit: p.Unit("N")},
		page.Heading{Lines: []string{"at most"}, Unit: p.Unit("N")},
		page.Heading{Lines: []string{"lands"}, Unit: p.Unit("m/s"), Width: 6},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"drift"}, Unit: p.Unit("m"), Width: 6})
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
		switch {
		case d.Opened:
			word, _ := gates.LimitFor(o.Rocket, gates.LimitOpening).Judge(d.Airspeed)
			cells = append(cells, p.Bare(d.SinceTop, "s"), p.Bare(d.Height, "m"), p.Bare(d.Airspeed, "m/s"), word,
				p.Bare(d.Load, "N"), p.Bare(d.LoadBound, "N"))
			early = early || d.Early
		default:
			cells = append(cells, "-", "-", "-", gates.WordNever, "-", "-")
		}
		_ = t.Row(append(cells, comesDown(p, o.Rocket, d.Landing)...)...)
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

// comesDown are the cells of a landing: speed down, word, drift.
func comesDown(p words.Printer, r *rocket.Rocket, l sim.Landing) []string {
	if !l.Happened {
		return []string{"-", gates.WordNever, "-"}
	}
	word, _ := gates.LimitFor(r, gates.LimitLanding).Judge(l.Vertical)
	return []string{p.Bare(l.Vertical, "m/s"), word, p.Bare(math.Hypot(l.East, l.North), "m")}
}

// whatIfs is the table of what happens when it opens otherwise than planned.
func (s *sheet) whatIfs(p words.Printer, o Opening) {
	t := page.NewTable(s, page.Heading{Lines: []string{"if it opens"}, Left: true, Width: 12},
		page.Heading{Lines: []string{"height"}, Unit: p.Unit("m"), Width: 7},
		page.Heading{Lines: []string{"airspeed"}, Unit: p.Unit("m/s")},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"load"}, Unit: p.Unit("N"), Width: 7},
		page.Heading{Lines: []string{"lands"}, Unit: p.Unit("m/s"), Width: 6},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"energy"}, Unit: p.Unit("J"), Width: 7},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"drift"}, Unit: p.Unit("m"), Width: 6})
	_ = t.Head()
	for _, x := range o.WhatIfs {
		if x.Flight == nil {
			s.Hung(fmt.Sprintf("  %-12s ", x.Case), x.Problem)
			continue
		}
		r := &x.Flight.Results
		cells := []string{string(x.Case)}
		if c := r.Canopies[o.Canopy]; c.Opened {
			word, _ := gates.LimitFor(o.Rocket, gates.LimitOpening).Judge(c.Airspeed)
			cells = append(cells, p.Bare(c.Height, "m"), p.Bare(c.Airspeed, "m/s"), word, p.Bare(c.Load, "N"))
		} else {
			cells = append(cells, "-", "-", gates.WordNever, "-")
		}
		down := comesDown(p, o.Rocket, r.Landing)
		energy, word := "-", ""
		if r.Landing.Happened {
			energy = p.Bare(r.Landing.Energy, "J")
			word, _ = gates.LimitFor(o.Rocket, gates.LimitEnergy).Judge(r.Landing.Energy)
		}
		_ = t.Row(append(cells, down[0], down[1], energy, word, down[2])...)
	}
}

// squared writes a unit of area as print does.
func squared(text string) string {
	if strings.HasSuffix(text, "2") {
		return strings.TrimSuffix(text, "2") + "²"
	}
	return text
}
