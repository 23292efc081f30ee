package tui

import (
	"fmt"
	"strings"

	"ullage/sim/quantity"
	"ullage/tui/draw"
)

// tableLines are the rows of the table in exactly h rows of w cells, and whether there are more above and below.
func (m *Model) tableLines(w, h int) (lines []string, above, below bool) {
	theme, is := m.theme, m.points()
	t := *m.tabling
	units := m.rowUnits(is)
	label := t.input
	if _, last, dotted := strings.Cut(t.input, "."); dotted {
		label = last
	}
	label = fmt.Sprintf("%s, %d rows", label, len(is.Rows))
	if is.From != "" {
		label = fmt.Sprintf("%d rows of %s", len(is.Rows), draw.Clean(is.From))
	}
	head := []string{groupLine(theme, theme.Fit(label, min(draw.Width(label), w-2)), w)}
	const number = 4
	cell := (w - 3 - number) / max(len(units), 1)
	title := draw.Blanks(1 + number)
	for k, c := range is.Columns {
		title += draw.Aligned(theme.Say(strings.TrimSpace(c.Label+" "+units[k].Name)), cell)
	}
	head = append(head, theme.Paint(draw.Dim, draw.Padded(title, w)))
	if is.Whole != "" {
		for _, part := range draw.Wrapped(theme.Say(draw.Clean(is.Whole)), w-3) {
			head = append(head, theme.Paint(draw.Bad, "  "+draw.Padded(part, w-3)+" "))
		}
	}
	var rows []string
	first, last := 0, 0 // of the chosen one
	t.at = min(t.at, len(is.Rows))
	shown := len(is.Rows) + 1
	if t.typed != nil && t.more {
		shown++
	}
	for i := range shown {
		of := i // the row of the file
		if t.typed != nil && t.more && i >= t.at {
			of--
		}
		sign := " "
		if i == t.at {
			first, sign = len(rows), theme.Pointer
		}
		switch wrong := is.Wrong[of]; {
		case i < t.at-h || i > t.at+h:
			rows = append(rows, "") // out of sight
		case i == t.at && t.typed != nil:
			rows = append(rows, theme.Paint(draw.Focused, sign+draw.Aligned(fmt.Sprint(i+1), number-1)+" ")+t.typed.view(theme, w-number-2)+" ")
			for _, part := range draw.Wrapped(theme.Say(draw.Clean(t.wrong)), w-3) {
				if t.wrong != "" {
					rows = append(rows, theme.Paint(draw.Bad, "  "+draw.Padded(part, w-3)+" "))
				}
			}
		case of >= len(is.Rows):
			text, role := sign+draw.Aligned(theme.Say("+"), number-1), draw.Dim
			if i == t.at {
				role = draw.Focused
			}
			rows = append(rows, theme.Paint(role, draw.Padded(text, w)))
		default:
			text := draw.Aligned(fmt.Sprint(i+1), number)
			for k, q := range is.Rows[of] {
				value := theme.Say(draw.Exact(q.Value, draw.Bare(units[k]), 9))
				if draw.Width(value) >= cell {
					value = theme.Fit(value, cell-1)
				}
				text += draw.Aligned(value, cell)
			}
			role := draw.Plain
			switch {
			case i == t.at:
				role = draw.Focused
			case wrong != "":
				role, sign = draw.Bad, oddsSign
			}
			rows = append(rows, theme.Paint(role, draw.Padded(sign+text, w)))
			if wrong != "" {
				for _, part := range draw.Wrapped(theme.Say(draw.Clean(wrong)), w-3) {
					rows = append(rows, theme.Paint(draw.Bad, "  "+draw.Padded(part, w-3)+" "))
				}
			}
		}
		if i == t.at {
			last = len(rows) - 1
		}
	}
	room := max(h-len(head), 1)
	top := max(min(t.top, len(rows)-room, first), last-room+1, 0)
	t.top = top
	m.tabling = &t
	end := min(top+room, len(rows))
	lines = append(head, rows[top:end]...)
	for len(lines) < h {
		lines = append(lines, draw.Blanks(w))
	}
	return lines[:h], top > 0, end < len(rows)
}

// tableSide is what stands beside the table: the curve, or the view as ever.
func (m *Model) tableSide(w, h int) []string {
	is := m.points()
	switch m.tabling.input {
	case thrustInput:
		points := make([][]quantity.Quantity, len(is.Rows))
		copy(points, is.Rows)
		return m.thrustLines(points, m.tabling.was, w, h)
	case dragInput:
		var mach, drag []float64
		for _, row := range is.Rows {
			mach, drag = append(mach, row[0].Value), append(drag, row[1].Value)
		}
		return m.pointsChart(mach, drag, nil, chartNames{x: "Mach", y: "drag coefficient"}, w, h)
	}
	return m.view().Lines()
}

// tableHelp is what the two rows below the table say.
func (m *Model) tableHelp() (first, second string) {
	theme, w := m.theme, m.layout.width
	is := m.points()
	units := m.rowUnits(is)
	var names []string
	for k, c := range is.Columns {
		names = append(names, strings.TrimSpace(c.Label+" "+units[k].Name))
	}
	how := "A row: " + strings.Join(names, " and ") + ", a blank between; other units may follow."
	if len(names) == 1 {
		how = "A row: " + names[0] + "; other units may follow."
	}
	facts := "lines pasted replace all rows; on the last row, +, they go behind"
	name := theme.Say(m.tabling.input)
	return " " + theme.Paint(draw.Focused, name) + "  " + theme.Paint(draw.Dim, theme.Fit(theme.Say(draw.Clean(facts)), w-4-draw.Width(name))) + " ",
		" " + theme.Fit(theme.Say(how), w-2) + " "
}

// hints are the reminders of the keys.
func (t *tabling) hints(k *KeyMap) []draw.Hint {
	if t.typed != nil {
		return []draw.Hint{draw.HintOf(k.Accept.Help().Desc, k.Accept), draw.HintOf(k.Leave.Help().Desc, k.Leave)}
	}
	return []draw.Hint{draw.HintOf("choose", k.Up, k.Down), draw.HintOf("type", k.Type), draw.HintOf("row behind", k.AddPart), draw.HintOf("remove", k.RemovePart),
		draw.HintOf("move", k.MoveUp, k.MoveDown), draw.HintOf(k.Undo.Help().Desc, k.Undo), draw.HintOf("done", k.Leave)}
}
