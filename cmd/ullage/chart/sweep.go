package chart

import (
	"fmt"
	"math"
	"slices"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// MostCells bounds the flights that a page of a sweep is made of.
const MostCells = 40_000

// Cells gathers what a page shows of the flights of a sweep, in their order.
type Cells struct {
	rows    []results.Row // apogee, rail exit speed, then those asked for
	cells   []cell
	invalid int
	first   error // of the invalid ones
}

// The rows that every sweep looks at.
const (
	apogeeRow = iota
	exitRow
	askedRows // the first of those asked for
)

// NewCells gathers flights of a rocket, of which a page shows some results: apogee and
// rail exit speed when none are named.
func NewCells(r *rocket.Rocket, show []results.Row) *Cells {
	table := results.For(r)
	rows := make([]results.Row, askedRows, askedRows+len(show))
	rows[apogeeRow], rows[exitRow] = *table.Must("apogee.height"), *table.Must("rail_exit.speed")
	return &Cells{rows: append(rows, show...)}
}

// shown are the places of the rows that the page shows.
func (c *Cells) shown() []int {
	if len(c.rows) == askedRows {
		return []int{apogeeRow, exitRow}
	}
	out := make([]int, len(c.rows)-askedRows)
	for i := range out {
		out[i] = askedRows + i
	}
	return out
}

// nothing is a flight that there is none of.
func (c *Cells) nothing() cell {
	x := cell{values: make([]float64, len(c.rows))}
	for i := range x.values {
		x.values[i] = math.NaN()
	}
	return x
}

// cell is one flight, a value a row; NaN where a thing did not happen.
type cell struct {
	values []float64
	left   bool // liquid was left over
}

// Add takes the next flight.
func (c *Cells) Add(r study.Row) {
	x := c.nothing()
	switch fl := r.Flight; {
	case fl == nil:
		if c.invalid++; c.invalid == 1 {
			c.first = r.Invalid
		}
	case fl.RailExit.Happened:
		for i := range c.rows {
			x.values[i] = c.rows[i].Of(fl)
		}
		x.left = fl.WaterFlew && fl.LiquidLeft > 0
	}
	c.cells = append(c.cells, x)
}

// Len is how many were taken.
func (c *Cells) Len() int { return len(c.cells) }

// Sweep is a page of a sweep: apogee and rail exit speed against one input; against
// two, a curve for each value of the one that has few, or else lines of equal
// apogee and of equal rail exit speed. A sweep that was cut short has fewer cells
// than its axes; the page says so.
func Sweep(s report.Sweep, cells *Cells, look Look) *page.Page {
	w := &sweep{Sweep: s, cells: cells, look: look}
	p := &page.Page{Paper: look.Paper, Lines: []string{"Today: " + look.drive(s.Rocket), look.day(s.Rocket)}}
	all := study.Count(s.Axes)
	switch {
	case len(s.Axes) == 1:
		p.Title = title(s.Rocket, "sweep of "+w.name(0))
		p.Rows = w.curves(0, -1)
	case w.family() >= 0:
		f := w.family()
		p.Title = title(s.Rocket, "sweep of "+w.name(1-f)+" for each "+w.name(f))
		p.Rows = w.curves(1-f, f)
	default:
		p.Title = title(s.Rocket, "sweep of "+w.name(0)+" and "+w.name(1))
		p.Rows = w.levels()
	}
	if cells.Len() < all {
		p.Title += fmt.Sprintf(" (partial: %d of %d flights)", cells.Len(), all)
	}
	p.Lines = append(p.Lines, w.summary())
	p.Notes = w.notes()
	return p
}

// sweep is a sweep being drawn.
type sweep struct {
	report.Sweep
	cells *Cells
	look  Look
}

// name is what an axis is called.
func (w *sweep) name(i int) string { return w.Axes[i].Input.Name }

// unit is what an axis is shown in.
func (w *sweep) unit(i int) quantity.Unit {
	u := w.Axes[i].Input.Unit
	if i < len(w.Units) {
		u = w.Units[i]
	}
	return w.look.System.Unit(u)
}

// worded tells whether the values of an axis are words.
func (w *sweep) worded(i int) bool {
	return slices.ContainsFunc(w.Axes[i].Values, func(v study.Value) bool { return v.Word != "" })
}

// text writes one value of an axis.
func (w *sweep) text(i, j int) string {
	v := w.Axes[i].Values[j]
	if v.Word != "" {
		return v.Word
	}
	return given(v.Number, w.unit(i), 4)
}

// family is the axis with so few values that each has a curve; −1 if neither has.
func (w *sweep) family() int {
	n0, n1 := len(w.Axes[0].Values), len(w.Axes[1].Values)
	switch {
	case w.worded(0) && (!w.worded(1) || n0 <= n1):
		return 0
	case w.worded(1):
		return 1
	case n1 <= page.Pens && n1 <= n0:
		return 1
	case n0 <= page.Pens:
		return 0
	}
	return -1
}

// at is the flight at values of the axes; NaN where a sweep was cut short.
func (w *sweep) at(axis, i, other, j int) cell {
	index := i
	if len(w.Axes) == 2 {
		first, second := i, j
		if axis == 1 {
			first, second = j, i
		}
		index = first*len(w.Axes[1].Values) + second
	}
	if index >= len(w.cells.cells) {
		return w.cells.nothing()
	}
	return w.cells.cells[index]
}

// axis is an axis of the page.
func (w *sweep) axis(i int) page.Axis {
	in := w.Axes[i].Input
	a := page.Axis{Title: in.Name, Unit: unitName(w.unit(i))}
	if w.worded(i) {
		a.Unit = ""
		for j := range w.Axes[i].Values {
			a.Words = append(a.Words, w.text(i, j))
		}
	}
	return a
}

// place is where the value j of an axis stands.
func (w *sweep) place(i, j int) float64 {
	if w.worded(i) {
		return float64(j)
	}
	return w.unit(i).FromSI(w.Axes[i].Values[j].Number)
}

// rising are the places in the values of an axis, from the least value up.
func (w *sweep) rising(i int) []int {
	order := make([]int, len(w.Axes[i].Values))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(p, q int) int {
		if a, b := w.place(i, p), w.place(i, q); a < b {
			return -1
		} else if a > b {
			return 1
		}
		return 0
	})
	return order
}

