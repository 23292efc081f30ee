package results

import (
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Table is the groups of one rocket on the drive that flies, in the order to read them.
type Table []Group

// For is the table of a rocket.
func For(r *rocket.Rocket) Table {
	t, after := groups(r.Power)
	for i := range r.Canopies {
		t = append(t, canopy(i, r.Canopies[i].Name))
	}
	return append(t, after...)
}

// Group finds a group by its name; nil when there is none.
func (t Table) Group(name string) *Group {
	for i := range t {
		if t[i].Name == name {
			return &t[i]
		}
	}
	return nil
}

// Find finds a row by its dotted name; nil when there is none.
func (t Table) Find(name string) *Row {
	if dot := strings.LastIndexByte(name, '.'); dot >= 0 {
		if g := t.Group(name[:dot]); g != nil {
			return g.Row(name[dot+1:])
		}
	}
	return nil
}

// Must is Find of a name that the program itself has.
func (t Table) Must(name string) *Row {
	r := t.Find(name)
	if r == nil {
		panic("results: no result " + name)
	}
	return r
}

// Names lists the dotted names.
func (t Table) Names() []string {
	var names []string
	for i := range t {
		for k := range t[i].Rows {
			names = append(names, t[i].Rows[k].Name)
		}
	}
	return names
}

// Nearest is the name most like another one; empty when none is at all like it.
func (t Table) Nearest(name string) string {
	word, _ := quantity.Nearest(name, t.Names())
	return word
}
