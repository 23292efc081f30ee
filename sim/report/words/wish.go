package words

import (
	"strings"

	"ullage/sim/study"
)

// Wish says what is wanted of a flight: "the least drift".
func (p Printer) Wish(w *study.Wish) string {
	row := &w.Row
	switch {
	case w.Aimed():
		return row.Label + " of " + p.Row(row, w.Target)
	case w.Least:
		return "the least " + row.Label
	case row.Name == study.UsualWish:
		return "the highest apogee"
	case strings.HasPrefix(row.Label, "greatest "): // the most of that is a word too many
		return "the " + row.Label
	}
	return "the most " + row.Label
}

// Granted says of one among others that it has most of what is wanted.
func (p Printer) Granted(w *study.Wish) string {
	switch {
	case w.Aimed():
		return "comes nearest to " + p.Wish(w)
	case w.Row.Name == study.UsualWish && !w.Least:
		return "flies highest"
	}
	return "has " + p.Wish(w)
}
