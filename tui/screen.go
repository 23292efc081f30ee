package tui

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// drawn is the screen in painted rows, brought up to date at the end of every
// Update, so that View only joins strings.
type drawn struct {
	title    string
	body     []string // inputs, border and view
	findings []string // nil: to be drawn again
	status   []string
	keys     string
}

// View is the whole screen as text.
func (m Model) View() string {
	l := m.layout
	switch {
	case l.width <= 0 || l.height <= 0:
		return ""
	case l.short():
		return strings.Join(m.drawn.status, "\n")
	}
	var b strings.Builder
	b.Grow(l.width * l.height * 4)
	row := func(s string) {
		b.WriteString(s)
		b.WriteByte('\n')
	}
	row(m.drawn.title)
	for _, s := range m.drawn.body {
		row(s)
	}
	for _, s := range m.drawn.status {
		row(s)
	}
	b.WriteString(m.drawn.keys)
	return b.String()
}

// draw brings the painted rows up to date.
func (m *Model) draw() {
	l := m.layout
	if l.short() {
		m.drawn.status = m.shortLines()
		return
	}
	m.drawn.title = m.titleLine()
	m.drawn.status, m.drawn.keys = m.statusLines()
	// A long question takes rows from the findings.
	room := l.height - titleRows - keyRows - len(m.drawn.status)
	var rows []string
	if m.page != nil {
		rows = m.pageLines()
	} else {
		if m.drawn.findings == nil {
			m.drawn.findings = m.findingLines(l.width, l.findings)
		}
		rows = append(m.bodyLines(), m.drawn.findings...)
	}
	m.drawn.body = rows[:max(min(room, len(rows)), 0)]
}

// bodyLines are the inputs and the view side by side.
func (m *Model) bodyLines() []string {
	l, look := m.layout, m.look
	left, above, below := m.inputs.draw(look, l.inputs, l.body, m.typed, m.wrongValue())
	right := m.view().lines()
	rows := make([]string, 0, l.body+l.findings)
	for i := range l.body {
		border := look.in(ruleLine, look.bar)
		switch {
		case i == 0 && above:
			border = look.in(focused, look.up)
		case i == l.body-1 && below:
			border = look.in(focused, look.down)
		}
		view := blanks(l.view)
		if i < len(right) {
			view = right[i]
		}
		rows = append(rows, left[i]+border+" "+view+" ")
	}
	return rows
}

// wrongValue is the fault to show: of the last edit, or of the flight.
func (m *Model) wrongValue() fault {
	if m.fault.says != "" {
		return m.fault
	}
	return m.crash
}

// title is how the file is called.
func (m *Model) title() string {
	if p := m.lodged.Path(); p != "" {
		return clean(shortPath(p))
	}
	return clean(m.lodged.Name())
}

// titleLine has the rocket's name, its file, the mark of unsaved changes, what
// drives it, and the views with their keys.
func (m *Model) titleLine() string {
	look, w := m.look, m.layout.width
	r := m.file().Rocket()
	drive := look.say(clean(driveText(r, m.now, m.units)))
	mark := ""
	if m.unsaved() {
		mark = " " + look.unsaved
	}
	name, file := look.say(clean(r.Name)), look.say(m.title())
	if name != "" {
		name += " "
		file = look.dot + " " + file
	}
	// When room is short the drive goes first, then the file's folders, then the
	// names of the views not shown (that may give the drive its place again), their
	// keys, and at last the end of the rocket's name.
	base := strings.Replace(file, look.say(m.title()), look.say(clean(filepath.Base(m.title()))), 1)
	views, room := piece{}, 0
	for _, try := range []struct {
		others      viewNaming
		file, drive string
	}{
		{namedViews, file, drive}, {namedViews, file, ""}, {namedViews, base, ""},
		{keyedViews, file, drive}, {keyedViews, base, drive}, {keyedViews, file, ""}, {keyedViews, base, ""}, {unnamedViews, file, ""}, {unnamedViews, base, ""},
	} {
		views, file = m.viewStrip(try.others), try.file
		room = w - 4 - width(mark) - views.cells
		used := width(name) + width(file)
		if drive = try.drive; drive != "" {
			used += 2 + width(drive)
		}
		if used <= room {
			break
		}
	}
	if width(name)+width(file) > room {
		file = look.fit(file, min(width(file), room/2))
		name = look.fit(name, room-width(file)-1) + " "
	}
	left := " " + look.in(strongText, name) + file + look.in(focused, mark)
	if drive != "" {
		left += "  " + look.in(dimText, drive)
	}
	return padPainted(left, w-1-views.cells) + views.painted + " "
}

// viewNaming is how the views not shown are named in the title.
type viewNaming int

const (
	namedViews viewNaming = iota
	keyedViews
	unnamedViews
)

