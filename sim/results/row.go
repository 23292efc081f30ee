package results

import (
	"math"

	"ullage/sim"
	"ullage/sim/quantity"
)

// Row is one result of a flight: a number, or a word. Numbers are SI, angles radians.
type Row struct {
	Name      string             // dotted, fixed: apogee.height
	Label     string             // by itself: "rail exit speed"
	Short     string             // beside the label of its group: "speed"
	Head      string             // above a narrow column; the label when empty
	Dimension quantity.Dimension // of a number
	Unit      string             // metric, for people; the dimension's usual one when empty
	Suffix    string             // behind a ratio, for people: "calibres"
	Undefined string             // when it has no value: "when …"; empty for never

	path   []string // in the JSON of a flight; that of its group, then its name with the unit, when nil
	column string   // of CSV; its group and name with the unit when empty
	metric quantity.Unit
	of     func(fl *sim.Flight) float64
	word   func(fl *sim.Flight) string       // in place of of, for a word
	canopy int                               // whose it is, counted from 1; 0 for no canopy's
	opened func(c *sim.CanopyResult) float64 // in place of of, for a canopy that has opened
}

// From is a row beside the table's, got from a flight in a way of its own.
func (r Row) From(of func(fl *sim.Flight) float64) Row {
	r.of, r.word, r.opened = of, nil, nil
	r.path, r.column, r.metric = nil, "", quantity.Unit{}
	return r
}

// IsWord tells that the result is a word, which only Word gives.
func (r *Row) IsWord() bool { return r.word != nil }

// Of is the result of a flight; NaN where it has no value, and of a word.
func (r *Row) Of(fl *sim.Flight) float64 {
	switch {
	case r.opened != nil:
		if r.canopy > len(fl.Canopies) || !fl.Canopies[r.canopy-1].Opened {
			return math.NaN()
		}
		return r.opened(&fl.Canopies[r.canopy-1])
	case r.of == nil:
		return math.NaN()
	}
	return r.of(fl)
}

// Defined is Of, and whether there is a value.
func (r *Row) Defined(fl *sim.Flight) (v float64, defined bool) {
	v = r.Of(fl)
	return v, !math.IsNaN(v)
}

// Word is the result of a flight where that is a word; empty where it has no value.
func (r *Row) Word(fl *sim.Flight) string {
	if r.word == nil {
		return ""
	}
	return r.word(fl)
}

// Metric is the unit for people, before a system of units has its say.
func (r *Row) Metric() quantity.Unit {
	if r.metric.Scale != 0 {
		return r.metric
	}
	return metric(r.Dimension, r.Unit)
}

// metric finds a unit by its name, or the usual one of a dimension.
func metric(d quantity.Dimension, name string) quantity.Unit {
	if name == "" {
		return quantity.Usual(d)
	}
	u, ok := quantity.LookupIn(name, d)
	if !ok {
		panic("results: no unit of this name")
	}
	return u
}

// Heading is what stands above a narrow column.
func (r *Row) Heading() string {
	if r.Head != "" {
		return r.Head
	}
	return r.Label
}

// Group is the rows about one event or one subject.
type Group struct {
	Name   string // the first part of its rows' names; of a canopy's with the canopy's name
	Label  string // of the drive that flies
	Event  bool   // something that happens at a time and, mostly, a height and a speed
	Canopy string // whose it is; empty for no canopy's
	Rows   []Row
}

// Row finds a row by the part of its name behind the group's; nil when there is none.
func (g *Group) Row(short string) *Row {
	for i := range g.Rows {
		if g.Short(&g.Rows[i]) == short {
			return &g.Rows[i]
		}
	}
	return nil
}

// Short is the part of the name of one of its rows behind the group's.
func (g *Group) Short(r *Row) string { return r.Name[len(g.Name)+1:] }

// Happened tells that some result of the group has a value.
func (g *Group) Happened(fl *sim.Flight) bool {
	for i := range g.Rows {
		if r := &g.Rows[i]; r.Word(fl) != "" || !math.IsNaN(r.Of(fl)) {
			return true
		}
	}
	return false
}
