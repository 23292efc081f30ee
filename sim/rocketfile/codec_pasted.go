package rocketfile

import (
	"fmt"
	"strings"
	"unicode"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// pasted reads rows of numbers as people type them and as other programs put them on a clipboard: one row a line, or
// several on one line, the numbers with or without units, parted by blanks, tabs, semicolons or commas, with a heading
// and remarks behind #. A comma between digits is a decimal mark where something else parts the numbers, and parts
// them where a point is the mark; where it could be either it is refused.
type pasted struct {
	is   []scale         // of the columns
	bare []quantity.Unit // that numbers without a unit take, column by column
	most int             // rows
	how  string          // how a row is written, for messages
}

// amount is a number of a row, and whether it had a unit of its own.
type amount struct {
	quantity.Quantity
	bare bool
}

func (t *pasted) read(text string) (rows [][]amount, bad *fault.Fault) {
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	var lines []string // that say something
	var numbers []int  // of them, from 1
	for i, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		if line = strings.TrimSpace(line); line != "" {
			lines, numbers = append(lines, line), append(numbers, i+1)
		}
	}
	alone := len(lines) == 1
	title := ""
	for i, line := range lines {
		plain := strings.TrimSpace(unquoted.Replace(line))
		if plain == "" {
			continue // a bracket alone
		}
		if !startsNumber(plain) {
			if len(rows) > 0 {
				return nil, t.at(alone, numbers[i], line, "not a row of numbers", t.how)
			}
			title = line
			continue
		}
		if len(rows) == 0 && title != "" {
			if bad := t.heading(title); bad != nil {
				return nil, bad
			}
		}
		cells, bad := t.cells(plain, alone)
		if bad != nil {
			return nil, t.at(alone, numbers[i], line, bad.Problem, bad.Remedy)
		}
		for len(cells) > 0 {
			row, bad := t.row(cells[:len(t.is)])
			if bad != nil {
				return nil, t.at(alone, numbers[i], line, bad.Problem, bad.Remedy)
			}
			rows, cells = append(rows, row), cells[len(t.is):]
		}
		if len(rows) > t.most {
			return nil, flaw(fmt.Sprintf("more than %d rows", t.most), "thin it out: a few dozen describe a curve")
		}
	}
	if len(rows) == 0 {
		return nil, flaw("no row of numbers", t.how)
	}
	return rows, nil
}

// unquoted takes the signs of a list in a file off.
var unquoted = strings.NewReplacer("[", " ", "]", " ", `"`, " ")

// at places what is wrong with a line of several.
func (t *pasted) at(alone bool, line int, text, problem, remedy string) *fault.Fault {
	if alone {
		return flaw(problem, remedy)
	}
	return flaw(fmt.Sprintf("line %d, %s: %s", line, excerpt(text), problem), remedy)
}

func (t *pasted) row(cells []string) ([]amount, *fault.Fault) {
	row := make([]amount, len(cells))
	for i, cell := range cells {
		n := &node{kind: stringNode, text: cell}
		if isNumber(cell) {
			n.kind = numberNode
			n.text = strings.Replace(cell, ",", ".", 1)
		}
		q, bad := readQuantity(n, t.is[i], &t.bare[i])
		if bad != nil {
			return nil, flaw(excerpt(cell)+" in it: "+bad.Problem, bad.Remedy)
		}
		row[i] = amount{q, n.kind == numberNode}
	}
	return row, nil
}

// cells are the numbers of a line with their units, as many as make whole rows.
func (t *pasted) cells(line string, alone bool) ([]string, *fault.Fault) {
	columns := len(t.is)
	unclear := flaw("a comma that could part two numbers or be a decimal mark", "write decimals with a point, or part the numbers with blanks or semicolons")
	between, pointed := commas(line)
	parts := parted(line, pointed)
	var cells []string
	whole := true // each part is a row
	for _, part := range parts {
		own := numbersOf(part)
		cells, whole = append(cells, own...), whole && len(own) == columns
	}
	if between > 0 && !pointed && len(cells) == 1 {
		if columns == 1 && between == 1 || columns > 1 && (alone || between != columns-1) {
			return nil, unclear
		}
		cells = strings.Split(line, ",")
	}
	switch n := len(cells); {
	case n%columns != 0:
		return nil, flaw(fmt.Sprintf("%d numbers, not %d", n, columns), t.how)
	case n > columns && columns > 1 && !alone && !whole:
		return nil, flaw(fmt.Sprintf("%d numbers, not %d", n, columns), t.how)
	}
	return cells, nil
}

