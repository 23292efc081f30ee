package page

import (
	"io"
	"strings"
	"unicode/utf8"
)

// Heading is the head of one column of a text table. Numbers stand to the right,
// words to the left.
type Heading struct {
	Lines []string // above each other, the last one nearest the rows
	Unit  string
	Width int // at least; the head itself may ask for more
	Left  bool
}

// Table writes text in columns as it comes: widths are settled by the heads, so that
// no row has to wait for those after it.
type Table struct {
	w     io.Writer
	heads []Heading
}

// tableIndent and tableGap are the blanks before and between columns.
const (
	tableIndent = 2
	tableGap    = 1
)

// NewTable is a table whose columns are as wide as their heads ask for. Its sheet, a
// strings.Builder, takes whatever is written; another writer's errors come back from Head
// and Row.
func NewTable(w io.Writer, heads ...Heading) *Table {
	for i := range heads {
		h := &heads[i]
		for _, l := range append(h.Lines[:len(h.Lines):len(h.Lines)], h.Unit) {
			h.Width = max(h.Width, utf8.RuneCountInString(l))
		}
	}
	return &Table{w, heads}
}

// Wide is how many columns of text the table takes.
func (t *Table) Wide() int {
	n := tableIndent - tableGap
	for _, h := range t.heads {
		n += tableGap + h.Width
	}
	return n
}

// Head writes the heads: names above units.
func (t *Table) Head() error {
	high := 0
	for _, h := range t.heads {
		high = max(high, len(h.Lines))
	}
	for i := range high {
		cells := make([]string, len(t.heads))
		for j, h := range t.heads {
			if k := i - (high - len(h.Lines)); k >= 0 {
				cells[j] = h.Lines[k]
			}
		}
		if err := t.Row(cells...); err != nil {
			return err
		}
	}
	units := make([]string, len(t.heads))
	some := false
	for j, h := range t.heads {
		units[j] = h.Unit
		some = some || h.Unit != ""
	}
	if !some {
		return nil
	}
	return t.Row(units...)
}

// Row writes one row, whole: an interrupted table ends with a row, not in one.
func (t *Table) Row(cells ...string) error {
	_, err := io.WriteString(t.w, t.Line(cells...)+"\n")
	return err
}

// Line is a row as text, without blanks at its end. Cells may be missing there.
func (t *Table) Line(cells ...string) string {
	var b strings.Builder
	b.WriteString(strings.Repeat(" ", tableIndent))
	for i, c := range cells {
		if i > 0 {
			b.WriteString(strings.Repeat(" ", tableGap))
		}
		pad := strings.Repeat(" ", max(0, t.heads[i].Width-utf8.RuneCountInString(c)))
		if t.heads[i].Left {
			b.WriteString(c + pad)
		} else {
			b.WriteString(pad + c)
		}
	}
	return strings.TrimRight(b.String(), " ")
}
