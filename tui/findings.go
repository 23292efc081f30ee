package tui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report"
)

// piece is a painted text and the cells it takes.
type piece struct {
	painted string
	cells   int
}

// findingText is a finding in one piece: label, number, word, and the
// difference from the kept flight.
func findingText(look *look, f report.Finding, difference string) piece {
	var p piece
	add := func(r role, text string) {
		if text = look.say(clean(text)); text == "" {
			return
		}
		if p.cells > 0 {
			p.painted, p.cells = p.painted+" ", p.cells+1
		}
		p.painted, p.cells = p.painted+look.in(r, text), p.cells+width(text)
	}
	add(dimText, f.Label)
	add(strongText, f.Value)
	add(level(f.Level), f.Word)
	if difference != "" {
		add(traceD, "("+difference+")")
	}
	return p
}

// findingLines are the findings in exactly rows rows of w cells. Side by side
// in columns when all find room, else run on. When even that is too much the
// good ones give way first, and how many is said.
func (m *Model) findingLines(w, rows int) []string {
	var lines []string
	if m.now != nil {
		list := m.now.findings[m.units]
		texts := make([]piece, len(list))
		for i, f := range list {
			texts[i] = findingText(m.look, f, m.difference(f.Key))
		}
		var ok bool
		if lines, ok = inColumns(texts, w-2, rows); !ok {
			lines = m.runOn(list, texts, w-2, rows)
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

// inColumns sets texts in columns, read downwards; not ok when they do not fit.
func inColumns(texts []piece, w, rows int) ([]string, bool) {
	const gap = 3
	n := len(texts)
	for used := 1; used <= rows && n > 0; used++ {
		columns := (n + used - 1) / used
		cells := make([]int, columns)
		total := gap * (columns - 1)
		for i, t := range texts {
			cells[i/used] = max(cells[i/used], t.cells)
		}
		for _, c := range cells {
			total += c
		}
		if total > w {
			continue
		}
		spare := 0
		if columns > 1 {
			spare = min((w-total)/(columns-1), 5)
		}
		lines := make([]string, min(used, n))
		for i, t := range texts {
			c := i / used
			lines[i%used] += t.painted
			if c < columns-1 {
				lines[i%used] += blanks(cells[c] - t.cells + gap + spare)
			}
		}
		return lines, true
	}
	return nil, n == 0
}

// runOn sets the texts one after the other. It leaves out the least pressing
// ones until the rest fits, and says how many those are.
func (m *Model) runOn(list []report.Finding, texts []piece, w, rows int) []string {
	shown := make([]int, len(texts))
	for i := range shown {
		shown[i] = i
	}
	for left := 0; ; left++ {
		pieces := make([]piece, 0, len(shown)+1)
		for _, i := range shown {
			pieces = append(pieces, texts[i])
		}
		if left > 0 {
			text := fmt.Sprintf("%d more: %s", left, m.keys.Findings.Help().Key)
			pieces = append(pieces, piece{m.look.in(asked, text), width(text)})
		}
		if lines := flow(m.look, pieces, w); len(lines) <= rows || len(shown) == 0 {
			return lines[:min(len(lines), rows)]
		}
		drop := len(shown) - 1
		for i := drop; i >= 0; i-- {
			if list[shown[i]].Level < list[shown[drop]].Level && pressing(list[shown[drop]]) {
				drop = i
			}
		}
		shown = slices.Delete(shown, drop, drop+1)
	}
}

// pressing tells a finding that should stay in sight.
func pressing(f report.Finding) bool { return f.Level == report.Caution || f.Level == report.Bad }

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
	return signed(is-was, m.units.Unit(unitNamed(c.unit)))
}

// signed is a difference with its sign, to two digits.
func signed(d float64, u quantity.Unit) string {
	sign := "+"
	if d < 0 {
		sign = "-"
	}
	text := quantity.Format(math.Abs(d), u, 2)
	if strings.Trim(number(text, u), "0.") == "" {
		return "same"
	}
	return sign + text
}

// unitNamed is a unit that this package itself names; empty is no unit.
func unitNamed(name string) quantity.Unit {
	u, _ := quantity.Lookup(name)
	return u
}
