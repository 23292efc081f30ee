package rocketfile

import (
	"math"
	"strconv"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// validate adds what the engine finds wrong with the rocket as a whole. With
// values unread, only what is wrong whatever these are counts: they are set to
// either end of their ranges, and a fault must show both times.
func (rd *reading) validate() {
	found := rd.check(func(s scale) float64 { return s.min })
	if len(found) > 0 && len(rd.unread) > 0 {
		again := map[string]bool{}
		for _, f := range rd.check(func(s scale) float64 { return s.max }) {
			again[f.Name] = true
		}
		kept := found[:0]
		for _, f := range found {
			if again[f.Name] {
				kept = append(kept, f)
			}
		}
		found = kept
	}
	for _, f := range found {
		rd.whole(f)
	}
}

// check validates the rocket with its unread numbers set.
func (rd *reading) check(end func(scale) float64) rocket.Faults {
	for _, u := range rd.unread {
		u.field.codec.setNumber(u.field, u.place, end(u.field.codec.scale(u.field, u.place)))
	}
	faults, _ := rd.rocket.Validate().(rocket.Faults)
	return faults
}

// whole reports a fault of the rocket as a whole at the line of its input.
func (rd *reading) whole(f rocket.Fault) {
	at, given := rd.where[f.Name]
	s, row, p := resolve(rd.rocket, f.Name)
	unsure := row != nil && s.path != "" && s.path == rd.unsure
	switch {
	case rd.faults.has(f.Name), rd.meant[f.Name], s != nil && rd.meant[s.path], !given && (rd.doc.partial || unsure):
		return
	case f.Name == "power" && (rd.faults.has(string(rd.rocket.Power)) || rd.meant[string(rd.rocket.Power)]):
		return
	}
	fault := Fault{File: rd.doc.name, Key: f.Name, Problem: f.Problem, Mend: f.Mend}
	if given {
		fault.File, fault.Line, fault.Value = at.doc.name, at.doc.line(at.node.at()), at.doc.written(at.node)
	} else if row != nil {
		if tables := rd.tables[s]; p.item < len(tables) && s.path != "" {
			fault.Line = rd.doc.line(tables[p.item].at())
		}
		if !math.IsNaN(f.Value) {
			fault.Value = workedOut(f.Value, row.codec.scale(row, p).unit)
		}
	}
	rd.faults.add(fault)
}

// workedOut is a value that nobody wrote, to the digits that help.
func workedOut(v float64, u quantity.Unit) string {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(u.FromSI(v), 'g', 6, 64), 64)
	return quantity.Exact(u.ToSI(x), u)
}
