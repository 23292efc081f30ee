package logfile

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Fewest is how many rows a log has at least: fewer tell nothing of a flight.
const Fewest = 10

// absurd are numbers that no recorder means, in SI.
const (
	absurd     = 1e9
	absurdTime = 1e13
)

// unreadable is the share of a column's cells that may be no numbers.
const unreadable = 0.05

// finish turns what was read into SI and into rising times.
func (rd *reader) finish(o Options) *fault.Fault {
	if rd.log.Rows < Fewest {
		return &fault.Fault{Line: rd.layout.first, Problem: fmt.Sprintf("holds %d rows of numbers", rd.log.Rows),
			Remedy: fmt.Sprintf("a log of a flight has hundreds, and at least %d", Fewest)}
	}
	for i := range rd.log.Columns {
		c := &rd.log.Columns[i]
		b := &rd.bad[i]
		if float64(b.n) > unreadable*float64(rd.log.Rows) {
			return &fault.Fault{Line: b.line, Key: c.Name(), Value: b.value, Problem: fmt.Sprintf("is no number, and so are %d of %d cells", b.n, rd.log.Rows),
				Remedy: fmt.Sprintf("say which column is the %s, as in --column '%s=2 %s', or leave it out: --column %s=none", c.Quantity, c.Quantity, c.Unit.Name, c.Quantity)}
		}
		if b.n > 0 {
			rd.log.Notes = append(rd.log.Notes, fault.Fault{Line: b.line, Key: c.Name(), Value: b.value,
				Problem: "is no number, as " + count(b.n, "cell") + " of the column", Remedy: "left out"})
		}
	}
	if rd.skipped.n > 0 {
		rd.log.Notes = append(rd.log.Notes, fault.Fault{Line: rd.skipped.line, Value: rd.skipped.value,
			Problem: "is no row of numbers, as " + count(rd.skipped.n, "line") + " in the table", Remedy: "left out"})
	}
	rd.guessUnits()
	rd.convert()
	if bad := rd.times(o); bad != nil {
		return bad
	}
	return rd.stuck()
}

func count(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// guessUnits takes a unit by the size of the numbers where nobody tells it.
func (rd *reader) guessUnits() {
	for i := range rd.log.Columns {
		c := &rd.log.Columns[i]
		if c.Guessed == "" {
			continue
		}
		switch c.Quantity {
		case Pressure:
			typical := median(rd.raw[i])
			for _, u := range []string{"Pa", "hPa", "kPa", "bar", "inHg"} {
				unit, _ := quantity.LookupIn(u, quantity.Pressure)
				if p := unit.ToSI(typical); p > 50e3 && p < 115e3 {
					c.Unit, c.Guessed = unit, "no unit is given, and the numbers are air pressures in "+u
					break
				}
			}
		case Time:
			if step := medianStep(rd.raw[i]); step >= 2 {
				name := "ms"
				if step >= 2000 {
					name = "us"
				}
				c.Unit, _ = rd.spelled.in(name, quantity.Time)
				c.Guessed = "no unit is given, and whole numbers so far apart are " + name
			}
		case Acceleration:
			if typical := math.Abs(median(rd.raw[i])); typical > 0.8 && typical < 1.2 {
				c.Unit, _ = rd.spelled.in("g", quantity.Acceleration)
				c.Guessed = "no unit is given, and it rests at about 1"
			}
		}
		rd.note(c.At, c.Head, c.Guessed+": taken as "+c.Unit.Name, fmt.Sprintf("if that is wrong, say it as in --column '%s=%d %s'", c.Quantity, c.At, other(c)))
	}
}

// other is a unit that may be meant in place of the one taken.
func other(c *Column) string {
	switch c.Unit.Name {
	case "m":
		return "ft"
	case "s":
		return "ms"
	case "ms":
		return "s"
	case "Pa":
		return "hPa"
	case "m/s":
		return "ft/s"
	case "m/s2":
		return "g"
	case "bar":
		return "psi"
	case "N":
		return "kgf"
	}
	return c.Unit.Name
}

// convert turns all into SI; what no recorder means is a gap.
func (rd *reader) convert() {
	for i := range rd.log.Columns {
		c := &rd.log.Columns[i]
		most := float64(absurd)
		if c.Quantity == Time {
			most = absurdTime
		}
		gone := 0
		v := rd.raw[i]
		for k := range v {
			v[k] = c.Unit.ToSI(v[k])
			if math.Abs(v[k]) > most {
				v[k] = math.NaN()
				gone++
			}
		}
		if gone > 0 {
			rd.note(c.At, c.Head, count(gone, "value")+" beyond anything meant", "left out")
		}
	}
}

// median is the middle of what is there; NaN of nothing. It looks at some of many.
func median(v []float64) float64 {
	const enough = 20_000
	step := max(1, len(v)/enough)
	some := make([]float64, 0, enough+1)
	for i := 0; i < len(v); i += step {
		if !math.IsNaN(v[i]) {
			some = append(some, v[i])
		}
	}
	if len(some) == 0 {
		return math.NaN()
	}
	slices.Sort(some)
	return some[len(some)/2]
}

// medianStep is the usual time between two rows that differ in time.
func medianStep(t []float64) float64 {
	const enough = 20_000
	var steps []float64
	for i := 1; i < len(t) && len(steps) < enough; i++ {
		if d := t[i] - t[i-1]; d > 0 {
			steps = append(steps, d)
		}
	}
	return median(steps)
}

// stuck takes out columns that never change, and refuses a log that has no other.
func (rd *reader) stuck() *fault.Fault {
	kept := 0
	var last *Column
	columns, values := rd.log.Columns[:0:0], rd.log.Values[:0:0]
	for i := range rd.log.Columns {
		c := rd.log.Columns[i]
		v := rd.log.Values[i]
		if c.Quantity != Time && c.Quantity != Temperature {
			least, greatest := ends(v)
			if !(greatest > least) || c.Quantity == Pressure && greatest <= 0 {
				what := "holds no number"
				if greatest >= least {
					what = "holds nothing but " + quantity.Exact(least, c.Unit)
				}
				rd.note(c.At, c.Head, what, "the sensor was stuck or off: left out")
				last = &c
				continue
			}
			kept++
		}
		columns, values = append(columns, c), append(values, v)
	}
	rd.log.Columns, rd.log.Values = columns, values
	if kept == 0 {
		n := rd.log.Notes[len(rd.log.Notes)-1]
		return &fault.Fault{Line: rd.layout.first, Key: last.Name(), Problem: n.Problem + ", and there is no other column to go by",
			Remedy: "the sensor was stuck or off; look whether another column is the " + string(last.Quantity) + ", as in --column '" + string(last.Quantity) + "=2'"}
	}
	return nil
}

// ends are the least and the greatest of what is there.
func ends(v []float64) (least, greatest float64) {
	least, greatest = math.Inf(1), math.Inf(-1)
	for _, x := range v {
		if x < least {
			least = x
		}
		if x > greatest {
			greatest = x
		}
	}
	return least, greatest
}
