package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// guide asks for the rocket value by value, as it is built and weighed.
type guide struct {
	name  string // the question asked, by its input
	line  line
	wrong string
}

// startGuide asks the first question that is not answered.
func (m *Model) startGuide() {
	m.guiding = &guide{}
	m.askFrom(0)
}

// askFrom asks the first open question from a place on; the guide is over when there is none.
func (m *Model) askFrom(at int) {
	all := m.file().Questions()
	if at = rocketfile.NextQuestion(all, at); at < 0 {
		m.guiding = nil
		m.say(draw.Plain, "That was the last question; "+m.keys.Lack.Help().Key+" goes to what is still missing.")
		return
	}
	m.askThis(all[at])
}

func (m *Model) askThis(q rocketfile.Question) {
	text := q.Text
	if q.Name == thrustInput {
		text = rocketfile.PlainCurve(m.file().Described())
	}
	if q.Given && q.Input.Kind == rocketfile.NumberKind {
		text = newField(m.file(), m.file().Described(), &q.Input, m.units).value()
	}
	m.guiding = &guide{name: q.Name, line: newLine(text)}
	m.inputs.choose(q.Name)
}

// current is the question that is asked, its place and all of them; −1 when the rocket no longer asks it.
func (m *Model) current() (q rocketfile.Question, at int, all []rocketfile.Question) {
	all = m.file().Questions()
	for i := range all {
		if all[i].Name == m.guiding.name {
			return all[i], i, all
		}
	}
	return q, -1, all
}

// guideKey takes a key while the guide asks.
func (m *Model) guideKey(k tea.KeyMsg) {
	g := *m.guiding
	keys := &m.keys
	q, at, all := m.current()
	switch {
	case key.Matches(k, keys.Leave):
		m.guiding = nil
		m.say(draw.Plain, "What was answered is kept; "+keys.Guide.Help().Key+" asks on.")
		return
	case at < 0:
		m.askFrom(0)
		return
	case key.Matches(k, keys.Accept):
		m.answerGuide(q, at)
		return
	case key.Matches(k, keys.Down), key.Matches(k, keys.NextGroup):
		if at+1 < len(all) {
			m.askThis(all[at+1])
		}
		return
	case key.Matches(k, keys.Up), key.Matches(k, keys.PrevGroup):
		if at > 0 {
			m.askThis(all[at-1])
		}
		return
	}
	if k.Paste && q.Name == thrustInput && strings.ContainsAny(strings.TrimSpace(string(k.Runes)), "\n\r") {
		m.openTable(q.Name)
		m.pasteRows(string(k.Runes))
		return
	}
	g.line.press(k)
	g.wrong = ""
	m.guiding = &g
}

// answerGuide takes what was typed, or what is offered, and goes on.
func (m *Model) answerGuide(q rocketfile.Question, at int) {
	before := m.file()
	text := m.guiding.line.String()
	if q.Given && strings.TrimSpace(text) == "" {
		text = q.Text // emptied by hand: the value stays
	}
	if q.Given && text == newField(before, before.Described(), &q.Input, m.units).value() {
		m.askFrom(at + 1)
		return
	}
	q.Unit = m.units.Unit(q.Unit)
	f, err := before.Answer(q, text, m.clock())
	if err != nil {
		g := *m.guiding
		g.wrong = view.FaultText(err, q.Name)
		m.guiding = &g
		return
	}
	if f != before {
		m.take(f, nil, view.Edit{Input: q.Name, Says: q.Name + " answered"})
		m.refill()
	}
	if _, now, _ := m.current(); now >= 0 {
		at = now
	}
	m.askFrom(at + 1)
}

