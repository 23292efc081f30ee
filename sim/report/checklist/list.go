package checklist

import (
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Day is what lists are made of.
type Day struct {
	Rocket    *rocket.Rocket
	Verdict   gates.Verdict    // of the drive that flies
	Pad       chamber.Result   // the chamber filled on the pad (plan.OnThePad)
	Most      *plan.WindLimit  // wind up to which it passes, for the launch; nil where nobody looked
	Structure *study.Structure // nil of a rocket without a description of its chamber
}

// kind is one of the lists.
type kind struct {
	name  string // as a command has it
	title string
	drive rocket.Power // "" of both
	has   func(r *rocket.Rocket) bool
	// leads tells of a list that fills, arms or launches: it is none for a rocket that is no go.
	leads bool
	flies bool // its words take the flight
	field bool // it is for the launch site
	amiss bool // it is for a rocket that did not go when it was to
	make  func(w *writer)
}

// kinds are all lists, in the order of a rocket's life.
func kinds() []kind {
	return []kind{
		{name: "layup", title: "laying up the chamber", has: laidUp, make: (*writer).layup},
		{name: "proof", title: "proving the chamber with water", drive: rocket.WaterPower, has: described, flies: true, make: (*writer).proof},
		{name: "leak", title: "leak test with water", drive: rocket.WaterPower, has: described, flies: true, make: (*writer).leak},
		{name: "packing", title: "packing the recovery gear", flies: true, make: (*writer).packing},
		{name: "filling", title: "filling and pressurising", drive: rocket.WaterPower, leads: true, flies: true, field: true, make: (*writer).filling},
		{name: "arming", title: "arming the motor", drive: rocket.MotorPower, leads: true, flies: true, field: true, make: (*writer).arming},
		{name: "launch", title: "launch", leads: true, flies: true, field: true, make: (*writer).launch},
		{name: "misfire", title: "misfire: the motor did not light", drive: rocket.MotorPower, field: true, amiss: true, make: (*writer).misfire},
		{name: "unreleased", title: "under pressure and not released", drive: rocket.WaterPower, field: true, amiss: true, make: (*writer).unreleased},
		{name: "recovery", title: "recovery", flies: true, field: true, make: (*writer).recovery},
	}
}

func laidUp(r *rocket.Rocket) bool    { return r.Chamber != nil && len(r.Chamber.Plies) > 0 }
func described(r *rocket.Rocket) bool { return r.Chamber != nil }

// Known are the names of all lists.
func Known() []string {
	var out []string
	for _, k := range kinds() {
		out = append(out, k.name)
	}
	return out
}

// Named is a list by its name with what it is about.
type Named struct{ Name, Title string }

// Of are the lists that a rocket has on the drive that flies.
func Of(r *rocket.Rocket) []Named { return named(r, func(*kind) bool { return true }) }

// AtTheField are those of them for the launch site.
func AtTheField(r *rocket.Rocket) []Named { return named(r, func(k *kind) bool { return k.field }) }

// Amiss are the names of the lists for a rocket that did not release or light.
func Amiss() []string {
	var out []string
	for _, k := range kinds() {
		if k.amiss {
			out = append(out, k.name)
		}
	}
	return out
}

func named(r *rocket.Rocket, some func(*kind) bool) []Named {
	var out []Named
	for _, k := range kinds() {
		if k.of(r) && some(&k) {
			out = append(out, Named{k.name, k.title})
		}
	}
	return out
}

func (k *kind) of(r *rocket.Rocket) bool {
	return (k.drive == "" || k.drive == r.Power) && (k.has == nil || k.has(r))
}

// Why tells why a rocket has no list of a name: the drive, or what is not described. Empty where it has, and
// for a name that is none.
func Why(r *rocket.Rocket, name string) string {
	for _, k := range kinds() {
		switch {
		case k.name != name || k.of(r):
		case k.drive != "" && k.drive != r.Power:
			return "is for " + string(k.drive) + ", and this flight is on " + string(r.Power) + ": --set power=" + string(k.drive) + ", if it has that drive"
		default:
			return "needs [chamber] described; of a lay-up, with its plies"
		}
	}
	return ""
}

// Leads tells of a list that fills, arms or launches; flies, that its Day needs a Verdict.
func Leads(name string) (leads, flies bool) {
	for _, k := range kinds() {
		if k.name == name {
			return k.leads, k.flies
		}
	}
	return false, false
}

// OnlyOn is the drive that a list is for; empty for one of both.
func OnlyOn(name string) rocket.Power {
	for _, k := range kinds() {
		if k.name == name {
			return k.drive
		}
	}
	return ""
}

// sentence is a line of the card as a step.
func sentence(text string) string {
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// List is one list on its way to a page.
type List struct {
	Name   string
	Title  string
	Alarms []string
	Facts  [][2]string
	People [][2]string // who, and where they stand
	Phases []Phase
	Notes  []string
	Print  []page.Section // what stands below its steps: blanks to fill in, a table
	whole  []page.Section // of a list that another page has
}

// Phase is a stretch of the work.
type Phase struct {
	Name  string
	Steps []string
}

// writer fills a list.
type writer struct {
	words.Printer
	*Day
	list List
}

// New makes the list of a name; ok is false where the rocket has none.
func New(d *Day, name string, sys quantity.System) (l List, ok bool) {
	for _, k := range kinds() {
		if k.name != name || !k.of(d.Rocket) {
			continue
		}
		w := writer{Printer: words.In(sys), Day: d, list: List{Name: k.name, Title: words.Name(d.Rocket) + ": " + k.title}}
		if k.leads && !d.Verdict.Pass() {
			w.stopped(k.title)
		} else {
			if k.leads {
				w.verdict()
			}
			k.make(&w)
		}
		return w.list, true
	}
	return List{}, false
}

// add appends a phase.
func (w *writer) add(name string, steps ...string) {
	w.list.Phases = append(w.list.Phases, Phase{name, steps})
}

func (w *writer) fact(label, text string) {
	w.list.Facts = append(w.list.Facts, [2]string{label, text})
}
func (w *writer) alarm(text string) { w.list.Alarms = append(w.list.Alarms, text) }
func (w *writer) stands(who, where string) {
	w.list.People = append(w.list.People, [2]string{who, where})
}

// verdict is go or no-go at the head.
func (w *writer) verdict() {
	w.fact("go or no-go", words.Verdict(&w.Verdict)+"; the range officer and local law decide")
	w.cautioned()
}

// cautioned tells the checks that are no more than a caution.
func (w *writer) cautioned() {
	var names []string
	for i := range w.Verdict.Checks {
		if c := &w.Verdict.Checks[i]; c.Judged && c.Pass && c.Level == gates.Caution {
			names = append(names, w.Told(c))
		}
	}
	if len(names) > 0 {
		w.fact("cautions", page.Listed(names))
	}
}

// stopped is what stands in place of a list that fills, arms or launches a rocket that is no go.
func (w *writer) stopped(title string) {
	v := &w.Verdict
	w.alarm("This is no leave: " + words.Verdict(v) + ". There is no list for " + title + " until it is go.")
	w.pressureAlarm()
	w.fact("checks", w.Outside(&w.Verdict, func(*gates.Check) bool { return true }))
	steps := w.NoGo(v, "list")
	for i := range steps {
		steps[i] = sentence(steps[i])
	}
	w.add("What is left to do", steps...)
	w.list.Notes = append(w.list.Notes, "ullage check tells what would mend it.")
}

// pressureAlarm tells of a pressure that no proof is for.
func (w *writer) pressureAlarm() {
	if text := w.Beyond(w.Rocket); text != "" {
		w.alarm(text)
	}
	for _, text := range words.Booked(w.Rocket.Chamber) {
		w.alarm(text)
	}
}

// away is the distance that the gas on the pad asks for.
func (w *writer) away() string { return w.Farther(w.Pad.Gas.StandoffFloor) }

// clearance is where everybody else stands.
func (w *writer) clearance() string { return w.Stand(plan.Clear(w.Rocket, w.Verdict.Day)) }