// commas counts the commas of a line that stand between digits, and tells whether its decimals have points.
func commas(line string) (between int, pointed bool) {
	digit := func(i int) bool { return i >= 0 && i < len(line) && line[i] >= '0' && line[i] <= '9' }
	for i := range len(line) {
		switch {
		case line[i] == ',' && digit(i-1) && digit(i+1):
			between++
		case line[i] == '.' && (digit(i-1) || digit(i+1)):
			pointed = true
		}
	}
	return between, pointed
}

// parted splits a line at tabs, semicolons, and commas that are no decimal marks.
func parted(line string, pointed bool) []string {
	digit := func(i int) bool { return i >= 0 && i < len(line) && line[i] >= '0' && line[i] <= '9' }
	var parts []string
	from := 0
	for i := range len(line) + 1 {
		if i == len(line) || line[i] == ';' || line[i] == '\t' || line[i] == ',' && (pointed || !digit(i-1) || !digit(i+1)) {
			if part := strings.TrimSpace(line[from:i]); part != "" {
				parts = append(parts, part)
			}
			from = i + 1
		}
	}
	return parts
}

// numbersOf are the numbers of a part, each with the words behind it that are its unit.
func numbersOf(part string) []string {
	var out []string
	for _, word := range strings.Fields(part) {
		if startsNumber(word) || len(out) == 0 {
			out = append(out, word)
		} else {
			out[len(out)-1] += " " + word
		}
	}
	return out
}

// heading takes the units of the columns from the line above the numbers, where it is one of columns: in brackets, or
// behind the last _. A unit that is none of the column's is refused: the numbers would be read for others.
func (t *pasted) heading(line string) *fault.Fault {
	cells := strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(",;\t", r) })
	if len(cells) != len(t.is) {
		if cells = bracketed(line); len(cells) != len(t.is) {
			if cells = strings.Fields(line); len(cells) != len(t.is) {
				return nil // a title, not a heading
			}
		}
	}
	for i, cell := range cells {
		word := ""
		if in := bracketed(cell); len(in) > 0 {
			word = strings.Trim(in[len(in)-1], "()[]")
		} else if k := strings.LastIndexByte(cell, '_'); k >= 0 {
			word = cell[k+1:]
		}
		word = strings.Trim(word, " \"'")
		if word == "" || strings.ContainsFunc(word, unicode.IsDigit) && !strings.ContainsFunc(word, unicode.IsLetter) {
			continue
		}
		u, ok := quantity.LookupIn(word, t.is[i].Dimension)
		if !ok {
			u, ok = quantity.Spelled(word, t.is[i].Dimension)
		}
		switch _, unit := quantity.Lookup(word); {
		case ok:
		case t.is[i].Dimension == quantity.Number, len(word) > 3 && !unit && len(bracketed(cell)) == 0:
			continue // what is counted or called, not what it is measured in
		default:
			return flaw("the heading "+excerpt(cell)+" has a unit that is none of "+t.is[i].Dimension.String(), "turn the column into "+t.bare[i].Name+", or write the units behind the numbers")
		}
		t.bare[i] = u
	}
	return nil
}

// bracketed are the texts in brackets of a line, with them.
func bracketed(line string) []string {
	var out []string
	for {
		from := strings.IndexAny(line, "([")
		if from < 0 {
			return out
		}
		to := strings.IndexAny(line[from:], ")]")
		if to < 0 {
			return out
		}
		out = append(out, line[from:from+to+1])
		line = line[from+to+1:]
	}
}
