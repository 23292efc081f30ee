package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/study"
)

// Marks of a grid's cells. The notes below the grid tell each.
const (
	markLeft = "!" // liquid left over
	markLow  = "!" // below the limit
)

// sweepGrid writes a sweep over two inputs as grids, one a result: a line a value of the
// first, a column a value of the second. The first grid comes as it is flown; the others
// wait for its end.
type sweepGrid struct {
	sweepText
	heads    []page.Heading
	shown    []*results.Row // a grid each: apogee, rail exit speed, and what else is shown
	lines    [][]string     // of each, being filled
	waiting  [][][]string   // of each but the first, filled
	left     bool           // some cell has markLeft
	low      bool           // some cell has markLow
	invalid  int
	firstBad string
}

func newSweepGrid(t *sweepText) *sweepGrid {
	table := t.s.table()
	g := &sweepGrid{sweepText: *t, shown: []*results.Row{table.Must("apogee.height"), table.Must("rail_exit.speed")}}
	for i := range t.s.Show {
		g.shown = append(g.shown, &t.s.Show[i])
	}
	g.lines, g.waiting = make([][]string, len(g.shown)), make([][][]string, len(g.shown))
	g.heads = append(g.heads, g.valueHead(0))
	for _, v := range t.s.Axes[1].Values {
		text := t.value(1, v)
		// Figures of up to five places and a mark.
		g.heads = append(g.heads, page.Heading{Unit: text + " ", Width: max(7, utf8.RuneCountInString(text)+1)})
	}
	return g
}

func (g *sweepGrid) fits() bool { return page.NewTable(nil, g.heads...).Wide() <= page.Width }

// over writes the name of the result that a grid shows and of the input across it.
func (g *sweepGrid) over(r *results.Row) error {
	var s sheet
	second := g.columns[1]
	across := second.Input.Name
	if u := g.p.UnitOf(second.Unit); u != "" && g.s.Axes[1].Values[0].Word == "" {
		across += ", " + u
	}
	what := r.Label
	if unit := g.p.RowUnit(r); unit != "" {
		what += ", " + unit
	}
	s.Hung("  ", what+"; across: "+across)
	if _, err := g.w.Write([]byte(s.String())); err != nil {
		return err
	}
	return g.table.Head()
}

func (g *sweepGrid) begin() error {
	if g.table != nil {
		return nil
	}
	g.table = page.NewTable(g.w, g.heads...)
	if err := g.title(); err != nil {
		return err
	}
	return g.over(g.shown[0])
}

func (g *sweepGrid) Row(r study.Row) error {
	if err := g.begin(); err != nil {
		return err
	}
	g.sum.add(g.s.Rocket, r)
	if len(g.lines[0]) == 0 {
		for k := range g.lines {
			g.lines[k] = []string{g.value(0, r.Values[0])}
		}
	}
	for k, text := range g.cells(r) {
		g.lines[k] = append(g.lines[k], text)
	}
	if len(g.lines[0]) < len(g.heads) {
		return nil
	}
	return g.flush()
}

// flush writes the line of the first grid that is there, and keeps those of the others.
func (g *sweepGrid) flush() error {
	if len(g.lines[0]) == 0 {
		return nil
	}
	for k := 1; k < len(g.lines); k++ {
		g.waiting[k] = append(g.waiting[k], g.lines[k])
	}
	err := g.table.Row(g.lines[0]...)
	g.lines[0] = nil
	return err
}

// cells are a flight's results with their marks.
func (g *sweepGrid) cells(r study.Row) []string {
	out := make([]string, len(g.shown))
	if r.Flight == nil {
		if g.invalid++; g.invalid == 1 {
			g.firstBad = page.OneLine(r.Invalid)
		}
		for k := range out {
			out[k] = "- "
		}
		return out
	}
	for k, row := range g.shown {
		out[k] = cell(g.p, row, r.Flight) + " "
	}
	res := &r.Flight.Results
	switch {
	case !res.Apogee.Happened || !res.RailExit.Happened:
		out[0] = gates.WordNever + " "
	case res.LiquidLeft > 0:
		out[0], g.left = strings.TrimSuffix(out[0], " ")+markLeft, true
	}
	switch _, level := gates.JudgeResult(r.Flight.Rocket, g.shown[1].Name, res.RailExit.Speed); {
	case !res.RailExit.Happened:
		out[1] = gates.WordNever + " "
	case level != gates.Good:
		out[1], g.low = strings.TrimSuffix(out[1], " ")+markLow, true
	}
	return out
}

func (g *sweepGrid) End() error {
	if err := g.begin(); err != nil {
		return err
	}
	if err := g.flush(); err != nil {
		return err
	}
	for k, row := range g.shown[1:] {
		if _, err := g.w.Write([]byte("\n")); err != nil {
			return err
		}
		if err := g.over(row); err != nil {
			return err
		}
		for _, line := range g.waiting[k+1] {
			if err := g.table.Row(line...); err != nil {
				return err
			}
		}
	}
	var notes []string
	if g.left {
		notes = append(notes, markLeft+" beside an apogee: liquid "+gates.WordLeft+".")
	}
	if g.low {
		notes = append(notes, markLow+" beside a speed: "+gates.WordLow+".")
	}
	if g.invalid > 0 {
		notes = append(notes, fmt.Sprintf("- where the inputs make no rocket (%s): %s.", words.Plural(g.invalid, "point"), g.firstBad))
	}
	return g.closing(notes)
}
