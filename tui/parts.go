package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// pickPart asks which part the rocket is to be given.
func (m *Model) pickPart() {
	var all []choice
	for _, a := range m.file().Additions() {
		help := a.Help
		if a.Many {
			help = "One more. " + help
		}
		all = append(all, choice{a.Path, a.Name, help})
	}
	if d := m.inputs.chosen(); d != nil && !d.Apart && d.Kind == rocketfile.NumberKind && !strings.HasPrefix(d.Name, spreadPrefix) {
		all = append(all, choice{spreadPrefix, "uncertainty", "Of " + d.Name + ": one standard deviation, for scatter, checks and card; also " + m.keys.Uncertain.Help().Key + "."})
	}
	m.pick(picker{says: "Add to the rocket:", all: all, take: func(m *Model, path string) tea.Cmd {
		if path == spreadPrefix {
			m.askSpread()
			return nil
		}
		m.addPart(path)
		return nil
	}})
}

// addPart gives the rocket a part and goes to what is to be said of it.
func (m *Model) addPart(path string) {
	f, input, err := m.file().Add(path)
	if err != nil {
		m.say(draw.Bad, "Not added: "+view.FaultText(err, path))
		return
	}
	what := f.PartOf(input)
	if m.take(f, nil, view.Edit{Says: what + " added"}) {
		m.refill()
		if !m.inputs.choose(input) {
			m.say(draw.Plain, upperFirst(what)+" added; its inputs are shown on the other drive: "+m.keys.Drive.Help().Key+".")
			return
		}
		says := "its values are to be changed to what was built."
		if m.inputs.open[input].missing || m.inputs.chosen().value() == "none" || m.inputs.chosen().value() == "" {
			says = "what it is, is still to be given."
		}
		m.say(draw.Plain, upperFirst(what)+" added; "+says)
	}
}

// removePart takes the part that the chosen input belongs to out of the rocket.
func (m *Model) removePart() {
	d := m.inputs.chosen()
	if d == nil {
		return
	}
	what := m.file().PartOf(d.Name)
	if strings.HasPrefix(d.Name, spreadPrefix) {
		what = "uncertainty of " + strings.TrimPrefix(d.Name, spreadPrefix)
	}
	f, err := m.file().Remove(d.Name)
	if err != nil {
		m.say(draw.Dim, "Not removed: "+view.FaultText(err, ""))
		return
	}
	if m.take(f, nil, view.Edit{Says: what + " removed"}) {
		m.say(draw.Plain, upperFirst(what)+" removed; undo brings it back.")
	}
}

// movePart lets the item that the chosen input belongs to change places with its neighbour.
func (m *Model) movePart(by int) {
	d := m.inputs.chosen()
	if d == nil {
		return
	}
	f, err := m.file().Move(d.Name, by)
	if err != nil {
		m.say(draw.Dim, "Not moved: "+view.FaultText(err, ""))
		return
	}
	if m.take(f, nil, view.Edit{Input: d.Name, Says: m.file().PartOf(d.Name) + " moved"}) {
		m.refill()
		m.inputs.choose(d.Name)
	}
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// spreadPrefix begins the names of the rows of uncertainties.
const spreadPrefix = "spread."

// spreadFields are the uncertainties that the file states, as rows of the list.
func spreadFields(f *rocketfile.File, sys quantity.System) []field {
	var out []field
	for _, s := range f.Spreads() {
		in, row := s.Input, s.Input
		u := sys.Unit(f.Unit(in.Name))
		u.Offset = 0
		d := field{Input: &row, unit: u, given: true}
		d.Name, d.Group, d.Label = spreadPrefix+in.Name, "spread", in.Name
		d.Help = "One standard deviation of " + in.Name + ", for scatter, checks and card. " + in.Help
		d.Kind, d.Min, d.Max, d.Choices = rocketfile.NumberKind, 0, in.Max-in.Min, nil
		d.Step, d.Coarse = in.Step/10, in.Step
		d.Get = func(*rocket.Rocket) (float64, bool) { return s.SD, true }
		d.number = draw.Number(draw.Exact(s.SD, u, 4), u)
		out = append(out, d)
	}
	return out
}

// setText sets the value of a row to what was typed.
func (m *Model) setText(d *field, text string) (*rocketfile.File, error) {
	if name, ok := strings.CutPrefix(d.Name, spreadPrefix); ok {
		return m.file().SetSpreadText(name, text, d.unit)
	}
	if d.Path {
		return m.file().SetPath(d.Name, text)
	}
	return m.file().SetIn(d.Name, text, d.unit)
}

// setNumber sets the value of a row to a number, SI.
func (m *Model) setNumber(d *field, v float64) (*rocketfile.File, error) {
	if name, ok := strings.CutPrefix(d.Name, spreadPrefix); ok {
		return m.file().SetSpread(name, v, "")
	}
	return m.file().SetValue(d.Name, v)
}

// askSpread asks how far off the chosen input may be.
func (m *Model) askSpread() {
	d := m.inputs.chosen()
	if d == nil {
		return
	}
	name := strings.TrimPrefix(d.Name, spreadPrefix)
	unit, text := d.unit, ""
	unit.Offset = 0
	for _, s := range spreadFields(m.file(), m.units) {
		if s.Name == spreadPrefix+name {
			text = s.value()
		}
	}
	if d.Apart {
		m.say(draw.Dim, "No flight depends on "+name+", so its uncertainty changes none.")
		return
	}
	frame{m}.Ask(view.Question{
		Says: "One standard deviation of " + name + ":", Text: text,
		Rules: "How far off it may well be: two of three lie within. A number alone takes " + unitWord(unit) + "; nothing takes the uncertainty out.",
		Submit: func(fr view.Frame, text string) (string, tea.Cmd) {
			f, err := fr.File().SetSpreadText(name, text, unit)
			says := "uncertainty of " + name + " " + text
			if strings.TrimSpace(text) == "" {
				f, err = fr.File().Remove(spreadPrefix + name)
				says = "uncertainty of " + name + " removed"
			}
			if err != nil {
				return view.FaultText(err, "spread."+name), nil
			}
			fr.Take(f, nil, view.Edit{Says: says})
			fr.Choose(spreadPrefix + name)
			return "", nil
		},
	})
}

func unitWord(u quantity.Unit) string {
	if u.Name == "" {
		return "no unit"
	}
	return u.Name
}
