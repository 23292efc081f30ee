package rocketfile

import (
	"strconv"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// validate adds what the engine finds wrong with the rocket as a whole. With
// values unread, only what is wrong whatever these are counts: they are set to
// either end of their ranges, and a fault must show both times.
func (rd *reading) validate() {
	found := rd.check(func(s scale) float64 { return s.Min })
	if len(found) > 0 && len(rd.unread) > 0 {
		again := map[string]bool{}
		for _, f := range rd.check(func(s scale) float64 { return s.Max }) {
			again[f.Key] = true
		}
		kept := found[:0]
		for _, f := range found {
			if again[f.Key] {
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
func (rd *reading) check(end func(scale) float64) fault.List {
	r := rd.rocket.Clone()
	for _, s := range rd.idle {
		s.drop(r)
	}
	for _, u := range rd.unread {
		u.field.codec.setNumber(u.field, place{r, u.place.item}, end(u.field.codec.scale(u.field, u.place)))
	}
	faults, _ := r.Validate().(fault.List)
	return faults
}

// whole reports a fault of the rocket as a whole at the line of its input.
func (rd *reading) whole(f fault.Fault) {
	at, given := rd.where[f.Key]
	s, row, p := resolve(rd.rocket, f.Key)
	unsure := row != nil && s.path != "" && s.path == rd.unsure
	switch {
	case row != nil && row.instead != "" && rd.open.has(s.prefix(p)+row.instead): // what stands in its place is told of
		return
	case rd.faults.has(f.Key), rd.open.has(f.Key), rd.meant[f.Key], s != nil && rd.meant[s.path], !given && (rd.doc.partial || unsure):
		return
	}
	f.File = rd.doc.name
	if given {
		f.File, f.Line, f.Value = at.doc.name, at.doc.line(at.node.at()), at.doc.written(at.node)
	} else if row != nil {
		if tables := rd.tables[s]; p.item < len(tables) && s.path != "" {
			f.Line = rd.doc.line(tables[p.item].at())
		}
		f.Value = inForce(row, p)
	}
	rd.open.add(f)
}

// inForce is the value of a number that the text does not give, to the digits that help;
// empty when there is none.
func inForce(row *field, p place) string {
	v, given := row.codec.number(row, p)
	if row.codec.kind(p) != NumberKind || !given && v == 0 {
		return ""
	}
	u := row.codec.scale(row, p).Unit
	x, _ := strconv.ParseFloat(strconv.FormatFloat(u.FromSI(v), 'g', 6, 64), 64)
	return quantity.Exact(u.ToSI(x), u)
}
