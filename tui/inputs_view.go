package tui

import (
	"strings"

	"ullage/sim/rocketfile"
)

// unitCells is the room kept right of a number for its unit, so that numbers
// stand above each other.
const unitCells = 6

// fault is what is wrong with a value, shown where the value is.
type fault struct {
	input string // empty: the rocket as a whole
	says  string
}

// listRow is one row of the list: a heading, a field, or part of a fault.
type listRow struct {
	text  string // painted
	field int    // of the fields; −1 for the others
}

// draw paints the part of the list in sight, h rows of w cells, and scrolls so
// that the chosen field and what is said about it are in it. above and below
// tell that there is more.
func (l *list) draw(look *look, w, h int, typed *typing, f fault) (lines []string, above, below bool) {
	rows := l.rows(look, w, typed, f)
	first, last := 0, 0 // rows of the chosen field, its heading and its fault
	for i, r := range rows {
		if r.field == l.at {
			if first = i; i > 0 && rows[i-1].field < 0 {
				first = i - 1
			}
			last = i
			for last+1 < len(rows) && rows[last+1].field == faultRow {
				last++
			}
		}
	}
	l.top = max(min(l.top, len(rows)-h, first), last-h+1, 0)
	end := min(l.top+h, len(rows))
	lines = make([]string, 0, h)
	l.sight = make([]int, 0, h)
	for _, r := range rows[l.top:end] {
		lines = append(lines, r.text)
		l.sight = append(l.sight, r.field)
	}
	for len(lines) < h {
		lines = append(lines, blanks(w))
	}
	return lines, l.top > 0, end < len(rows)
}

// What a row is that has no field.
const (
	headingRow = -1
	faultRow   = -2
)

func (l *list) rows(look *look, w int, typed *typing, f fault) []listRow {
	rows := make([]listRow, 0, len(l.fields)+12)
	for i := range l.fields {
		d := &l.fields[i]
		if i == 0 || d.Group != l.fields[i-1].Group {
			rows = append(rows, listRow{groupLine(look, d.Group, w), headingRow})
		}
		chosen := i == l.at
		if chosen && typed != nil {
			rows = append(rows, listRow{typingLine(look, d, typed, w), i})
		} else {
			rows = append(rows, listRow{fieldLine(look, d, w, chosen), i})
		}
		if f.says != "" && (f.input == d.Name || f.input == "" && chosen) {
			for _, part := range wrapped(look.say(f.says), w-3) {
				rows = append(rows, listRow{look.in(badWord, "  "+padded(part, w-3)+" "), faultRow})
			}
		}
	}
	return rows
}

// groupLine is a heading with a line after it.
func groupLine(look *look, group string, w int) string {
	name := look.say(clean(group))
	rest := max(w-width(name)-2, 0)
	return look.in(heading, name) + " " + look.in(ruleLine, strings.Repeat(look.line, rest)) + " "
}

// fieldLine is a field with its value: numbers right-aligned before a column
// of units, words right-aligned.
func fieldLine(look *look, d *field, w int, chosen bool) string {
	sign := " "
	if chosen {
		sign = look.pointer
	}
	label := look.say(clean(d.Label))
	value := look.say(d.words)
	if d.short != "" {
		value = d.short
	}
	if d.number != "" {
		value = look.say(d.number + " " + padded(d.unit.Name, unitCells-1))
	} else if room := w - 2 - width(label) - unitCells; width(value) <= room {
		value += blanks(unitCells)
	}
	room := w - 2 - width(label)
	if width(value) > room-1 {
		value = look.fit(value, room-1)
	}
	text := label + aligned(value, room)
	switch {
	case chosen:
		return look.in(focused, sign+text+" ")
	case !d.given:
		return sign + look.in(dimText, text+" ")
	}
	return sign + text + " "
}

// typing is a value being typed.
type typing struct {
	input string
	line  line
}

// typingLine is a field while its value is typed.
func typingLine(look *look, d *field, t *typing, w int) string {
	label := look.say(clean(d.Label))
	hint := ""
	if d.Kind == rocketfile.NumberKind && d.unit.Name != "" {
		hint = " " + d.unit.Name
	}
	room := w - 3 - width(label) - width(hint)
	if room < 4 {
		room, hint = room+width(hint), ""
	}
	return look.in(focused, look.pointer+label) + " " + t.line.view(look, room) + look.in(dimText, hint) + " "
}
