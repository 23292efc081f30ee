package page

import (
	"strings"
	"unicode"
)

// Printable makes a name from a file fit for a terminal: no control characters.
func Printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r == unicode.ReplacementChar || !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, s)
}

// Printables makes names fit for a terminal.
func Printables(texts []string) []string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = Printable(t)
	}
	return out
}

// OneLine is an error on one line, fit for a terminal.
func OneLine(err error) string {
	return Printable(strings.ReplaceAll(err.Error(), "\n", "; "))
}
