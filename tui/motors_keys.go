package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocket"
	"ullage/tui/draw"
)

// motorsKeys are the keys of the motors view.
type motorsKeys struct {
	Open, Prev, Next, Add, Remove, Take, Plot key.Binding
}

func newMotorsKeys(k KeyMap) motorsKeys {
	return motorsKeys{
		Open:   bind("m", "motors side by side", "m"),
		Prev:   bind("[", "motor above on the list", k.Earlier.Keys()...),
		Next:   bind("]", "motor below", k.Later.Keys()...),
		Add:    bind("a", "add a motor file by its path", "a"),
		Remove: bind("r", "take a motor that was added off the list", "r"),
		Take:   bind("k", "put it into the rocket and fly on it", "k"),
		Plot:   bind("z", "plot thrust or height, where one has room", k.Span.Keys()...),
	}
}

func (v *motorsView) keys() []key.Binding {
	b := v.bindings
	return []key.Binding{b.Prev, b.Next, b.Add, b.Remove, b.Take, b.Plot}
}

func (v *motorsView) hints() []draw.Hint {
	b, k := &v.bindings, &v.frame
	return []draw.Hint{
		draw.HintOf("motor", b.Prev, b.Next), draw.HintOf("put it in", b.Take), draw.HintOf("add a file", b.Add),
		draw.HintOf("plot", b.Plot), draw.HintOf("undo", k.Undo), draw.HintOf("remove", b.Remove), draw.HintOf("view", k.NextView),
		draw.HintOf("choose", k.Up, k.Down), draw.HintOf("change", k.Less, k.More),
		draw.HintOf("save", k.Save), draw.HintOf("findings", k.Findings), draw.HintOf("units", k.Units),
	}
}

func (v *motorsView) press(m *Model, k tea.KeyMsg) (bool, tea.Cmd) {
	switch b := &v.bindings; {
	case key.Matches(k, b.Prev):
		v.move(-1)
	case key.Matches(k, b.Next):
		v.move(1)
	case key.Matches(k, b.Take):
		v.take(m)
	case key.Matches(k, b.Add):
		v.askPath(m)
	case key.Matches(k, b.Remove):
		v.remove(m)
	case key.Matches(k, b.Plot):
		v.heights = !v.heights
	default:
		return false, nil
	}
	return true, v.show(v.scene)
}

// take puts the chosen motor into the rocket and lets it fly on it.
func (v *motorsView) take(m *Model) {
	e := v.entry()
	if e == nil {
		m.say(draw.Dim, "There is no motor to put in.")
		return
	}
	f, err := m.file(), error(nil)
	if e.path != "" {
		f, err = f.WithMotor(e.path)
	}
	if err == nil {
		f, err = f.Set("power", string(rocket.MotorPower))
	}
	switch {
	case err != nil:
		m.say(draw.Bad, "Not put in: "+motorFault(e.path, err))
	case f == m.file():
		m.say(draw.Dim, "The rocket flies on this motor already.")
	case e.own:
		m.take(f, nil, step{input: "power", says: "drive to the motor"})
	case m.take(f, nil, step{says: "motor " + e.name + " put in"}):
		m.say(draw.Plain, "The rocket flies on "+e.name+"; undo brings back what it had.")
	}
}

// askPath asks for the path of a motor file.
func (v *motorsView) askPath(m *Model) {
	l := newLine("")
	m.asking = &question{
		says: "Motor file:", typed: &l,
		rules:  "The path of a file with curve, case and propellant, and perhaps delay, delays, diameter and length.",
		submit: v.add,
	}
}

// add puts a motor file on the list, if it can be used, and chooses it.
func (v *motorsView) add(m *Model, text string) tea.Cmd {
	path := strings.TrimSpace(text)
	if home, err := os.UserHomeDir(); err == nil && strings.HasPrefix(path, "~/") {
		path = filepath.Join(home, path[2:])
	}
	if path == "" {
		m.wrong("A path is missing.")
		return nil
	}
	path = filepath.Clean(path)
	if _, err := m.file().WithMotor(path); err != nil {
		m.wrong(motorFault(path, err))
		return nil
	}
	m.asking = nil
	v.named = eachOnce(append(slices.Clone(v.named), path))
	v.chosen = path
	return v.show(v.scene)
}

// remove takes the chosen motor off the list, if the user has put it there.
func (v *motorsView) remove(m *Model) {
	e := v.entry()
	if e == nil || !slices.Contains(v.named, e.path) {
		m.say(draw.Dim, "Only a motor that was added can be taken off: the others are in the rocket's folder or in the rocket.")
		return
	}
	gone := e.path
	v.move(-1)
	v.named = slices.DeleteFunc(slices.Clone(v.named), func(p string) bool { return p == gone })
}
