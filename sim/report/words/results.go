package words

import (
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/results"
)

// Row writes a value of a result with its unit.
func (p Printer) Row(r *results.Row, v float64) string {
	switch r.Dimension {
	case quantity.Number:
		return strings.TrimSpace(p.Number(v) + " " + r.Suffix)
	case quantity.Mass:
		return p.Mass(v)
	}
	return figure(v, p.System.Unit(r.Metric()))
}

// BareRow is a value of a result without its unit, which the head of a column has.
func (p Printer) BareRow(r *results.Row, v float64) string { return p.bareIn(v, r.Metric()) }

// RowUnit is the unit of BareRow, or what a ratio is of.
func (p Printer) RowUnit(r *results.Row) string { return p.UnitOf(r.Metric()) + r.Suffix }
