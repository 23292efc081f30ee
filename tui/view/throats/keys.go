package throats

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the throats view.
type keys struct {
	Open, Prev, Next, Smaller, Larger, Type, Add, Remove, Take, Fills, Plot, Wish key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:    view.Bind("n", "nozzle throats side by side", "n"),
		Prev:    view.Bind("[", "throat above in the list", k.Earlier.Keys()...),
		Next:    view.Bind("]", "throat below", k.Later.Keys()...),
		Smaller: view.Bind("{", "make the throat chosen a step smaller", k.FarEarlier.Keys()...),
		Larger:  view.Bind("}", "make it a step larger", k.FarLater.Keys()...),
		Type:    view.Bind("e", "type it anew", k.NextEvent.Keys()...),
		Add:     view.Bind("a", "add a throat", "a"),
		Remove:  view.Bind("r", "remove it from the list", "r"),
		Take:    view.Bind("k", "take it: the rocket's throat from now on", "k"),
		Fills:   view.Bind("b", "best fill for each, or not", "b"),
		Wish:    view.Bind("y", "say what to look for the best of: any result, most, least or a value", "y"),
		Plot:    view.Bind("z", "plot height or thrust", k.Span.Keys()...),
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Prev, func(view.Frame) { v.list.move(v.listed(), -1) }),
		view.On(b.Next, func(view.Frame) { v.list.move(v.listed(), 1) }),
		view.On(b.Smaller, func(frame view.Frame) { v.nudge(frame, -1) }),
		view.On(b.Larger, func(frame view.Frame) { v.nudge(frame, 1) }),
		view.On(b.Type, v.retype),
		view.On(b.Add, v.add),
		view.On(b.Remove, v.remove),
		view.On(b.Take, v.take),
		view.On(b.Fills, func(view.Frame) { v.fillsToo = !v.fillsToo }),
		view.On(b.Wish, func(frame view.Frame) {
			v.wish.Ask(frame, frame.File().Rocket(), func() tea.Cmd { return v.Show(v.Scene) })
		}),
		view.On(b.Plot, func(view.Frame) { v.thrust = !v.thrust }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	if !v.flies() {
		return k.Hints()
	}
	return []draw.Hint{
		draw.HintOf("throat", b.Prev, b.Next), draw.HintOf("size", b.Smaller, b.Larger),
		draw.HintOf("add", b.Add), draw.HintOf("remove", b.Remove), draw.HintOf("take", b.Take),
		draw.HintOf("best fill", b.Fills), draw.HintOf("plot", b.Plot), draw.HintOf("best for", b.Wish), draw.HintOf("type", b.Type), draw.HintOf("undo", k.Undo),
		draw.HintOf("view", k.NextView), draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !v.flies() || !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// unit is the one that throats are shown in.
func (v *View) unit(frame view.Frame) quantity.Unit {
	return v.Scene.Units.Unit(frame.File().Unit(throatInput))
}

// chosen is the throat chosen, m.
func (v *View) chosen() float64 {
	rows := v.listed()
	return rows[v.list.at(rows)].throat
}

// nudge makes the chosen throat a step smaller or larger.
func (v *View) nudge(frame view.Frame, by int) {
	in, err := rocketfile.Find(frame.File().Rocket(), throatInput)
	if err != nil {
		return
	}
	unit := v.unit(frame)
	to := min(max(view.Nudged(v.chosen(), in.Step, by, unit, in.Unit), in.Min), in.Max)
	if wrong := v.wrong(frame, to); wrong != "" {
		frame.Say(draw.Bad, "Throat "+draw.Exact(to, unit, 6)+": "+wrong)
		return
	}
	v.change(frame, to)
}

// change makes the chosen throat another: in the rocket, if it is the rocket's
// own.
func (v *View) change(frame view.Frame, to float64) {
	if v.list.chosen == ownThroat {
		frame.Put(throatInput, to)
		return
	}
	v.list.set(to)
}

// wrong says why the rocket cannot have a throat; empty when it can.
func (v *View) wrong(frame view.Frame, to float64) string {
	r := frame.File().Rocket()
	in, err := rocketfile.Find(r, throatInput)
	if err == nil {
		if err = in.Set(r, to); err == nil {
			err = r.Validate()
		}
	}
	if err != nil {
		return view.FaultText(err, throatInput)
	}
	return ""
}

// retype lets the chosen throat be typed anew.
func (v *View) retype(frame view.Frame) {
	v.askThroat(frame, "Throat:", draw.Exact(v.chosen(), v.unit(frame), 9), v.change)
}

// add lets another throat be typed.
func (v *View) add(frame view.Frame) {
	if len(v.listed()) >= mostThroats {
		frame.Say(draw.Dim, fmt.Sprintf("There is room for %d throats: remove one first.", mostThroats))
		return
	}
	v.askThroat(frame, "Add a throat:", "", func(_ view.Frame, to float64) { v.list.add(to) })
}

// remove takes the chosen throat off the list.
func (v *View) remove(frame view.Frame) {
	if v.list.chosen == ownThroat {
		frame.Say(draw.Dim, "This is the rocket's own throat: choose another to remove.")
	}
	v.list.remove()
}

// askThroat lets a throat be typed, in any unit of length.
func (v *View) askThroat(frame view.Frame, says, text string, accept func(view.Frame, float64)) {
	unit := v.unit(frame)
	frame.Ask(view.Question{
		Says: says, Text: text,
		Rules: "Diameter of the nozzle's narrowest place: 12.5 mm, 0.5 in; a number alone is in " + unit.Name + ".",
		Submit: func(frame view.Frame, text string) (string, tea.Cmd) {
			q, err := quantity.ParseIn(text, quantity.Length, unit)
			if err != nil {
				return err.Error(), nil
			}
			if wrong := v.wrong(frame, q.Value); wrong != "" {
				return wrong, nil
			}
			accept(frame, q.Value)
			return "", v.Show(v.Scene)
		},
	})
}

// take makes the chosen throat the rocket's. The one it had stays in the list.
func (v *View) take(frame view.Frame) {
	old, to := frame.File().Rocket().Water.Throat, v.chosen()
	if sameThroat(old, to) {
		frame.Say(draw.Dim, "This is the rocket's own throat already.")
		return
	}
	if frame.Put(throatInput, to) {
		v.list.set(old)
		v.list.chosen = ownThroat
	}
}
