package logfile

import (
	"fmt"
	"math"

	"ullage/sim/fault"
)

// anew is how many rows in a row have to go on from a time that fell for the clock to have
// begun anew rather than one row to be wrong.
const anew = 10

// repeats is the share of rows that may have the time of the row before.
const repeats = 0.3

// times makes the times rise: rows without one or with one that was there before are left
// out, and where the clock began anew is kept in mind.
func (rd *reader) times(o Options) *fault.Fault {
	l := rd.log
	if o.Rate > 0 {
		l.Time = make([]float64, l.Rows)
		for i := range l.Time {
			l.Time[i] = float64(i) / o.Rate
		}
		l.Values, l.Starts = rd.raw, []int{0}
		return nil
	}
	at := l.Find(Time)
	t := rd.raw[at]
	rd.raw[at] = nil
	keep := t[:0] // in place: never ahead of what is read
	l.Starts = []int{0}
	missing, repeated, reversed := 0, 0, 0
	last := math.Inf(-1)
	for i, now := range t {
		fresh := false
		switch {
		case math.IsNaN(now):
			missing++
			continue
		case now == last:
			repeated++
			continue
		case now < last:
			if fresh = goesOn(t[i:], last); !fresh {
				reversed++
				continue
			}
		}
		last = now
		n := len(keep)
		if fresh && n > 0 {
			l.Starts = append(l.Starts, n)
		}
		keep = append(keep, now)
		for k := range rd.raw {
			if rd.raw[k] != nil {
				rd.raw[k][n] = rd.raw[k][i]
			}
		}
	}
	for k := range rd.raw {
		if rd.raw[k] != nil {
			rd.raw[k] = rd.raw[k][:len(keep)]
		}
	}
	l.Time, l.Values = keep, rd.raw
	c := &l.Columns[at]
	if repeated > int(repeats*float64(l.Rows)) {
		return &fault.Fault{Line: rd.layout.first, Key: c.Name(), Problem: fmt.Sprintf("%d of %d rows repeat the time of the row before", repeated, l.Rows),
			Remedy: "say which column is the time, as in --column 'time=2 ms', or how often the recorder wrote, as in --rate '20 Hz'"}
	}
	if len(keep) < Fewest {
		return &fault.Fault{Line: rd.layout.first, Key: c.Name(), Problem: fmt.Sprintf("%d of %d rows have a time that rises", len(keep), l.Rows),
			Remedy: "say which column is the time, as in --column 'time=2 ms'"}
	}
	for _, x := range []struct {
		n    int
		what string
	}{{missing, "without a time"}, {repeated, "with the time of the row before"}, {reversed, "whose time falls back"}} {
		if x.n > 0 {
			rd.note(c.At, c.Head, count(x.n, "row")+" "+x.what, "left out")
		}
	}
	if n := len(l.Starts) - 1; n > 0 {
		rd.note(c.At, c.Head, "the clock begins anew "+count(n, "time"), "each stretch is taken by itself")
	}
	return nil
}

// goesOn tells whether times that fell below the last one go on from there.
func goesOn(t []float64, last float64) bool {
	n, before := 0, math.Inf(-1)
	for _, now := range t {
		if math.IsNaN(now) {
			continue
		}
		if now >= last || now < before {
			return false
		}
		before = now
		if n++; n == anew {
			return true
		}
	}
	return n > 1
}
