package page

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Glue is a space at which no line breaks, as between a number and its unit; names from files cannot hold it.
const Glue = "\u00a0"

// Wrap breaks text at spaces into lines of at most so many columns; a longer word has
// a line of its own. Empty text is one empty line.
func Wrap(text string, columns int) []string {
	return WrapTo(text, func(line string) bool {
		return len(line) <= columns || utf8.RuneCountInString(line) <= columns // bytes are no fewer
	})
}

// WrapTo is Wrap for lines that are measured in another way, such as on paper.
func WrapTo(text string, fits func(line string) bool) []string {
	words := strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) && string(r) != Glue })
	text = strings.Join(words, " ")
	var lines []string
	start, end := 0, 0 // of the line, in the text
	for i, word := range words {
		next := end + len(word)
		if i > 0 {
			next++
		}
		if end > start && !fits(text[start:next]) {
			lines = append(lines, text[start:end])
			start = end + 1
		}
		end = next
	}
	return append(lines, text[start:end])
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
