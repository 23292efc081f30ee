package draw

import "strings"

// Centred is a text in the middle of w by h cells, painted.
func Centred(theme *Theme, text string, w, h int) []string {
	lines := Wrapped(theme.Say(Clean(text)), min(w-2, 60))
	rows := make([]string, 0, h)
	for range max((h-len(lines))/2, 0) {
		rows = append(rows, Blanks(w))
	}
	for _, l := range lines[:min(len(lines), h)] {
		side := max((w-Width(l))/2, 0)
		rows = append(rows, Padded(Blanks(side)+l, w))
	}
	for len(rows) < h {
		rows = append(rows, Blanks(w))
	}
	return rows
}

// Paragraph is a text in as many painted rows of w cells as it takes.
func Paragraph(theme *Theme, r Role, text string, w int) []string {
	lines := Wrapped(theme.Say(Clean(text)), w)
	for i, l := range lines {
		lines[i] = theme.Paint(r, Padded(l, w))
	}
	return lines
}

// Sentences are remarks in at most so many painted rows of w cells.
func Sentences(theme *Theme, words []string, w, most int) []string {
	text := strings.Join(words, "; ")
	if text == "" || most < 1 {
		return nil
	}
	lines := Wrapped(glued(theme.Say(Clean(text))), w)
	if len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], theme.Fit(rest, w))
	}
	for i := range lines {
		lines[i] = theme.Paint(Dim, Padded(strings.ReplaceAll(lines[i], glue, " "), w))
	}
	return lines
}

// glue stands for a blank that no line is broken at. It is for private use, and
// Clean lets none in.
const glue = "\ue000"

// glued keeps numbers and what follows them, such as a unit, on one line.
func glued(s string) string {
	var b strings.Builder
	digit := false
	for _, r := range s {
		if r == ' ' && digit {
			b.WriteString(glue)
		} else {
			b.WriteRune(r)
		}
		digit = '0' <= r && r <= '9'
	}
	return b.String()
}
