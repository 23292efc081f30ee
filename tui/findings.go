package tui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/sim"
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
		if lines := flow(m.look, pieces, w); len(lines) <= rows || len(shown) == 0 {
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

// compared is how a finding's number is had from a flight, SI, and the unit
// its difference is told in.
type compared struct {
	key  string
	unit string
	of   func(r *sim.Results) (v float64, happened bool)
}

var comparisons = []compared{
	{"rail-exit", "m/s", func(r *sim.Results) (float64, bool) { return r.RailExit.Speed, r.RailExit.Happened }},
	{"thrust-to-weight", "", func(r *sim.Results) (float64, bool) { return r.RailExit.ThrustToWeight, r.RailExit.Happened }},
	{"apogee", "m", func(r *sim.Results) (float64, bool) { return r.Apogee.Height, r.Apogee.Happened }},
	{"landing", "m/s", func(r *sim.Results) (float64, bool) { return r.Landing.Vertical, r.Landing.Happened }},
	{"landing-energy", "J", func(r *sim.Results) (float64, bool) { return r.Landing.Energy, r.Landing.Happened }},
	{"drift", "m", func(r *sim.Results) (float64, bool) {
		return math.Hypot(r.Landing.East, r.Landing.North), r.Landing.Happened
	}},
}

// comparison finds how a finding's number is had. Of a canopy it is the
// airspeed it opens at.
func comparison(key string) (compared, bool) {
	if name, ok := strings.CutPrefix(key, "canopy."); ok {
		return compared{key, "m/s", func(r *sim.Results) (float64, bool) {
			for _, c := range r.Canopies {
				if c.Name == name {
					return c.Airspeed, c.Opened
				}
			}
			return 0, false
		}}, true
	}
	i := slices.IndexFunc(comparisons, func(c compared) bool { return c.key == key })
	if i < 0 {
		return compared{}, false
	}
	return comparisons[i], true
}

// difference is how much a finding's number is above or below that of the kept
// flight, with its sign; empty when there is nothing to compare.
func (m *Model) difference(key string) string {
	c, ok := comparison(key)
	if m.kept == nil || m.now == nil || m.kept == m.now || !ok {
		return ""
	}
	is, here := c.of(&m.now.flight.Results)
	was, there := c.of(&m.kept.flight.Results)
	if !here || !there {
		return ""
	}
	return signed(is-was, is, m.units.Unit(unitNamed(c.unit)))
}

// signed is a difference with its sign, to two digits. What is below the third
// digit of the numbers themselves is no difference.
func signed(d, of float64, u quantity.Unit) string {
	if third := math.Pow(10, math.Floor(math.Log10(math.Abs(of)))-2); math.Abs(d) < third/2 {
		return "same"
	}
	sign := "+"
	if d < 0 {
		sign = "-"
	}
	return sign + strings.ReplaceAll(quantity.Format(math.Abs(d), u, 2), "*", "·")
}

// unitNamed is a unit that this package itself names; empty is no unit.
func unitNamed(name string) quantity.Unit {
	if u, ok := quantity.Lookup(name); ok {
		return u
	}
	return quantity.Usual(quantity.Number)
}
