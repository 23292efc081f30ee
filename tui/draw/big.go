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

// glyph is the ink of a letter: a byte a dot, row by row. Nil where the font lacks it.
func glyph(r rune) []byte {
	for _, g := range letters.Ranges {
		if r >= g.Low && r < g.High {
			mask, height := letters.Mask.(*image.Alpha), letters.Ascent+letters.Descent
			return mask.Pix[mask.PixOffset(0, (int(r-g.Low)+g.Offset)*height):]
		}
	}
	return nil
}

// dot tells whether a letter has ink there.
func (b Big) dot(ink []byte, x, y int) bool {
	if ink == nil || y >= lowest {
		return false
	}
	row := ink[y*letters.Width:]
	return x < letters.Width && row[x] > 0 || b.bold && x > 0 && x <= letters.Width && row[x-1] > 0
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

// Height is how many rows a line of capitals takes; one with letters that hang below it takes more.
func (b Big) Height() int { return (b.scale*(capBottom-capTop) + 1) / 2 }

// Rows are a text, as many rows as it takes, each of its width. What the font lacks is blank.
func (b Big) Rows(text string) []string {
	var glyphs [][]byte
	for _, r := range text {
		glyphs = append(glyphs, glyph(r))
	}
	var out []string
	for top := capTop * b.scale; top < lowest*b.scale; top += 2 {
		var row strings.Builder
		inked := false
		for _, ink := range glyphs {
			for x := range b.advance() {
				cell := b.cell(b.dot(ink, x, top/b.scale), b.dot(ink, x, (top+1)/b.scale))
				inked = inked || cell != " "
				for range b.scale {
					row.WriteString(cell)
				}
			}
		}
		if !inked && top >= capBottom*b.scale {
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
