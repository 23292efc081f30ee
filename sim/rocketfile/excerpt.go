package rocketfile

import (
	"strings"
	"unicode"
)

// excerpt makes a piece of a file fit for a message: one line, printable, and
// no longer than needed to find it.
func excerpt(text string) string {
	const most = 60
	var b strings.Builder
	count := 0
	space := false
	for _, r := range strings.TrimSpace(text) {
		switch {
		case unicode.IsSpace(r):
			space = true
			continue
		case !unicode.IsPrint(r):
			r = unicode.ReplacementChar
		}
		if count >= most {
			return b.String() + "…"
		}
		if space {
			b.WriteByte(' ')
			space = false
			count++
		}
		b.WriteRune(r)
		count++
	}
	return b.String()
}
