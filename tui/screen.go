package tui

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// drawn is the screen in painted rows, brought up to date at the end of every
// Update, so that rows only lists them.
type drawn struct {
	title    string
	body     []string // inputs, border and view
	findings []string // nil: to be drawn again
	status   []string
	keys     string
}

// View is the whole screen as text.
func (m Model) View() string { return strings.Join(m.rows(), "\n") }

// rows are the rows of the whole screen.
func (m *Model) rows() []string {
	switch l := m.layout; {
	case l.width <= 0 || l.height <= 0:
		return nil
	case l.short():
		return m.drawn.status
	}
	rows := make([]string, 0, m.layout.height)
	rows = append(append(rows, m.drawn.title), m.drawn.body...)
	return append(append(rows, m.drawn.status...), m.drawn.keys)
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
	switch {
	case m.page != nil:
		rows = m.pageLines()
	case m.picking != nil:
		rows = m.picking.lines(m.theme, l.width, l.body+l.findings)
	case m.whole():
		rows = m.view().Lines()
	default:
		if m.drawn.findings == nil {
			m.drawn.findings = m.findingLines(l.width, l.findings)
		}
		rows = append(m.bodyLines(), m.drawn.findings...)
	}
	m.drawn.body = rows[:max(min(room, len(rows)), 0)]
	if m.whole() && m.page == nil && m.picking == nil {
		m.sunlight()
	}
}

// whole tells that the view in sight has the screen to itself.
func (m *Model) whole() bool { return m.view().About().Whole && !m.blank() }

// sunlight paints all that is around such a view as it is painted itself, and its margins.
func (m *Model) sunlight() {
	d := &m.drawn
	plain := func(row string) string { return m.theme.Paint(draw.Sunlit, ansi.Strip(row)) }
	d.title, d.keys = plain(d.title), plain(d.keys)
	margin, body := m.theme.Paint(draw.Sunlit, " "), make([]string, len(d.body))
	for i, row := range d.body {
		body[i] = margin + row + margin
	}
	d.body = body
	for i, row := range d.status {
		d.status[i] = plain(row)
	}
}

// bodyLines are the inputs and the view side by side.
func (m *Model) bodyLines() []string {
	l, theme := m.layout, m.theme
	left, above, below := m.inputs.draw(theme, l.inputs, l.body, m.typed, m.wrongValue())
	right := m.view().Lines()
	switch {
	case m.tabling != nil:
		left, above, below = m.tableLines(l.inputs, l.body)
		right = m.tableSide(l.view, l.body)
	case m.guiding != nil:
		right = m.guideLines()
	case m.typed != nil && m.typed.input == thrustInput:
		right = m.curveLines(m.typed.line.String(), l.view, l.body)
	case m.blank():
		right = m.blankLines()
	}
	rows := make([]string, 0, l.body+l.findings)
	for i := range l.body {
		border := theme.Paint(draw.RuleLine, theme.Bar)
		switch {
		case i == 0 && above:
			border = theme.Paint(draw.Focused, theme.Up)
		case i == l.body-1 && below:
			border = theme.Paint(draw.Focused, theme.Down)
		}
		view := draw.Blanks(l.view)
		if i < len(right) {
			view = right[i]
		}
		rows = append(rows, left[i]+border+" "+view+" ")
	}
	return rows
}

// wrongValue is the fault to show: of the last edit, or of the flight.
func (m *Model) wrongValue() complaint {
	if m.fault.says != "" {
		return m.fault
	}
	return m.crash
}

// title is how the file is called.
func (m *Model) title() string {
	if p := m.lodged.Path(); p != "" {
		return draw.Clean(draw.ShortPath(p))
	}
	return draw.Clean(m.lodged.Name())
}

