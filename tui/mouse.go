package tui

import tea "github.com/charmbracelet/bubbletea"

// mouse takes a press or a turn of the wheel: it chooses inputs, moves the time cursor and scrolls pages. A terminal that tells of
// the mouse without having been asked to, as after a program that left it so, moves nothing.
func (m *Model) mouse(e tea.MouseMsg) tea.Cmd {
	if !m.pointer || m.layout.short() || m.asking != nil || m.typed != nil || m.finding != nil || m.picking != nil || m.guiding != nil || m.tabling != nil || e.Action != tea.MouseActionPress {
		return nil
	}
	switch by := map[tea.MouseButton]int{tea.MouseButtonWheelUp: -1, tea.MouseButtonWheelDown: 1}[e.Button]; {
	case by != 0 && m.page != nil:
		m.scroll(by)
	case m.page != nil:
	case m.whole():
		if e.Button == tea.MouseButtonLeft {
			m.view().Point(e.X-1, e.Y-titleRows)
		}
	case by != 0:
		m.inputs.move(by)
	case e.Button == tea.MouseButtonLeft && e.Y >= titleRows && e.Y < titleRows+m.layout.body:
		row := e.Y - titleRows
		if view := e.X - m.layout.width + m.layout.view + 1; view >= 0 && m.blank() {
			return nil
		} else if view >= 0 {
			m.view().Point(view, row)
		} else {
			m.inputs.point(row)
		}
	}
	return nil
}
