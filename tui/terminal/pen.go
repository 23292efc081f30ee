package terminal

import (
	"strconv"

	"github.com/charmbracelet/x/ansi"
)

// pen writes to a terminal of a width and knows where its cursor is and in what style.
type pen struct {
	out   []byte
	width int
	style string
	at    place
	known bool // the place
}

// place is a cell: the first is 0, 0.
type place struct{ x, y int }

func (p *pen) write(s string) { p.out = append(p.out, s...) }

// row writes a painted row in full, into an empty line: to erase behind it would take the
// last cell of a full one on some terminals.
func (p *pen) row(y int, row string) {
	p.take("")
	p.move(place{0, y})
	p.write(row)
	p.write(ansi.ResetStyle)
	p.known = false // characters that terminals count differently
}

// clear empties a line.
func (p *pen) clear(y int) {
	p.take("")
	p.move(place{0, y})
	p.write(ansi.EraseLineRight)
}

// stroke writes a stroke that has a text.
func (p *pen) stroke(s stroke, text []byte) {
	p.take(s.style)
	p.move(s.at)
	if s.cells == 0 {
		p.write(ansi.EraseLineRight)
		return
	}
	p.out = append(p.out, text...)
	p.at.x += s.cells
	p.known = p.at.x < p.width // behind the last cell terminals differ
}

// take changes the style.
func (p *pen) take(style string) {
	if p.style == style {
		return
	}
	if p.style != "" {
		p.write(ansi.ResetStyle)
	}
	p.write(style)
	p.style = style
}

// move brings the cursor to a place, from where it is or from the corner, whichever takes
// fewer bytes.
func (p *pen) move(to place) {
	from, start := p.at, len(p.out)
	p.at = to
	if !p.known {
		p.known = true
		p.jump(to)
		return
	}
	p.step(to.y-from.y, 'B', 'A')
	p.step(to.x-from.x, 'C', 'D')
	if stepped := len(p.out); stepped > start {
		p.jump(to)
		if jumped := len(p.out) - stepped; jumped < stepped-start {
			p.out = append(p.out[:start], p.out[stepped:]...)
		} else {
			p.out = p.out[:stepped]
		}
	}
}

// step moves the cursor n cells, forward or back.
func (p *pen) step(n int, forward, back byte) {
	if n < 0 {
		n, forward = -n, back
	}
	if n == 0 {
		return
	}
	p.write("\x1b[")
	if n > 1 {
		p.out = strconv.AppendInt(p.out, int64(n), 10)
	}
	p.out = append(p.out, forward)
}

// jump moves the cursor to a place from wherever it is.
func (p *pen) jump(to place) {
	p.write("\x1b[")
	p.out = strconv.AppendInt(p.out, int64(to.y+1), 10)
	if to.x > 0 {
		p.out = append(p.out, ';')
		p.out = strconv.AppendInt(p.out, int64(to.x+1), 10)
	}
	p.out = append(p.out, 'H')
}
