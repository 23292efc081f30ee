package view

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/report/words"
	"ullage/tui/draw"
)

// Pane is what views have in common: the room to draw in, the scene to draw and the rows
// drawn. What it does of a [View]'s is right for one that has no use for it.
type Pane struct {
	Columns, Rows int
	Scene         Scene
	Painted       []string // rows, each Columns cells wide
}

// Enter does nothing.
func (p *Pane) Enter(Frame) {}

// Resize takes note of the room.
func (p *Pane) Resize(columns, rows int) { p.Columns, p.Rows = columns, rows }

// Point does nothing.
func (p *Pane) Point(int, int) {}

// Receive does nothing.
func (p *Pane) Receive(tea.Msg) tea.Cmd { return nil }

// Lines are the rows drawn.
func (p *Pane) Lines() []string { return p.Painted }

// Draw fills the pane anew: with the text of instead, where there is one, in its middle,
// else with what paint adds, cut or filled up with blanks to its rows. Without room or
// a theme it is empty.
func (p *Pane) Draw(instead func() string, paint func()) {
	p.Painted = p.Painted[:0]
	if p.Rows < 2 || p.Columns < 1 || p.Scene.Theme == nil {
		return
	}
	if text := instead(); text != "" {
		p.Painted = draw.Centred(p.Scene.Theme, text, p.Columns, p.Rows)
		if strings.TrimSpace(p.Painted[p.Rows-1]) == "" && p.Scene.Now != nil {
			p.caution()
		}
		return
	}
	paint()
	spare := p.Left() > 0
	for p.Left() > 0 {
		p.Add(draw.Blanks(p.Columns))
	}
	p.Painted = p.Painted[:p.Rows]
	if spare && p.Scene.Now != nil {
		p.caution()
	}
}

// caution writes who decides into the last row, which is empty, unless the view says it.
func (p *Pane) caution() {
	if strings.Contains(strings.Join(p.Painted, "\n"), "range officer") {
		return
	}
	for _, text := range words.ShortCautions(p.Scene.Now.Flight.Rocket.Power) {
		if draw.Width(text) <= p.Columns {
			p.Painted[p.Rows-1] = p.Scene.Theme.Paint(draw.Dim, draw.Padded(text, p.Columns))
			return
		}
	}
}

// Add adds rows below those drawn.
func (p *Pane) Add(rows ...string) { p.Painted = append(p.Painted, rows...) }

// Paragraph is a text in as many painted rows as it takes.
func (p *Pane) Paragraph(r draw.Role, text string) []string {
	return draw.Paragraph(p.Scene.Theme, r, text, p.Columns)
}

// Left is how many rows are still to be drawn.
func (p *Pane) Left() int { return max(p.Rows-len(p.Painted), 0) }
