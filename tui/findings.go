package tui

import (
	"fmt"
	"slices"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
)

// piece is a painted text and the cells it takes.
type piece struct {
	painted string
	cells   int
}

// phrase is what a finding says, cleaned and fit for the charset.
type phrase struct {
	report.Finding
	difference string // from the kept flight, with its sign
}

func (m *Model) phrases() []phrase {
	list := m.now.findings[m.units]
	if v := m.verdict(); v != nil {
		list = append([]report.Finding{verdictFinding(v, m.units, m.corners.busy)}, list...)
	}
	out := make([]phrase, len(list))
	for i, f := range list {
		for _, s := range []*string{&f.Label, &f.Value, &f.Word, &f.Detail} {
			*s = m.look.say(clean(*s))
		}
		out[i] = phrase{f, m.look.say(m.difference(f.Key))}
	}
	return out
}

// piece is the finding in one piece: its label in so many cells, number, word,
// difference, and what stands behind it if asked for.
func (p *phrase) piece(look *look, label int, detailed bool) piece {
	var out piece
	add := func(r role, text string, cells int) {
		if text == "" {
			return
		}
		if out.cells > 0 {
			out.painted, out.cells = out.painted+" ", out.cells+1
		}
		cells = max(cells, width(text))
		out.painted, out.cells = out.painted+look.in(r, padded(text, cells)), out.cells+cells
	}
	add(dimText, p.Label, label)
	add(strongText, p.Value, 0)
	add(level(p.Level), p.Word, 0)
	if p.difference != "" {
		add(traceD, "("+p.difference+")", 0)
	}
	if detailed {
		add(dimText, " "+p.Detail, 0)
	}
	return out
}

// findingLines are the findings in exactly rows rows of w cells: side by side
// in columns when all find room, with what stands behind them if that does too,
// else run on. When even that is too much the good ones give way first, and how
// many is said.
func (m *Model) findingLines(w, rows int) []string {
	var lines []string
	if m.now != nil {
		list := m.phrases()
		ok := false
		for _, detailed := range []bool{true, false} {
			if lines, ok = inColumns(m.look, list, w-2, rows, detailed); ok {
				break
			}
		}
		if !ok {
			lines = m.runOn(list, w-2, rows)
		}
	}
	for i := range lines {
		lines[i] = " " + padPainted(lines[i], w-1)
	}
	for len(lines) < rows {
		lines = append(lines, blanks(w))
	}
	return lines
}

// inColumns sets findings in columns, read downwards, their labels in a column
// of their own; not ok when they do not fit.
func inColumns(look *look, list []phrase, w, rows int, detailed bool) ([]string, bool) {
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
			label = max(label, width(column[i].Label))
		}
		pieces := make([]piece, len(column))
		for i := range column {
			pieces[i] = column[i].piece(look, label, detailed)
			cells = max(cells, pieces[i].cells)
		}
		if room -= cells; room < 0 {
			return nil, false
		}
		room -= gap
		for i, p := range pieces {
			lines[i] += p.painted + blanks(cells-p.cells+gap)
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
		pieces := make([]piece, 0, len(shown)+1)
		for _, i := range shown {
			pieces = append(pieces, list[i].piece(m.look, 0, false))
		}
		if left > 0 {
			text := fmt.Sprintf("%d more", left)
			if warnings > 0 {
				text += fmt.Sprintf(", %d of them warnings", warnings)
			}
			text += ": " + m.keys.Findings.Help().Key
			pieces = append(pieces, piece{m.look.in(asked, text), width(text)})
		}
		lines := flow(m.look, pieces, w)
		if len(lines) > rows {
			lines = flow(m.look, packed(m.look, pieces, w), w)
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

// packed puts pieces into an order that takes fewer rows of w cells: what is left of a
// row goes to the first of the later ones that fits. The last piece stays the last.
func packed(look *look, pieces []piece, w int) []piece {
	rest := slices.Clone(pieces)
	out := make([]piece, 0, len(pieces))
	sep := width(look.dot) + 2
	for used := 0; len(rest) > 0; {
		i := slices.IndexFunc(rest[:max(len(rest)-1, 1)], func(p piece) bool { return used > 0 && used+sep+p.cells <= w })
		if i < 0 {
			i, used = 0, 0
		} else {
			used += sep
		}
		used += rest[i].cells
		out, rest = append(out, rest[i]), slices.Delete(rest, i, i+1)
	}
	return out
}

// flow sets pieces one after the other, parted by dots, in rows of w cells.
func flow(look *look, pieces []piece, w int) []string {
	sep := " " + look.dot + " "
	var lines []string
	line, used := "", 0
	for _, p := range pieces {
		if used > 0 && used+width(sep)+p.cells > w {
			lines = append(lines, line)
			line, used = "", 0
		}
		if used > 0 {
			line, used = line+look.in(ruleLine, sep), used+width(sep)
		}
		line, used = line+p.painted, used+p.cells
	}
	if used > 0 {
		lines = append(lines, line)
	}
	return lines
}

// unitNamed is a unit that this package itself names; empty is no unit.
func unitNamed(name string) quantity.Unit {
	if u, ok := quantity.Lookup(name); ok {
		return u
	}
	return quantity.Usual(quantity.Number)
}
