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
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Motor is one of some motors that were looked among.
type Motor struct {
	Name string // as it is shown; empty for the rocket's own
	File string // as the rocket's file names it
}

// Best is what a search for the highest flight looked for and found.
type Best struct {
	Rocket *rocket.Rocket // the one it started from
	Goals  []study.Goal
	Chosen []study.Choice  // words of what was found
	Motor  Motor           // of what was found, where motors were looked among
	Wish   study.Wish      // what was wanted
	Units  []quantity.Unit // that the file uses for each goal; the text shows them
	Found  study.Best
	Today  *sim.Flight // of Rocket as it is; nil when it is not known
	System quantity.System
	// Loses are the checks that pass as the rocket is and would not at what was found.
	Loses []string
	// Unjudged is why that is not known; nil when it is.
	Unjudged error
	// Verdict is that on what was found, in every case of its drive.
	Verdict *gates.Verdict
	// Passing says that only what passes every check could be found.
	Passing bool
	// Partial says that the search was cut short.
	Partial bool

	heads [2]string // above what was found and its range, in place of the usual
}

func (b *Best) column(i int) Column {
	c := Column{Input: b.Goals[i].Input, Unit: b.Goals[i].Input.Unit}
	if i < len(b.Units) {
		c.Unit = b.Units[i]
	}
	return c
}

// value is what was wished for of a flight.
func (b *Best) value(fl *sim.Flight) float64 { return b.Wish.Row.Of(fl) }

// machine is a value of it as JSON has it.
func (b *Best) machine(v float64) number { return number(results.Machine(b.Wish.Row.Dimension, v)) }

// WriteBestJSON writes one object: the inputs, what was searched for and its value, the apogee, the range of each input
// within 1 % of it, and the flights it took. SI, angles in degrees.
func WriteBestJSON(w io.Writer, b Best) error {
	var inputs, within machine.Object
	for i, g := range b.Goals {
		value := func(v float64) number { return number(programValue(g.Input, v)) }
		inputs.Add(g.Input.Name, value(b.Found.Values[i]))
		if i < len(b.Found.Within) {
			r := b.Found.Within[i]
			within.Add(g.Input.Name, [2]number{value(r[0]), value(r[1])})
		} else {
			within.Add(g.Input.Name, nil)
		}
	}
	for _, c := range b.Chosen {
		inputs.Add(c.Input.Name, c.Word)
	}
	var out machine.Object
	out.Add("inputs", &inputs).Add("apogee_m", number(b.Found.Apogee)).
		Add("within_1_percent", &within).Add("flights", b.Found.Flights)
	if b.Unjudged == nil {
		out.Add("loses", page.Printables(append([]string{}, b.Loses...)))
	} else {
		out.Add("loses", nil) // not known
	}
	out.Add("cut_off", b.Found.CutOff)
	out.Add("for", b.Wish.Row.Name).Add("value", b.machine(b.value(b.Found.Flight))).Add("least", b.Wish.Least).Add("model", string(b.Rocket.Flown()))
	if b.Verdict != nil {
		out.Add("passes", b.Verdict.Pass())
	}
	if b.Motor.Name != "" {
		out.Add("motor", b.Motor.Name)
	}
	if b.Wish.Aimed() {
		out.Add("target", b.machine(b.Wish.Target)).Add("met", b.Wish.Met(b.value(b.Found.Flight)))
	}
	if b.Found.Flight != nil {
		words.AddPressure(&out, b.Found.Flight.Rocket)
	}
	if b.Partial {
		out.Add("partial", true)
	}
	return machine.WriteLine(w, &out)
}

