package tui

import (
	"strings"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// unitCells is the room kept right of a number for its unit, so that numbers
// stand above each other.
const unitCells = 6

// complaint is what is wrong with a value, shown where the value is.
type complaint struct {
	input string // empty: the rocket as a whole
	says  string
}

// listRow is one row of the list, to be painted when it is in sight.
type listRow struct {
	kind  rowKind
	field int    // of the fields: that of its heading, itself, or what is wrong with it
	wrong string // what a fault's row says
}

type rowKind int

const (
	headingRow rowKind = iota
	fieldRow
	faultRow
	emptyRow // nothing is found
)

// draw paints the part of the list in sight, h rows of w cells, and scrolls so
// that the chosen field and what is said about it are in it. above and below
// tell that there is more.
func (l *list) draw(theme *draw.Theme, w, h int, typed *typing, f complaint) (lines []string, above, below bool) {
	rows := l.rows(theme, w, f)
	first, last := 0, 0 // rows of the chosen field, its heading and its fault
	for i, r := range rows {
		if r.kind == fieldRow && r.field == l.at {
			if first = i; i > 0 && rows[i-1].kind != fieldRow {
				first = i - 1
			}
			last = i
			for last+1 < len(rows) && rows[last+1].kind == faultRow {
				last++
			}
		}
	}
	l.top = max(min(l.top, len(rows)-h, first), last-h+1, 0)
	end := min(l.top+h, len(rows))
	lines = make([]string, 0, h)
	l.sight = make([]int, 0, h)
	for _, r := range rows[l.top:end] {
		lines = append(lines, l.paint(theme, w, r, typed))
		if r.kind != fieldRow {
			r.field = -1
		}
		l.sight = append(l.sight, r.field)
	}
	for len(lines) < h {
		lines = append(lines, draw.Blanks(w))
	}
	return lines, l.top > 0, end < len(rows)
}

// rows are all rows of the list.
func (l *list) rows(theme *draw.Theme, w int, f complaint) []listRow {
	if len(l.fields) == 0 {
		return []listRow{{kind: emptyRow}}
	}
	rows := make([]listRow, 0, len(l.fields)+24)
	for i := range l.fields {
		d := &l.fields[i]
		wrong := func(says string) {
			for _, part := range draw.Wrapped(theme.Say(says), w-3) {
				rows = append(rows, listRow{faultRow, i, part})
			}
		}
		if d.folded == 0 && (i == 0 || d.Group != l.fields[i-1].Group) {
			rows = append(rows, listRow{kind: headingRow, field: i})
		}
		rows = append(rows, listRow{kind: fieldRow, field: i})
		if d.folded > 0 {
			continue
		}
		if open := l.open[d.Name]; open.says != "" && f.input != d.Name {
			wrong(open.says)
		}
		if f.says != "" && (f.input == d.Name || f.input == "" && i == l.at) {
			wrong(f.says)
		}
	}
	return rows
}

// paint is a row in w cells.
func (l *list) paint(theme *draw.Theme, w int, r listRow, typed *typing) string {
	switch r.kind {
	case emptyRow:
		return theme.Paint(draw.Dim, draw.Padded("  nothing found", w))
	case faultRow:
		return theme.Paint(draw.Bad, "  "+draw.Padded(r.wrong, w-3)+" ")
	}
	d, chosen := &l.fields[r.field], r.field == l.at
	switch {
	case r.kind == headingRow:
		return groupLine(theme, d.Group, w)
	case d.folded > 0:
		return foldedLine(theme, d, w, chosen)
	case chosen && typed != nil:
		return typingLine(theme, d, typed, w)
	}
	return fieldLine(theme, d, w, chosen, l.open[d.Name])
}

// groupLine is a heading with a line after it.
func groupLine(theme *draw.Theme, group string, w int) string {
	name := theme.Say(draw.Clean(group))
	rest := max(w-draw.Width(name)-2, 0)
	return theme.Paint(draw.Heading, name) + " " + theme.Paint(draw.RuleLine, strings.Repeat(theme.Line, rest)) + " "
}

// The signs of rows that something is open about.
const (
	oddsSign    = "!"
	missingSign = "?"
)

// fieldLine is a field with its value: numbers right-aligned before a column
// of units, words right-aligned.
func fieldLine(theme *draw.Theme, d *field, w int, chosen bool, open openness) string {
	sign := " "
	switch {
	case chosen:
		sign = theme.Pointer
	case open.odds:
		sign = oddsSign
	case open.missing:
		sign = missingSign
	}
	label := theme.Say(draw.Clean(d.Label))
	value := theme.Say(d.words)
	if d.short != "" {
		value = d.short
	}
	switch {
	case open.missing:
		value = "missing" + draw.Blanks(unitCells)
	case d.number != "":
		value = theme.Say(d.number + " " + draw.Padded(d.unit.Name, unitCells-1))
	case draw.Width(value) <= w-2-draw.Width(label)-unitCells:
		value += draw.Blanks(unitCells)
	}
	if open.odds {
		label += " at odds"
	}
	room := w - 2 - draw.Width(label)
	if draw.Width(value) > room-1 {
		value = theme.Fit(value, room-1)
	}
	text := label + draw.Aligned(value, room)
	switch {
	case chosen:
		return theme.Paint(draw.Focused, sign+text+" ")
	case open.odds:
		return theme.Paint(draw.Bad, sign+text+" ")
	case open.missing:
		return theme.Paint(draw.Caution, sign+text+" ")
	case !d.given:
		return sign + theme.Paint(draw.Dim, text+" ")
	}
	return sign + text + " "
}

// typing is a value being typed.
type typing struct {
	input string
	line  line
	path  bool // it is the path of a file, from the rocket file's folder
}

// typingLine is a field while its value is typed.
func typingLine(theme *draw.Theme, d *field, t *typing, w int) string {
	label := theme.Say(draw.Clean(d.Label))
	hint := ""
	if d.Kind == rocketfile.NumberKind && d.unit.Name != "" {
		hint = " " + d.unit.Name
	}
	room := w - 3 - draw.Width(label) - draw.Width(hint)
	if room < 4 {
		room, hint = room+draw.Width(hint), ""
	}
	return theme.Paint(draw.Focused, theme.Pointer+label) + " " + t.line.view(theme, room) + theme.Paint(draw.Dim, hint) + " "
}
