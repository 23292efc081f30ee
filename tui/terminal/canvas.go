package terminal

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// canvas is what a terminal shows, as far as it is known.
type canvas struct {
	width int
	rows  []string // painted; nil when nothing is known of it

	inks          inks
	before, after []cell   // memory for a row taken apart,
	strokes       []stroke // and for what changes
	text          []byte   // in them
}

// stroke is a run of cells in a row, of one style or blank, that is written in one go.
type stroke struct {
	at       place
	style    string
	cells    int // 0: everything from there on is blank
	from, to int // of the canvas's text
}

// paint adds what to write so that the terminal shows some rows of a width, in place of what
// it shows now. Its cursor may be anywhere and its style has to be plain, as it is left.
//
// What changes in a frame is written style by style, not from top to bottom: a colour takes
// three times the bytes of a move of the cursor, and a plot has its colours in every row.
func (c *canvas) paint(out []byte, rows []string, width int) []byte {
	pen := pen{out: out, width: width}
	c.strokes, c.text = c.strokes[:0], c.text[:0]
	whole := c.rows == nil || c.width != width || len(c.rows) != len(rows)
	if whole {
		pen.write(ansi.CursorHomePosition + ansi.EraseScreenBelow)
	}
	for i, row := range rows {
		switch {
		case whole:
			pen.row(i, row)
		case row != c.rows[i]:
			c.change(&pen, i, c.rows[i], row)
		}
	}
	slices.SortStableFunc(c.strokes, func(a, b stroke) int { return strings.Compare(a.style, b.style) })
	for _, s := range c.strokes {
		pen.stroke(s, c.text[s.from:s.to])
	}
	pen.take("")
	c.width, c.rows = width, rows
	return pen.out
}

// change finds what differs between two states of a row. A row with characters that do
// not take one cell each, on which terminals disagree, is written in full.
func (c *canvas) change(pen *pen, y int, was, is string) {
	var ok, ok2 bool
	c.before, ok = c.inks.cellsOf(c.before[:0], was)
	c.after, ok2 = c.inks.cellsOf(c.after[:0], is)
	before, after := c.before, c.after
	if !ok || !ok2 {
		pen.clear(y)
		pen.row(y, is)
		return
	}
	end := trimmed(after)
	for x := 0; x < end; x++ {
		if same(before, after, x) {
			continue
		}
		style, upTo := after[x].style, x+1
		for i := upTo; i < end; i++ {
			if after[i].style != style && after[i] != blank {
				if style != "" || !c.inks.inkOnly(after[i].style) || !blanks(after[x:i]) {
					break
				}
				style = after[i].style // of what follows blanks
			} else if after[i] == blank && !c.inks.inkOnly(style) {
				break
			}
			if !same(before, after, i) {
				upTo = i + 1
			} else if i-upTo >= nearby {
				break
			}
		}
		from := len(c.text)
		for i := x; i < upTo; i++ {
			c.text = append(c.text, after[i].text...)
		}
		c.strokes = append(c.strokes, stroke{at: place{x, y}, style: style, cells: upTo - x, from: from, to: len(c.text)})
		x = upTo - 1
	}
	if trimmed(before) > end {
		c.strokes = append(c.strokes, stroke{at: place{end, y}})
	}
}

// nearby is how many cells between two changes are written once more: the cursor's jump
// over them takes as many bytes.
const nearby = 3

// blanks tells that cells are blank.
func blanks(cells []cell) bool {
	for i := range cells {
		if cells[i] != blank {
			return false
		}
	}
	return true
}

// same tells that a place holds the same in two rows; what a row does not reach is blank.
func same(a, b []cell, x int) bool {
	p, q := blank, blank
	if x < len(a) {
		p = a[x]
	}
	if x < len(b) {
		q = b[x]
	}
	return p == q
}

// trimmed is how many cells there are before the blanks at the end.
func trimmed(cells []cell) int {
	n := len(cells)
	for n > 0 && cells[n-1] == blank {
		n--
	}
	return n
}