// WriteBestText writes what was found for people.
func WriteBestText(w io.Writer, b Best) error {
	p := words.In(b.System)
	var s sheet
	s.Hung("", words.Title(b.Rocket)+": "+p.Wish(&b.Wish))
	s.Line("")
	s.bestTable(p, b)
	if len(b.Goals) > 0 {
		s.Line("")
	}
	if b.Motor.Name != "" {
		s.Field("motor", b.Motor.Name)
	}
	for _, c := range b.Chosen {
		s.Field(c.Input.Name, c.Word)
	}
	found := flightSheet{p: p, fl: b.Found.Flight, t: results.For(b.Found.Flight.Rocket)}
	height, time := found.t.Must("apogee.height"), found.t.Must("apogee.time")
	apogee := found.text(height) + " at " + found.text(time)
	if b.Today != nil && b.Today.Apogee.Happened {
		apogee += "; as it is " + p.Row(height, height.Of(b.Today))
	}
	if row := &b.Wish.Row; row.Name != height.Name || !b.Wish.Met(b.value(b.Found.Flight)) {
		text := p.Row(row, b.value(b.Found.Flight))
		if !b.Wish.Met(b.value(b.Found.Flight)) {
			text += ": the nearest there is"
		}
		if b.Today != nil {
			if v, defined := row.Defined(b.Today); defined {
				text += "; as it is " + p.Row(row, v)
			}
		}
		s.Field(row.Label, text)
	}
	s.Field(found.t.Group("apogee").Label, apogee)
	if exit := found.t.Group("rail_exit"); exit.Happened(found.fl) {
		thrust := exit.Row("thrust_to_weight")
		s.Field(exit.Label, found.text(exit.Row("speed"))+"; "+thrust.Short+" "+found.text(thrust))
	}
	if landing := found.t.Group("landing"); landing.Happened(found.fl) {
		s.Field(landing.Label, found.text(landing.Row("vertical")))
	}
	s.Field("took", words.Plural(b.Found.Flights, "flight"))
	if n := b.Found.CutOff; n > 0 {
		s.Field("left out", words.Plural(n, "flight")+" above "+p.AtMost(study.TopPressure(b.Rocket, b.Found.Flight.Rocket))+": "+topWords(p, b.Rocket))
	}
	if v := b.Verdict; v != nil && v.Rocket != nil {
		s.Field("checks", words.Verdict(v))
	}
	if len(b.Loses) > 0 {
		s.Field(gates.WordNoGo, "it would fail what passes now: "+page.Listed(b.Loses)+"; --passing looks only among what passes")
	}
	if b.Unjudged != nil {
		s.Field("checks", gates.WordOpen+": "+page.Printable(b.Unjudged.Error()))
	}
	if b.Partial {
		s.Field("search", gates.WordPartial+": the best found before it was interrupted")
	}
	if len(b.Goals)+len(b.Chosen) > 0 || b.Motor.File != "" {
		s.Line("")
		s.toFly(&b)
	}
	s.closing(p, b.Found.Flight.Rocket)
	_, err := io.WriteString(w, s.String())
	return err
}

// toFly says how what was found is set.
func (s *sheet) toFly(b *Best) {
	s.Line("  To fly it, add:")
	set := func(name, value string) {
		setting := name + "=" + value
		if strings.ContainsRune(setting, ' ') {
			setting = "'" + setting + "'"
		}
		s.Line("    --set " + setting)
	}
	if b.Motor.File != "" {
		set("power", string(rocket.MotorPower))
		set("motor.file", page.Printable(b.Motor.File))
	}
	for _, c := range b.Chosen {
		set(c.Input.Name, c.Word)
	}
	for i, g := range b.Goals {
		set(g.Input.Name, b.column(i).text(b.Found.Values[i], words.In(quantity.Metric), valueDigits))
	}
}

// bestTable lists the inputs: what was found, how flat the top is, where was looked.
func (s *sheet) bestTable(p words.Printer, b Best) {
	if len(b.Goals) == 0 {
		return
	}
	heads := b.heads
	if heads[0] == "" {
		heads = [2]string{"best", "within 1 %"}
	}
	cells := [][4]string{{"", heads[0], heads[1], "looked in"}}
	notes := []string{""}
	for i, g := range b.Goals {
		c := b.column(i)
		text := func(v float64) string { return c.text(v, p, valueDigits) }
		row := [4]string{g.Input.Name, text(b.Found.Values[i]), "", text(g.From) + " to " + text(g.To)}
		if i < len(b.Found.Within) {
			row[2] = text(b.Found.Within[i][0]) + " to " + text(b.Found.Within[i][1])
		}
		cells = append(cells, row)
		note := ""
		switch {
		case i < len(b.Found.AtBound) && b.Found.AtBound[i]:
			note = g.Input.Name + " is at the end of the range; the best may lie beyond it."
			if g.Input.Name == "water.pressure" {
				note = "Nothing above " + p.AtMost(g.To) + " was looked at: " + topWords(p, b.Rocket) + "."
			}
		case i < len(b.Found.AtEdge) && b.Found.AtEdge[i]:
			note = g.Input.Name + ": just beyond, flights no longer leave the rail, end with liquid " + gates.WordLeft + ", have more pressure than the chamber is proved for or make no rocket."
			if b.Passing {
				note = g.Input.Name + ": just beyond, a check fails, or there is no flight that may be the best."
			}
		}
		notes = append(notes, note)
	}
	widths := [4]int{}
	for _, row := range cells {
		for i, c := range row {
			widths[i] = max(widths[i], len([]rune(c)))
		}
	}
	for _, row := range cells {
		line := "  " + fmt.Sprintf("%-*s", widths[0], row[0])
		for i := 1; i < len(row); i++ {
			line += "   " + fmt.Sprintf("%*s", widths[i], row[i])
		}
		s.Line(line)
	}
	for _, n := range notes {
		if n != "" {
			s.Hung("  ", n)
		}
	}
}

// topWords say what bounds the pressure of a search.
func topWords(p words.Printer, r *rocket.Rocket) string {
	if math.IsNaN(r.ProvedFor()) {
		return p.ProvedFor(r) + ", and the file's own pressure is " + p.Given(r.Water.Pressure, "bar")
	}
	return p.ProvedFor(r)
}
