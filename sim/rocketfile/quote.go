package rocketfile

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// quoted writes a text as a TOML string with the quotes given, if these can
// hold it, else as a basic string.
func quoted(text, quote string) string {
	plain := !strings.ContainsFunc(text, func(r rune) bool { return unicode.IsControl(r) || r == utf8.RuneError })
	switch quote {
	case `'`, `'''`:
		if plain && !strings.Contains(text, `'`) {
			return quote + text + quote
		}
	case `"""`:
		if plain && !strings.ContainsAny(text, `"\`) {
			return quote + text + quote
		}
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case unicode.IsControl(r):
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// quoteOf tells the quotes that a value is written with.
func quoteOf(raw string) string {
	for _, q := range []string{`"""`, `'''`, `'`} {
		if strings.HasPrefix(raw, q) {
			return q
		}
	}
	return `"`
}
