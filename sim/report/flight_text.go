package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
)

// flightSheet tells what a flight came to, group by group. How a group is told is written
// out for the results it has always had; the others follow behind them, so that a new row
// of the table is in the report.
type flightSheet struct {
	sheet
	p  words.Printer
	fl *sim.Flight
	t  results.Table
}

// text is a result with its unit, and the word of the verdict where a limit bounds it.
func (s *flightSheet) text(r *results.Row) string {
	if r.IsWord() {
		return page.Printable(r.Word(s.fl))
	}
	v := r.Of(s.fl)
	word, _ := gates.JudgeResult(s.fl.Rocket, r.Name, v)
	return strings.TrimSpace(s.p.Row(r, v) + " " + word)
}

// known tells that a result has a value.
func (s *flightSheet) known(r *results.Row) bool {
	return r.Word(s.fl) != "" || !math.IsNaN(r.Of(s.fl))
}

// rest are the results of a group with values that are not told otherwise.
func (s *flightSheet) rest(g *results.Group, told ...string) []string {
	var out []string
	for i := range g.Rows {
		r := &g.Rows[i]
		if !slices.Contains(told, g.Short(r)) && s.known(r) {
			out = append(out, r.Short+" "+s.text(r))
		}
	}
	return out
}

// event is a line of the table of what happened when.
type event struct {
	g  *results.Group
	at float64 // s; of what never happened, that of the event before
}

// events is the table of what happened when, in the order in which it did. What never
// happened stands where it would have.
func (s *flightSheet) events() {
	s.Line("")
	s.row("", "time", "height", "speed", "")
	var list []event
	last := math.Inf(-1)
	for i := range s.t {
		if g := &s.t[i]; g.Event {
			if t := g.Row("time"); t != nil && s.known(t) {
				last = t.Of(s.fl)
			}
			list = append(list, event{g, last})
		}
	}
	slices.SortStableFunc(list, func(a, b event) int { return cmp.Compare(a.at, b.at) })
	if off := s.t.Group("lift_off"); off != nil {
		s.row(off.Label, s.p.Time(0), s.p.Height(0), s.p.Speed(0), s.liftOff(off))
	}
	for _, e := range list {
		switch {
		case e.g.Canopy != "":
			s.canopy(e.g)
		case e.g.Happened(s.fl):
			s.moment(e.g, "speed", s.note(e.g))
		case e.g.Name == "rail_exit":
			s.row(e.g.Label, "", "", "", gates.WordNever)
		}
	}
}

// row writes an event: its label, time, height and speed to the right, a note.
func (s *flightSheet) row(label, time, height, speed, note string) {
	s.Hung(fmt.Sprintf("  %-13s%10s%11s%12s  ", label, time, height, speed), note)
}

// moment writes an event that happened.
func (s *flightSheet) moment(g *results.Group, speed, note string) {
	text := func(name string) string {
		if r := g.Row(name); r != nil {
			return s.p.Row(r, r.Of(s.fl))
		}
		return ""
	}
	height := text("height")
	if height == "" { // the landing's
		height = s.p.Height(0)
	}
	s.row(page.Printable(g.Label), text("time"), height, text(speed), note)
}

func (s *flightSheet) liftOff(g *results.Group) string {
	return strings.Join(append([]string{s.text(g.Row("mass"))}, s.rest(g, "mass")...), ", ")
}

// note is what else there is to an event.
func (s *flightSheet) note(g *results.Group) string {
	told := []string{"time", "height", "speed"}
	var first []string
	switch g.Name {
	case "rail_exit":
		told = append(told, "wind_ratio") // which the speed's limit follows from
		word, _ := gates.JudgeResult(s.fl.Rocket, "rail_exit.speed", g.Row("speed").Of(s.fl))
		first = []string{word}
	case "liquid_out":
		told = append(told, "left")
		left := "nothing left"
		if v := g.Row("left").Of(s.fl); v > 0 {
			left = s.p.Mass(v) + " " + gates.WordLeft
		}
		first = []string{left}
	case "landing":
		// The fields below tell the others.
		told = append(told, "vertical", "energy", "east", "north", "drift")
		down := g.Row("vertical")
		word, _ := gates.JudgeResult(s.fl.Rocket, down.Name, down.Of(s.fl))
		first = []string{s.p.Speed(down.Of(s.fl)) + " " + down.Short + " " + word}
	}
	return strings.Join(append(first, s.rest(g, told...)...), "; ")
}

