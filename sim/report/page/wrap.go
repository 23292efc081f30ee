package page

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks text at spaces into lines of at most so many columns; a longer word has
// a line of its own. Empty text is one empty line.
func Wrap(text string, columns int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case used == 0:
			line, used = word, n
		case used+1+n <= columns:
			line, used = line+" "+word, used+1+n
		default:
			lines = append(lines, line)
			line, used = word, n
		}
	}
	return append(lines, line)
}

// Chopped is Wrap with words that are too long broken too, where nothing may stand out.
func Chopped(text string, columns int) []string {
	var lines []string
	for _, l := range Wrap(text, columns) {
		for r := []rune(l); ; r = r[columns:] {
			if len(r) <= columns {
				lines = append(lines, string(r))
				break
			}
			lines = append(lines, string(r[:columns]))
		}
	}
	return lines
}
