package draw

import (
	"slices"
	"strings"
)

// Table is rows of figures in columns. Where it is too wide, whole columns go:
// those of the highest rank first, those of rank 0 never.
type Table struct {
	Columns []Column
	Rows    []Row
	Chosen  int  // the row that must be in sight
	Tight   bool // one blank between columns instead of two
}

// Column is how a column is headed and set.
type Column struct {
	Title string
	Unit  string // in a row of its own below the titles, when any column has one
	Left  bool   // texts start at the left; figures end at the right
	Rank  int
}

// Row is one row: a sign before it, and a cell for each column.
type Row struct {
	Sign  string // at most one cell wide
	Role  Role   // of the sign, and of every cell that has no role of its own
	Cells []Cell
	Rest  Cell // said in all the room after the cells
}

// Cell is the text of a cell.
type Cell struct {
	Text string
	Role Role // plainText takes the row's
}

// TextCells are cells without a role of their own.
func TextCells(texts ...string) []Cell {
	cells := make([]Cell, len(texts))
	for i, t := range texts {
		cells[i].Text = t
	}
	return cells
}

// Draw sets the table in w cells and at most h rows, its heading the first of
// them. Where rows are too many the chosen one is in sight.
func (t *Table) Draw(theme *Theme, w, h int) []string {
	if h < 1 {
		return nil
	}
	widths, shown := t.Fit(theme, w)
	lines := []string{t.heading(theme, widths, shown, w, func(c Column) string { return c.Title })}
	if h > 1 && slices.ContainsFunc(t.Columns, func(c Column) bool { return c.Unit != "" }) {
		lines = append(lines, t.heading(theme, widths, shown, w, func(c Column) string { return c.Unit }))
	}
	room := h - len(lines)
	top := t.First(room)
	for _, r := range t.Rows[top:min(top+room, len(t.Rows))] {
		lines = append(lines, t.line(theme, r, widths, shown, w))
	}
	return lines
}

// First is the first row in sight where there is room for so many.
func (t *Table) First(room int) int { return max(min(t.Chosen-room/2, len(t.Rows)-room), 0) }

// Gap parts columns.
func (t *Table) Gap() int {
	if t.Tight {
		return 1
	}
	return 2
}

// Fit gives every column its width and tells which ones have room.
func (t *Table) Fit(theme *Theme, w int) (widths []int, shown []bool) {
	widths, shown = make([]int, len(t.Columns)), make([]bool, len(t.Columns))
	total := 1 // the sign
	for i, c := range t.Columns {
		widths[i] = max(Width(theme.Say(c.Title)), Width(theme.Say(c.Unit)))
		for _, r := range t.Rows {
			if i < len(r.Cells) {
				widths[i] = max(widths[i], Width(theme.Say(r.Cells[i].Text)))
			}
		}
		shown[i] = true
		total += widths[i] + t.Gap()
	}
	for total-t.Gap() > w {
		drop := -1
		for i, c := range t.Columns {
			if shown[i] && c.Rank > 0 && (drop < 0 || c.Rank > t.Columns[drop].Rank) {
				drop = i
			}
		}
		if drop < 0 {
			break // what is left is cut
		}
		shown[drop] = false
		total -= widths[drop] + t.Gap()
	}
	return widths, shown
}

func (t *Table) heading(theme *Theme, widths []int, shown []bool, w int, of func(Column) string) string {
	text := " "
	for i, c := range t.Columns {
		if shown[i] {
			text += t.set(theme.Say(of(c)), i, widths) + Blanks(t.Gap())
		}
	}
	return theme.Paint(Heading, theme.Fit(strings.TrimRight(text, " "), w))
}

func (t *Table) line(theme *Theme, r Row, widths []int, shown []bool, w int) string {
	out, used := theme.Paint(r.Role, Padded(theme.Say(r.Sign), 1)), 1
	for i, c := range r.Cells {
		if i >= len(shown) || !shown[i] {
			continue
		}
		paint := c.Role
		if paint == Plain {
			paint = r.Role
		}
		out += theme.Paint(paint, t.set(theme.Say(c.Text), i, widths)) + Blanks(t.Gap())
		used += widths[i] + t.Gap()
	}
	if r.Rest.Text != "" {
		out += theme.Paint(r.Rest.Role, theme.Fit(theme.Say(r.Rest.Text), w-used))
	}
	return PadPainted(out, w)
}

// set is a cell's text in its column's width.
func (t *Table) set(text string, column int, widths []int) string {
	if t.Columns[column].Left {
		return Padded(text, widths[column])
	}
	return Aligned(text, widths[column])
}
