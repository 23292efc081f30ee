package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// pressOne takes one key: whatever is in front gets it first.
func (m *Model) pressOne(k tea.KeyMsg) tea.Cmd {
	switch {
	case key.Matches(k, m.keys.Suspend):
		flush := m.flush()
		return func() tea.Msg { return suspendMsg{flush().(keptMsg)} }
	case key.Matches(k, m.keys.Redraw):
		return func() tea.Msg { return redrawMsg{} }
	case key.Matches(k, m.keys.Interrupt):
		return m.interrupt()
	}
	m.notice = notice{}
	switch {
	case m.asking != nil:
		return m.answer(k)
	case m.layout.short():
		if key.Matches(k, m.keys.Quit) {
			return m.quit()
		}
		return nil
	case m.page != nil:
		m.turn(k)
		return nil
	case m.picking != nil:
		return m.pickKey(k)
	case m.tabling != nil:
		return m.tableKey(k)
	case m.guiding != nil && m.page == nil:
		m.guideKey(k)
		return nil
	case m.finding != nil:
		m.findKey(k)
		return nil
	case m.typed != nil:
		m.typeKey(k)
		return nil
	}
	m.fault = complaint{}
	if k.Paste && !m.whole() {
		m.pasted(string(k.Runes))
		return nil
	}
	if !m.blank() {
		if taken, cmd := m.view().Press(frame{m}, k); taken {
			return cmd
		}
	}
	if m.whole() && !m.showsOrLeaves(k) {
		m.say(draw.Caution, "No input is changed from here: esc shows the flight and the inputs.")
		return nil
	}
	return m.command(k)
}

// showsOrLeaves tells of a key that shows something, saves or leaves, and changes no input.
func (m *Model) showsOrLeaves(k tea.KeyMsg) bool {
	keys := &m.keys
	for _, v := range m.views {
		if key.Matches(k, v.About().Open) {
			return true
		}
	}
	return !k.Paste && key.Matches(k, keys.NextView, keys.PrevView, keys.Findings, keys.Help, keys.Units, keys.Save, keys.SaveAs, keys.Quit)
}

// command takes a key of the frame.
func (m *Model) command(k tea.KeyMsg) tea.Cmd {
	keys, page := &m.keys, max(m.layout.body-2, 1)
	for i, v := range m.views {
		if key.Matches(k, v.About().Open) {
			return m.visit(i)
		}
	}
	switch {
	case key.Matches(k, keys.Up):
		m.inputs.move(-1)
	case key.Matches(k, keys.Down):
		m.inputs.move(1)
	case key.Matches(k, keys.PageUp):
		m.inputs.move(-page)
	case key.Matches(k, keys.PageDown):
		m.inputs.move(page)
	case key.Matches(k, keys.First):
		m.inputs.at = 0
	case key.Matches(k, keys.Last):
		m.inputs.move(len(m.inputs.fields))
	case key.Matches(k, keys.NextGroup):
		m.inputs.group(1)
	case key.Matches(k, keys.PrevGroup):
		m.inputs.group(-1)
	case key.Matches(k, keys.Find):
		m.startFinding()
	case key.Matches(k, keys.Lack):
		m.nextLack()
	case key.Matches(k, keys.Fold):
		m.inputs.toggleFold()
	case key.Matches(k, keys.FoldAll):
		m.inputs.toggleFolds()

	case key.Matches(k, keys.Less, keys.More, keys.FarLess, keys.FarMore, keys.Type, keys.Digit, keys.Default) && m.unfolded():
	case key.Matches(k, keys.Less):
		m.nudge(-1, false)
	case key.Matches(k, keys.More):
		m.nudge(1, false)
	case key.Matches(k, keys.FarLess):
		m.nudge(-1, true)
	case key.Matches(k, keys.FarMore):
		m.nudge(1, true)
	case key.Matches(k, keys.Type):
		m.startTyping("")
	case key.Matches(k, keys.Digit):
		m.startTyping(k.String())
	case key.Matches(k, keys.Default):
		m.byDefault()

	case key.Matches(k, keys.Drive):
		m.switchDrive()
	case key.Matches(k, keys.AddCanopy):
		m.addCanopy()
	case key.Matches(k, keys.RemoveCanopy):
		m.removeCanopy()
	case key.Matches(k, keys.Guide):
		m.startGuide()
	case key.Matches(k, keys.AddPart):
		m.pickPart()
	case key.Matches(k, keys.RemovePart):
		m.removePart()
	case key.Matches(k, keys.MoveUp):
		m.movePart(-1)
	case key.Matches(k, keys.MoveDown):
		m.movePart(1)
	case key.Matches(k, keys.Uncertain):
		m.askSpread()
	case key.Matches(k, keys.Tube):
		m.toggleTube()
	case key.Matches(k, keys.Undo):
		m.undo()
	case key.Matches(k, keys.Redo):
		m.redo()

	case key.Matches(k, keys.Keep) && m.now != nil:
		m.kept = m.now
		m.say(draw.Plain, "This flight is kept: dotted, with differences in the findings.")
		return m.show()
	case key.Matches(k, keys.DropKept):
		m.kept = nil
		return m.show()

	case key.Matches(k, keys.NextView):
		return m.visit((m.active + 1) % len(m.views))
	case key.Matches(k, keys.PrevView):
		return m.visit((m.active + len(m.views) - 1) % len(m.views))
	case key.Matches(k, keys.Findings):
		m.open(findingsPage)
	case key.Matches(k, keys.Help):
		m.open(helpPage)
	case key.Matches(k, keys.Units):
		if m.units == quantity.Metric {
			m.units = quantity.US
		} else {
			m.units = quantity.Metric
		}
		m.refill()
		return m.show()

	case key.Matches(k, keys.Save):
		return m.save()
	case key.Matches(k, keys.SaveAs):
		m.askName("")
	case key.Matches(k, keys.Quit):
		return m.quit()
	}
	return nil
}