// canopy writes a canopy's opening; its speed is the airspeed.
func (s *flightSheet) canopy(g *results.Group) {
	if !g.Happened(s.fl) {
		s.row(page.Printable(g.Label), "", "", "", gates.WordNever+" opens")
		return
	}
	airspeed, load, most, descent := g.Row("airspeed"), g.Row("load"), g.Row("load_bound"), g.Row("descent")
	word, _ := gates.JudgeResult(s.fl.Rocket, airspeed.Name, airspeed.Of(s.fl))
	notes := []string{word, fmt.Sprintf("%s %s, %s %s", load.Short, s.text(load), most.Short, s.text(most)), "then " + s.text(descent) + " down"}
	notes = append(notes, s.rest(g, "time", "height", "airspeed", "load", "filling", "hanging", "snatch", "load_bound", "descent", "full_time", "since_apogee")...)
	s.moment(g, "airspeed", strings.Join(notes, "; "))
}

// greatest lists the greatest values, each with its time, and the start-up surge.
func (s *flightSheet) greatest() {
	g := s.t.Group("max")
	s.Line("")
	s.Line("  " + g.Label)
	for i := range g.Rows {
		r := &g.Rows[i]
		if strings.HasSuffix(r.Name, "_time") {
			continue
		}
		text := s.text(r)
		if r.Name == "max.acceleration" {
			text += ", " + s.p.Gravities(r.Of(s.fl))
		}
		if at := s.t.Find(r.Name + "_time"); at != nil {
			text += " at " + s.text(at)
		}
		s.Field(r.Short, text)
	}
	start := s.t.Group("startup")
	if thrust, jolt := start.Row("thrust"), start.Row("acceleration"); thrust.Of(s.fl) > 0 {
		text := fmt.Sprintf("surge of at most %s and %s (%s) for %s, as if the valve opened at once",
			s.text(thrust), s.text(jolt), s.p.Gravities(jolt.Of(s.fl)), s.text(start.Row("duration")))
		s.Field(start.Label, strings.Join(append([]string{text}, s.rest(start, "thrust", "acceleration", "duration")...), "; "))
	}
}

// drive says what pushed.
func (s *flightSheet) drive() {
	g := s.t.Group("drive")
	s.Line("")
	text := fmt.Sprintf("%s, %s %s over %s", s.text(g.Row("impulse")), s.text(g.Row("average")), g.Row("average").Short, s.text(g.Row("burn")))
	if class := g.Row("class"); s.known(class) {
		text = class.Short + " " + s.text(class) + ", " + text
	}
	s.Field(g.Label, strings.Join(append([]string{text}, s.rest(g, "impulse", "average", "burn", "class")...), ", "))
}

// stability tells margins and angles.
func (s *flightSheet) stability() {
	margin, attack := s.t.Group("margin"), s.t.Group("attack")
	if !margin.Happened(s.fl) {
		return
	}
	var margins []string
	angled := margin.Row("at_angle") // which has a limit of its own
	for i := range margin.Rows {
		if r := &margin.Rows[i]; r.Name != "margin.least_time" && r.Name != angled.Name && s.known(r) {
			margins = append(margins, r.Short+" "+s.p.BareRow(r, r.Of(s.fl)))
		}
	}
	text := strings.Join(margins, ", ")
	at, most := attack.Row("rail_exit"), attack.Row("most")
	if s.known(at) {
		text += " " + margin.Row("least").Suffix + ", " + marginsOf(s.fl, margin).word
	}
	if s.known(angled) {
		text += "; " + angled.Short + " " + s.text(angled)
	}
	s.Field(margin.Label, text)
	if !s.known(at) {
		return
	}
	word, _ := gates.JudgeResult(s.fl.Rocket, at.Name, at.Of(s.fl))
	text = s.p.Row(at, at.Of(s.fl)) + " at " + at.Short + " " + word
	if s.known(most) {
		text += ", at most " + s.text(most)
	}
	s.Field(attack.Label, strings.Join(append([]string{text}, s.rest(attack, "rail_exit", "most")...), "; "))
}

// landing says how hard and where it comes down.
func (s *flightSheet) landing() {
	g := s.t.Group("landing")
	if !g.Happened(s.fl) {
		s.Field(g.Label, gates.WordNever)
		return
	}
	s.Field(g.Row("energy").Label, s.text(g.Row("energy")))
	s.Field(g.Row("drift").Label, s.p.Drift(s.fl.Landing))
}

// told are the groups that have a place of their own in the report; events have one.
var told = []string{"lift_off", "max", "startup", "drive", "margin", "attack"}

// others tells groups that are in no other place.
func (s *flightSheet) others() {
	for i := range s.t {
		g := &s.t[i]
		if g.Event || slices.Contains(told, g.Name) {
			continue
		}
		if rest := s.rest(g); len(rest) > 0 {
			s.Field(page.Printable(g.Label), strings.Join(rest, "; "))
		}
	}
}
