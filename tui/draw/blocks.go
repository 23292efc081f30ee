package draw

import (
	"strconv"
	"strings"

	"ullage/sim/report/page"
)

// Blocks are the blocks of a document as painted rows of w cells. Of tables too wide the last columns go first, but for the
// first three; boxes to tick are left to paper.
func Blocks(theme *Theme, blocks []page.Block, w int) []string {
	var rows []string
	for _, b := range blocks {
		switch b := b.(type) {
		case page.Prose:
			rows = append(rows, Paragraph(theme, Plain, string(b), w)...)
		case page.Alarm:
			rows = append(rows, Hung(theme, Bad, "! ", string(b), w)...)
		case page.Points:
			for _, p := range b {
				rows = append(rows, Hung(theme, Plain, "- ", p, w)...)
			}
		case page.Steps:
			rows = append(rows, Paragraph(theme, Strong, b.Phase, w)...)
			for i, does := range b.Does {
				rows = append(rows, Hung(theme, Plain, strconv.Itoa(b.From+i)+". ", does, w)...)
			}
		case page.Facts:
			rows = append(rows, facts(theme, b, w)...)
		case page.Grid:
			t := grid(b, w)
			rows = append(rows, t.Draw(theme, w, len(t.Rows)+1)...)
		}
	}
	return rows
}

// Hung is a text in as many painted rows as it takes, those after the first set in by the width of what the first begins with.
func Hung(theme *Theme, r Role, first, text string, w int) []string {
	first = theme.Say(first)
	in := Width(first)
	lines := Wrapped(glued(theme.Say(Clean(text))), w-in)
	for i, l := range lines {
		lines[i] = theme.Paint(r, Padded(first+strings.ReplaceAll(l, glue, " "), w))
		first = Blanks(in)
	}
	return lines
}

// facts are labels, as wide as the widest, with their texts beside them.
func facts(theme *Theme, all page.Facts, w int) []string {
	wide := 0
	for _, f := range all {
		wide = max(wide, Width(f[0]))
	}
	var rows []string
	for _, f := range all {
		rows = append(rows, Hung(theme, Plain, Padded(Clean(f[0]), wide)+"  ", f[1], w)...)
	}
	return rows
}

// grid is a table of a document for so many cells.
func grid(g page.Grid, w int) Table {
	const always, roomy = 3, 60 // columns; cells
	t := Table{Tight: w < roomy}
	for i, h := range g.Heads {
		t.Columns = append(t.Columns, Column{Title: h.Name(), Left: h.OfWords(), Rank: max(0, i+1-always)})
	}
	for _, row := range g.Rows {
		t.Rows = append(t.Rows, Row{Cells: TextCells(row...)})
	}
	return t
}
