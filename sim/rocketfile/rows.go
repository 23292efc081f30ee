package rocketfile

import (
	"bytes"
	"slices"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Rows are the rows of numbers that an input holds, as the text has them, sound or not: the points of a thrust curve,
// drag against Mach, the delays of a motor.
type Rows struct {
	Columns []RowColumn
	Rows    [][]quantity.Quantity // a number for each column
	Wrong   map[int]string        // what is wrong with a row, by its place
	Whole   string                // what is wrong with all of them together
	From    string                // the file that they come from, as the text names it; empty for the rocket file's own
}

// RowColumn is what the numbers of a column are, in which unit the file has them.
type RowColumn struct {
	Label string
	Unit  quantity.Unit
}

// rowed is a codec of which some values are rows of numbers.
type rowed interface{ table() *rowsCodec }

// tableOf is the codec of an input's rows; nil where it cannot have any.
func tableOf(row *field) *rowsCodec {
	if t, ok := row.codec.(rowed); ok {
		return t.table()
	}
	return nil
}

// CanBeRows tells whether an input may hold rows of numbers.
func (f *File) CanBeRows(input string) bool {
	_, row, _ := resolve(f.rd.rocket, input)
	return row != nil && tableOf(row) != nil
}

// RowsOf are the rows of an input; there are none of one that holds none, or one number in their place.
func (f *File) RowsOf(input string) (Rows, error) {
	_, row, p := resolve(f.rd.rocket, input)
	if row == nil || tableOf(row) == nil {
		return Rows{}, fault.List{{Key: input, Problem: "has no rows of numbers", Remedy: "choose a curve or a list"}}
	}
	c := tableOf(row)
	var out Rows
	at, given := f.rd.where[input]
	if given && at.node.kind == arrayNode {
		out.Rows, _ = c.loosely(at.node)
		if at.doc != f.rd.doc {
			out.From = f.textOf("motor.file")
		}
	} else if !given || input != "body.drag" {
		if row.instead != "" {
			out.From = f.textOf(strings.TrimSuffix(input, row.key) + row.instead)
		}
		for _, values := range c.get(p) {
			numbers := make([]quantity.Quantity, len(values))
			for k, v := range values {
				numbers[k] = quantity.Quantity{Value: v, Unit: fileUnit(c.is[k])}
			}
			out.Rows = append(out.Rows, numbers)
		}
	}
	for k, is := range c.is {
		column := RowColumn{c.labels[k], fileUnit(is)}
		if len(out.Rows) > 0 {
			column.Unit = out.Rows[0][k].Unit
		}
		out.Columns = append(out.Columns, column)
	}
	out.Wrong = map[int]string{}
	if len(out.Rows) == 0 {
		return out, nil
	}
	for _, w := range c.wrong(plainRows(out.Rows)) {
		text := w.Problem
		if w.Remedy != "" {
			text += "; " + w.Remedy
		}
		if w.Line == 0 {
			out.Whole = strings.TrimPrefix(text, "; ")
		} else if out.Wrong[w.Line-1] == "" {
			out.Wrong[w.Line-1] = text
		}
	}
	return out, nil
}

// textOf is a text that the file gives for a key; empty where it gives none.
func (f *File) textOf(key string) string {
	if at, ok := f.rd.where[key]; ok {
		return at.node.text
	}
	return ""
}

func plainRows(rows [][]quantity.Quantity) [][]float64 {
	out := make([][]float64, len(rows))
	for i, row := range rows {
		for _, q := range row {
			out[i] = append(out[i], q.Value)
		}
	}
	return out
}

// EditRows puts what is typed or pasted in the place of the rows from one up to another, and tells how many rows it is:
// rows of numbers in any of the ways that people write them, those without a unit in the units given. No text takes
// the rows out, and with the last of them the input. What is no row of numbers is refused; rows that make no curve
// are what a draft leaves open. The error is a fault.List.
func (f *File) EditRows(input string, from, to int, text string, bare []quantity.Unit) (*File, int, error) {
	s, row, p := resolve(f.rd.rocket, input)
	was, err := f.RowsOf(input)
	if err != nil {
		return nil, 0, err
	}
	from, to = max(min(from, len(was.Rows)), 0), max(min(to, len(was.Rows)), from)
	c := tableOf(row)
	var made []string
	if strings.TrimSpace(text) != "" {
		found, bad := c.pasted(bare).read(text)
		if bad != nil {
			return nil, 0, fault.List{bad.Of(input, "")}
		}
		for i, numbers := range found {
			columns := was.Columns
			if len(found) == to-from && to <= len(was.Rows) { // each keeps the units of the row it replaces
				columns = slices.Clone(columns)
				for k, q := range was.Rows[from+i] {
					columns[k].Unit = q.Unit
				}
			}
			made = append(made, c.rowText(numbers, columns))
		}
	}
	n := len(was.Rows) - (to - from) + len(made)
	switch {
	case n > c.most:
		return nil, 0, fault.List{{Key: input, Problem: "more rows than there may be", Remedy: "take some out"}}
	case n == 0:
		g, err := f.Reset(input)
		return g, 0, err
	}
	if at, ok := f.rd.where[input]; ok && at.doc == f.rd.doc && at.node.kind == arrayNode && len(was.Rows) > 0 {
		if splices := f.rd.doc.spliceRows(at.node, from, to, made); splices != nil {
			g, err := f.edit(input, splices)
			return g, len(made), err
		}
	}
	var all []string
	for i, numbers := range was.Rows {
		if i == from {
			all = append(all, made...)
		}
		if i < from || i >= to {
			all = append(all, c.rowText(exactly(numbers), was.Columns))
		}
	}
	if from == len(was.Rows) {
		all = append(all, made...)
	}
	value := strings.ReplaceAll(c.lines(all), "\n", f.rd.doc.eol())
	doc := f.rd.doc.edited(f.rd.doc.set(s, row, p.item, value))
	if doc == nil {
		return nil, 0, fault.List{{Key: input, Problem: "cannot be put into this text", Remedy: "edit the file by hand"}}
	}
	g, err := f.with(doc)
	return g, len(made), err
}

// MoveRow lets a row of an input change places with the one before it (by = −1) or behind it.
func (f *File) MoveRow(input string, i, by int) (*File, error) {
	was, err := f.RowsOf(input)
	if err != nil {
		return nil, err
	}
	at, ok := f.rd.where[input]
	if j := i + by; min(i, j) >= 0 && max(i, j) < len(was.Rows) && ok && at.doc == f.rd.doc && at.node.kind == arrayNode {
		d := f.rd.doc
		a, b := d.rowSpan(at.node.members[i]), d.rowSpan(at.node.members[j])
		return f.edit(input, []splice{{a, string(d.text[b.start:b.end])}, {b, string(d.text[a.start:a.end])}})
	}
	return nil, fault.List{{Key: input, Problem: "the row goes no further", Remedy: "choose another"}}
}

func exactly(numbers []quantity.Quantity) []amount {
	out := make([]amount, len(numbers))
	for i, q := range numbers {
		out[i] = amount{Quantity: q}
	}
	return out
}

// rowText is a row as a file has it: in the units that were written, those of its columns where none was.
func (c *rowsCodec) rowText(numbers []amount, columns []RowColumn) string {
	cells := make([]string, len(numbers))
	for i, q := range numbers {
		u := q.Unit
		if q.bare || u.Name == "" {
			u = columns[i].Unit
		}
		cells[i] = inTOML(quantity.Exact(q.Value, u), u, `"`)
	}
	if len(cells) == 1 {
		return cells[0]
	}
	return "[" + strings.Join(cells, ", ") + "]"
}

// rowSpan is where a row stands, with its brackets.
func (d *document) rowSpan(n *node) span {
	if n.value.end > 0 {
		return n.value
	}
	first, last := n.members[0], n.members[len(n.members)-1]
	at := span{bytes.LastIndexByte(d.text[:d.rowSpan(first).start], '['), d.rowSpan(last).end}
	at.end = d.bracket(at.end) + 1
	return at
}

// bracket is where the bracket is that closes a list, from behind its last item on: remarks may stand before it.
func (d *document) bracket(i int) int {
	for i < len(d.text) && d.text[i] != ']' {
		if d.text[i] == '#' {
			i = d.lineEnd(i)
		} else {
			i++
		}
	}
	return i
}

// spliceRows puts rows in the place of those from one up to another and leaves the remarks beside the others where they
// are; nil where the list is better written anew.
func (d *document) spliceRows(list *node, from, to int, made []string) []splice {
	items := list.members
	if len(items) == 0 {
		return nil
	}
	switch {
	case to-from == len(made):
		var out []splice
		for i, text := range made {
			out = append(out, splice{d.rowSpan(items[from+i]), text})
		}
		return out
	case len(made) == 0:
		return d.cutRows(items, from, to)
	case to > from:
		return nil
	}
	last := d.rowSpan(items[len(items)-1])
	gap, below := ", ", d.ownLine(items[0], list)
	if below {
		gap = "," + d.eol() + indentOf(d, d.rowSpan(items[0]).start)
	}
	if from < len(items) {
		at := d.rowSpan(items[from]).start
		return []splice{{span{at, at}, strings.Join(made, gap) + gap}}
	}
	rest := d.text[last.end:d.bracket(last.end)]
	end := bytes.IndexByte(rest, '\n')
	if !below || end < 0 {
		return []splice{{span{last.end, last.end}, gap + strings.Join(made, gap)}}
	}
	if end > 0 && rest[end-1] == '\r' {
		end--
	}
	text := d.eol() + strings.TrimPrefix(gap, ","+d.eol()) + strings.Join(made, gap)
	at := last.end + end
	if comma := bytes.TrimLeft(rest, " \t"); len(comma) > 0 && comma[0] == ',' {
		return []splice{{span{at, at}, text + ","}}
	}
	return []splice{{span{last.end, last.end}, ","}, {span{at, at}, text}}
}

// ownLine tells that a row begins a line.
func (d *document) ownLine(n, list *node) bool {
	at := d.rowSpan(n).start
	start := d.lineStart(at)
	return start > list.value.start && len(bytes.TrimSpace(d.text[start:at])) == 0
}

// cutRows takes rows out, with their lines where they have lines of their own.
func (d *document) cutRows(items []*node, from, to int) []splice {
	first, last := d.rowSpan(items[from]), d.rowSpan(items[to-1])
	list := items[0].parent
	tail := bytes.TrimLeft(d.text[last.end:d.lineEnd(last.end)], " \t,\r\n")
	switch {
	case d.ownLine(items[from], list) && (len(tail) == 0 || tail[0] == '#'):
		return []splice{{span{d.lineStart(first.start), d.lineEnd(last.end)}, ""}}
	case to < len(items):
		return []splice{{span{first.start, d.rowSpan(items[to]).start}, ""}}
	case from > 0:
		return []splice{{span{d.rowSpan(items[from-1]).end, last.end}, ""}}
	}
	return nil
}

// unsettled leaves rows that can be read and make no curve open, row by row, and tells whether it is such a value.
func (rd *reading) unsettled(s *section, f *field, name string, at located) bool {
	c := tableOf(f)
	if c == nil || at.node.kind != arrayNode {
		return false
	}
	rows, bad := c.loosely(at.node)
	if bad != nil {
		return false
	}
	if rd.draft && s.drive != "" && s.drive != rd.rocket.Power && s.drop != nil {
		if !slices.Contains(rd.idle, s) {
			rd.idle = append(rd.idle, s)
		}
		return true
	}
	for _, w := range c.wrong(plainRows(rows)) {
		w.File, w.Key, w.Value = at.doc.name, name, at.doc.written(at.node)
		if w.Line == 0 {
			w.Line = at.doc.line(at.node.at())
			if w.Problem == "" {
				w.Problem = c.notRows
			}
		} else {
			is := at.doc.rowSpan(at.node.members[w.Line-1])
			w.Value, w.Line = excerpt(string(at.doc.text[is.start:is.end])), at.doc.line(is.start)
		}
		rd.open.add(w)
	}
	return true
}
