package tui

import (
	"cmp"
	"fmt"
	"strings"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// take makes an edit the present state, or shows why it cannot be. What a bad
// value would have changed stays as it was.
func (m *Model) take(f *rocketfile.File, err error, did view.Edit) bool {
	if err != nil {
		m.fault = complaint{input: did.Input, says: view.FaultText(err, did.Input)}
		return false
	}
	if f == m.file() {
		return true // the value was that already
	}
	m.hist = m.hist.done(did, f, m.lodged)
	return true
}

// change is take for one input, told of by its value before and after.
func (m *Model) change(d *field, f *rocketfile.File, err error) bool {
	s := view.Edit{Input: d.Name}
	if err == nil {
		after := ""
		for _, row := range spreadFields(f, m.units) {
			if row.Name == d.Name {
				after = row.value()
			}
		}
		if in, err := f.Find(d.Name); err == nil {
			after = newField(f, f.Described(), &in, m.units).value()
		}
		s.Says = d.Label + " " + cmp.Or(d.value(), d.short, "none") + " to " + cmp.Or(after, "none")
	}
	return m.take(f, err, s)
}

// put sets an input to a number, SI, as an edit that can be undone, and chooses
// it.
func (m *Model) put(input string, to float64) {
	f, err := m.file().SetValue(input, to)
	in, there := m.fieldOf(input)
	if there == nil && m.change(&in, f, err) {
		m.refill()
		m.inputs.choose(input)
	}
}

// fieldOf is an input by its dotted name.
func (m *Model) fieldOf(input string) (field, error) {
	in, err := m.file().Find(input)
	if err != nil {
		return field{}, err
	}
	return newField(m.file(), m.file().Described(), &in, m.units), nil
}

// nudge moves the chosen value by a step (by = ±1), or a choice to the next.
func (m *Model) nudge(by int, coarse bool) {
	d := m.inputs.chosen()
	if d == nil {
		return
	}
	v, given := d.Get(m.file().Described())
	switch {
	case d.Name == motorFileInput:
		m.nextMotor(by)
	case d.Kind == rocketfile.ChoiceKind && len(d.Choices) > 1:
		n := len(d.Choices)
		f, err := m.file().Set(d.Name, d.Choices[((int(v)+by)%n+n)%n])
		m.change(d, f, err)
	case d.Kind == rocketfile.NumberKind, d.Kind == rocketfile.RuleKind && given:
		step := d.Step
		if coarse {
			step = d.Coarse
		}
		to := min(max(view.Nudged(v, step, by, d.unit, d.Unit), d.Min), d.Max)
		if to == v {
			m.say(draw.Dim, d.Label+" goes no further: its range is "+rangeText(d)+".")
			return
		}
		f, err := m.setNumber(d, to)
		m.change(d, f, err)
	default:
		m.say(draw.Dim, d.Label+" has no steps: press enter and type.")
	}
}

// rangeText is the range of an input in the unit shown.
func rangeText(d *field) string {
	text := draw.Exact(d.Min, d.unit, 6) + " to " + draw.Exact(d.Max, d.unit, 6)
	if len(d.Choices) > 0 && d.Kind == rocketfile.NumberKind {
		text += ", or " + strings.Join(d.Choices, ", ")
	}
	return text
}

// byDefault takes the chosen value out of the file.
func (m *Model) byDefault() {
	if d := m.inputs.chosen(); d != nil {
		if strings.HasPrefix(d.Name, spreadPrefix) {
			m.removePart()
			return
		}
		if !d.given {
			m.say(draw.Dim, d.Label+" is not in the file: this is its default.")
			return
		}
		f, err := m.file().Reset(d.Name)
		m.change(d, f, err)
	}
}

// switchDrive lets the other drive fly.
func (m *Model) switchDrive() {
	r := m.file().Described()
	to := rocket.MotorPower
	if r.Power == rocket.MotorPower {
		to = rocket.WaterPower
	}
	if to == rocket.MotorPower && r.Motor == nil || to == rocket.WaterPower && r.Water == nil {
		m.say(draw.Caution, fmt.Sprintf("This rocket has no [%s] in its file.", to))
		return
	}
	f, err := m.file().Set("power", string(to))
	m.take(f, err, view.Edit{Input: "power", Says: fmt.Sprintf("drive %s to %s", r.Power, to)})
}

func (m *Model) addCanopy() {
	f, name, err := m.file().AddCanopy()
	if m.take(f, err, view.Edit{Says: "canopy " + name + " added"}) {
		m.refill()
		m.inputs.choose("canopy." + name + ".name")
		m.say(draw.Plain, "Canopy "+name+" added.")
	}
}

// removeCanopy removes the canopy of the chosen input, or the only one.
func (m *Model) removeCanopy() {
	name := view.CanopyOf(frame{m}.Chosen())
	switch all := m.file().Rocket().Canopies; {
	case len(all) == 0:
		m.say(draw.Dim, "There is no canopy to remove.")
		return
	case name == "" && len(all) == 1:
		name = all[0].Name
	case name == "":
		m.say(draw.Dim, "Which canopy? Choose one of its inputs first.")
		return
	}
	f, err := m.file().RemoveCanopy(name)
	if m.take(f, err, view.Edit{Says: "canopy " + name + " removed"}) {
		m.say(draw.Plain, "Canopy "+name+" removed; undo brings it back.")
	}
}

// toggleTube adds a launch tube or removes it.
func (m *Model) toggleTube() {
	switch r := m.file().Rocket(); {
	case r.Water == nil:
		m.say(draw.Dim, "A launch tube goes with water; this rocket has no [water] in its file.")
	case r.Water.Tube == nil:
		f, err := m.file().AddTube()
		if m.take(f, err, view.Edit{Says: "launch tube added"}) {
			m.refill()
			m.inputs.choose("water.tube.length")
			m.say(draw.Plain, "Launch tube added.")
		}
	default:
		f, err := m.file().RemoveTube()
		if m.take(f, err, view.Edit{Says: "launch tube removed"}) {
			m.say(draw.Plain, "Launch tube removed; undo brings it back.")
		}
	}
}

func (m *Model) undo() {
	h, s, err := m.hist.undone(m.opened)
	m.travel(h, s, err, "Undone: ", "Nothing to undo.")
}

func (m *Model) redo() {
	h, s, err := m.hist.redone(m.opened)
	m.travel(h, s, err, "Done again: ", "Nothing to do again.")
}

// opened is a state of the history read from its text. One from before the file was saved
// elsewhere belongs there now, unless what it names is not there.
func (m *Model) opened(s *step, text string) (*rocketfile.File, error) {
	f, err := m.lodged.WithText([]byte(text))
	if err != nil {
		f, err = s.home.WithText([]byte(text))
	}
	return f, err
}

// travel goes to another place in the history and shows what changed there.
func (m *Model) travel(h history, s *step, err error, says, none string) {
	switch {
	case s == nil:
		m.say(draw.Dim, none)
		return
	case err != nil:
		m.say(draw.Bad, "Not "+strings.ToLower(says)+view.FaultText(err, s.Input)) // a file that it names is gone
		return
	}
	m.hist = h
	m.refill()
	if s.Input != "" {
		m.inputs.choose(s.Input)
	}
	m.say(draw.Plain, says+s.Says+".")
}

// say puts a message on the status line until the next key.
func (m *Model) say(r draw.Role, text string) { m.notice = notice{draw.Clean(text), r} }
