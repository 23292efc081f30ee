package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// SweepText writes a table for people: a row a flight, or, when the values of a second
// input fit beside each other, a grid of the apogee and one of the rail exit speed.
func SweepText(w io.Writer, s Sweep) RowWriter {
	t := &sweepText{w: w, s: s, p: words.In(s.System)}
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

// timed tells whether there is room for the time of apogee.
func (t *sweepText) timed() bool { return len(t.columns) == 1 }

// begin writes title and heads before the first row.
func (t *sweepText) begin() error {
	if t.table != nil {
		return nil
	}
	var heads []page.Heading
	for i := range t.columns {
		heads = append(heads, t.valueHead(i))
	}
	p := t.p
	heads = append(heads,
		page.Heading{Lines: []string{"apogee"}, Unit: p.Unit("m"), Width: 7})
	if t.timed() {
		heads = append(heads, page.Heading{Lines: []string{"at"}, Unit: "s", Width: 6})
	}
	heads = append(heads,
		page.Heading{Lines: []string{"rail", "exit"}, Unit: p.Unit("m/s"), Width: 6},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"greatest", "accel."}, Unit: p.AccelerationUnit()})
	if t.s.Rocket.Power == rocket.MotorPower {
		heads = append(heads, page.Heading{Lines: []string{"burnout"}, Unit: "s"})
	} else {
		heads = append(heads, page.Heading{Lines: []string{"liquid", "left"}, Unit: p.Unit("g")})
	}
	heads = append(heads,
		page.Heading{Lines: []string{"lands"}, Unit: p.Unit("m/s"), Width: 6},
		page.Heading{Left: true, Width: 5})
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
		apogee, at = p.Bare(a.Height, "m"), p.Bare(a.Time, "s")
	}
	exit, exitWord := "-", gates.WordNever
	if e := res.RailExit; e.Happened {
		exit = p.Bare(e.Speed, "m/s")
		exitWord, _ = gates.RailExit(r.Flight.Rocket).Judge(e.Speed)
	}
	lands, landsWord := "-", gates.WordNever
	if l := res.Landing; l.Happened {
		lands = p.Bare(l.Vertical, "m/s")
		landsWord, _ = gates.LimitFor(r.Flight.Rocket, gates.LimitLanding).Judge(l.Vertical)
	}
	cells = append(cells, apogee)
	if t.timed() {
		cells = append(cells, at)
	}
	cells = append(cells, exit, exitWord, p.BareAcceleration(res.Max.Acceleration))
	switch {
	case t.s.Rocket.Power == rocket.MotorPower && res.Burnout.Happened:
		cells = append(cells, p.Bare(res.Burnout.Time, "s"))
	case t.s.Rocket.Power != rocket.MotorPower && res.WaterFlew:
		cells = append(cells, p.Bare(res.LiquidLeft, "g"))
	default:
		cells = append(cells, "-")
	}
	return t.table.Row(append(cells, lands, landsWord)...)
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
		notes = append(notes, "The highest flight is looked for among those that leave the rail with no liquid left over.")
	}
	for _, n := range notes {
		s.Hung("  ", n)
	}
	if done, all := t.sum.rows, study.Count(t.s.Axes); done < all {
		s.Hung("  ", fmt.Sprintf("%s: %d of %d flights.", gates.WordPartial, done, all))
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