// viewStrip names the view shown, with its key and a sign, among the others.
func (m *Model) viewStrip(others viewNaming) piece {
	look := m.look
	var out piece
	add := func(r role, text string) {
		out.painted, out.cells = out.painted+look.in(r, text), out.cells+width(text)
	}
	for i, v := range m.views {
		if i != m.active && others == unnamedViews {
			continue
		}
		if out.cells > 0 {
			add(plainText, " ")
		}
		if key := look.say(v.opens().Help().Key); i == m.active {
			add(focused, look.pointer+key+" "+v.name())
		} else {
			add(strongText, " "+key)
			if others == namedViews {
				add(dimText, " "+v.name())
			}
		}
	}
	return out
}

// driveText says what drives the rocket in a few words.
func driveText(r *rocket.Rocket, now *outcome, sys quantity.System) string {
	text := func(v float64, unit string) string { return exact(v, sys.Unit(unitNamed(unit)), 5) }
	if r.Power == rocket.WaterPower && r.Water != nil {
		return fmt.Sprintf("water %s, %s full, %s throat",
			text(r.Water.Pressure, "bar"), text(r.Water.Fill, "%"), text(r.Water.Throat, "mm"))
	}
	if r.Motor == nil || now == nil || now.flight.Rocket.Power != rocket.MotorPower {
		return string(r.Power)
	}
	d := now.flight.Results.Drive
	out := "motor"
	if d.Class != "" {
		out += " " + d.Class
	}
	return out + fmt.Sprintf(", %s for %s", quantity.Format(d.Average, sys.Unit(unitNamed("N")), 3), quantity.Format(d.BurnTime, unitNamed("s"), 3))
}

// statusLines are the rows above the keys, and the keys: a question with its
// answers, a message, or what the chosen input is.
func (m *Model) statusLines() ([]string, string) {
	look, w := m.look, m.layout.width
	if m.asking != nil {
		rows := m.asking.lines(look, m.keys, w)
		last := len(rows) - 1
		for len(rows) <= statusRows {
			rows, last = append([]string{blanks(w)}, rows...), last+1
		}
		return rows[:last], rows[last]
	}
	var hints []hint
	must := m.keys.always()
	switch {
	case m.page != nil:
		hints = []hint{{m.keys.Up.Help().Key + m.keys.Down.Help().Key, "scroll"}, {m.keys.Leave.Help().Key, "back"}}
		must = nil
	case m.typed != nil:
		hints = []hint{{m.keys.Accept.Help().Key, m.keys.Accept.Help().Desc}, {m.keys.Leave.Help().Key, m.keys.Leave.Help().Desc}}
		must = nil
	default:
		hints = m.view().hints()
	}
	if m.page != nil {
		return nil, hintLine(look, hints, must, w)
	}
	first, second := m.inputHelp()
	switch text := look.say(m.notice.says); {
	case text == "":
	case width(text) <= w-2:
		second = " " + look.in(m.notice.role, padded(text, w-2)) + " "
	default:
		parts := append(wrapped(text, w-2), "", "")
		first = " " + look.in(m.notice.role, padded(parts[0], w-2)) + " "
		second = " " + look.in(m.notice.role, look.fit(strings.Join(parts[1:], " "), w-2)) + " "
	}
	return []string{first, second}, hintLine(look, hints, must, w)
}

// inputHelp is two rows about the chosen input: its dotted name, range and
// default, then its help.
func (m *Model) inputHelp() (string, string) {
	look, w := m.look, m.layout.width
	d := m.inputs.chosen()
	if d == nil {
		return blanks(w), blanks(w)
	}
	facts := ""
	switch d.Kind {
	case rocketfile.NumberKind, rocketfile.RuleKind:
		if d.Max > d.Min {
			facts = rangeText(d)
		}
	case rocketfile.ChoiceKind:
		facts = strings.Join(d.Choices, ", ")
	}
	if !d.given {
		facts += "; by default, not in the file"
	}
	name := look.say(d.Name)
	rest := look.fit(look.say(clean(strings.TrimPrefix(facts, "; "))), w-4-width(name))
	return " " + look.in(focused, name) + "  " + look.in(dimText, rest) + " ",
		" " + look.fit(look.say(clean(d.Help)), w-2) + " "
}

// shortLines are what a screen too small for the rest shows.
func (m *Model) shortLines() []string {
	text := m.layout.needs()
	if m.asking != nil {
		text = m.asking.says
		for _, a := range m.asking.answers {
			text += " " + a.key.Help().Key + ": " + a.key.Help().Desc + "."
		}
	}
	lines := wrapped(m.look.say(text), max(m.layout.width, 1))
	return lines[:min(len(lines), max(m.layout.height, 0))]
}

// padPainted is a painted text with blanks after it to w cells, or cut to them.
func padPainted(s string, w int) string {
	switch n := ansi.StringWidth(s); {
	case n > w:
		return ansi.Truncate(s, max(w, 0), "")
	case n < w:
		return s + blanks(w-n)
	}
	return s
}
