package tui

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// take makes an edit the present state, or shows why it cannot be. What a bad
// value would have changed stays as it was.
func (m *Model) take(f *rocketfile.File, err error, s step) bool {
	if err != nil {
		m.fault = complaint{input: s.input, says: faultText(err, s.input)}
		return false
	}
	if f == m.file() {
		return true // the value was that already
	}
	s.file = f
	m.hist = m.hist.done(s)
	return true
}

// change is take for one input, told of by its value before and after.
func (m *Model) change(d *field, f *rocketfile.File, err error) bool {
	s := step{input: d.Name}
	if err == nil {
		after := ""
		if in, err := rocketfile.Find(f.Rocket(), d.Name); err == nil {
			after = newField(f, f.Rocket(), in, m.units).value()
		}
		s.says = d.Label + " " + d.value() + " to " + after
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
	r := m.file().Rocket()
	in, err := rocketfile.Find(r, input)
	if err != nil {
		return field{}, err
	}
	return newField(m.file(), r, in, m.units), nil
}

// nudge moves the chosen value by a step (by = ±1), or a choice to the next.
func (m *Model) nudge(by int, coarse bool) {
	d := m.inputs.chosen()
	if d == nil {
		return
	}
	r := m.file().Rocket()
	v, given := d.Get(r)
	switch {
	case d.Kind == rocketfile.ChoiceKind && len(d.Choices) > 1:
		n := len(d.Choices)
		f, err := m.file().Set(d.Name, d.Choices[((int(v)+by)%n+n)%n])
		m.change(d, f, err)
	case d.Kind == rocketfile.NumberKind, d.Kind == rocketfile.RuleKind && given:
		step := d.Step
		if coarse {
			step = d.Coarse
		}
		to := min(max(nudged(v, step, by, d.unit, d.Unit), d.Min), d.Max)
		if to == v {
			m.say(draw.Dim, d.Label+" goes no further: its range is "+rangeText(d)+".")
			return
		}
		f, err := m.file().SetValue(d.Name, to)
		m.change(d, f, err)
	default:
		m.say(draw.Dim, d.Label+" has no steps: press enter and type.")
	}
}

// nudged is v, SI, moved by so many steps and freed of the dust of binary
// arithmetic. In another unit than the input's own the step is the nearest
// round one.
func nudged(v, step float64, by int, shown, usual quantity.Unit) float64 {
	at := shown.FromSI(v)
	size := math.Abs(shown.FromSI(v+step) - at)
	if shown.Name != usual.Name {
		size = round125(size)
	}
	if !(size > 0) || math.IsInf(size, 0) {
		return v
	}
	return shown.ToSI(dusted(at+float64(by)*size, size))
}

// dusted frees a number of the dust of binary arithmetic. Three places below the
// step keep what the user had typed.
func dusted(v, step float64) float64 {
	places := 3 - int(math.Floor(math.Log10(step)))
	if clean, err := strconv.ParseFloat(strconv.FormatFloat(v, 'f', min(max(places, 0), 15), 64), 64); err == nil {
		return clean
	}
	return v
}

// round125 is the nearest of 1, 2 and 5 times a power of ten, nearest by ratio.
func round125(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return x
	}
	scale := math.Pow(10, math.Floor(math.Log10(x)))
	switch m := x / scale; {
	case m < math.Sqrt(2):
		return scale
	case m < math.Sqrt(10):
		return 2 * scale
	case m < math.Sqrt(50):
		return 5 * scale
	}
	return 10 * scale
}

// rangeText is the range of an input in the unit shown.
func rangeText(d *field) string {
	return draw.Exact(d.Min, d.unit, 6) + " to " + draw.Exact(d.Max, d.unit, 6)
}

// byDefault takes the chosen value out of the file.
func (m *Model) byDefault() {
	if d := m.inputs.chosen(); d != nil {
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
	r := m.file().Rocket()
	to := rocket.MotorPower
	if r.Power == rocket.MotorPower {
		to = rocket.WaterPower
	}
	if to == rocket.MotorPower && r.Motor == nil || to == rocket.WaterPower && r.Water == nil {
		m.say(draw.Caution, fmt.Sprintf("This rocket has no [%s] in its file.", to))
		return
	}
	f, err := m.file().Set("power", string(to))
	m.take(f, err, step{input: "power", says: fmt.Sprintf("drive %s to %s", r.Power, to)})
}

func (m *Model) addCanopy() {
	f, name, err := m.file().AddCanopy()
	if m.take(f, err, step{says: "canopy " + name + " added"}) {
		m.refill()
		i := slices.IndexFunc(m.inputs.fields, func(d field) bool {
			return strings.HasPrefix(d.Name, "canopy."+name+".")
		})
		m.inputs.at = max(i, 0)
		m.say(draw.Plain, "Canopy "+name+" added.")
	}
}

// removeCanopy removes the canopy of the chosen input, or the only one.
func (m *Model) removeCanopy() {
	name := m.inputs.canopy()
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
	if m.take(f, err, step{says: "canopy " + name + " removed"}) {
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
		if m.take(f, err, step{says: "launch tube added"}) {
			m.refill()
			m.inputs.choose("water.tube.length")
			m.say(draw.Plain, "Launch tube added.")
		}
	default:
		f, err := m.file().RemoveTube()
		if m.take(f, err, step{says: "launch tube removed"}) {
			m.say(draw.Plain, "Launch tube removed; undo brings it back.")
		}
	}
}

func (m *Model) undo() {
	h, s, ok := m.hist.undone()
	m.travel(h, s, ok, "Undone: ", "Nothing to undo.")
}

func (m *Model) redo() {
	h, s, ok := m.hist.redone()
	m.travel(h, s, ok, "Done again: ", "Nothing to do again.")
}

// travel goes to another place in the history and shows what changed there.
func (m *Model) travel(h history, s step, ok bool, says, none string) {
	if !ok {
		m.say(draw.Dim, none)
		return
	}
	m.hist = h
	// A state from before the file was saved elsewhere belongs there now.
	if f, err := m.lodged.WithText(m.file().Text()); err == nil {
		m.hist = h.moved(f)
	}
	m.refill()
	if s.input != "" {
		m.inputs.choose(s.input)
	}
	m.say(draw.Plain, says+s.says+".")
}

// say puts a message on the status line until the next key.
func (m *Model) say(r draw.Role, text string) { m.notice = notice{draw.Clean(text), r} }

// faultText tells what is wrong in one sentence, the first of several, and
// names the input at fault when it is another than the one changed.
func faultText(err error, changed string) string {
	text, more := draw.Clean(err.Error()), 0
	var all fault.List
	if errors.As(err, &all) && len(all) > 0 {
		text, more = sentence(all[0], changed), len(all)-1
	}
	if more > 0 {
		text += fmt.Sprintf(" (and %d more)", more)
	}
	return text
}

func sentence(f fault.Fault, changed string) string {
	text := draw.Clean(f.Problem)
	if f.Key != changed && f.Key != "" {
		text = draw.Clean(f.Key) + ": " + text
	}
	if f.Remedy != "" {
		text += "; " + draw.Clean(f.Remedy)
	}
	return text
}
