package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// frame is the Model as a view sees it: a [Frame].
type frame struct{ m *Model }

func (f frame) File() *rocketfile.File { return f.m.file() }

func (f frame) Chosen() string {
	if d := f.m.inputs.chosen(); d != nil {
		return d.Name
	}
	return ""
}

func (f frame) Choose(input string) bool { return f.m.inputs.choose(input) }

func (f frame) Nudge(by int, coarse bool) { f.m.nudge(by, coarse) }

func (f frame) Put(input string, to float64) bool {
	before := f.m.file()
	f.m.put(input, to)
	return f.m.file() != before
}

func (f frame) Take(file *rocketfile.File, err error, did view.Edit) bool {
	taken := f.m.take(file, err, did)
	if taken {
		f.m.refill()
	}
	return taken
}

func (f frame) Say(r draw.Role, text string) { f.m.say(r, text) }

func (f frame) Ask(q view.Question) {
	l := newLine(q.Text)
	f.m.asking = &question{says: q.Says, typed: &l, rules: q.Rules, path: q.Path, names: q.Names, submit: func(m *Model, text string) tea.Cmd {
		asked := m.asking
		wrong, cmd := q.Submit(frame{m}, text)
		switch {
		case wrong != "":
			m.wrong(wrong)
		case m.asking == asked:
			m.asking = nil
		}
		return cmd
	}}
}
