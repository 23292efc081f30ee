package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// Marks of a grid's cells. The notes below the grid tell each.
const (
	markLeft = "!" // liquid left over
	markLow  = "!" // below the limit
)

// sweepGrid writes a sweep over two inputs as two grids: a line a value of the first,
// a column a value of the second. The second grid waits for the end of the first.
type sweepGrid struct {
	sweepText
	heads    []page.Heading
	line     []string // of the apogee, being filled
	exit     [][]string
	left     bool // some cell has markLeft
	low      bool // some cell has markLow
	invalid  int
	firstBad string
}

func newSweepGrid(t *sweepText) *sweepGrid {
	g := &sweepGrid{sweepText: *t}
	g.heads = append(g.heads, g.valueHead(0))
	for _, v := range t.s.Axes[1].Values {
		text := t.value(1, v)
		// Figures of up to five places and a mark.
		g.heads = append(g.heads, page.Heading{Unit: text + " ", Width: max(7, utf8.RuneCountInString(text)+1)})
	}
	return g
}

func (g *sweepGrid) fits() bool { return page.NewTable(nil, g.heads...).Wide() <= page.Width }

// over writes the name of what a grid shows and of the input across it.
func (g *sweepGrid) over(what, unit string) error {
	var s sheet
	second := g.columns[1]
	across := second.Input.Name
	if u := g.p.UnitOf(second.Unit); u != "" && g.s.Axes[1].Values[0].Word == "" {
		across += ", " + u
	}
	s.Hung("  ", fmt.Sprintf("%s, %s; across: %s", what, unit, across))
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
	return g.over("apogee", g.p.Unit("m"))
}

func (g *sweepGrid) Row(r study.Row) error {
	if err := g.begin(); err != nil {
		return err
	}
	g.sum.add(r)
	if len(g.line) == 0 {
		first := g.value(0, r.Values[0])
		g.line = []string{first}
		g.exit = append(g.exit, []string{first})
	}
	apogee, exit := g.cells(r)
	g.line = append(g.line, apogee)
	last := len(g.exit) - 1
	g.exit[last] = append(g.exit[last], exit)
	if len(g.line) < len(g.heads) {
		return nil
	}
	return g.flush()
}

// flush writes the line of apogees that is there.
func (g *sweepGrid) flush() error {
	if len(g.line) == 0 {
		return nil
	}
	err := g.table.Row(g.line...)
	g.line = g.line[:0]
	return err
}

// cells are a flight's apogee and rail exit speed with their marks.
func (g *sweepGrid) cells(r study.Row) (apogee, exit string) {
	if r.Flight == nil {
		if g.invalid++; g.invalid == 1 {
			g.firstBad = page.OneLine(r.Invalid)
		}
		return "- ", "- "
	}
	res := &r.Flight.Results
	apogee, exit = gates.WordNever+" ", gates.WordNever+" "
	if res.Apogee.Happened && res.RailExit.Happened {
		apogee = g.p.Bare(res.Apogee.Height, "m") + " "
		if res.LiquidLeft > 0 {
			apogee, g.left = strings.TrimSuffix(apogee, " ")+markLeft, true
		}
	}
	if e := res.RailExit; e.Happened {
		exit = g.p.Bare(e.Speed, "m/s") + " "
		if _, level := gates.RailExit(r.Flight.Rocket).Judge(e.Speed); level != gates.Good {
			exit, g.low = strings.TrimSuffix(exit, " ")+markLow, true
		}
	}
	return apogee, exit
}

func (g *sweepGrid) End() error {
	if err := g.begin(); err != nil {
		return err
	}
	if err := g.flush(); err != nil {
		return err
	}
	if _, err := g.w.Write([]byte("\n")); err != nil {
		return err
	}
	if err := g.over("rail exit speed", g.p.Unit("m/s")); err != nil {
		return err
	}
	for _, line := range g.exit {
		if err := g.table.Row(line...); err != nil {
			return err
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
