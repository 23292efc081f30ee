package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
)

// finding is an input being looked for: what is typed, and where the list was.
type finding struct {
	line line
	from string // the input that was chosen
}

// found are the fields in which every word of a text stands: in the dotted name, the heading, the label or
// the help.
func found(all []field, text string) []field {
	words := strings.Fields(strings.ToLower(text))
	var out []field
	for _, d := range all {
		in := strings.ToLower(d.Name + " " + d.Group + " " + d.Label + " " + d.Help)
		all := true
		for _, w := range words {
			all = all && strings.Contains(in, w)
		}
		if all {
			out = append(out, d)
		}
	}
	return out
}

// named tells that the words stand in what the input is called, not in its help alone.
func (d *field) named(text string) bool {
	calls := *d.Input
	calls.Help = ""
	return len(found([]field{{Input: &calls}}, text)) > 0
}

// startFinding looks for an input.
func (m *Model) startFinding() {
	m.finding = &finding{}
	if d := m.inputs.chosen(); d != nil {
		m.finding.from = d.Name
	}
}

// findKey takes a key while an input is looked for.
func (m *Model) findKey(k tea.KeyMsg) {
	f := *m.finding
	keys := &m.keys
	switch {
	case key.Matches(k, keys.Leave):
		m.seek("")
		m.inputs.choose(f.from)
		m.finding = nil
		return
	case key.Matches(k, keys.Accept):
		name := ""
		if d := m.inputs.chosen(); d != nil {
			name = d.Name
		}
		m.lastFound = f.line.String()
		m.seek("")
		if !m.inputs.choose(name) {
			m.inputs.choose(f.from)
		}
		m.finding = nil
		return
	case key.Matches(k, keys.Find) && f.line.String() == "":
		if m.lastFound == "" {
			return
		}
		f.line = newLine(m.lastFound)
		m.seek(m.lastFound)
		m.inputs.choose(f.from)
		m.foundNext(1)
	case key.Matches(k, keys.Find), key.Matches(k, keys.Down), key.Matches(k, keys.NextGroup):
		m.foundNext(1)
	case key.Matches(k, keys.Up), key.Matches(k, keys.PrevGroup):
		m.foundNext(-1)
	default:
		before := f.line.String()
		if f.line.press(k); f.line.String() != before {
			m.seek(f.line.String())
			m.foundFirst(f.line.String())
		}
	}
	m.finding = &f
}

// seek narrows the list to what is looked for.
func (m *Model) seek(text string) {
	m.inputs.sought = strings.TrimSpace(text)
	m.inputs.sieve()
}

// foundFirst goes to the input of that very name, else to the first that is called so, else to the first of those found.
func (m *Model) foundFirst(text string) {
	text = strings.ToLower(strings.TrimSpace(text))
	m.inputs.at = 0
	for _, is := range []func(d *field) bool{
		func(d *field) bool { return d.Name == text || strings.HasSuffix(d.Name, "."+text) || d.Label == text },
		func(d *field) bool { return d.named(text) },
	} {
		for i := range m.inputs.fields {
			if is(&m.inputs.fields[i]) {
				m.inputs.at = i
				return
			}
		}
	}
}

// foundNext goes to the next of those found, after the last to the first.
func (m *Model) foundNext(by int) {
	if n := len(m.inputs.fields); n > 0 {
		m.inputs.at = (m.inputs.at + by + n) % n
	}
}

// lines are the rows of what is looked for, and how many inputs it is found in.
func (f *finding) lines(m *Model, w int) []string {
	theme := m.theme
	const label = "Find: "
	says := "Words of a name, a label or its help; this key once more looks for what was looked for last."
	if f.line.String() != "" {
		n := len(m.inputs.fields)
		switch says = fmt.Sprintf("%d inputs", n); n {
		case 0:
			says = "No input is called so, nor does its help speak of it; fewer letters find more."
		case 1:
			says = "1 input"
		}
		if d := m.inputs.chosen(); d != nil {
			says += " · " + d.Name + ": " + draw.Clean(d.Help)
		}
	}
	return []string{
		" " + theme.Paint(draw.Asked, label) + f.line.view(theme, w-draw.Width(label)-2) + " ",
		" " + theme.Fit(theme.Say(says), w-2) + " ",
	}
}
