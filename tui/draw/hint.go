package draw

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
)

// Hint is a short reminder for the bottom line.
type Hint struct{ Key, Says string }

// HintLine is a row of reminders: as many of some as there is room for, then
// all of those that must stay.
func HintLine(theme *Theme, some, must []Hint, w int) string {
	cells := func(h Hint) int { return Width(theme.Say(h.Key)) + 1 + Width(theme.Say(h.Says)) + 2 }
	room := w - 1
	for _, h := range must {
		room -= cells(h)
	}
	var b strings.Builder
	b.WriteByte(' ')
	used := 1
	put := func(h Hint) {
		b.WriteString(theme.Paint(Strong, theme.Say(h.Key)) + " " + theme.Paint(Dim, theme.Say(h.Says)) + "  ")
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
	return b.String() + Blanks(w-used)
}

// HintOf reminds of one key, or of some that go together.
func HintOf(says string, keys ...key.Binding) Hint {
	h := Hint{Says: says}
	for _, k := range keys {
		h.Key += k.Help().Key
	}
	return h
}