// startTyping opens the chosen input for typing, with its value to amend or
// with the first character of a new one.
func (m *Model) startTyping(first string) {
	d := m.inputs.chosen()
	if d == nil {
		return
	}
	text := first
	if text == "" {
		if d.Kind == rocketfile.TextKind && m.file().CanBeRows(d.Name) {
			m.openTable(d.Name)
			return
		}
		text = d.value()
	}
	m.typed = &typing{input: d.Name, line: newLine(text), path: d.Path}
}

// pasted takes a text that was pasted: several lines are the rows of an input that may have rows, anything else is what
// is typed.
func (m *Model) pasted(text string) {
	d := m.inputs.chosen()
	if d != nil && strings.ContainsAny(strings.TrimSpace(text), "\n\r") && m.file().CanBeRows(d.Name) {
		m.openTable(d.Name)
		m.pasteRows(text)
		return
	}
	m.startTyping(draw.Clean(text))
}

// typeKey takes a key while a value is typed. A bad value stays open until it
// is mended or left.
func (m *Model) typeKey(k tea.KeyMsg) {
	switch {
	case key.Matches(k, m.keys.Leave):
		m.typed, m.fault = nil, complaint{}
	case key.Matches(k, m.keys.Accept):
		m.accept()
	case m.typed.path && key.Matches(k, m.keys.Complete):
		m.completeTyped()
	case key.Matches(k, m.keys.Up), key.Matches(k, m.keys.Down),
		key.Matches(k, m.keys.NextGroup), key.Matches(k, m.keys.PrevGroup):
		if m.accept() {
			m.command(k)
		}
	default:
		t := *m.typed
		t.line.press(k)
		m.typed, m.fault = &t, complaint{}
	}
}

// accept takes the value typed and tells whether it was good.
func (m *Model) accept() bool {
	d := m.inputs.chosen()
	if d == nil || d.Name != m.typed.input {
		m.typed = nil
		return true
	}
	text := m.typed.line.String()
	if text == d.value() {
		m.typed, m.fault = nil, complaint{}
		return true
	}
	f, err := m.setText(d, text)
	if !m.change(d, f, err) {
		return false
	}
	m.typed, m.fault = nil, complaint{}
	m.refill()
	return true
}
