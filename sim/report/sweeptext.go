package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// SweepText writes a table for people: a row a flight, or, when the values of a second
// input fit beside each other, a grid of the apogee and one of the rail exit speed.
func SweepText(w io.Writer, s Sweep) RowWriter {
	t := &sweepText{w: w, s: s, p: printer{s.System}}
	t.columns = make([]Column, len(s.Axes))
	t.digits = make([]int, len(s.Axes))
	for i, a := range s.Axes {
		t.columns[i] = s.column(i)
		t.digits[i] = t.columns[i].digitsFor(a.Values, s.System)
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
	p       printer
	columns []Column
	digits  []int
	table   *table
	sum     sweepSum
}

// value is a value of an axis without its unit.
func (t *sweepText) value(axis int, v study.Value) string {
	if v.Word != "" {
		return printable(v.Word)
	}
	return t.columns[axis].bare(v.Number, t.s.System, t.digits[axis])
}

// valueHead is the head of an axis's column, wide enough for its values.
func (t *sweepText) valueHead(axis int) heading {
	h := heading{lines: nameLines(t.columns[axis].Input.Name), unit: spelled(t.columns[axis].shown(t.s.System).Name)}
	for _, v := range t.s.Axes[axis].Values {
		h.width = max(h.width, utf8.RuneCountInString(t.value(axis, v)))
		if v.Word != "" {
			h.left, h.unit = true, ""
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
	s.hung("", fmt.Sprintf("%s: %s over %s", titleOf(t.s.Rocket),
		plural(study.Count(t.s.Axes), "flight"), strings.Join(names, " and ")))
	s.line("")
	_, err := io.WriteString(t.w, s.String())
	return err
}

// timed tells whether there is room for the time of apogee.
func (t *sweepText) timed() bool { return len(t.columns) == 1 }

// begin writes title and heads before the first row.
func (t *sweepText) begin() error {
	if t.table != nil {
		return nil
	}
	var heads []heading
	for i := range t.columns {
		heads = append(heads, t.valueHead(i))
	}
	p := t.p
	heads = append(heads,
		heading{lines: []string{"apogee"}, unit: p.unit("m"), width: 7})
	if t.timed() {
		heads = append(heads, heading{lines: []string{"at"}, unit: "s", width: 6})
	}
	heads = append(heads,
		heading{lines: []string{"rail", "exit"}, unit: p.unit("m/s"), width: 6},
		heading{left: true, width: 5},
		heading{lines: []string{"greatest", "accel."}, unit: p.accelerationUnit()})
	if t.s.Rocket.Power == rocket.MotorPower {
		heads = append(heads, heading{lines: []string{"burnout"}, unit: "s"})
	} else {
		heads = append(heads, heading{lines: []string{"liquid", "left"}, unit: p.unit("g")})
	}
	heads = append(heads,
		heading{lines: []string{"lands"}, unit: p.unit("m/s"), width: 6},
		heading{left: true, width: 5})
	t.table = newTable(t.w, heads...)
	if err := t.title(); err != nil {
		return err
	}
	return t.table.head()
}

func (t *sweepText) Row(r study.Row) error {
	if err := t.begin(); err != nil {
		return err
	}
	t.sum.add(r)
	var cells []string
	for i, v := range r.Values {
		cells = append(cells, t.value(i, v))
	}
	if r.Flight == nil {
		return t.invalid(cells, r.Invalid)
	}
	p, res := t.p, &r.Flight.Results
	apogee, at := "-", "-"
	if a := res.Apogee; a.Happened {
		apogee, at = p.bare(a.Height, "m"), p.bare(a.Time, "s")
	}
	exit, exitWord := "-", gates.WordNever
	if e := res.RailExit; e.Happened {
		exit = p.bare(e.Speed, "m/s")
		exitWord, _ = gates.RailExit(r.Flight.Rocket).Judge(e.Speed)
	}
	lands, landsWord := "-", gates.WordNever
	if l := res.Landing; l.Happened {
		lands = p.bare(l.Vertical, "m/s")
		landsWord, _ = gates.LimitFor(r.Flight.Rocket, gates.LimitLanding).Judge(l.Vertical)
	}
	cells = append(cells, apogee)
	if t.timed() {
		cells = append(cells, at)
	}
	cells = append(cells, exit, exitWord, p.bareAcceleration(res.Max.Acceleration))
	switch {
	case t.s.Rocket.Power == rocket.MotorPower && res.Burnout.Happened:
		cells = append(cells, p.bare(res.Burnout.Time, "s"))
	case t.s.Rocket.Power != rocket.MotorPower && res.WaterFlew:
		cells = append(cells, p.bare(res.LiquidLeft, "g"))
	default:
		cells = append(cells, "-")
	}
	return t.table.row(append(cells, lands, landsWord)...)
}

// invalid writes why there is no flight in place of its numbers.
func (t *sweepText) invalid(values []string, why error) error {
	var b strings.Builder
	narrow := newTable(&b, t.table.heads[:len(values)]...)
	if err := narrow.row(values...); err != nil {
		return err
	}
	var s sheet
	s.hung(strings.TrimRight(b.String(), "\n")+"  ", "no rocket: "+oneLine(why))
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
	s.line("")
	if t.sum.best != nil {
		at := make([]string, len(t.columns))
		for i, c := range t.columns {
			v := t.sum.best.Values[i]
			at[i] = c.Input.Name + " = " + printable(v.Word)
			if v.Word == "" {
				at[i] = c.Input.Name + " = " + c.text(v.Number, t.s.System, t.digits[i])
			}
		}
		s.hung("  highest  ", t.p.height(t.sum.best.Flight.Results.Apogee.Height)+" at "+strings.Join(at, ", "))
	}
	if t.sum.leftover {
		notes = append(notes, "The highest flight is looked for among those that leave the rail with no liquid left over.")
	}
	for _, n := range notes {
		s.hung("  ", n)
	}
	if done, all := t.sum.rows, study.Count(t.s.Axes); done < all {
		s.hung("  ", fmt.Sprintf("%s: %d of %d flights.", gates.WordPartial, done, all))
	}
	s.study(t.s.Rocket, t.s.Rigid)
	_, err := io.WriteString(t.w, s.String())
	return err
}

// sweepSum is what the rows of a sweep come to.
type sweepSum struct {
	rows     int
	best     *study.Row // the highest flight that leaves the rail without liquid left over
	leftover bool       // some did not qualify
}

func (s *sweepSum) add(r study.Row) {
	s.rows++
	if r.Flight == nil {
		return
	}
	res := &r.Flight.Results
	switch {
	case !res.RailExit.Happened || res.LiquidLeft > 0:
		s.leftover = true
	case res.Apogee.Happened && (s.best == nil || res.Apogee.Height > s.best.Flight.Results.Apogee.Height):
		s.best = &r
	}
}
