package viewtest

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

var _ view.Frame = (*Frame[view.View])(nil)

// File is the rocket file as it stands.
func (f *Frame[V]) File() *rocketfile.File { return f.states[len(f.states)-1] }

// Chosen is the input that left and right move.
func (f *Frame[V]) Chosen() string { return f.chosen }

// Choose chooses an input, if the rocket has it on the drive that flies.
func (f *Frame[V]) Choose(input string) bool {
	r := f.File().Rocket()
	there := slices.ContainsFunc(rocketfile.Inputs(r), func(in rocketfile.Input) bool {
		return in.Name == input && (in.Drive == "" || in.Drive == r.Power)
	})
	if there {
		f.chosen = input
	}
	return there
}

// Nudge moves the chosen value by a step.
func (f *Frame[V]) Nudge(by int, coarse bool) {
	r := f.File().Rocket()
	in, err := rocketfile.Find(r, f.chosen)
	require.NoError(f.T, err)
	v, _ := in.Get(r)
	step := in.Step
	if coarse {
		step = in.Coarse
	}
	f.Put(f.chosen, min(max(view.Nudged(v, step, by, in.Unit, in.Unit), in.Min), in.Max))
}

// Put sets an input.
func (f *Frame[V]) Put(input string, to float64) bool {
	before := f.File()
	file, err := before.SetValue(input, to)
	if f.Take(file, err, view.Edit{Input: input}) {
		f.Choose(input)
	}
	return f.File() != before
}

// Take makes a file the present one, or notes what is wrong.
func (f *Frame[V]) Take(file *rocketfile.File, err error, did view.Edit) bool {
	if err != nil {
		f.Wrong = view.FaultText(err, did.Input)
		return false
	}
	if file != f.File() {
		f.states = append(f.states, file)
	}
	return true
}

// Say keeps the message.
func (f *Frame[V]) Say(_ draw.Role, text string) { f.Said = text }

// Ask keeps the question.
func (f *Frame[V]) Ask(q view.Question) { f.Asked, f.Text, f.Wrong = &q, q.Text, "" }

// Set changes an input as the user would elsewhere, and flies.
func (f *Frame[V]) Set(input, value string) {
	f.T.Helper()
	f.Edit(f.File().Set(input, value))
}

// Edit makes a file the present one and flies it.
func (f *Frame[V]) Edit(file *rocketfile.File, err error) {
	f.T.Helper()
	require.NoError(f.T, err)
	f.states = append(f.states, file)
	f.Fly()
}

// Value is an input of the rocket as it stands, SI.
func (f *Frame[V]) Value(input string) float64 {
	f.T.Helper()
	r := f.File().Rocket()
	in, err := rocketfile.Find(r, input)
	require.NoError(f.T, err)
	v, _ := in.Get(r)
	return v
}

// Source is the text of the rocket file as it stands.
func (f *Frame[V]) Source() string { return string(f.File().Text()) }

// message is a key by its name, or a character.
func message(name string) tea.KeyMsg {
	if k, ok := map[string]tea.KeyType{
		"enter": tea.KeyEnter, "esc": tea.KeyEsc, "left": tea.KeyLeft, "right": tea.KeyRight, "ctrl+u": tea.KeyCtrlU,
	}[name]; ok {
		return tea.KeyMsg{Type: k}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}
