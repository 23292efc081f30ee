package report

import (
	"fmt"
	"io"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Size is what a search for values that pass everything looked for and found.
type Size struct {
	Rocket *rocket.Rocket // the one it started from
	Goals  []study.Goal
	Chosen []study.Choice // words of what was found
	Motor  Motor          // of what was found, where motors were looked among
	Units  []quantity.Unit
	Found  plan.Sized
	System quantity.System
}

// best is the search as that for a best value is told.
func (z *Size) best() Best {
	return Best{Rocket: z.Rocket, Goals: z.Goals, Motor: z.Motor, Units: z.Units, Found: z.Found.Found.Best, System: z.System}
}

// WriteSizeJSON writes one object: the inputs, whether they pass, the range of each that does with the others held,
// every condition with its tightest check, and what stands in the way. SI, angles in degrees.
func WriteSizeJSON(w io.Writer, z Size) error {
	var inputs, passing machine.Object
	for i, g := range z.Goals {
		value := func(v float64) number { return number(programValue(g.Input, v)) }
		inputs.Add(g.Input.Name, value(z.Found.Found.Values[i]))
		if within := z.Found.Found.Within[i]; z.Found.Stand.Passes {
			passing.Add(g.Input.Name, [2]number{value(within[0]), value(within[1])})
		} else {
			passing.Add(g.Input.Name, nil)
		}
	}
	for _, c := range z.Chosen {
		inputs.Add(c.Input.Name, c.Word)
	}
	var out machine.Object
	out.Add("inputs", &inputs).Add("passes", z.Found.Stand.Passes).Add("room", number(z.Found.Stand.Room)).Add("passing", &passing)
	if z.Motor.Name != "" {
		out.Add("motor", z.Motor.Name)
	}
	conditions := []*machine.Object{}
	for i := range z.Found.Stand.Verdict {
		j := &z.Found.Stand.Verdict[i]
		o := new(machine.Object)
		o.Add("power", string(j.Drive)).Add("wind_mps", number(j.Wind)).Add("verdict", j.Verdict.Word())
		if c := j.Verdict.Tightest(); c != nil {
			o.Add("tightest", barrierJSON(plan.Barrier{Drive: j.Drive, Wind: j.Wind, Check: *c}))
		}
		conditions = append(conditions, o)
	}
	out.Add("conditions", conditions)
	list := func(name string, of []plan.Barrier) {
		rows := []*machine.Object{}
		for _, b := range of {
			rows = append(rows, barrierJSON(b))
		}
		out.Add(name, rows)
	}
	list("fails", z.Found.Blocks)
	list("never_passes", z.Found.Never)
	out.Add("flights", z.Found.Found.Flights).Add("verdicts", z.Found.Judged).Add("model", string(z.Rocket.Flown()))
	words.AddPressure(&out, z.Found.Found.Flight.Rocket)
	return machine.WriteLine(w, &out)
}

func barrierJSON(b plan.Barrier) *machine.Object {
	c := &b.Check
	unit, scale := siUnit(c.Limit.Unit)
	shown := func(x float64) number { return number(x * scale) } // null where there is none
	o := new(machine.Object)
	o.Add("key", c.Key).Add("name", page.Printable(c.Name)).Add("power", string(b.Drive)).Add("wind_mps", number(b.Wind)).Add("case", caseNames[c.Case]).
		Add("value", shown(c.Value)).Add("min", shown(c.Limit.Min)).Add("max", shown(c.Limit.Max)).Add("unit", unit).Add("word", c.Word).
		Add("room", number(c.Room()))
	return o
}

// WriteSizeText writes what was found for people.
func WriteSizeText(w io.Writer, z Size) error {
	p := words.In(z.System)
	var s sheet
	s.Hung("", words.Name(z.Rocket)+": values that pass every check at once")
	s.Hung("  ", z.where(p))
	s.Line("")
	s.bestTable(p, z.best().sized(z.Found.Stand.Passes))
	if len(z.Goals) > 0 {
		s.Line("")
	}
	if z.Motor.Name != "" {
		s.Field("motor", z.Motor.Name)
	}
	for _, c := range z.Chosen {
		s.Field(c.Input.Name, c.Word)
	}
	z.verdict(&s, p)
	s.Field("as it is", z.today(p))
	s.Field("took", words.Plural(z.Found.Found.Flights, "place")+", "+words.Plural(z.Found.Judged, "verdict"))
	s.Line("")
	z.conditions(&s, p)
	if z.Found.Stand.Passes && (len(z.Goals)+len(z.Chosen) > 0 || z.Motor.File != "") {
		s.Line("")
		b := z.best()
		b.Chosen = z.Chosen
		s.toFly(&b)
	}
	s.Line("")
	if z.Found.Stand.Passes {
		s.Hung("  ", "The most room in every check is not the most height: ullage best --passing looks for the highest of what passes, or for another result.")
	}
	s.Hung("  ", "Within the limits given is all this can say: local law, the range officer and qualified people decide.")
	s.closing(p, z.Found.Found.Flight.Rocket)
	_, err := io.WriteString(w, s.String())
	return err
}

// where says what everything has to pass.
func (z *Size) where(p words.Printer) string {
	var drives, winds []string
	for _, j := range z.Found.Stand.Verdict {
		if d := string(j.Drive) + " power"; len(drives) == 0 || drives[len(drives)-1] != d {
			drives = append(drives, d)
			winds = winds[:0]
		}
		winds = append(winds, p.WindSpeed(j.Wind))
	}
	return "on " + strings.Join(drives, " and ") + "; calm, wind of " + strings.Join(winds, " and ") + "; the worst corner of what is uncertain"
}

// sized has the table of a best value tell where a rocket passes.
func (b Best) sized(passes bool) Best {
	b.heads = [2]string{"most room", "passes"}
	if !passes {
		b.heads = [2]string{"nearest", ""}
		b.Found.Within = nil
	}
	b.Found.AtBound, b.Found.AtEdge = nil, nil
	return b
}

// verdict says go, or what stands in the way.
func (z *Size) verdict(s *sheet, p words.Printer) {
	switch f := &z.Found; {
	case f.Stand.Passes:
		s.Field(gates.WordGo, "every check within "+words.Within)
	case len(f.Never) > 0:
		s.Field(gates.WordNoGo, "no value looked at passes these; so near each comes:")
		z.barriers(s, p, f.Never)
	default:
		s.Field(gates.WordNoGo, "no value looked at passes all at once; where it comes nearest, these fail:")
		z.barriers(s, p, f.Blocks)
	}
}

// barriers is a table of checks that fail.
func (z *Size) barriers(s *sheet, p words.Printer, of []plan.Barrier) {
	for _, b := range of {
		c := &b.Check
		if !c.Judged {
			s.Line(fmt.Sprintf("! %-34s%11s  on %s", page.Printable(c.Name), gates.WordOpen, b.Drive))
			continue
		}
		s.Line(fmt.Sprintf("! %-34s%11s  %-12s %s", page.Printable(c.Name), p.CheckValue(c), p.Bounded(c.Limit, "≥ ", "≤ "), z.place(p, b)))
	}
}

// place says in which condition, where there is more than one.
func (z *Size) place(p words.Printer, b plan.Barrier) string {
	text := string(b.Drive)
	if c := &b.Check; c.Values[c.Case].Flown && c.Case != results.Calm {
		text += ", wind " + p.WindSpeed(b.Wind)
	}
	return text
}

// today is how the rocket stands as it is.
func (z *Size) today(p words.Printer) string {
	switch t := &z.Found.Today; {
	case len(t.Verdict) == 0:
		return "not a rocket in all of these conditions"
	case t.Passes:
		return "passes as well"
	default:
		j, c := t.Tightest()
		return p.Told(c) + " (" + p.Bounds(c.Limit) + ") on " + string(j.Drive)
	}
}

// conditions is a table of the tightest check of each.
func (z *Size) conditions(s *sheet, p words.Printer) {
	s.Line(fmt.Sprintf("  %-7s%8s  %-11s %-34s%s", "drive", "wind", "verdict", "tightest check", "worst"))
	for i := range z.Found.Stand.Verdict {
		j := &z.Found.Stand.Verdict[i]
		name, value := "", ""
		if c := j.Verdict.Tightest(); c != nil {
			name, value = c.Name, p.CheckValue(c)
		}
		s.Line(fmt.Sprintf("  %-7s%8s  %-11s %-34s%s", j.Drive, p.WindSpeed(j.Wind), j.Verdict.Word(), page.Printable(name), value))
	}
}
