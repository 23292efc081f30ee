package day

import (
	"fmt"
	"path/filepath"

	"ullage/sim/gates"
	"ullage/sim/report/words"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// tableHeading is how many rows head the table.
const tableHeading = 2

// leastTable is how many rows the table has at least, its heading among them.
const leastTable = tableHeading + 3

func (v *View) draw() { v.Draw(v.instead, v.paint) }

// instead is what is said where there is no table; empty mostly.
func (v *View) instead() string {
	switch p := v.planned(); {
	case v.Scene.Now == nil:
		return " "
	case v.work.Err != nil && !v.work.Busy:
		return "No day: " + first(v.work.Err) + ". " + v.bindings.Add.Help().Key + " takes another forecast, " + v.bindings.Remove.Help().Key + " none."
	case p == nil:
		return "The day is being worked out" + v.Scene.Theme.Ellipsis
	}
	return ""
}

// paint draws what passes in short, the table, and what the row chosen needs.
func (v *View) paint() {
	p := v.planned()
	v.at = min(v.at, len(p.slots)-1)
	v.drive = min(v.drive, max(len(p.drives)-1, 0))
	v.Add(v.head(p)...)
	t := v.table(p)
	needs := v.needs(p)
	rows := v.tableRows(len(t.Rows))
	v.Add(t.Draw(v.Scene.Theme, v.Columns, rows)...)
	v.Add(needs...)
	v.Add(v.others(p)...)
}

// head says how many pass on each drive, and by what.
func (v *View) head(p *planned) []string {
	theme := v.Scene.Theme
	text := ""
	for i, drive := range p.drives {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprintf("%s %s in %d of %d", drive, gates.WordGo, p.passing(i), len(p.slots))
	}
	role, by := draw.Strong, "winds"
	if p.of.forecast != "" {
		by = draw.Clean(filepath.Base(p.of.forecast))
	}
	text += " (" + by + ")"
	if v.old() {
		role, text = draw.Dim, text+"; of before the last edit, working"+theme.Ellipsis
	}
	out := v.Paragraph(role, text)
	for _, l := range p.left {
		out = append(out, v.Paragraph(draw.Caution, "not on "+string(l.drive)+": "+view.FaultText(l.err, ""))...)
	}
	if v.Rows >= 30 {
		out = append(out, v.Paragraph(draw.Dim, "Every check in calm air, in the wind of the row and in the worst corner of what is uncertain.")...)
	}
	return out
}

// headRows is how many rows stand above the table.
func (v *View) headRows() int {
	if p := v.planned(); p != nil {
		return len(v.head(p))
	}
	return 0
}

// tableRows is how many rows a table of so many gets, its heading among them: what the chosen one needs has its room below.
func (v *View) tableRows(n int) int {
	p := v.planned()
	room := v.Rows - len(v.head(p)) - len(v.needs(p))
	return min(n+tableHeading, max(room, leastTable))
}

// label is a slot's: its time, or its wind.
func (v *View) label(p *planned, slot int) string {
	if s := &p.slots[slot]; p.of.forecast != "" {
		return "at " + draw.Clean(s.Label)
	} else if s.Wind > 0 {
		return "in " + words.In(v.Scene.Units).SlotWind(s.Wind)
	}
	return "in calm air"
}

// table is a row for each slot, a group of columns for each drive.
func (v *View) table(p *planned) draw.Table {
	theme, sys := v.Scene.Theme, words.In(v.Scene.Units)
	t := draw.Table{Chosen: v.at, Tight: v.Columns < 60}
	timed := p.of.forecast != ""
	if timed {
		t.Columns = append(t.Columns, draw.Column{Title: "time", Left: true})
	}
	t.Columns = append(t.Columns, draw.Column{Title: "wind", Unit: sys.WindUnit()})
	if timed {
		t.Columns = append(t.Columns, draw.Column{Title: "gusts", Unit: sys.WindUnit(), Rank: 1})
	}
	for range p.drives {
		t.Columns = append(t.Columns, draw.Column{Left: true})
		for i, f := range facts {
			t.Columns = append(t.Columns, draw.Column{Title: f.title, Unit: v.Scene.Unit("m").Name, Rank: len(facts) + 1 - i})
		}
	}
	at := 1
	if timed {
		at = 3
	}
	for i, drive := range p.drives {
		t.Columns[at+i*(1+len(facts))].Title = string(drive)
	}
	for i := range p.slots {
		s := &p.slots[i]
		row := draw.Row{Sign: " "}
		if i == v.at {
			row.Sign, row.Role = theme.Pointer, draw.Focused
		}
		put := func(role draw.Role, text string) { row.Cells = append(row.Cells, draw.Cell{Text: text, Role: role}) }
		if timed {
			put(draw.Plain, draw.Clean(s.Label))
		}
		put(draw.Plain, bare(sys, s.Wind))
		if timed {
			put(draw.Plain, bare(sys, s.Gust))
		}
		for k := range p.drives {
			o := p.outcome(i, k)
			role := draw.Dim
			if !v.old() {
				role = draw.Caution
				if o.Known {
					role = draw.Level(o.Verdict.Level())
				}
			}
			put(role, words.Outcome(o))
			role = draw.Plain
			if v.old() {
				role = draw.Dim
			}
			for _, f := range facts {
				text := "-"
				if r, x, there := words.OutcomeResult(o, f.result); there {
					text = sys.BareRow(r, x)
				}
				put(role, text)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// facts are the results of each flight that the table has, the most needed first.
var facts = []struct{ result, title string }{{"apogee.height", "apogee"}, {"landing.drift", "drift"}}

// bare is a wind without its unit.
func bare(sys words.Printer, v float64) string {
	if !(v > 0) {
		return sys.SlotWind(v)
	}
	return sys.WindFigure(v)
}

// needs say of the row chosen what each drive needs, or that it passes.
func (v *View) needs(p *planned) []string {
	var out []string
	for k := range p.drives {
		out = append(out, v.need(p, v.at, k, k == v.drive)...)
	}
	return out
}

// need says what one drive needs in one slot.
func (v *View) need(p *planned, slot, drive int, chosen bool) []string {
	const indent = 2
	theme, o := v.Scene.Theme, p.outcome(slot, drive)
	text := words.In(v.Scene.Units).OutcomeChange(o)
	sign, role := "", draw.Plain
	switch {
	case text == "":
		text, role = "passes as it is", draw.Dim
	case o.Change != nil && !view.Settable(o.Change):
		text += " (by hand)"
	case o.Change != nil && chosen && !v.old():
		sign = theme.Pointer
	}
	if v.old() {
		role = draw.Dim
	}
	text = v.label(p, slot) + " on " + string(o.Drive) + ": " + text
	var out []string
	for i, l := range draw.Wrapped(theme.Say(draw.Clean(text)), v.Columns-indent) {
		if i > 0 {
			sign = ""
		}
		out = append(out, theme.Paint(draw.Focused, draw.Padded(sign, indent))+theme.Paint(role, draw.Padded(l, v.Columns-indent)))
	}
	return out
}

// others are what the other rows need, as far as there is room.
func (v *View) others(p *planned) []string {
	most := v.Left() - 2 // the caution, and a blank before it
	var out []string
	for i := range p.slots {
		for k := range p.drives {
			if i == v.at || p.outcome(i, k).Passes() {
				continue
			}
			rows := v.need(p, i, k, false)
			if len(out)+len(rows) > most-1 {
				return out
			}
			if len(out) == 0 {
				out = append(out, v.Paragraph(draw.Heading, "the others")...)
			}
			out = append(out, rows...)
		}
	}
	return out
}
