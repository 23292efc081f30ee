package tui

// centred is a text in the middle of w by h cells, painted.
func centred(look *look, text string, w, h int) []string {
	lines := wrapped(look.say(clean(text)), min(w-2, 60))
	rows := make([]string, 0, h)
	for range max((h-len(lines))/2, 0) {
		rows = append(rows, blanks(w))
	}
	for _, l := range lines[:min(len(lines), h)] {
		side := max((w-width(l))/2, 0)
		rows = append(rows, padded(blanks(side)+l, w))
	}
	for len(rows) < h {
		rows = append(rows, blanks(w))
	}
	return rows
}
