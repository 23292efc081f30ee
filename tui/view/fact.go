package view

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/tui/draw"
)

// Fact is a column of a table of flights: a result, or an input, as it stands there.
type Fact struct {
	Result string // its dotted name; empty for an input
	Long   string // its title where there is room; the result's own heading when empty
	Short  string // where there is none; the long one when empty
	Rank   int    // the higher, the sooner it gives way
	Unit   string // metric, in place of the result's own
	G      bool   // an acceleration in multiples of standard gravity, which have no unit

	Of func(fl *sim.Flight) float64 // of an input
}

// Of binds facts to the table of a rocket's results.
func Of(facts []Fact, t results.Table) []Column {
	out := make([]Column, len(facts))
	for i, f := range facts {
		out[i] = Column{Fact: f}
		if f.Result != "" {
			out[i].row = t.Must(f.Result)
		}
	}
	return out
}

// Column is a fact bound to the results of a rocket.
type Column struct {
	Fact
	row *results.Row
}

// Title is what stands above it.
func (c *Column) Title(roomy bool) string {
	title := c.Long
	if title == "" && c.row != nil {
		title = c.row.Heading()
	}
	if !roomy && c.Short != "" {
		return c.Short
	}
	return title
}

// Value is that of a flight, SI (G: in multiples of gravity); NaN where there is none.
func (c *Column) Value(fl *sim.Flight) float64 {
	switch {
	case c.row == nil:
		return c.Of(fl)
	case c.G:
		return c.row.Of(fl) / atmosphere.StandardGravity
	}
	return c.row.Of(fl)
}

// In is the unit it is shown in.
func (c *Column) In(sys quantity.System) quantity.Unit {
	switch {
	case c.G:
		return draw.Unit("")
	case c.Unit != "" || c.row == nil:
		return sys.Unit(draw.Unit(c.Unit))
	}
	return sys.Unit(c.row.Metric())
}

// UnitName is how that unit is written.
func (c *Column) UnitName(sys quantity.System) string {
	if c.G {
		return "g"
	}
	return c.In(sys).Name
}

// Text is the figure of a flight, without its unit; "never" where there is none.
func (c *Column) Text(fl *sim.Flight, sys quantity.System) string {
	v, unit := c.Value(fl), c.In(sys)
	if math.IsNaN(v) {
		return "never"
	}
	return draw.Number(quantity.Format(v, unit, 3), unit)
}
