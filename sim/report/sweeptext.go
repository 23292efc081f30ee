package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// SweepText writes a table for people: a row a flight, or, when the values of a second
// input fit beside each other, a grid of the apogee, one of the rail exit speed, and one of
// each result that is shown beside them.
func SweepText(w io.Writer, s Sweep) RowWriter {
	t := &sweepText{w: w, s: s, p: words.In(s.System), results: s.resultsShown()}
	t.columns = make([]Column, len(s.Axes))
	t.digits = make([]int, len(s.Axes))
	for i, a := range s.Axes {
		t.columns[i] = s.column(i)
		t.digits[i] = t.columns[i].digitsFor(a.Values, t.p)
	}
	if len(s.Axes) == 2 {
		if g := newSweepGrid(t); g.fits() {
			return g
		}
	}
	return t
}

// sweepText writes a row a flight.
type sweepText struct {
	w       io.Writer
	s       Sweep
	p       words.Printer
	columns []Column
	digits  []int
	results []sweepResult
	table   *page.Table
	sum     sweepSum
}

// value is a value of an axis without its unit.
func (t *sweepText) value(axis int, v study.Value) string {
	if v.Word != "" {
		return page.Printable(v.Word)
	}
	return t.columns[axis].bare(v.Number, t.p, t.digits[axis])
}

// valueHead is the head of an axis's column, wide enough for its values.
func (t *sweepText) valueHead(axis int) page.Heading {
	h := page.Heading{Lines: nameLines(t.columns[axis].Input.Name), Unit: t.p.UnitOf(t.columns[axis].Unit)}
	for _, v := range t.s.Axes[axis].Values {
		h.Width = max(h.Width, utf8.RuneCountInString(t.value(axis, v)))
		if v.Word != "" {
			h.Left, h.Unit = true, ""
		}
	}
	return h
}

// mostName is how wide the head of an input may be, so that a table of all columns
// keeps to the page.
const mostName = 14

// nameLines breaks a dotted name into lines of a narrow head: at its dots, then at
// low lines, then anywhere.
func nameLines(name string) []string {
	lines := []string{""}
	for _, part := range strings.SplitAfter(name, ".") {
		last := len(lines) - 1
		if len(lines[last])+len(part) <= mostName {
			lines[last] += part
			continue
		}
		if lines[last] != "" {
			lines = append(lines, "")
		}
		for len(part) > mostName {
			cut := strings.LastIndexByte(part[:mostName], '_') + 1
			if cut == 0 {
				cut = mostName // names are of single-byte letters
			}
			lines, part = append(lines[:len(lines)-1], part[:cut], ""), part[cut:]
		}
		lines[len(lines)-1] = part
	}
	return lines
}

// title writes what is flown over what.
func (t *sweepText) title() error {
	names := make([]string, len(t.columns))
	for i, c := range t.columns {
		names[i] = c.Input.Name
	}
	var s sheet
	s.Hung("", fmt.Sprintf("%s: %s over %s", words.Title(t.s.Rocket),
		words.Plural(study.Count(t.s.Axes), "flight"), strings.Join(names, " and ")))
	s.Line("")
	_, err := io.WriteString(t.w, s.String())
	return err
}

// sweepResult is a result with a column of its own, at least so wide.
type sweepResult struct {
	row    *results.Row
	wide   int
	judged bool // the verdict on it stands beside it
}

// resultsShown are those in a table of the sweep. The time of apogee has room beside one
// input only.
func (s *Sweep) resultsShown() []sweepResult {
	t := s.table()
	out := []sweepResult{{t.Must("apogee.height"), 7, false}}
	if len(s.Axes) == 1 {
		out = append(out, sweepResult{t.Must("apogee.time"), 6, false})
	}
	end := sweepResult{t.Must("liquid_out.left"), 0, false}
	if s.Rocket.Power == rocket.MotorPower {
		end.row = t.Must("burnout.time")
	}
	out = append(out, sweepResult{t.Must("rail_exit.speed"), 6, true}, sweepResult{t.Must("max.acceleration"), 0, false}, end,
		sweepResult{t.Must("landing.vertical"), 6, true})
	for i := range s.Show {
		out = append(out, sweepResult{&s.Show[i], 0, false})
	}
	return out
}