// titleLine has the rocket's name, its file, the mark of unsaved changes, what
// drives it, and the views with their keys.
func (m *Model) titleLine() string {
	theme, w := m.theme, m.layout.width
	r := m.file().Rocket()
	drive := theme.Say(draw.Clean(driveText(r, m.now, m.units)))
	if m.unfinished() {
		drive = "last good flight"
		if m.now == nil {
			drive = "no flight yet"
		}
	}
	mark := ""
	if m.unsaved() {
		mark = " " + theme.Unsaved
	}
	name, file := theme.Say(draw.Clean(r.Name)), theme.Say(m.title())
	if name != "" {
		name += " "
		file = theme.Dot + " " + file
	}
	// When room is short the drive goes first, then the file's folders, then the
	// names of the views not shown (that may give the drive its place again), their
	// keys, and at last the end of the rocket's name.
	base := strings.Replace(file, theme.Say(m.title()), theme.Say(draw.Clean(filepath.Base(m.title()))), 1)
	views, room := draw.Piece{}, 0
	for _, try := range []struct {
		others      viewNaming
		file, drive string
	}{
		{namedViews, file, drive}, {namedViews, file, ""}, {namedViews, base, ""},
		{keyedViews, file, drive}, {keyedViews, base, drive}, {keyedViews, file, ""}, {keyedViews, base, ""}, {closeViews, file, ""}, {closeViews, base, ""}, {unnamedViews, file, ""}, {unnamedViews, base, ""},
	} {
		views, file = m.viewStrip(try.others), try.file
		room = w - 4 - draw.Width(mark) - views.Cells
		used := draw.Width(name) + draw.Width(file)
		if drive = try.drive; drive != "" {
			used += 2 + draw.Width(drive)
		}
		if used <= room {
			break
		}
	}
	if draw.Width(name)+draw.Width(file) > room {
		file = theme.Fit(file, min(draw.Width(file), room/2))
		name = theme.Fit(name, room-draw.Width(file)-1) + " "
	}
	left := " " + theme.Paint(draw.Strong, name) + file + theme.Paint(draw.Focused, mark)
	if drive != "" {
		left += "  " + theme.Paint(draw.Dim, drive)
	}
	return draw.PadPainted(left, w-1-views.Cells) + views.Painted + " "
}

// viewNaming is how the views not shown are named in the title.
type viewNaming int

const (
	namedViews viewNaming = iota
	keyedViews
	closeViews // keys with one blank between them
	unnamedViews
)

// viewStrip names the view shown, with its key and a sign, among the others.
func (m *Model) viewStrip(others viewNaming) draw.Piece {
	theme := m.theme
	var painted strings.Builder
	cells := 0
	add := func(r draw.Role, text string) {
		painted.WriteString(theme.Paint(r, text))
		cells += draw.Width(text)
	}
	for i, v := range m.views {
		if i != m.active && others == unnamedViews {
			continue
		}
		if cells > 0 {
			add(draw.Plain, " ")
		}
		if key := theme.Say(v.About().Open.Help().Key); i == m.active {
			add(draw.Focused, theme.Pointer+key+" "+v.About().Name)
		} else {
			if others != closeViews {
				add(draw.Plain, " ")
			}
			add(draw.Strong, key)
			if others == namedViews {
				add(draw.Dim, " "+v.About().Name)
			}
		}
	}
	return draw.Piece{Painted: painted.String(), Cells: cells}
}

// driveText says what drives the rocket in a few words.
func driveText(r *rocket.Rocket, now *view.Outcome, sys quantity.System) string {
	text := func(v float64, unit string) string { return draw.Exact(v, sys.Unit(draw.Unit(unit)), 5) }
	if r.Power == rocket.WaterPower && r.Water != nil {
		return fmt.Sprintf("water %s, %s full, %s throat",
			text(r.Water.Pressure, "bar"), text(r.Water.Fill, "%"), text(r.Water.Throat, "mm"))
	}
	if r.Motor == nil || now == nil || now.Flight.Rocket.Power != rocket.MotorPower {
		return string(r.Power)
	}
	d := now.Flight.Results.Drive
	out := "motor"
	if d.Class != "" {
		out += " " + d.Class
	}
	return out + fmt.Sprintf(", %s for %s", quantity.Format(d.Average, sys.Unit(draw.Unit("N")), 3), quantity.Format(d.BurnTime, draw.Unit("s"), 3))
}