// now is the rocket's own value of an axis's input, where that is on the axis.
func (w *sweep) now(i int) (at float64, ok bool) {
	if w.worded(i) {
		return 0, false
	}
	v, given := w.Axes[i].Input.Get(w.Rocket)
	order := w.rising(i)
	least, most := w.Axes[i].Values[order[0]].Number, w.Axes[i].Values[order[len(order)-1]].Number
	return w.unit(i).FromSI(v), given && v >= least && v <= most
}

// best is the highest flight that may be one: off the rail, and with no liquid left.
func (w *sweep) best() int {
	best, most := -1, 0.0
	for i, c := range w.cells.cells {
		if !c.left && c.values[apogeeRow] > most {
			best, most = i, c.values[apogeeRow]
		}
	}
	return best
}

// split is the values' places of a flight.
func (w *sweep) split(index int) []int {
	if len(w.Axes) == 1 {
		return []int{index}
	}
	n := len(w.Axes[1].Values)
	return []int{index / n, index % n}
}

// summary says which flight is the highest.
func (w *sweep) summary() string {
	b := w.best()
	if b < 0 {
		return "No flight left the rail and emptied its chamber"
	}
	text := "Highest of these: " + w.look.text(w.cells.cells[b].values[apogeeRow], "m") + " at "
	for k, j := range w.split(b) {
		if k > 0 {
			text += ", "
		}
		text += w.name(k) + " " + w.text(k, j)
	}
	return text + "; rail exit there " + w.look.text(w.cells.cells[b].values[exitRow], "m/s")
}

// notes tell of flights that are missing or in doubt, and the cautions.
func (w *sweep) notes() []string {
	var out []string
	if n := w.cells.invalid; n > 0 {
		out = append(out, fmt.Sprintf("%d of %d points make no rocket and are left out; the first: %v.", n, w.cells.Len(), w.cells.first))
	}
	grounded, left := -w.cells.invalid, 0
	for _, c := range w.cells.cells {
		if math.IsNaN(c.values[exitRow]) {
			grounded++
		}
		if c.left {
			left++
		}
	}
	if grounded > 0 {
		out = append(out, fmt.Sprintf("%d of %d flights do not leave the rail and are left out.", grounded, w.cells.Len()))
	}
	if left > 0 {
		out = append(out, fmt.Sprintf("%d of %d flights end with liquid aboard: too much water for the pressure.", left, w.cells.Len()))
	}
	return append(out, w.look.closing(study.MostPressed(w.Rocket, w.Axes)))
}

// limits is the least rail exit speed, if the axis does not have to be stretched far
// for it.
func (w *sweep) limits(most float64) []page.Limit {
	l := gates.RailExit(w.Rocket).Min
	if !(l < 2*most) {
		return nil
	}
	return []page.Limit{{At: w.look.unit("m/s").FromSI(l), Label: "at least " + w.look.given(l, "m/s")}}
}
