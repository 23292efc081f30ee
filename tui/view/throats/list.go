package throats

import (
	"math"
	"slices"
)

// mostThroats is how many throats can be set side by side: as many as are told
// apart on one plot.
const mostThroats = 6

// ownThroat is the place of the rocket's own throat, which is in every list.
const ownThroat = -1

// throatList is the throats set side by side: the rocket's own, and others.
type throatList struct {
	others []float64 // m
	chosen int       // of others, or ownThroat
}

// throatRow is one throat of the list.
type throatRow struct {
	throat float64 // m
	own    bool    // the rocket's
	others []int   // of the list's; several when they are the same
}

// rows are the throats in rising order; the same ones are one row.
func (l *throatList) rows(own float64) []throatRow {
	rows := []throatRow{{throat: own, own: true}}
	for i, v := range l.others {
		at := slices.IndexFunc(rows, func(r throatRow) bool { return sameThroat(r.throat, v) })
		if at < 0 {
			rows, at = append(rows, throatRow{throat: v}), len(rows)
		}
		rows[at].others = append(rows[at].others, i)
	}
	slices.SortStableFunc(rows, func(a, b throatRow) int {
		switch {
		case a.throat < b.throat:
			return -1
		case a.throat > b.throat:
			return 1
		}
		return 0
	})
	return rows
}

// sameThroat tells that two diameters differ by no more than arithmetic does.
func sameThroat(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(a, b) }

// at is the place of the chosen one among the rows.
func (l *throatList) at(rows []throatRow) int {
	for i, r := range rows {
		if l.chosen == ownThroat && r.own || slices.Contains(r.others, l.chosen) {
			return i
		}
	}
	return 0
}

// move chooses another row, so many farther down.
func (l *throatList) move(rows []throatRow, by int) {
	r := rows[min(max(l.at(rows)+by, 0), len(rows)-1)]
	l.chosen = ownThroat
	if !r.own {
		l.chosen = r.others[0]
	}
}

// add puts a throat into the list and chooses it.
func (l *throatList) add(v float64) {
	l.others = append(slices.Clone(l.others), v)
	l.chosen = len(l.others) - 1
}

// remove takes the chosen one out and chooses the rocket's own.
func (l *throatList) remove() {
	if l.chosen != ownThroat {
		l.others = slices.Delete(slices.Clone(l.others), l.chosen, l.chosen+1)
		l.chosen = ownThroat
	}
}

// set changes the chosen one, if it is not the rocket's own.
func (l *throatList) set(v float64) {
	if l.chosen != ownThroat {
		l.others = slices.Clone(l.others)
		l.others[l.chosen] = v
	}
}