// statusLines are the rows above the keys, and the keys: a question with its
// answers, a message, or what the chosen input is.
func (m *Model) statusLines() ([]string, string) {
	theme, w := m.theme, m.layout.width
	if m.asking != nil {
		rows := m.asking.lines(theme, m.keys, w)
		last := len(rows) - 1
		for len(rows) <= statusRows {
			rows, last = append([]string{draw.Blanks(w)}, rows...), last+1
		}
		return rows[:last], rows[last]
	}
	if m.picking != nil {
		keys := &m.keys
		return []string{draw.Blanks(w), draw.Blanks(w)}, draw.HintLine(theme, []draw.Hint{draw.HintOf("choose, or type letters of it", keys.Up, keys.Down),
			draw.HintOf("take it", keys.Accept), draw.HintOf("none of them", keys.Leave)}, nil, w)
	}
	if m.guiding != nil && m.tabling == nil {
		keys := &m.keys
		return m.guiding.lines(m, w), draw.HintLine(theme, []draw.Hint{draw.HintOf("answer, or skip", keys.Accept), draw.HintOf("question before, next", keys.Up, keys.Down),
			draw.HintOf("to the list", keys.Leave)}, nil, w)
	}
	if m.finding != nil {
		keys := &m.keys
		return m.finding.lines(m, w), draw.HintLine(theme, []draw.Hint{draw.HintOf("next", keys.Find), draw.HintOf("choose", keys.Up, keys.Down),
			draw.HintOf("go there", keys.Accept), draw.HintOf("back", keys.Leave)}, nil, w)
	}
	var hints []draw.Hint
	must := m.keys.always()
	switch {
	case m.tabling != nil && m.page == nil:
		hints, must = m.tabling.hints(&m.keys), nil
	case m.page != nil:
		hints = []draw.Hint{draw.HintOf("scroll", m.keys.Up, m.keys.Down), draw.HintOf("back", m.keys.Leave)}
		must = nil
	case m.typed != nil:
		hints = []draw.Hint{draw.HintOf(m.keys.Accept.Help().Desc, m.keys.Accept), draw.HintOf(m.keys.Leave.Help().Desc, m.keys.Leave)}
		must = nil
		if m.typed.path {
			hints = append(hints, draw.HintOf(m.keys.Complete.Help().Desc, m.keys.Complete))
		}
	default:
		hints = m.view().Hints()
	}
	if m.page != nil {
		return nil, draw.HintLine(theme, hints, must, w)
	}
	if m.whole() {
		must = must[1:] // nothing is changed there that would have to be saved
		return m.messageLines(), draw.HintLine(theme, hints, must, w)
	}
	first, second := m.inputHelp()
	if m.tabling != nil {
		first, second = m.tableHelp()
	}
	switch text := theme.Say(m.notice.says); {
	case text == "":
	case draw.Width(text) <= w-2:
		second = " " + theme.Paint(m.notice.role, draw.Padded(text, w-2)) + " "
	default:
		parts := append(draw.Wrapped(text, w-2), "", "")
		first = " " + theme.Paint(m.notice.role, draw.Padded(parts[0], w-2)) + " "
		second = " " + theme.Paint(m.notice.role, theme.Fit(strings.Join(parts[1:], " "), w-2)) + " "
	}
	return []string{first, second}, draw.HintLine(theme, hints, must, w)
}

// messageLines are what is said below a view that has the screen to itself: a row at least.
func (m *Model) messageLines() []string {
	var rows []string
	for _, line := range draw.Wrapped(m.theme.Say(m.notice.says), m.layout.width-2) {
		rows = append(rows, " "+draw.Padded(line, m.layout.width-2)+" ")
	}
	if len(rows) == 0 {
		rows = append(rows, draw.Blanks(m.layout.width))
	}
	return rows
}

// inputHelp is two rows about the chosen input: its dotted name, range and
// default, then its help.
func (m *Model) inputHelp() (string, string) {
	theme, w := m.theme, m.layout.width
	d := m.inputs.chosen()
	if d == nil {
		return draw.Blanks(w), draw.Blanks(w)
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
	if d.Path {
		facts = m.keys.Complete.Help().Key + " completes its path while it is typed"
		if d.Name == motorFileInput {
			facts = m.keys.Less.Help().Key + m.keys.More.Help().Key + " goes through those beside the rocket; " + facts
		}
	}
	if d.Also != nil {
		for _, q := range d.Also(m.file().Described()) {
			text := quantity.Format(q.Value, m.units.Unit(q.Unit), 3)
			if m.units == quantity.US && q.Unit.Dimension == quantity.Mass {
				text = words.In(m.units).Mass(q.Value) // by the pound from one up
			}
			facts += "; " + text
		}
	}
	switch {
	case m.inputs.open[d.Name].missing:
		facts += "; missing"
	case d.Path && !d.given:
	case !d.given:
		facts += "; by default, not in the file"
	}
	name := theme.Say(d.Name)
	rest := theme.Fit(theme.Say(draw.Clean(strings.TrimPrefix(facts, "; "))), w-4-draw.Width(name))
	return " " + theme.Paint(draw.Focused, name) + "  " + theme.Paint(draw.Dim, rest) + " ",
		" " + theme.Fit(theme.Say(draw.Clean(d.Help)), w-2) + " "
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
	lines := draw.Wrapped(m.theme.Say(text), max(m.layout.width, 1))
	return lines[:min(len(lines), max(m.layout.height, 0))]
}
