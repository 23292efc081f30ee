package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/thrust"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// tabling is the table of an input that holds rows of numbers, in the place of the inputs: every change of it is an edit
// of the file. It is not changed; what a key does makes a new one.
type tabling struct {
	input string
	at    int           // the row chosen; behind the last one stands an empty one
	top   int           // the first row in sight
	typed *line         // a row being typed; nil when none is
	more  bool          // it is to stand before the chosen one, not in its place
	wrong string        // what is wrong with it
	was   *thrust.Curve // as it was when the table was opened

	of *rocketfile.File // whose rows these are
	is rocketfile.Rows
}

// openTable shows the rows of an input.
func (m *Model) openTable(input string) {
	t := tabling{input: input}
	if mot := m.file().Described().Motor; mot != nil && input == thrustInput {
		t.was = mot.Curve
	}
	m.tabling = &t
}

// points are the rows of the table as they stand.
func (m *Model) points() rocketfile.Rows {
	if t := *m.tabling; t.of != m.file() {
		t.of = m.file()
		t.is, _ = t.of.RowsOf(t.input)
		m.tabling = &t
	}
	return m.tabling.is
}

// rowUnits are the units that the columns are shown in.
func (m *Model) rowUnits(rows rocketfile.Rows) []quantity.Unit {
	units := make([]quantity.Unit, len(rows.Columns))
	for i, c := range rows.Columns {
		units[i] = m.units.Unit(c.Unit)
	}
	return units
}

// rowLabel is how the table calls a row.
func (m *Model) rowLabel(i int) string {
	return fmt.Sprintf("row %d of %s", i+1, m.tabling.input)
}

// tableKey takes a key while a table is shown.
func (m *Model) tableKey(k tea.KeyMsg) tea.Cmd {
	t, keys := *m.tabling, &m.keys
	if k.Paste && strings.ContainsAny(strings.TrimSpace(string(k.Runes)), "\n\r") {
		m.pasteRows(string(k.Runes))
		return nil
	}
	if t.typed != nil {
		m.rowKey(k)
		return nil
	}
	n := len(m.points().Rows)
	page := max(m.layout.body-3, 1)
	goTo := func(i int) { t.at = max(min(i, n), 0); m.tabling = &t }
	switch {
	case k.Paste:
		m.typeRow(draw.Clean(string(k.Runes)), t.at < n)
	case key.Matches(k, keys.Leave), key.Matches(k, keys.Quit):
		m.closeTable()
	case key.Matches(k, keys.Up):
		goTo(t.at - 1)
	case key.Matches(k, keys.Down):
		goTo(t.at + 1)
	case key.Matches(k, keys.PageUp):
		goTo(t.at - page)
	case key.Matches(k, keys.PageDown):
		goTo(t.at + page)
	case key.Matches(k, keys.First):
		goTo(0)
	case key.Matches(k, keys.Last):
		goTo(n)
	case key.Matches(k, keys.Type):
		m.typeRow(m.rowText(t.at), false)
	case key.Matches(k, keys.Digit):
		m.typeRow(k.String(), false)
	case key.Matches(k, keys.AddPart):
		goTo(t.at + 1)
		m.typeRow("", true)
	case key.Matches(k, keys.RemovePart, keys.Default):
		m.removeRow()
	case key.Matches(k, keys.MoveUp):
		m.moveRow(-1)
	case key.Matches(k, keys.MoveDown):
		m.moveRow(1)
	case key.Matches(k, keys.Undo, keys.Redo, keys.Save, keys.SaveAs, keys.Units, keys.Help):
		return m.command(k)
	}
	return nil
}

// closeTable goes back to the inputs, or to the question that the table answers.
func (m *Model) closeTable() {
	input := m.tabling.input
	m.tabling = nil
	if m.guiding == nil || !m.file().Given(input) {
		return
	}
	if _, at, _ := m.current(); at >= 0 {
		m.askFrom(at + 1)
	}
}

// rowText is a row as it is typed, in the units shown.
func (m *Model) rowText(i int) string {
	rows := m.points()
	if i >= len(rows.Rows) {
		return ""
	}
	units := m.rowUnits(rows)
	var cells []string
	for k, q := range rows.Rows[i] {
		cells = append(cells, draw.Exact(q.Value, draw.Bare(units[k]), 12))
	}
	return strings.Join(cells, " ")
}

