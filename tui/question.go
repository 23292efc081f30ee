package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
)

// question is something the program waits for: a key among a few, or a line of
// text. Leave (esc) always drops it. A question is not changed once it is
// asked; what is typed makes a new one.
type question struct {
	says    string
	quits   bool // it asks whether to quit: interrupting it means yes
	answers []answer

	typed  *line // a line of text; nil when only keys answer
	rules  string
	path   bool     // the line is a path, and can be completed
	names  []string // of which one may be the last word, and can be completed
	offers string   // what it may become
	wrong  string   // what is wrong with the line
	submit func(m *Model, text string) tea.Cmd
}

// answer is one key that answers a question.
type answer struct {
	key key.Binding
	do  func(m *Model) tea.Cmd
}

// answer offers a key to the question asked.
func (m *Model) answer(k tea.KeyMsg) tea.Cmd {
	q := *m.asking
	for _, a := range q.answers {
		if key.Matches(k, a.key) {
			m.asking = nil
			return a.do(m)
		}
	}
	switch {
	case key.Matches(k, m.keys.Leave):
		m.asking = nil
	case q.typed == nil:
		m.turn(k)
	case key.Matches(k, m.keys.Accept):
		return q.submit(m, q.typed.String())
	case q.completes() && key.Matches(k, m.keys.Complete):
		q = q.complete()
		m.asking = &q
	default:
		l := *q.typed
		l.press(k)
		q.typed, q.wrong, q.offers = &l, "", ""
		m.asking = &q
	}
	return nil
}

// completes tells that what is typed can be completed.
func (q *question) completes() bool { return q.path || len(q.names) > 0 }

// wrong keeps the line open with what is wrong with it.
func (m *Model) wrong(text string) {
	q := *m.asking
	q.wrong = draw.Clean(text)
	m.asking = &q
}

// mostOffers is how many rows what a path may become takes.
const mostOffers = 3

// lines are the rows of the question: what is asked, and how to answer.
func (q *question) lines(theme *draw.Theme, keys KeyMap, w int) []string {
	var hints []draw.Hint
	for _, a := range q.answers {
		hints = append(hints, draw.HintOf(a.key.Help().Desc, a.key))
	}
	if q.typed != nil {
		hints = append(hints, draw.HintOf("take it", keys.Accept))
		if q.completes() {
			hints = append(hints, draw.HintOf("complete", keys.Complete))
		}
	}
	if len(q.answers) == 0 || !key.Matches(tea.KeyMsg{Type: tea.KeyEsc}, q.answers[len(q.answers)-1].key) {
		hints = append(hints, draw.HintOf("stay", keys.Leave))
	}
	var rows []string
	says := theme.Say(q.says)
	if q.typed != nil {
		label := says + " "
		rows = append(rows, " "+theme.Paint(draw.Asked, label)+q.typed.view(theme, w-draw.Width(label)-2)+" ")
		text, r := q.rules, draw.Dim
		switch {
		case q.wrong != "":
			text, r = q.wrong, draw.Bad
		case q.offers != "":
			text = q.offers
		}
		parts := draw.Wrapped(theme.Say(text), w-2)
		if q.offers != "" && len(parts) > mostOffers {
			parts = append(parts[:mostOffers-1], theme.Fit(strings.Join(parts[mostOffers-1:], "  "), w-2))
		}
		for _, part := range parts {
			rows = append(rows, theme.Paint(r, " "+draw.Padded(part, w-2)+" "))
		}
	} else {
		for _, part := range draw.Wrapped(says, w-2) {
			rows = append(rows, theme.Paint(draw.Asked, " "+draw.Padded(part, w-2)+" "))
		}
	}
	return append(rows, draw.HintLine(theme, hints, nil, w))
}
