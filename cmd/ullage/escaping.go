package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// escaping is where messages go: what in them would move a terminal's cursor or colour it,
// such as a file's name may hold, is written as Go writes it, \x1b.
type escaping struct{ w io.Writer }

func (e escaping) Write(b []byte) (int, error) {
	if _, err := io.WriteString(e.w, escaped(string(b))); err != nil {
		return 0, err
	}
	return len(b), nil
}

func escaped(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return control(r) || r == utf8.RuneError }) {
		return s
	}
	var out strings.Builder
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == utf8.RuneError && n == 1, control(r) && r < utf8.RuneSelf:
			fmt.Fprintf(&out, `\x%02x`, s[i])
		case control(r):
			fmt.Fprintf(&out, `\u%04x`, r)
		default:
			out.WriteString(s[i : i+n])
		}
		i += n
	}
	return out.String()
}

// control tells of a character that controls a terminal or changes the order of others;
// lines and what a progress bar needs are left.
func control(r rune) bool {
	return r != '\n' && r != '\r' && r != '\t' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r))
}
