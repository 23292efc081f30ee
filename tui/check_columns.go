package tui

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/report"
)

// checkColumn is a column of the list of checks.
type checkColumn struct {
	tableColumn
	cell func(v *checkView, e *checkEntry) tableCell
}

// inCase is a column of what one case came to.
func inCase(k gates.Case, title string) checkColumn {
	return checkColumn{tableColumn{title: title}, func(v *checkView, e *checkEntry) tableCell {
		c := tableCell{text: v.valueIn(e, k), role: dimText}
		if c.text != "" && k == e.Case && e.Judged {
			c.role = plainText
		}
		return c
	}}
}

// checkColumns are the columns of the list, the most needed first: where there is no
// room for all, the last ones go.
var checkColumns = []checkColumn{
	{tableColumn{left: true}, func(_ *checkView, e *checkEntry) tableCell { return tableCell{text: e.sign(), role: level(e.Level)} }},
	{tableColumn{title: "check", left: true}, func(_ *checkView, e *checkEntry) tableCell { return tableCell{text: clean(e.Name)} }},
	{tableColumn{title: "worst"}, func(v *checkView, e *checkEntry) tableCell {
		return tableCell{text: report.CheckValue(&e.Check, v.scene.units), role: strongText}
	}},
	{tableColumn{left: true}, func(_ *checkView, e *checkEntry) tableCell { return tableCell{text: e.Word, role: level(e.Level)} }},
	{tableColumn{title: "limit", left: true}, func(v *checkView, e *checkEntry) tableCell {
		return tableCell{text: report.CheckBound(&e.Check, v.scene.units)}
	}},
	{tableColumn{title: "case", left: true}, func(v *checkView, e *checkEntry) tableCell {
		if v.still(e) || !e.Judged {
			return tableCell{}
		}
		return tableCell{text: caseNames[e.Case], role: dimText}
	}},
	inCase(gates.Calm, "calm"), inCase(gates.Day, "day"), inCase(gates.Corner, "corner"),
	{tableColumn{title: "source", left: true}, func(_ *checkView, e *checkEntry) tableCell {
		return tableCell{text: clean(e.Limit.Source), role: dimText}
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
var caseNames = [...]string{gates.Calm: "calm", gates.Day: "day", gates.Corner: "corner"}

// valueIn is what a check found in one case; empty where it was not looked at.
func (v *checkView) valueIn(e *checkEntry, k gates.Case) string {
	x := e.Values[k]
	if !x.Flown {
		return ""
	}
	c := e.Check
	if c.Value = x.V; !x.Known {
		return "-"
	}
	text := report.CheckValue(&c, v.scene.units)
	if e.old && k == gates.Corner {
		text = "(" + text + ")"
	}
	return text
}

// table is the list in as many columns as have room, and how many those are.
func (v *checkView) table(list []checkEntry, at int) (t table, shown int) {
	const rank = 1 // dropped by checkWidths, not by the table
	for _, n := range checkWidths {
		t, shown = table{}, n
		for _, c := range checkColumns[:n] {
			c.rank = rank
			t.columns = append(t.columns, c.tableColumn)
		}
		for i := range list {
			e, row := &list[i], tableRow{}
			if i == at {
				row.sign, row.role = v.scene.look.pointer, focused
			}
			for _, c := range checkColumns[:n] {
				row.cells = append(row.cells, c.cell(v, e))
			}
			t.rows = append(t.rows, row)
		}
		if _, fits := t.fit(v.scene.look, v.columns); !slices.Contains(fits, false) {
			break
		}
	}
	v.shorten(&t)
	for i := range t.columns {
		t.columns[i].rank = 0 // what has no room now is cut
	}
	return t, shown
}

// shorten cuts the checks' names where even the fewest columns are too wide.
func (v *checkView) shorten(t *table) {
	const names = 1
	widths, _ := t.fit(v.scene.look, math.MaxInt)
	over := -t.gap() + 1 - v.columns
	for _, w := range widths {
		over += w + t.gap()
	}
	if over <= 0 {
		return
	}
	for i := range t.rows {
		cell := &t.rows[i].cells[names]
		cell.text = strings.TrimRight(v.scene.look.fit(cell.text, max(widths[names]-over, 8)), " ")
	}
}
