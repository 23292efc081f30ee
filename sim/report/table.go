package report

import (
	"io"
	"strings"
	"unicode/utf8"
)

// heading is the head of one column of a text table. Numbers stand to the right,
// words to the left.
type heading struct {
	lines []string // above each other, the last one nearest the rows
	unit  string
	width int // at least; the head itself may ask for more
	left  bool
}

// table writes text in columns as it comes: widths are settled by the heads, so that
// no row has to wait for those after it.
type table struct {
	w     io.Writer
	heads []heading
}

// tableIndent and tableGap are the blanks before and between columns.
const (
	tableIndent = 2
	tableGap    = 1
)

func newTable(w io.Writer, heads ...heading) *table {
	for i := range heads {
		h := &heads[i]
		for _, l := range append(h.lines[:len(h.lines):len(h.lines)], h.unit) {
			h.width = max(h.width, utf8.RuneCountInString(l))
		}
	}
	return &table{w, heads}
}

// wide is how many columns of text the table takes.
func (t *table) wide() int {
	n := tableIndent - tableGap
	for _, h := range t.heads {
		n += tableGap + h.width
	}
	return n
}

// head writes the heads: names above units.
func (t *table) head() error {
	high := 0
	for _, h := range t.heads {
		high = max(high, len(h.lines))
	}
	for i := range high {
		cells := make([]string, len(t.heads))
		for j, h := range t.heads {
			if k := i - (high - len(h.lines)); k >= 0 {
				cells[j] = h.lines[k]
			}
		}
		if err := t.row(cells...); err != nil {
			return err
		}
	}
	units := make([]string, len(t.heads))
	some := false
	for j, h := range t.heads {
		units[j] = h.unit
		some = some || h.unit != ""
	}
	if !some {
		return nil
	}
	return t.row(units...)
}

// row writes one row, whole: an interrupted table ends with a row, not in one.
func (t *table) row(cells ...string) error {
	var b strings.Builder
	b.WriteString(strings.Repeat(" ", tableIndent))
	for i, c := range cells {
		if i > 0 {
			b.WriteString(strings.Repeat(" ", tableGap))
		}
		pad := strings.Repeat(" ", max(0, t.heads[i].width-utf8.RuneCountInString(c)))
		if t.heads[i].left {
			b.WriteString(c + pad)
		} else {
			b.WriteString(pad + c)
		}
	}
	_, err := io.WriteString(t.w, strings.TrimRight(b.String(), " ")+"\n")
	return err
}

// bare writes a value without its unit, which the head of its column has.
func (p printer) bare(v float64, unit string) string {
	text := p.text(v, unit)
	if i := strings.LastIndexByte(text, ' '); i > 0 {
		return text[:i]
	}
	return text
}

// unit is the name of the unit that the system shows instead of the one named.
func (p printer) unit(name string) string { return spelled(p.sys.Unit(unitNamed(name)).Name) }

// accelerationUnit is the unit of bareAcceleration.
func (p printer) accelerationUnit() string { return p.unit("m") + "/s²" }

func (p printer) bareAcceleration(v float64) string {
	return p.number(p.sys.Unit(unitNamed("m")).FromSI(v))
}
