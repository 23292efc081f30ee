package terminal

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// canvas is what a terminal shows, as far as it is known.
type canvas struct {
	width int
	rows  []string // painted; nil when nothing is known of it

	before, after []cell // memory for a row taken apart
}

// shortest is the gap between two changes in a row that is worth a jump: writing what is
// there once more takes fewer bytes than the jump does.
const shortest = 5

// paint is what to write so that the terminal shows some rows of a width, in place of what
// it shows now. Its cursor may be anywhere and its style has to be plain, as it is left.
func (c *canvas) paint(rows []string, width int) string {
	var out strings.Builder
	whole := c.rows == nil || c.width != width || len(c.rows) != len(rows)
	if whole {
		out.WriteString(ansi.CursorHomePosition + ansi.EraseScreenBelow)
	}
	for i, row := range rows {
		switch {
		case whole:
			put(&out, i, row)
		case row != c.rows[i]:
			c.change(&out, i, c.rows[i], row)
		}
	}
	c.width, c.rows = width, rows
	return out.String()
}

// put writes a row in full, into an empty line: to erase behind it would take the last
// cell of a full one on some terminals.
func put(out *strings.Builder, y int, row string) {
	move(out, 0, y)
	out.WriteString(row)
	out.WriteString(ansi.ResetStyle)
}

// change writes what differs between two states of a row. A row with characters that do
// not take one cell each, on which terminals disagree, is written in full.
func (c *canvas) change(out *strings.Builder, y int, was, is string) {
	var ok, ok2 bool
	c.before, ok = cellsOf(c.before[:0], was)
	c.after, ok2 = cellsOf(c.after[:0], is)
	before, after := c.before, c.after
	if !ok || !ok2 {
		move(out, 0, y)
		out.WriteString(ansi.EraseLineRight)
		put(out, y, is)
		return
	}
	end := trimmed(after)
	for x := 0; x < end; x++ {
		if same(before, after, x) {
			continue
		}
		last := x
		for i := x + 1; i < min(end, last+1+shortest); i++ {
			if !same(before, after, i) {
				last = i
			}
		}
		move(out, x, y)
		write(out, after[x:last+1])
		x = last
	}
	if trimmed(before) > end {
		move(out, end, y)
		out.WriteString(ansi.EraseLineRight)
	}
}

func move(out *strings.Builder, x, y int) {
	out.WriteString("\x1b[")
	out.WriteString(strconv.Itoa(y + 1))
	if x > 0 {
		out.WriteByte(';')
		out.WriteString(strconv.Itoa(x + 1))
	}
	out.WriteByte('H')
}

// write writes cells and leaves the style plain.
func write(out *strings.Builder, cells []cell) {
	style := ""
	for _, c := range cells {
		if c.style != style {
			if style != "" {
				out.WriteString(ansi.ResetStyle)
			}
			out.WriteString(c.style)
			style = c.style
		}
		out.WriteString(c.text)
	}
	if style != "" {
		out.WriteString(ansi.ResetStyle)
	}
}

// cell is one character and the sequences that style it.
type cell struct{ text, style string }

var blank = cell{text: " "}

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

// cellsOf takes a painted row apart, into the memory given. It is not ok when there is more
// in it than styles and characters of one cell.
func cellsOf(cells []cell, row string) (_ []cell, ok bool) {
	style := ""
	for i := 0; i < len(row); {
		if row[i] == '\x1b' {
			n := strings.IndexByte(row[i:], 'm') + 1
			if n < 2 || row[i+1] != '[' {
				return cells, false
			}
			switch seq := row[i : i+n]; {
			case seq == "\x1b[0m" || seq == "\x1b[m":
				style = ""
			case style == "":
				style = seq
			default:
				style += seq
			}
			i += n
			continue
		}
		n := single(row[i:])
		if n == 0 {
			text, width := ansi.FirstGraphemeCluster(row[i:], ansi.GraphemeWidth)
			if n = len(text); width != 1 || utf8.RuneCountInString(text) != 1 {
				return cells, false
			}
		}
		cells = append(cells, cell{row[i : i+n], style})
		i += n
	}
	return cells, true
}

// single is the length of the first character of a text when it is plain to see that it
// takes a cell of its own: printable ASCII, or a sign of a plot or a border, with such a one
// or a style behind it; 0 when it has to be looked at.
func single(s string) int {
	n := simple(s)
	if n > 0 && (n == len(s) || s[n] == '\x1b' || simple(s[n:]) > 0) {
		return n
	}
	return 0
}

func simple(s string) int {
	if s[0] >= ' ' && s[0] < 0x7f {
		return 1
	}
	// U+2500 to U+25FF, borders and blocks, and U+2800 to U+28FF, braille, in UTF-8.
	if len(s) >= 3 && s[0] == 0xe2 && (s[1] >= 0x94 && s[1] <= 0x97 || s[1] >= 0xa0 && s[1] <= 0xa3) {
		return 3
	}
	return 0
}
