package rocketfile

import (
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// rowsCodec is a list of rows of quantities, such as [[0.0, 0.46], [0.8, 0.55]]; of one
// column a list of them, ["6 s", "8 s"].
type rowsCodec struct {
	columns     []string // the numbers of the rocket's table that they are
	least, most int      // rows
	rising      bool     // each row has more in its first column than the one before

	// In messages: what a value or a row is not and how it is written, what does not rise
	// and how it should, and what one number is not and what to do instead.
	notRows, notRow, written string
	notRising, inOrder       string
	notNumber, instead       string

	get func(p place) [][]float64
	set func(p place, rows [][]float64) bool // false where the rocket has no such part

	is []scale // of the columns
}

func (c *rowsCodec) bind(string) {
	for _, name := range c.columns {
		c.is = append(c.is, scale{Range: numberNamed(name).Range})
	}
}

func (c *rowsCodec) kind(place) Kind                      { return TextKind }
func (c *rowsCodec) scale(*field, place) scale            { return scale{} }
func (c *rowsCodec) number(*field, place) (float64, bool) { return 0, false }

func (c *rowsCodec) setNumber(*field, place, float64) *fault.Fault {
	return flaw(c.notNumber, c.instead)
}

func (c *rowsCodec) read(_ *field, p place, n *node) *fault.Fault {
	rows, _, bad := c.rows(n)
	if bad == nil && !c.set(p, rows) {
		bad = notThere
	}
	return bad
}

func (c *rowsCodec) text(_ *field, p place) string {
	rows := c.get(p)
	if len(rows) == 0 {
		return ""
	}
	return c.join(rows, func(_, column int) quantity.Unit { return fileUnit(c.is[column]) })
}

func (c *rowsCodec) encode(_ *field, _ place, n *node, _ style) (string, *fault.Fault) {
	rows, units, bad := c.rows(n)
	if bad != nil {
		return "", bad
	}
	return c.join(rows, func(row, column int) quantity.Unit { return units[row][column] }), nil
}

// rows reads the rows of a value, with the units they are written in.
func (c *rowsCodec) rows(n *node) (rows [][]float64, units [][]quantity.Unit, bad *fault.Fault) {
	if n.kind != arrayNode || len(n.members) < c.least || len(n.members) > c.most {
		return nil, nil, flaw(c.notRows, c.written)
	}
	for i, member := range n.members {
		items := []*node{member}
		if len(c.is) > 1 {
			if member.kind != arrayNode || len(member.members) != len(c.is) {
				return nil, nil, flaw(c.notRow, c.written)
			}
			items = member.members
		}
		row, in, bad := c.row(items)
		if bad != nil {
			return nil, nil, bad
		}
		if c.rising && i > 0 && row[0] <= rows[i-1][0] {
			return nil, nil, flaw(c.notRising+" at "+excerpt(items[0].text), c.inOrder)
		}
		rows, units = append(rows, row), append(units, in)
	}
	return rows, units, nil
}

func (c *rowsCodec) row(items []*node) (row []float64, units []quantity.Unit, bad *fault.Fault) {
	for i, item := range items {
		q, bad := readQuantity(item, c.is[i], nil)
		if bad == nil {
			bad = c.is[i].Check(q.Value)
		}
		if bad != nil {
			return nil, nil, flaw(excerpt(item.text)+" in it: "+bad.Problem, bad.Remedy)
		}
		row, units = append(row, q.Value), append(units, q.Unit)
	}
	return row, units, nil
}

func (c *rowsCodec) join(rows [][]float64, unit func(row, column int) quantity.Unit) string {
	lines := make([]string, len(rows))
	for i, row := range rows {
		items := make([]string, len(row))
		for k, v := range row {
			u := unit(i, k)
			items[k] = inTOML(quantity.Exact(v, u), u, `"`)
		}
		if lines[i] = strings.Join(items, ", "); len(c.is) > 1 {
			lines[i] = "[" + lines[i] + "]"
		}
	}
	return "[" + strings.Join(lines, ", ") + "]"
}

// listCodec is a list of quantities: rows of one column.
func listCodec(number string, at func(place) *[]float64) *rowsCodec {
	const written = `write it as ["6 s", "8 s"]`
	return &rowsCodec{
		columns: []string{number}, most: 100,
		notRows: "not a list of quantities", written: written,
		notNumber: "a list, not a number", instead: written,
		get: func(p place) (rows [][]float64) {
			if list := at(p); list != nil {
				for _, v := range *list {
					rows = append(rows, []float64{v})
				}
			}
			return rows
		},
		set: func(p place, rows [][]float64) bool {
			list := at(p)
			if list == nil {
				return false
			}
			*list = nil
			for _, row := range rows {
				*list = append(*list, row[0])
			}
			return true
		},
	}
}
