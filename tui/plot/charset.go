package plot

import "fmt"

// Charset is the set of characters a drawing may use.
type Charset uint8

// The charsets. All draw box lines for axes but ASCII, which is pure 7-bit.
const (
	Braille Charset = iota // 2×4 dots a cell, U+2800 to U+28FF
	Block                  // 2×2 quadrants a cell, U+2580 to U+259F
	ASCII                  // 1×3 dots a cell, from . - ' and |
)

var charsetNames = [...]string{"braille", "block", "ascii"}

// String is the charset's name: braille, block or ascii.
func (c Charset) String() string {
	if int(c) < len(charsetNames) {
		return charsetNames[c]
	}
	return fmt.Sprintf("charset %d", int(c))
}

// ParseCharset is the charset of a name.
func ParseCharset(name string) (Charset, error) {
	for i, n := range charsetNames {
		if n == name {
			return Charset(i), nil
		}
	}
	return Braille, fmt.Errorf("charset %q: unknown; choose braille, block or ascii", name)
}

// glyphs is what a charset draws with. A cell holds dotsX × dotsY dots; bit is
// the value of each in a cell's mask and rune the character of a mask.
type glyphs struct {
	dotsX, dotsY int
	bit          [4][2]uint8 // by row, then column
	dots         []rune      // by mask
	apart        bool        // dots of two lines do not mix in a cell: the upper one has it

	vertical, horizontal    rune // axis lines
	tickLeft, tickRight     rune // where the y axes have a tick
	tickDown                rune // where the x axis has a tick
	cornerLeft, cornerRight rune // where axes meet
	cursor, mark            rune // lines through the plotting area
	shade                   rune // band
	sign                    rune // point mark
	limit                   rune // limit line, in place of its dots; 0: the dots
	cut                     rune // ends a text that was cut short

	dotted, dashed pattern // lit and dark dots along a line
}

// pattern is a run of lit dots in each period along a line.
type pattern struct{ lit, period int }

var solid = pattern{1, 1}

// glyphs is the charset's glyphs; an unknown charset draws as ASCII.
func (c Charset) glyphs() *glyphs {
	switch c {
	case Braille:
		return &brailleGlyphs
	case Block:
		return &blockGlyphs
	}
	return &asciiGlyphs
}

var brailleGlyphs = glyphs{
	dotsX: 2, dotsY: 4,
	bit:      [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}, // The Unicode Standard, block U+2800
	dots:     brailleRunes(),
	vertical: '│', horizontal: '─', tickLeft: '┤', tickRight: '├', tickDown: '┬', cornerLeft: '└', cornerRight: '┘',
	cursor: '│', mark: '┊', shade: '·', sign: '×', cut: '…',
	dotted: pattern{1, 4}, dashed: pattern{6, 9},
}

var blockGlyphs = glyphs{
	dotsX: 2, dotsY: 2,
	bit:      [4][2]uint8{{1, 2}, {4, 8}},
	dots:     []rune(" ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"),
	vertical: '│', horizontal: '─', tickLeft: '┤', tickRight: '├', tickDown: '┬', cornerLeft: '└', cornerRight: '┘',
	cursor: '│', mark: '┊', shade: '·', sign: '×', cut: '…',
	dotted: pattern{1, 4}, dashed: pattern{4, 6},
}

// A column of three dots: top 1, middle 2, bottom 4. Two dots of different
// lines look like a colon, touching ones like a stroke.
var asciiGlyphs = glyphs{
	dotsX: 1, dotsY: 3,
	bit:      [4][2]uint8{{1}, {2}, {4}},
	dots:     []rune(" '-\".:,|"),
	apart:    true,
	vertical: '|', horizontal: '-', tickLeft: '+', tickRight: '+', tickDown: '+', cornerLeft: '+', cornerRight: '+',
	cursor: '!', mark: ':', shade: '~', sign: 'x', limit: '=', cut: '~',
	dotted: pattern{1, 3}, dashed: pattern{3, 5},
}

func brailleRunes() []rune {
	runes := make([]rune, 256)
	for mask := range runes {
		runes[mask] = 0x2800 + rune(mask)
	}
	runes[0] = ' '
	return runes
}