// lines are the rows of the question: what is asked and what is typed, how to measure it, what nothing typed does.
func (g *guide) lines(m *Model, w int) []string {
	theme := m.theme
	q, at, all := m.current()
	if at < 0 {
		return []string{draw.Blanks(w), draw.Blanks(w)}
	}
	unit := m.units.Unit(q.Unit)
	label := fmt.Sprintf("%s %s: ", strings.TrimSpace(q.Input.Group), q.Input.Label)
	hint := ""
	if q.Input.Kind == rocketfile.NumberKind && unit.Name != "" {
		hint = " " + unit.Name
	}
	room := w - 2 - draw.Width(label) - draw.Width(hint)
	rows := []string{" " + theme.Paint(draw.Asked, theme.Say(label)) + g.line.view(theme, room) + theme.Paint(draw.Dim, theme.Say(hint)) + " "}
	text, role, offer := "", draw.Dim, q.Offer()
	switch {
	case g.wrong != "":
		text, role = g.wrong, draw.Bad
	case offer != "":
		text = "Nothing typed takes " + offer + "."
	case q.Given:
		text = "As it is: " + q.Text + "."
	default:
		text = "Nothing typed leaves it open."
	}
	if words := strings.Join(q.Input.Choices, ", "); words != "" && g.wrong == "" {
		if q.Input.Kind == rocketfile.NumberKind {
			words = "A number, or " + words
		}
		text = words + ". " + text
	}
	text = fmt.Sprintf("%s %d of %d. %s", q.Step, at+1, len(all), text)
	for _, part := range draw.Wrapped(theme.Say(draw.Clean(text)), w-2) {
		rows = append(rows, " "+theme.Paint(role, draw.Padded(part, w-2))+" ")
	}
	return rows
}

// guideLines stand in the place of a view while the guide asks: the steps, how to measure, and the rocket as it grows.
func (m *Model) guideLines() []string {
	w, rows, theme := m.layout.view, m.layout.body, m.theme
	q, at, _ := m.current()
	var lines []string
	if at >= 0 {
		steps := ""
		for _, s := range rocketfile.Steps() {
			if s == q.Step {
				s = theme.Pointer + s
			}
			steps += s + "  "
		}
		lines = append(lines, draw.Paragraph(theme, draw.Heading, steps, w)...)
		lines = append(lines, draw.Paragraph(theme, draw.Strong, q.Name, w)...)
		lines = append(lines, draw.Paragraph(theme, draw.Plain, q.Input.Help, w)...)
		lines = append(lines, draw.Paragraph(theme, draw.Dim, "It takes "+q.Input.Takes()+"; any unit of its kind may be typed.", w)...)
		lines = append(lines, draw.Blanks(w))
	}
	room := rows - len(lines) - 2
	switch {
	case room < 5:
	case q.Name == thrustInput:
		lines = append(lines, m.curveLines(m.guiding.line.String(), w, min(room, 16))...)
	default:
		if s := draw.Growing(m.file().Described()); s != nil {
			stack := draw.Side(theme.Charset, s, m.units.Unit(draw.Unit("mm")))
			var grid plot.Grid
			lines = append(lines, draw.PaintStack(theme, &grid, &stack, w, min(room, 14))...)
		} else {
			lines = append(lines, draw.Paragraph(theme, draw.Dim, "The rocket is drawn here as soon as its diameter and length are given.", w)...)
		}
	}
	for len(lines) < rows-1 {
		lines = append(lines, draw.Blanks(w))
	}
	lines = append(lines[:max(rows-1, 0)], draw.Paragraph(theme, draw.Dim, stillOpen(m), w)[:1]...)
	return lines
}

// stillOpen says how far the description has come.
func stillOpen(m *Model) string {
	all := lacks(m.file())
	if len(all) == 0 {
		return "Nothing is missing for flight, stability, chamber and card."
	}
	var faults []string
	for i, l := range all {
		if i == 6 {
			faults = append(faults, "…")
			break
		}
		faults = append(faults, l.Key)
	}
	return fmt.Sprintf("%d still open: %s", len(all), strings.Join(faults, ", "))
}

// pickForm asks what to start from.
func (m *Model) pickForm() {
	var all []choice
	for _, f := range rocketfile.Forms() {
		all = append(all, choice{f.Name, f.Name, f.Help})
	}
	m.pick(picker{says: "Start from:", all: all, take: func(m *Model, name string) tea.Cmd { return m.startFrom(name) }})
}

// startFrom begins with a rocket built in; the bare one is asked for at once.
func (m *Model) startFrom(form string) tea.Cmd {
	f, err := rocketfile.FromForm(form)
	if err != nil {
		m.say(draw.Bad, view.FaultText(err, ""))
		return nil
	}
	f = f.Draft()
	m.hist, m.lodged, m.now, m.kept, m.crash = newHistory(f), f, nil, nil, complaint{}
	m.refill()
	m.inputs.chooseDrive()
	if form == "bare" {
		m.startGuide()
	}
	return m.fly()
}
