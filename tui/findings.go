package tui

import (
	"fmt"
	"slices"

	"ullage/sim/gates"
	"ullage/sim/report"
	"ullage/tui/draw"
)

// phrase is what a finding says, cleaned and fit for the charset.
type phrase struct {
	report.Finding
	difference string // from the kept flight, with its sign
}

func (m *Model) phrases() []phrase {
	var list []report.Finding
	if m.now != nil {
		list = m.now.Findings[m.units]
	}
	if v := m.verdict(); v != nil {
		list = append([]report.Finding{verdictFinding(v, m.units, m.corners.Busy)}, list...)
	}
	if m.unfinished() {
		list = append([]report.Finding{m.openFinding()}, list...)
	}
	out, difference := make([]phrase, len(list)), m.comparing()
	for i, f := range list {
		for _, s := range []*string{&f.Label, &f.Value, &f.Word, &f.Detail} {
			*s = m.theme.Say(draw.Clean(*s))
		}
		out[i] = phrase{f, m.theme.Say(difference(f.Result))}
	}
	return out
}

// piece is the finding in one piece: its label in so many cells, number, word,
// difference, and what stands behind it if asked for.
func (p *phrase) piece(theme *draw.Theme, label int, detailed bool) draw.Piece {
	var out draw.Piece
	add := func(r draw.Role, text string, cells int) {
		if text == "" {
			return
		}
		if out.Cells > 0 {
			out.Painted, out.Cells = out.Painted+" ", out.Cells+1
		}
		cells = max(cells, draw.Width(text))
		out.Painted, out.Cells = out.Painted+theme.Paint(r, draw.Padded(text, cells)), out.Cells+cells
	}
	add(draw.Dim, p.Label, label)
	add(draw.Strong, p.Value, 0)
	add(draw.Level(p.Level), p.Word, 0)
	if p.difference != "" {
		add(draw.TraceD, "("+p.difference+")", 0)
	}
	if detailed {
		add(draw.Dim, " "+p.Detail, 0)
	}
	return out
}

// findingLines are the findings in exactly rows rows of w cells: side by side
// in columns when all find room, with what stands behind them if that does too,
// else run on. When even that is too much the good ones give way first, and how
// many is said.
func (m *Model) findingLines(w, rows int) []string {
	var lines []string
	if m.now != nil || m.unfinished() {
		list := m.phrases()
		ok := false
		for _, detailed := range []bool{true, false} {
			if lines, ok = inColumns(m.theme, list, w-2, rows, detailed); ok {
				break
			}
		}
		if !ok {
			lines = m.runOn(list, w-2, rows)
		}
	}
	for i := range lines {
		lines[i] = " " + draw.PadPainted(lines[i], w-1)
	}
	for len(lines) < rows {
		lines = append(lines, draw.Blanks(w))
	}
	return lines
}

// inColumns sets findings in columns, read downwards, their labels in a column
// of their own; not ok when they do not fit.
func inColumns(theme *draw.Theme, list []phrase, w, rows int, detailed bool) ([]string, bool) {
	const gap = 4
	if len(list) == 0 {
		return nil, true
	}
	used := min(rows, len(list))
	lines := make([]string, used)
	room := w
	for from := 0; from < len(list); from += used {
		column := list[from:min(from+used, len(list))]
		label, cells := 0, 0
		for i := range column {
			label = max(label, draw.Width(column[i].Label))
		}
		pieces := make([]draw.Piece, len(column))
		for i := range column {
			pieces[i] = column[i].piece(theme, label, detailed)
			cells = max(cells, pieces[i].Cells)
		}
		if room -= cells; room < 0 {
			return nil, false
		}
		room -= gap
		for i, p := range pieces {
			lines[i] += p.Painted + draw.Blanks(cells-p.Cells+gap)
		}
	}
	return lines, true
}

// runOn sets the texts one after the other. It leaves out the least pressing
// ones until the rest fits, and says how many those are.
func (m *Model) runOn(list []phrase, w, rows int) []string {
	shown := make([]int, len(list))
	for i := range shown {
		shown[i] = i
	}
	left, warnings := 0, 0
	for {
		pieces := make([]draw.Piece, 0, len(shown)+1)
		for _, i := range shown {
			pieces = append(pieces, list[i].piece(m.theme, 0, false))
		}
		if left > 0 {
			text := fmt.Sprintf("%d more", left)
			if warnings > 0 {
				text += fmt.Sprintf(", %d of them warnings", warnings)
			}
			text += ": " + m.keys.Findings.Help().Key
			pieces = append(pieces, draw.Piece{Painted: m.theme.Paint(draw.Asked, text), Cells: draw.Width(text)})
		}
		lines := draw.Flow(m.theme, pieces, w)
		if len(lines) > rows {
			lines = draw.Flow(m.theme, draw.Packed(m.theme, pieces, w), w)
		}
		if len(lines) <= rows || len(shown) == 0 {
			return lines[:min(len(lines), rows)]
		}
		drop := len(shown) - 1
		for i := drop; i >= 0; i-- {
			if list[shown[i]].Level < list[shown[drop]].Level && list[shown[drop]].pressing() {
				drop = i
			}
		}
		left++
		if list[shown[drop]].pressing() {
			warnings++
		}
		shown = slices.Delete(shown, drop, drop+1)
	}
}

// pressing tells of a finding that should stay in sight.
func (p *phrase) pressing() bool { return p.Level == gates.Caution || p.Level == gates.Bad }
