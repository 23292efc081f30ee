package check

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/tui/draw"
)

// checkColumn is a column of the list of checks.
type checkColumn struct {
	draw.Column
	cell func(v *View, e *checkEntry) draw.Cell
}

// inCase is a column of what one case came to.
func inCase(k results.Case, title string) checkColumn {
	return checkColumn{draw.Column{Title: title}, func(v *View, e *checkEntry) draw.Cell {
		c := draw.Cell{Text: v.valueIn(e, k), Role: draw.Dim}
		if c.Text != "" && k == results.Corner && !e.old {
			c.Text = " " + c.Text + " " // room for the brackets of an older one, so that columns stay where they are
		}
		if c.Text != "" && k == e.Case && e.Judged {
			c.Role = draw.Plain
		}
		return c
	}}
}

// checkColumns are the columns of the list, the most needed first: where there is no
// room for all, the last ones go.
var checkColumns = []checkColumn{
	{draw.Column{Left: true}, func(_ *View, e *checkEntry) draw.Cell {
		return draw.Cell{Text: draw.Padded(e.sign(), 1), Role: draw.Level(e.Level)}
	}},
	{draw.Column{Title: "check", Left: true}, func(_ *View, e *checkEntry) draw.Cell { return draw.Cell{Text: draw.Clean(e.Name)} }},
	{draw.Column{Title: "worst"}, func(v *View, e *checkEntry) draw.Cell {
		return draw.Cell{Text: words.In(v.Scene.Units).CheckValue(&e.Check), Role: draw.Strong}
	}},
	{draw.Column{Left: true}, func(_ *View, e *checkEntry) draw.Cell { return draw.Cell{Text: e.Word, Role: draw.Level(e.Level)} }},
	{draw.Column{Title: "limit", Left: true}, func(v *View, e *checkEntry) draw.Cell {
		return draw.Cell{Text: words.In(v.Scene.Units).Bounds(e.Check.Limit)}
	}},
	{draw.Column{Title: "case", Left: true}, func(v *View, e *checkEntry) draw.Cell {
		if v.still(e) || !e.Judged {
			return draw.Cell{}
		}
		return draw.Cell{Text: draw.Padded(caseNames[e.Case], len(caseNames[results.Corner])), Role: draw.Dim}
	}},
	inCase(results.Calm, "calm"), inCase(results.Day, "day"), inCase(results.Corner, "corner"),
	{draw.Column{Title: "source", Left: true}, func(_ *View, e *checkEntry) draw.Cell {
		return draw.Cell{Text: draw.Clean(e.Limit.Source), Role: draw.Dim}
	}},
}

// How many of the columns there may be: the three cases are together or not at all.
var checkWidths = []int{len(checkColumns), allCases, withCase, withLimit, withWord}

// The columns up to some of them.
const (
	withWord  = 4
	withLimit = 5
	withCase  = 6
	allCases  = 9
)

// caseNames are the cases as the list has them.
var caseNames = [...]string{results.Calm: "calm", results.Day: "day", results.Corner: "corner"}

// valueIn is what a check found in one case; empty where it was not looked at.
func (v *View) valueIn(e *checkEntry, k results.Case) string {
	x := e.Values[k]
	if !x.Flown {
		return ""
	}
	c := e.Check
	if c.Value = x.V; !x.Known {
		return "-"
	}
	text := words.In(v.Scene.Units).CheckValue(&c)
	if e.old && k == results.Corner {
		text = "(" + text + ")"
	}
	return text
}

// table is the list in as many columns as have room, and how many those are.
func (v *View) table(list []checkEntry, at int) (t draw.Table, shown int) {
	const rank = 1 // dropped by checkWidths, not by the table
	for _, n := range checkWidths {
		t, shown = draw.Table{}, n
		for _, c := range checkColumns[:n] {
			c.Rank = rank
			t.Columns = append(t.Columns, c.Column)
		}
		for i := range list {
			e, row := &list[i], draw.Row{}
			if i == at {
				row.Sign, row.Role = v.Scene.Theme.Pointer, draw.Focused
			}
			for _, c := range checkColumns[:n] {
				row.Cells = append(row.Cells, c.cell(v, e))
			}
			t.Rows = append(t.Rows, row)
		}
		if _, fits := t.Fit(v.Scene.Theme, v.Columns); !slices.Contains(fits, false) {
			break
		}
	}
	v.shorten(&t)
	for i := range t.Columns {
		t.Columns[i].Rank = 0 // what has no room now is cut
	}
	return t, shown
}

// shorten cuts the checks' names where even the fewest columns are too wide.
func (v *View) shorten(t *draw.Table) {
	const names = 1
	widths, _ := t.Fit(v.Scene.Theme, math.MaxInt)
	over := -t.Gap() + 1 - v.Columns
	for _, w := range widths {
		over += w + t.Gap()
	}
	if over <= 0 {
		return
	}
	for i := range t.Rows {
		cell := &t.Rows[i].Cells[names]
		cell.Text = strings.TrimRight(v.Scene.Theme.Fit(cell.Text, max(widths[names]-over, 8)), " ")
	}
}
