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
	labels      []string // of the columns, on the screen
	least, most int      // rows
	rising      bool     // each row has more in its first column than the one before

	// In messages: what a value or a row is not and how it is written, what does not rise
	// and how it should, and what one number is not and what to do instead.
	notRows, notRow, written string
	notRising, inOrder       string
	notNumber, instead       string

	judge func(rows [][]float64) fault.List // what is wrong with them, in place of ranges and order; mostly nil

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
	n, bad := c.plain(n)
	if bad != nil {
		return bad
	}
	rows, _, bad := c.rows(n)
	if bad == nil && !c.set(p, rows) {
		bad = notThere
	}
	return bad
}

// table is the codec itself: what has rows of numbers says so by this method.
func (c *rowsCodec) table() *rowsCodec { return c }

func (c *rowsCodec) text(_ *field, p place) string {
	rows := c.get(p)
	if len(rows) == 0 {
		return ""
	}
	return "[" + strings.Join(c.texts(rows, func(_, column int) quantity.Unit { return fileUnit(c.is[column]) }), ", ") + "]"
}

func (c *rowsCodec) encode(_ *field, _ place, n *node, _ style) (string, *fault.Fault) {
	n, bad := c.plain(n)
	if bad != nil {
		return "", bad
	}
	rows, units, bad := c.rows(n)
	if bad != nil {
		return "", bad
	}
	return c.lines(c.texts(rows, func(row, column int) quantity.Unit { return units[row][column] })), nil
}

// rows reads the rows of a value, with the units they are written in.
func (c *rowsCodec) rows(n *node) (rows [][]float64, units [][]quantity.Unit, bad *fault.Fault) {
	found, bad := c.loosely(n)
	if bad != nil {
		return nil, nil, bad
	}
	rows, units = make([][]float64, len(found)), make([][]quantity.Unit, len(found))
	for i, row := range found {
		for _, q := range row {
			rows[i], units[i] = append(rows[i], q.Value), append(units[i], q.Unit)
		}
	}
	if wrong := c.wrong(rows); len(wrong) > 0 {
		text := c.notRows
		if i := wrong[0].Line; i > 0 {
			text = wrong[0].Problem
			if at := c.rowTexts(n, i-1); at != "" {
				text = at + " in it: " + text
			}
		} else if wrong[0].Problem != "" {
			text = wrong[0].Problem
		}
		return nil, nil, flaw(text, wrong[0].Remedy)
	}
	return rows, units, nil
}

// plain turns a text of rows of numbers, typed or pasted, into rows as a file has them; what is no text stays.
func (c *rowsCodec) plain(n *node) (*node, *fault.Fault) {
	if n.kind != stringNode {
		return n, nil
	}
	found, bad := c.pasted(nil).read(n.text)
	if bad != nil {
		return nil, bad
	}
	whole := &node{kind: arrayNode}
	for _, row := range found {
		var items []*node
		for _, q := range row {
			item := &node{kind: stringNode, text: quantity.Exact(q.Value, q.Unit)}
			if q.Unit.Name == "" {
				item.kind = numberNode
			}
			items = append(items, item)
		}
		if len(c.is) == 1 {
			whole.members = append(whole.members, items[0])
		} else {
			whole.members = append(whole.members, &node{kind: arrayNode, members: items})
		}
	}
	return whole, nil
}

// pasted reads rows of the codec, numbers without a unit in those given, else in those of a file.
func (c *rowsCodec) pasted(bare []quantity.Unit) *pasted {
	t := &pasted{is: c.is, most: c.most, how: c.written}
	for i, is := range c.is {
		if i < len(bare) {
			t.bare = append(t.bare, bare[i])
		} else {
			t.bare = append(t.bare, fileUnit(is))
		}
	}
	return t
}

// loosely reads what rows there are, whatever is wrong with their numbers.
func (c *rowsCodec) loosely(n *node) (rows [][]quantity.Quantity, bad *fault.Fault) {
	if n.kind != arrayNode || len(n.members) > c.most {
		return nil, flaw(c.notRows, c.written)
	}
	for _, member := range n.members {
		items := []*node{member}
		if len(c.is) > 1 {
			if member.kind != arrayNode || len(member.members) != len(c.is) {
				return nil, flaw(c.notRow, c.written)
			}
			items = member.members
		}
		row := make([]quantity.Quantity, len(items))
		for i, item := range items {
			q, bad := readQuantity(item, c.is[i], nil)
			if bad != nil {
				return nil, flaw(excerpt(item.text)+" in it: "+bad.Problem, bad.Remedy)
			}
			row[i] = q
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// wrong is what is wrong with numbers that could be read: by row, counted from 1 in Line, 0 for all of them together.
func (c *rowsCodec) wrong(rows [][]float64) fault.List {
	if c.judge != nil {
		return c.judge(rows)
	}
	var out fault.List
	add := func(row int, problem, remedy string) {
		out = append(out, fault.Fault{Line: row, Problem: problem, Remedy: remedy})
	}
	if len(rows) < c.least {
		add(0, "", c.written)
	}
	for i, row := range rows {
		for k, v := range row {
			if bad := c.is[k].Check(v); bad != nil {
				add(i+1, bad.Problem, bad.Remedy)
			}
		}
		if c.rising && i > 0 && row[0] <= rows[i-1][0] {
			add(i+1, c.notRising, c.inOrder)
		}
	}
	return out
}

// rowTexts is a row as it is written; empty where there is none.
func (c *rowsCodec) rowTexts(n *node, i int) string {
	if i >= len(n.members) {
		return ""
	}
	member := n.members[i]
	if len(c.is) == 1 {
		return excerpt(member.text)
	}
	var texts []string
	for _, item := range member.members {
		texts = append(texts, item.text)
	}
	return excerpt(strings.Join(texts, ", "))
}

// texts are the rows one by one, as a file has them.
func (c *rowsCodec) texts(rows [][]float64, unit func(row, column int) quantity.Unit) []string {
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
	return lines
}

// lines are rows as a file has them: a few on one line, more below each other.
func (c *rowsCodec) lines(lines []string) string {
	if len(lines) > rowsOnALine && len(c.is) > 1 {
		return "[\n  " + strings.Join(lines, ",\n  ") + ",\n]"
	}
	return "[" + strings.Join(lines, ", ") + "]"
}

// rowsOnALine is how many rows a file has on one line; more stand below each other.
const rowsOnALine = 4

// listCodec is a list of quantities: rows of one column.
func listCodec(number, label string, at func(place) *[]float64) *rowsCodec {
	const written = `write it as ["6 s", "8 s"]`
	return &rowsCodec{
		columns: []string{number}, labels: []string{label}, most: 100,
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