// begin writes title and heads before the first row.
func (t *sweepText) begin() error {
	if t.table != nil {
		return nil
	}
	var heads []page.Heading
	for i := range t.columns {
		heads = append(heads, t.valueHead(i))
	}
	for _, r := range t.results {
		heads = append(heads, columnOf(t.p, r.row, r.wide))
		if r.judged {
			heads = append(heads, verdictColumn)
		}
	}
	t.table = page.NewTable(t.w, heads...)
	if err := t.title(); err != nil {
		return err
	}
	return t.table.Head()
}

func (t *sweepText) Row(r study.Row) error {
	if err := t.begin(); err != nil {
		return err
	}
	t.sum.add(t.s.Rocket, r)
	var cells []string
	for i, v := range r.Values {
		cells = append(cells, t.value(i, v))
	}
	if r.Flight == nil {
		return t.invalid(cells, r.Invalid)
	}
	for _, x := range t.results {
		cells = append(cells, cell(t.p, x.row, r.Flight))
		if x.judged {
			cells = append(cells, verdict(x.row, r.Flight))
		}
	}
	return t.table.Row(cells...)
}

// invalid writes why there is no flight in place of its numbers.
func (t *sweepText) invalid(values []string, why error) error {
	var s sheet
	s.Hung(t.table.Line(values...)+"  ", "no rocket: "+page.OneLine(why))
	_, err := io.WriteString(t.w, s.String())
	return err
}

func (t *sweepText) End() error {
	if err := t.begin(); err != nil {
		return err
	}
	return t.closing(nil)
}

// closing writes what the sweep came to, notes, and the cautions.
func (t *sweepText) closing(notes []string) error {
	var s sheet
	s.Line("")
	if t.sum.best != nil {
		at := make([]string, len(t.columns))
		for i, c := range t.columns {
			v := t.sum.best.Values[i]
			at[i] = c.Input.Name + " = " + page.Printable(v.Word)
			if v.Word == "" {
				at[i] = c.Input.Name + " = " + c.text(v.Number, t.p, t.digits[i])
			}
		}
		s.Hung("  highest  ", t.p.Height(t.sum.best.Flight.Results.Apogee.Height)+" at "+strings.Join(at, ", "))
	}
	if t.sum.leftover {
		note := "The highest flight is looked for among those that leave the rail with no liquid left over"
		if r := t.s.Rocket; r.Power == rocket.WaterPower {
			note += ", within what the chamber is proved for"
			if math.IsNaN(r.ProvedFor()) {
				note += ": with no proof on record, within the pressure of the file, " + t.p.Given(r.Water.Pressure, "bar")
			}
		}
		notes = append(notes, note+".")
	}
	for _, n := range notes {
		s.Hung("  ", n)
	}
	if done, all := t.sum.rows, study.Count(t.s.Axes); done < all {
		s.Hung("  ", fmt.Sprintf("%s: %d of %d flights.", gates.WordPartial, done, all))
	}
	s.closing(t.p, study.MostPressed(t.s.Rocket, t.s.Axes))
	_, err := io.WriteString(t.w, s.String())
	return err
}

// sweepSum is what the rows of a sweep come to, by the aim of `ullage best`.
type sweepSum struct {
	rows     int
	best     *study.Row // the highest flight that leaves the rail without liquid left over
	leftover bool       // some did not qualify
}

func (s *sweepSum) add(base *rocket.Rocket, r study.Row) {
	s.rows++
	if r.Flight == nil {
		return
	}
	aim := study.Highest(false).Within(base)
	switch why, _ := aim.Refuse(r.Flight); {
	case why != study.Accepted:
		s.leftover = true
	case s.best == nil || aim.Value(r.Flight) > aim.Value(s.best.Flight):
		r = r.Clone()
		s.best = &r
	}
}
