package plot

import (
	"unicode"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"
)

// widths measures runes as terminals do outside East Asian locales, whatever
// the environment says: a grid must not change with it.
var widths = runewidth.Condition{StrictEmojiNeutral: true}

// plain is ASCII for signs that units and titles use.
var plain = map[rune]string{
	'°': "deg", '²': "2", '³': "3", 'µ': "u", 'μ': "u", '·': ".", '×': "x", '±': "+-",
	'−': "-", '–': "-", '—': "-", '…': "..", '≤': "<=", '≥': ">=", '→': "->", '←': "<-",
	'’': "'", '‘': "'", '“': "\"", '”': "\"", '\u00a0': " ",
}

// spell is how a charset writes a rune: itself if it is one column wide, a
// space for a control character, nothing for one of no width, ASCII where
// that is asked for, '?' where there is no other way.
func spell(r rune, c Charset) string {
	switch {
	case r >= ' ' && r < 0x7f:
		return ascii[r-' ' : r-' '+1]
	case unicode.IsControl(r):
		return " "
	case unicode.In(r, unicode.M, unicode.Cf):
		return ""
	}
	if c >= ASCII {
		if s, ok := plain[r]; ok {
			return s
		}
		return "?"
	}
	flag := r >= 0x1f1e6 && r <= 0x1f1ff // two of them make one wide sign
	switch widths.RuneWidth(r) {
	case 0:
		return ""
	case 1:
		if !flag && r != utf8.RuneError {
			return string(r)
		}
	}
	return "?"
}

const ascii = " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~"

// cellsOf is how many cells a text takes.
func cellsOf(text string, c Charset) int {
	n := 0
	for _, r := range text {
		if r >= ' ' && r < 0x7f {
			n++
			continue
		}
		n += utf8.RuneCountInString(spell(r, c))
	}
	return n
}

// write writes a text from a cell on, at most so many cells, and tells how
// many it took; a text that is cut ends with the charset's sign for it.
func (d *drawing) write(column, row, room int, text string, ink Ink) int {
	room = min(room, d.grid.width-column)
	if room <= 0 || column < 0 || row < 0 || row >= d.grid.height {
		return 0
	}
	cells := d.grid.cells[row*d.grid.width+column:][:room]
	n := 0
	for _, r := range text {
		for _, r := range spell(r, d.Charset) {
			if n == room {
				cells[n-1].Rune = d.glyphs.cut
				return n
			}
			cells[n] = Cell{r, ink}
			n++
		}
	}
	return n
}
