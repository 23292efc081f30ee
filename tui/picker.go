package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
)

// picker is a list to take one thing from. It stands in the place of the body; what is typed narrows it.
type picker struct {
	says string
	all  []choice
	line line
	at   int
	take func(m *Model, name string) tea.Cmd
}

// choice is one thing to take.
type choice struct{ name, shown, help string }

// pick asks for one of some things.
func (m *Model) pick(p picker) { m.picking = &p }

// left are the choices in which what is typed stands; those that begin with it come first.
func (p *picker) left() []choice {
	typed := strings.ToLower(strings.TrimSpace(p.line.String()))
	var begin, hold []choice
	for _, c := range p.all {
		switch name := strings.ToLower(c.shown); {
		case strings.HasPrefix(name, typed):
			begin = append(begin, c)
		case strings.Contains(name, typed):
			hold = append(hold, c)
		}
	}
	return append(begin, hold...)
}

// pickKey takes a key while something is picked.
func (m *Model) pickKey(k tea.KeyMsg) tea.Cmd {
	p := *m.picking
	keys, left := &m.keys, p.left()
	switch {
	case key.Matches(k, keys.Leave):
		m.picking = nil
		return nil
	case key.Matches(k, keys.Accept):
		if p.at >= len(left) {
			return nil
		}
		m.picking = nil
		return p.take(m, left[p.at].name)
	case key.Matches(k, keys.Up):
		p.at = max(p.at-1, 0)
	case key.Matches(k, keys.Down):
		p.at = min(p.at+1, max(len(left)-1, 0))
	default:
		before := p.line.String()
		if p.line.press(k); p.line.String() != before {
			p.at = 0
		}
	}
	m.picking = &p
	return nil
}

// lines are the rows of the picker in exactly so many of w cells.
func (p *picker) lines(theme *draw.Theme, w, rows int) []string {
	lines := []string{
		" " + theme.Paint(draw.Heading, draw.Padded(theme.Fit(theme.Say(p.says), w-2), w-2)) + " ",
		" " + p.line.view(theme, w-2) + " ",
	}
	left := p.left()
	if len(left) == 0 {
		lines = append(lines, theme.Paint(draw.Bad, draw.Padded(" none of them is called so; fewer letters find more", w)))
	}
	name := 0
	for _, c := range p.all {
		name = max(name, draw.Width(c.shown))
	}
	room := max(rows-len(lines), 1)
	from := max(min(p.at-room/2, len(left)-room), 0)
	for i := from; i < min(from+room, len(left)); i++ {
		c := left[i]
		sign, role := "  ", draw.Plain
		if i == p.at {
			sign, role = theme.Pointer+" ", draw.Focused
		}
		label := theme.Paint(role, sign+draw.Padded(theme.Say(c.shown), name))
		lines = append(lines, " "+label+"  "+theme.Paint(draw.Dim, theme.Fit(theme.Say(draw.Clean(c.help)), w-7-name))+"  ")
	}
	for i := range lines {
		lines[i] = draw.PadPainted(lines[i], w)
	}
	for len(lines) < rows {
		lines = append(lines, draw.Blanks(w))
	}
	return lines[:rows]
}
