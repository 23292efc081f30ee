package tui

import (
	"slices"
	"strings"
)

// table is rows of figures in columns. Where it is too wide, whole columns go:
// those of the highest rank first, those of rank 0 never.
type table struct {
	columns []tableColumn
	rows    []tableRow
	chosen  int  // the row that must be in sight
	tight   bool // one blank between columns instead of two
}

// tableColumn is how a column is headed and set.
type tableColumn struct {
	title string
	unit  string // in a row of its own below the titles, when any column has one
	left  bool   // texts start at the left; figures end at the right
	rank  int
}

// tableRow is one row: a sign before it, and a cell for each column.
type tableRow struct {
	sign  string // at most one cell wide
	role  role   // of the sign, and of every cell that has no role of its own
	cells []tableCell
	rest  tableCell // said in all the room after the cells
}

// tableCell is the text of a cell.
type tableCell struct {
	text string
	role role // plainText takes the row's
}

// textCells are cells without a role of their own.
func textCells(texts ...string) []tableCell {
	cells := make([]tableCell, len(texts))
	for i, t := range texts {
		cells[i].text = t
	}
	return cells
}

// draw sets the table in w cells and at most h rows, its heading the first of
// them. Where rows are too many the chosen one is in sight.
func (t *table) draw(look *look, w, h int) []string {
	if h < 1 {
		return nil
	}
	widths, shown := t.fit(look, w)
	lines := []string{t.heading(look, widths, shown, w, func(c tableColumn) string { return c.title })}
	if h > 1 && slices.ContainsFunc(t.columns, func(c tableColumn) bool { return c.unit != "" }) {
		lines = append(lines, t.heading(look, widths, shown, w, func(c tableColumn) string { return c.unit }))
	}
	room := h - len(lines)
	top := t.first(room)
	for _, r := range t.rows[top:min(top+room, len(t.rows))] {
		lines = append(lines, t.line(look, r, widths, shown, w))
	}
	return lines
}

// first is the first row in sight where there is room for so many.
func (t *table) first(room int) int { return max(min(t.chosen-room/2, len(t.rows)-room), 0) }

// gap parts columns.
func (t *table) gap() int {
	if t.tight {
		return 1
	}
	return 2
}

// fit gives every column its width and tells which ones have room.
func (t *table) fit(look *look, w int) (widths []int, shown []bool) {
	widths, shown = make([]int, len(t.columns)), make([]bool, len(t.columns))
	total := 1 // the sign
	for i, c := range t.columns {
		widths[i] = max(width(look.say(c.title)), width(look.say(c.unit)))
		for _, r := range t.rows {
			if i < len(r.cells) {
				widths[i] = max(widths[i], width(look.say(r.cells[i].text)))
			}
		}
		shown[i] = true
		total += widths[i] + t.gap()
	}
	for total-t.gap() > w {
		drop := -1
		for i, c := range t.columns {
			if shown[i] && c.rank > 0 && (drop < 0 || c.rank > t.columns[drop].rank) {
				drop = i
			}
		}
		if drop < 0 {
			break // what is left is cut
		}
		shown[drop] = false
		total -= widths[drop] + t.gap()
	}
	return widths, shown
}

func (t *table) heading(look *look, widths []int, shown []bool, w int, of func(tableColumn) string) string {
	text := " "
	for i, c := range t.columns {
		if shown[i] {
			text += t.set(look.say(of(c)), i, widths) + blanks(t.gap())
		}
	}
	return look.in(heading, look.fit(strings.TrimRight(text, " "), w))
}

func (t *table) line(look *look, r tableRow, widths []int, shown []bool, w int) string {
	out, used := look.in(r.role, padded(look.say(r.sign), 1)), 1
	for i, c := range r.cells {
		if i >= len(shown) || !shown[i] {
			continue
		}
		paint := c.role
		if paint == plainText {
			paint = r.role
		}
		out += look.in(paint, t.set(look.say(c.text), i, widths)) + blanks(t.gap())
		used += widths[i] + t.gap()
	}
	if r.rest.text != "" {
		out += look.in(r.rest.role, look.fit(look.say(r.rest.text), w-used))
	}
	return padPainted(out, w)
}

// set is a cell's text in its column's width.
func (t *table) set(text string, column int, widths []int) string {
	if t.columns[column].left {
		return padded(text, widths[column])
	}
	return aligned(text, widths[column])
}
