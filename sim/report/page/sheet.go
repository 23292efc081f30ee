package page

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Width is the widest line of a sheet, in columns.
const Width = 80

// Sheet gathers text line by line. The zero value is empty and fit for use.
type Sheet struct{ strings.Builder }

// Line writes a line as it is, without blanks at its end.
func (s *Sheet) Line(text string) {
	s.WriteString(strings.TrimRight(text, " "))
	s.WriteByte('\n')
}

// Hung writes text wrapped after a first line's prefix, later lines below it.
func (s *Sheet) Hung(prefix, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(prefix))
	for _, l := range Wrap(text, Width-len(indent)) {
		s.Line(prefix + l)
		prefix = indent
	}
}

// Field writes a labelled line of text.
func (s *Sheet) Field(label, text string) { s.Hung(fmt.Sprintf("  %-16s  ", label), text) }
