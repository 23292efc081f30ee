// Package certification writes the page for a first or a second flight for high power: what such flights usually ask, which motors
// are for which and how the rocket flies on each, lines for witness and result, what to bring. It flies nothing.
//
// What flights ask is US practice from memory, no source; the body that certifies, the range officer and local law decide.
package certification

import (
	"math"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// memory marks what is told of rules.
const memory = "US practice, from memory"

// deference says whose rules count.
const deference = "What certifying flights ask is " + memory + ", and no rule book: bodies that certify differ and change. The body that certifies you, the range officer " +
	"and local law decide; ask them before a motor is bought. Nothing here says that a flight will be accepted."

// sheet is a page on its way.
type sheet struct {
	words.Printer
	rocket *rocket.Rocket
	motors []plan.Certification
}

// Document is the page of a rocket and of motors in it, the one of its file the first.
func Document(r *rocket.Rocket, motors []plan.Certification, sys quantity.System) page.Document {
	s := sheet{words.In(sys), r, motors}
	doc := page.Document{Title: words.Name(r) + ": certifying flights for high power"}
	both := page.Section{Name: "Both flights usually ask (" + memory + ")"}
	both.Add(page.Points(asked()))
	doc.Sections = append(doc.Sections, s.head(), s.choice(), s.flown(), both)
	for _, f := range plan.CertifyingFlights() {
		x := page.Section{Name: title(f)}
		x.Add(page.Points(s.asks(f)))
		doc.Sections = append(doc.Sections, x)
	}
	bring := page.Section{Name: "What to bring"}
	bring.Add(page.Points(s.bring()))
	return page.Document{Title: doc.Title, Sections: append(doc.Sections, bring, s.cautions(), s.result())}
}

// title is what a flight is called.
func title(f plan.CertifyingFlight) string {
	return "The " + f.Name + " flight: " + classes(f) + " (" + memory + ")"
}

// classes are those of a flight in words.
func classes(f plan.CertifyingFlight) string {
	return "class " + fault.OneOf(strings.Split(f.Classes, "")...)
}

// head is go or no-go on the motor of the file, before anything else, and whose rules count.
func (s *sheet) head() page.Section {
	var x page.Section
	if own := &s.motors[0]; own.Invalid != nil || !own.Verdict.Pass() {
		x.Add(page.Alarm("No leave to fly as the file has it, on " + s.verdict(own) + "."))
	}
	x.Add(page.Prose(deference))
	if s.rocket.Water != nil || s.rocket.Chamber != nil {
		x.Add(page.Prose("This airframe has a pressure chamber in it: ask beforehand whether the body certifies on such a one."))
	}
	f := &s.rocket.Flyer
	flyer, held := "not given ([flyer] name)", "not given ([flyer] certification: number and level)"
	if f.Name != "" {
		flyer = page.Printable(f.Name)
	}
	if f.Certification != "" {
		held = page.Printable(f.Certification)
	}
	x.Add(page.Facts{{"flyer", flyer}, {"certified", held}, {"rocket", words.Name(s.rocket)}})
	return x
}

// verdict is go or no-go on a motor with what fails or is not judged.
func (s *sheet) verdict(c *plan.Certification) string {
	name := page.Printable(c.Name) + ": "
	if c.Invalid != nil {
		return name + "no flight: " + page.OneLine(c.Invalid)
	}
	if out := s.Outside(&c.Verdict, func(*gates.Check) bool { return true }); out != "" {
		return name + words.Verdict(&c.Verdict) + ": " + out
	}
	return name + words.Verdict(&c.Verdict)
}

// Word is the verdict alone.
func Word(c *plan.Certification) string {
	if c.Invalid != nil {
		return "no flight"
	}
	return c.Verdict.Word()
}

// choice is which motor is for which flight.
func (s *sheet) choice() page.Section {
	x := page.Section{Name: "Which motor is for which flight, by its total impulse"}
	g := page.Grid{Heads: []page.GridHead{page.Words("motor"), page.Words("class"), page.Figures("impulse"), page.Words("flight"), page.Words("in its mount"), page.Words("verdict")}}
	for i := range s.motors {
		c := &s.motors[i]
		m := c.Rocket.Motor
		flight := c.Flight.Name
		if flight == "" {
			flight = "neither"
		}
		g.Rows = append(g.Rows, []string{page.Printable(c.Name), thrust.Class(m.Impulse()), s.Impulse(m.Impulse()), flight, s.Fit(c.Fit), Word(c)})
	}
	x.Add(g)
	for _, f := range plan.CertifyingFlights() {
		x.Add(page.Prose(s.which(f)))
	}
	var open page.Points
	for i := range s.motors {
		if c := &s.motors[i]; i > 0 && (c.Invalid != nil || !c.Verdict.Pass()) {
			open = append(open, s.verdict(c)+".")
		}
	}
	if len(open) > 0 {
		x.Add(page.Prose("What stands against the others:"), open)
	}
	if l := gates.LimitFor(s.rocket, gates.LimitImpulse); s.rocket.Limits.Impulse == 0 {
		x.Add(page.Prose("The limit of the impulse, " + s.Impulse(l.Max) + ", is the first flight's as long as the file has none: whoever holds the first gives limits.impulse, what they may fly."))
	}
	x.Add(page.Prose("Only a motor on the body's own list of certified motors counts: whether one is, no file here tells. A motor of one's own making never is."))
	return x
}

// which are the motors for a flight: those that are go, and those that are for it by impulse alone.
func (s *sheet) which(f plan.CertifyingFlight) string {
	var fit, alone []string
	for i := range s.motors {
		switch c := &s.motors[i]; {
		case c.Flight.Name != f.Name:
		case c.Qualifies():
			fit = append(fit, page.Printable(c.Name))
		default:
			alone = append(alone, page.Printable(c.Name))
		}
	}
	text := "For the " + f.Name + " flight, " + classes(f) + ": "
	switch {
	case len(fit) > 0:
		text += page.Listed(fit)
	case len(alone) > 0:
		text += "none that fits and is go"
	default:
		text += "none of these"
	}
	if len(alone) > 0 {
		text += "; by impulse alone: " + page.Listed(alone)
	}
	return text + "."
}

// figures are the results that tell how it flies.
var figures = []string{"lift_off.mass", "rail_exit.speed", "apogee.height", "landing.vertical", "landing.drift"}

// flown is how the rocket flies on each.
func (s *sheet) flown() page.Section {
	x := page.Section{Name: "How it flies on each, on the day of the file"}
	table := results.For(s.motors[0].Rocket)
	g := page.Grid{Heads: []page.GridHead{page.Words("motor")}}
	for _, name := range figures {
		g.Heads = append(g.Heads, page.Figures(table.Must(name).Heading()))
	}
	g.Heads = append(g.Heads, page.Figures("delay"))
	for i := range s.motors {
		c := &s.motors[i]
		if c.Invalid != nil {
			continue
		}
		row := []string{page.Printable(c.Name)}
		for _, name := range figures {
			text := gates.WordNever
			if v, happened := table.Must(name).Defined(c.Verdict.Day); happened {
				text = s.Row(table.Must(name), v)
			}
			row = append(row, text)
		}
		delay := gates.WordNone
		if d := c.Rocket.Motor.Delay; !math.IsNaN(d) {
			delay = s.Given(d, "s")
		}
		g.Rows = append(g.Rows, append(row, delay))
	}
	x.Add(g)
	limits := "Rail exit at least " + s.Given(gates.RailExit(s.motors[0].Rocket).Min, "m/s") + ", landing at most " + s.Given(gates.LimitFor(s.rocket, gates.LimitLanding).Max, "m/s")
	f := &s.rocket.Field
	ceiling, field := ", no ceiling is given (field.ceiling)", ", no field is given (field.radius)"
	if f.Ceiling > 0 {
		ceiling = ", ceiling " + s.Height(f.Ceiling)
	}
	switch {
	case f.Radius > 0:
		field = ", field to " + s.Height(f.Radius)
	case f.Bounded():
		field = ", field within its boundary"
	}
	limits += ceiling + field
	x.Add(s.balance()...)
	x.Add(page.Prose(limits + ". Delays as the motors' files have them; ullage motors tells the best that can be had, ullage card the page for the flight itself."))
	return x
}

// balance is where it balances on each, which a witness asks for.
func (s *sheet) balance() []page.Block {
	g := page.Grid{Heads: []page.GridHead{page.Words("motor"), page.Figures("balance, motor in"), page.Figures("centre of pressure"), page.Figures("margin"), page.Figures("least in flight")}}
	for i := range s.motors {
		c := &s.motors[i]
		if c.Invalid != nil || !c.Verdict.Day.Stability.Known {
			continue
		}
		at := &c.Verdict.Day.Stability
		g.Rows = append(g.Rows, []string{page.Printable(c.Name), s.Size(at.Release.Balance), s.Size(at.Release.PressureCentre), s.Number(at.Release.Margin) + " cal", s.Number(at.Least) + " cal"})
	}
	if len(g.Rows) == 0 {
		return []page.Block{page.Prose("Balance point and centre of pressure, which a witness asks for, are not known: give the airframe's shape and balance (body.length, body.balance).")}
	}
	return []page.Block{g, page.Prose("Places count from the tip of the nose; the balance point is measured before it counts.")}
}

// cautions go with all of it.
func (s *sheet) cautions() page.Section {
	x := page.Section{Name: "Cautions"}
	x.Add(page.Points(words.Cautions(rocket.MotorPower)))
	return x
}
