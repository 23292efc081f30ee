package motors

import (
	"path/filepath"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// keys are the keys of the motors view.
type keys struct {
	Open, Prev, Next, Add, Remove, Take, Plot key.Binding
}

func newKeys(k view.Keys) keys {
	return keys{
		Open:   view.Bind("m", "motors side by side", "m"),
		Prev:   view.Bind("[", "motor above on the list", k.Earlier.Keys()...),
		Next:   view.Bind("]", "motor below", k.Later.Keys()...),
		Add:    view.Bind("a", "add a motor file by its path", "a"),
		Remove: view.Bind("r", "take a motor that was added off the list", "r"),
		Take:   view.Bind("k", "put it into the rocket and fly on it", "k"),
		Plot:   view.Bind("z", "plot thrust or height, where one has room", k.Span.Keys()...),
	}
}

// Keys are what the view does.
func (v *View) Keys() []view.Key {
	b := &v.bindings
	return []view.Key{
		view.On(b.Prev, func(view.Frame) { v.move(-1) }),
		view.On(b.Next, func(view.Frame) { v.move(1) }),
		view.On(b.Add, v.askPath),
		view.On(b.Remove, v.remove),
		view.On(b.Take, v.take),
		view.On(b.Plot, func(view.Frame) { v.heights = !v.heights }),
	}
}

func (v *View) Hints() []draw.Hint {
	b, k := &v.bindings, &v.shared
	return []draw.Hint{
		draw.HintOf("motor", b.Prev, b.Next), draw.HintOf("put it in", b.Take), draw.HintOf("add a file", b.Add),
		draw.HintOf("plot", b.Plot), draw.HintOf("undo", k.Undo), draw.HintOf("remove", b.Remove), draw.HintOf("view", k.NextView),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

// Press does what a key of the view does.
func (v *View) Press(frame view.Frame, k tea.KeyMsg) (taken bool, cmd tea.Cmd) {
	if !view.Press(v.Keys(), frame, k) {
		return false, nil
	}
	return true, v.Show(v.Scene)
}

// take puts the chosen motor into the rocket and lets it fly on it.
func (v *View) take(frame view.Frame) {
	e := v.entry()
	if e == nil {
		frame.Say(draw.Dim, "There is no motor to put in.")
		return
	}
	f, err := frame.File(), error(nil)
	if e.path != "" {
		f, err = f.WithMotor(e.path)
	}
	if err == nil {
		f, err = f.Set("power", string(rocket.MotorPower))
	}
	switch {
	case err != nil:
		frame.Say(draw.Bad, "Not put in: "+motorFault(e.path, err))
	case f == frame.File():
		frame.Say(draw.Dim, "The rocket flies on this motor already.")
	case e.own:
		frame.Take(f, nil, view.Edit{Input: "power", Says: "drive to the motor"})
	case frame.Take(f, nil, view.Edit{Says: "motor " + e.name + " put in"}):
		frame.Say(draw.Plain, "The rocket flies on "+e.name+"; undo brings back what it had.")
	}
}

// askPath asks for the path of a motor file.
func (v *View) askPath(frame view.Frame) {
	frame.Ask(view.Question{
		Says:   "Motor file:",
		Rules:  "The path of a file with curve, case and propellant, and perhaps delay, delays, diameter and length.",
		Path:   true,
		Submit: v.add,
	})
}

// add puts a motor file on the list, if it can be used, and chooses it.
func (v *View) add(frame view.Frame, text string) (wrong string, cmd tea.Cmd) {
	path := draw.LongPath(text)
	if path == "" {
		return "A path is missing.", nil
	}
	path = filepath.Clean(path)
	if _, err := frame.File().WithMotor(path); err != nil {
		return motorFault(path, err), nil
	}
	v.named = eachOnce(append(slices.Clone(v.named), path))
	v.chosen = path
	return "", v.Show(v.Scene)
}

// remove takes the chosen motor off the list, if the user has put it there.
func (v *View) remove(frame view.Frame) {
	e := v.entry()
	if e == nil || !slices.Contains(v.named, e.path) {
		frame.Say(draw.Dim, "Only a motor that was added can be taken off: the others are in the rocket's folder or in the rocket.")
		return
	}
	gone := e.path
	v.move(-1)
	v.named = slices.DeleteFunc(slices.Clone(v.named), func(p string) bool { return p == gone })
}
