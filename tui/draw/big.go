package draw

import (
	"image"
	"strings"

	"golang.org/x/image/font/basicfont"

	"ullage/tui/plot"
)

// Big are letters drawn with blocks, to be read from afar: those of a font of dots, each dot so many cells wide.
type Big struct {
	charset plot.Charset
	scale   int // a dot is scale cells wide and half as many rows high
	bold    bool
}

// BigLetters are the sizes there are up to the largest of so many rows, the largest first.
func BigLetters(theme *Theme, rows int) []Big {
	var all []Big
	for scale := 2 * rows / (capBottom - capTop); scale > 0; scale-- {
		all = append(all, Big{theme.Charset, scale, true}, Big{theme.Charset, scale, false})
	}
	return all
}

// The font: its capitals stand on their base line and are as high as that.
const (
	capTop    = 2  // dots above them
	capBottom = 11 // where they end
	lowest    = 13 // where letters below the line end
)

var letters = basicfont.Face7x13

// dot tells whether a letter has ink there.
func (b Big) dot(r rune, x, y int) bool {
	at := func(x int) bool {
		if x < 0 || x >= letters.Width || y >= lowest {
			return false
		}
		for _, g := range letters.Ranges {
			if r >= g.Low && r < g.High {
				mask := letters.Mask.(*image.Alpha)
				return mask.AlphaAt(x, (int(r-g.Low)+g.Offset)*(letters.Ascent+letters.Descent)+y).A > 0
			}
		}
		return false
	}
	return at(x) || b.bold && at(x-1)
}

// advance is how many dots a letter takes.
func (b Big) advance() int {
	if b.bold {
		return letters.Advance + 1
	}
	return letters.Advance
}

// Width is how many cells a text takes; what follows the last letter is left out.
func (b Big) Width(text string) int { return max(len([]rune(text))*b.advance()-1, 0) * b.scale }

// Letters is how many of them fit into so many cells.
func (b Big) Letters(cells int) int { return max((cells/b.scale+1)/b.advance(), 0) }

// Rows are a text, as many rows as it takes, each of its width. What the font lacks is blank.
func (b Big) Rows(text string) []string {
	var out []string
	for top := capTop * b.scale; top < lowest*b.scale; top += 2 {
		var row strings.Builder
		ink := false
		for _, r := range text {
			for x := range b.advance() {
				cell := b.cell(b.dot(r, x, top/b.scale), b.dot(r, x, (top+1)/b.scale))
				ink = ink || cell != " "
				row.WriteString(strings.Repeat(cell, b.scale))
			}
		}
		if !ink && top >= capBottom*b.scale {
			break
		}
		out = append(out, strings.TrimSuffix(row.String(), Blanks(b.scale)))
	}
	return out
}

// cell is two dots, one above the other.
func (b Big) cell(upper, lower bool) string {
	switch {
	case b.charset == plot.ASCII && (upper || lower):
		return "#"
	case upper && lower:
		return "█"
	case upper:
		return "▀"
	case lower:
		return "▄"
	}
	return " "
}
