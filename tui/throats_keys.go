package tui

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// throatKeys are the keys of the throats view.
type throatKeys struct {
	Open, Prev, Next, Smaller, Larger, Type, Add, Remove, Take, Fills, Plot key.Binding
}

func newThroatKeys(k KeyMap) throatKeys {
	return throatKeys{
		Open:    bind("n", "nozzle throats side by side", "n"),
		Prev:    bind("[", "throat above in the list", k.Earlier.Keys()...),
		Next:    bind("]", "throat below", k.Later.Keys()...),
		Smaller: bind("{", "make the throat chosen a step smaller", k.FarEarlier.Keys()...),
		Larger:  bind("}", "make it a step larger", k.FarLater.Keys()...),
		Type:    bind("e", "type it anew", k.NextEvent.Keys()...),
		Add:     bind("a", "add a throat", "a"),
		Remove:  bind("r", "remove it from the list", "r"),
		Take:    bind("k", "take it: the rocket's throat from now on", "k"),
		Fills:   bind("b", "best fill for each, or not", "b"),
		Plot:    bind("z", "plot height or thrust", k.Span.Keys()...),
	}
}

func (v *throatsView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Prev, b.Next, b.Smaller, b.Larger, b.Type, b.Add, b.Remove, b.Take, b.Fills, b.Plot}
}

func (v *throatsView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	if !v.flies() {
		return k.hints()
	}
	return []draw.Hint{
		draw.HintOf("throat", b.Prev, b.Next), draw.HintOf("size", b.Smaller, b.Larger),
		draw.HintOf("add", b.Add), draw.HintOf("remove", b.Remove), draw.HintOf("take", b.Take),
		draw.HintOf("best fill", b.Fills), draw.HintOf("plot", b.Plot), draw.HintOf("type", b.Type), draw.HintOf("undo", k.Undo),
		draw.HintOf("view", k.NextView), draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *throatsView) press(m *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	if !v.flies() {
		return false, nil
	}
	switch b := &v.bindings; {
	case key.Matches(k, b.Prev):
		v.list.move(v.listed(), -1)
	case key.Matches(k, b.Next):
		v.list.move(v.listed(), 1)
	case key.Matches(k, b.Smaller):
		v.nudge(m, -1)
	case key.Matches(k, b.Larger):
		v.nudge(m, 1)
	case key.Matches(k, b.Type):
		v.askThroat(m, "Throat:", draw.Exact(v.chosen(), v.unit(m), 9), v.change)
	case key.Matches(k, b.Add):
		if len(v.listed()) >= mostThroats {
			m.say(draw.Dim, fmt.Sprintf("There is room for %d throats: remove one first.", mostThroats))
			break
		}
		v.askThroat(m, "Add a throat:", "", func(_ *Model, to float64) { v.list.add(to) })
	case key.Matches(k, b.Remove):
		if v.list.chosen == ownThroat {
			m.say(draw.Dim, "This is the rocket's own throat: choose another to remove.")
		}
		v.list.remove()
	case key.Matches(k, b.Take):
		v.take(m)
	case key.Matches(k, b.Fills):
		v.fillsToo = !v.fillsToo
	case key.Matches(k, b.Plot):
		v.thrust = !v.thrust
	default:
		return false, nil
	}
	return true, v.show(v.scene)
}

// unit is the one that throats are shown in.
func (v *throatsView) unit(m *Model) quantity.Unit { return m.units.Unit(m.file().Unit(throatInput)) }

// chosen is the throat chosen, m.
func (v *throatsView) chosen() float64 {
	rows := v.listed()
	return rows[v.list.at(rows)].throat
}

// nudge makes the chosen throat a step smaller or larger.
func (v *throatsView) nudge(m *Model, by int) {
	d, err := m.fieldOf(throatInput)
	if err != nil {
		return
	}
	to := min(max(nudged(v.chosen(), d.Step, by, d.unit, d.Unit), d.Min), d.Max)
	if wrong := v.wrong(m, to); wrong != "" {
		m.say(draw.Bad, "Throat "+draw.Exact(to, d.unit, 6)+": "+wrong)
		return
	}
	v.change(m, to)
}

// change makes the chosen throat another: in the rocket, if it is the rocket's
// own.
func (v *throatsView) change(m *Model, to float64) {
	if v.list.chosen == ownThroat {
		m.put(throatInput, to)
		return
	}
	v.list.set(to)
}

// wrong says why the rocket cannot have a throat; empty when it can.
func (v *throatsView) wrong(m *Model, to float64) string {
	r := m.file().Rocket()
	in, err := rocketfile.Find(r, throatInput)
	if err == nil {
		if err = in.Set(r, to); err == nil {
			err = r.Validate()
		}
	}
	if err != nil {
		return faultText(err, throatInput)
	}
	return ""
}

// askThroat lets a throat be typed, in any unit of length.
func (v *throatsView) askThroat(m *Model, says, text string, accept func(*Model, float64)) {
	l, unit := newLine(text), v.unit(m)
	m.asking = &question{
		says: says, typed: &l,
		rules: "Diameter of the nozzle's narrowest place: 12.5 mm, 0.5 in; a number alone is in " + unit.Name + ".",
		submit: func(m *Model, text string) tea.Cmd {
			q, err := quantity.ParseIn(text, quantity.Length, unit)
			if err != nil {
				m.wrong(err.Error())
				return nil
			}
			if wrong := v.wrong(m, q.Value); wrong != "" {
				m.wrong(wrong)
				return nil
			}
			m.asking = nil
			accept(m, q.Value)
			return v.show(v.scene)
		},
	}
}

// take makes the chosen throat the rocket's. The one it had stays in the list.
func (v *throatsView) take(m *Model) {
	old, to := m.file().Rocket().Water.Throat, v.chosen()
	if sameThroat(old, to) {
		m.say(draw.Dim, "This is the rocket's own throat already.")
		return
	}
	before := m.file()
	if m.put(throatInput, to); m.file() == before {
		return
	}
	v.list.set(old)
	v.list.chosen = ownThroat
}
