package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"ullage/tui/draw"
)

// longestTyped bounds what can be typed or pasted into one line.
const longestTyped = 4096

// line is one line of text being typed.
type line struct {
	text []rune
	at   int // place of the caret, 0 to len(text)
}

func newLine(text string) line {
	l := line{}
	l.insert([]rune(text))
	return l
}

func (l *line) String() string { return string(l.text) }

// press takes a key that edits the line; other keys it leaves alone.
func (l *line) press(k tea.KeyMsg) {
	switch k.Type {
	case tea.KeyRunes, tea.KeySpace:
		if !k.Alt {
			l.insert([]rune(draw.Clean(string(k.Runes))))
		}
	case tea.KeyLeft, tea.KeyCtrlB:
		l.at = max(l.at-1, 0)
	case tea.KeyRight, tea.KeyCtrlF:
		l.at = min(l.at+1, len(l.text))
	case tea.KeyHome, tea.KeyCtrlA:
		l.at = 0
	case tea.KeyEnd, tea.KeyCtrlE:
		l.at = len(l.text)
	case tea.KeyBackspace, tea.KeyCtrlH:
		if l.at > 0 {
			l.cut(l.at-1, l.at)
		}
	case tea.KeyDelete:
		if l.at < len(l.text) {
			l.cut(l.at, l.at+1)
		}
	case tea.KeyCtrlU:
		l.cut(0, l.at)
	case tea.KeyCtrlK:
		l.cut(l.at, len(l.text))
	case tea.KeyCtrlW:
		from := l.at
		for from > 0 && l.text[from-1] == ' ' {
			from--
		}
		for from > 0 && l.text[from-1] != ' ' {
			from--
		}
		l.cut(from, l.at)
	}
}

// insert puts runes at the caret. The text is never shared with an older line.
func (l *line) insert(runes []rune) {
	runes = runes[:min(len(runes), max(longestTyped-len(l.text), 0))]
	text := make([]rune, 0, len(l.text)+len(runes))
	text = append(append(append(text, l.text[:l.at]...), runes...), l.text[l.at:]...)
	l.text, l.at = text, l.at+len(runes)
}

func (l *line) cut(from, to int) {
	text := make([]rune, 0, len(l.text))
	l.text, l.at = append(append(text, l.text[:from]...), l.text[to:]...), from
}

// view is the line with its caret in exactly w cells, scrolled so that the
// caret is inside.
func (l *line) view(theme *draw.Theme, w int) string {
	if w <= 0 {
		return ""
	}
	cells := func(runes []rune) int { return draw.Width(theme.Say(string(runes))) }
	from := max(l.at-4*w, 0)
	for from < l.at && cells(l.text[from:l.at]) >= w {
		from++
	}
	before, under, after := theme.Say(string(l.text[from:l.at])), " ", ""
	if l.at < len(l.text) {
		under = theme.Say(string(l.text[l.at : l.at+1]))
	}
	if theme.Plain && l.at == len(l.text) {
		under = "_"
	}
	// Characters may join into one, so only whole texts are measured.
	if draw.Width(before+under) > w {
		under = ""
	}
	for i := l.at + 1; i < len(l.text); i++ {
		if longer := after + theme.Say(string(l.text[i])); draw.Width(before+under+longer) <= w {
			after = longer
			continue
		}
		break
	}
	return theme.Paint(draw.Entry, before) + theme.Paint(draw.Caret, under) + theme.Paint(draw.Entry, after) + draw.Blanks(w-draw.Width(before+under+after))
}