func (m *Model) typeRow(text string, more bool) {
	t := *m.tabling
	l := newLine(text)
	t.typed, t.more, t.wrong = &l, more, ""
	m.tabling = &t
}

// rowKey takes a key while a row is typed.
func (m *Model) rowKey(k tea.KeyMsg) {
	t := *m.tabling
	switch {
	case key.Matches(k, m.keys.Leave):
		t.typed, t.wrong = nil, ""
	case key.Matches(k, m.keys.Accept), key.Matches(k, m.keys.Up), key.Matches(k, m.keys.Down):
		if !m.takeRow(t.typed.String()) {
			return
		}
		t = *m.tabling
		if key.Matches(k, m.keys.Up) {
			t.at = max(t.at-2, 0)
		}
	default:
		l := *t.typed
		l.press(k)
		t.typed, t.wrong = &l, ""
	}
	m.tabling = &t
}

// takeRow takes the row that was typed, or leaves it open with what is wrong with it, and goes on to the next.
func (m *Model) takeRow(text string) bool {
	t := *m.tabling
	n := len(m.points().Rows)
	to := t.at
	if !t.more && t.at < n {
		to++
	}
	switch {
	case strings.TrimSpace(text) == "" && to == t.at, to > t.at && text == m.rowText(t.at):
		t.typed, t.wrong, t.at = nil, "", min(t.at+1, n)
		m.tabling = &t
		return true
	case strings.TrimSpace(text) == "":
		t.wrong = "no numbers; " + m.keys.Leave.Help().Key + " leaves the row as it was, " + m.keys.RemovePart.Help().Key + " then takes it out"
		m.tabling = &t
		return false
	}
	verb := "changed"
	if to == t.at {
		verb = "added"
	}
	made, err := m.editRows(t.at, to, text, m.rowLabel(t.at)+" "+verb)
	if err != nil {
		t.wrong = view.FaultText(err, t.input)
		m.tabling = &t
		return false
	}
	t.typed, t.wrong, t.at = nil, "", t.at+made
	m.tabling = &t
	return true
}

// editRows puts text in the place of rows as one edit, and tells how many rows it was.
func (m *Model) editRows(from, to int, text, says string) (int, error) {
	rows := m.points()
	f, made, err := m.file().EditRows(m.tabling.input, from, to, text, m.rowUnits(rows))
	if err != nil {
		return 0, err
	}
	m.take(f, nil, view.Edit{Input: m.tabling.input, Says: says})
	if rows.From != "" {
		m.say(draw.Plain, "The points stand in the rocket file now, in place of "+rows.From+"; undo puts that back.")
	}
	return made, nil
}

// pasteRows takes lines of a table: in the place of all rows, or behind the last where the empty row is chosen.
func (m *Model) pasteRows(text string) {
	t := *m.tabling
	rows := m.points()
	n := len(rows.Rows)
	from := 0
	if t.at >= n || t.more {
		from = min(t.at, n)
	}
	to := n
	if t.more {
		to = from
	}
	made, err := m.editRows(from, to, text, "rows of "+t.input+" pasted")
	if err != nil {
		m.say(draw.Bad, "Not pasted: "+view.FaultText(err, t.input))
		return
	}
	t.typed, t.wrong, t.more, t.at = nil, "", false, from+made
	m.tabling = &t
	says := fmt.Sprintf("%d rows pasted", made)
	if to > from {
		says += fmt.Sprintf(" in place of %d", to-from)
		if rows.From != "" {
			says += " of " + rows.From
		}
	}
	m.say(draw.Plain, says+"; "+m.keys.Undo.Help().Key+" takes that back.")
}

func (m *Model) removeRow() {
	t := *m.tabling
	if t.at >= len(m.points().Rows) {
		m.say(draw.Dim, "There is no row to remove here.")
		return
	}
	if _, err := m.editRows(t.at, t.at+1, "", m.rowLabel(t.at)+" removed"); err != nil {
		m.say(draw.Dim, "Not removed: "+view.FaultText(err, t.input))
	}
}

func (m *Model) moveRow(by int) {
	t := *m.tabling
	f, err := m.file().MoveRow(t.input, t.at, by)
	if err != nil {
		m.say(draw.Dim, "Not moved: "+view.FaultText(err, t.input))
		return
	}
	m.take(f, nil, view.Edit{Input: t.input, Says: m.rowLabel(t.at) + " moved"})
	t.at += by
	m.tabling = &t
}
