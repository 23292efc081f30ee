package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
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
	wrong  string // what is wrong with the line
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
	default:
		l := *q.typed
		l.press(k)
		q.typed, q.wrong = &l, ""
		m.asking = &q
	}
	return nil
}

// wrong keeps the line open with what is wrong with it.
func (m *Model) wrong(text string) {
	q := *m.asking
	q.wrong = clean(text)
	m.asking = &q
}

// lines are the rows of the question: what is asked, and how to answer.
func (q *question) lines(look *look, keys KeyMap, w int) []string {
	var hints []hint
	for _, a := range q.answers {
		hints = append(hints, hint{a.key.Help().Key, a.key.Help().Desc})
	}
	if q.typed != nil {
		hints = append(hints, hint{keys.Accept.Help().Key, "take it"})
	}
	if len(q.answers) == 0 || !key.Matches(tea.KeyMsg{Type: tea.KeyEsc}, q.answers[len(q.answers)-1].key) {
		hints = append(hints, hint{keys.Leave.Help().Key, "stay"})
	}
	var rows []string
	says := look.say(q.says)
	if q.typed != nil {
		label := says + " "
		rows = append(rows, " "+look.in(asked, label)+q.typed.view(look, w-width(label)-2)+" ")
		text, r := q.rules, dimText
		if q.wrong != "" {
			text, r = q.wrong, badWord
		}
		for _, part := range wrapped(look.say(text), w-2) {
			rows = append(rows, look.in(r, " "+padded(part, w-2)+" "))
		}
	} else {
		for _, part := range wrapped(says, w-2) {
			rows = append(rows, look.in(asked, " "+padded(part, w-2)+" "))
		}
	}
	return append(rows, hintLine(look, hints, nil, w))
}

// hintLine is a row of reminders: as many of some as there is room for, then
// all of those that must stay.
func hintLine(look *look, some, must []hint, w int) string {
	cells := func(h hint) int { return width(look.say(h.key)) + 1 + width(look.say(h.says)) + 2 }
	room := w - 1
	for _, h := range must {
		room -= cells(h)
	}
	var b strings.Builder
	b.WriteByte(' ')
	used := 1
	put := func(h hint) {
		b.WriteString(look.in(strongText, look.say(h.key)) + " " + look.in(dimText, look.say(h.says)) + "  ")
		used += cells(h)
	}
	for _, h := range some {
		if room -= cells(h); room < 0 {
			break
		}
		put(h)
	}
	for _, h := range must {
		put(h)
	}
	return b.String() + blanks(w-used)
}
