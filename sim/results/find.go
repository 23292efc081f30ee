package results

import (
	"slices"
	"strings"
	"sync"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Table is the groups of one rocket on the drive that flies, in the order to read them.
type Table []Group

// For is the table of a rocket. Its rows are shared with other tables and not to be changed.
func For(r *rocket.Rocket) Table {
	of := onWaterAlways()
	if r.Power == rocket.MotorPower {
		of = onMotorAlways()
	}
	t := append(make(Table, 0, len(of.before)+len(r.Canopies)+len(of.after)), of.before...)
	for i := range r.Canopies {
		t = append(t, canopy(i, r.Canopies[i].Name).settled())
	}
	return append(t, of.after...)
}

// everyRockets are the groups of every rocket on a drive, before the canopies' and behind them.
type everyRockets struct{ before, after []Group }

// What every rocket has is worked out once, when it is first asked for.
var (
	onWaterAlways = sync.OnceValue(func() *everyRockets { return alwaysOn(rocket.WaterPower) })
	onMotorAlways = sync.OnceValue(func() *everyRockets { return alwaysOn(rocket.MotorPower) })
)

func alwaysOn(p rocket.Power) *everyRockets {
	before, after := groups(p)
	for _, list := range [][]Group{before, after} {
		for i := range list {
			list[i] = list[i].settled()
		}
	}
	return &everyRockets{before, after}
}

// settled has worked out what follows from the rest of its rows, and no room for more rows
// that tables would share.
func (g Group) settled() Group {
	for i := range g.Rows {
		r := &g.Rows[i]
		r.path, r.column, r.metric = r.Path(), r.Column(), r.Metric()
	}
	g.Rows = slices.Clip(g.Rows)
	return g
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

// Number finds a result that is a number, by its dotted name. The error is a fault.Fault.
func (t Table) Number(name string) (*Row, error) {
	row := t.Find(name)
	switch {
	case row == nil && t.Nearest(name) != "":
		return nil, fault.Fault{Key: name, Problem: "no flight of this rocket has a result of this name", Remedy: "perhaps " + t.Nearest(name) + " is meant"}
	case row == nil:
		return nil, fault.Fault{Key: name, Problem: "no flight of this rocket has a result of this name", Remedy: "ullage results lists them"}
	case row.IsWord():
		return nil, fault.Fault{Key: name, Problem: "it is a word, and a number is needed", Remedy: "ullage results lists others"}
	}
	return row, nil
}

// Numbers lists the dotted names of the results that are numbers.
func (t Table) Numbers() []string {
	var names []string
	for i := range t {
		for k := range t[i].Rows {
			if r := &t[i].Rows[k]; !r.IsWord() {
				names = append(names, r.Name)
			}
		}
	}
	return names
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
