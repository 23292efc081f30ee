package page

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks text at spaces into lines of at most so many columns; a longer word has
// a line of its own. Empty text is one empty line.
func Wrap(text string, columns int) []string {
	return WrapTo(text, func(line string) bool { return utf8.RuneCountInString(line) <= columns })
}

// WrapTo is Wrap for lines that are measured in another way, such as on paper.
func WrapTo(text string, fits func(line string) bool) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch longer := line + " " + word; {
		case line == "":
			line = word
		case fits(longer):
			line = longer
		default:
			lines = append(lines, line)
			line = word
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
