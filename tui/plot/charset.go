package plot

import "fmt"

// Charset is the set of characters a drawing may use.
type Charset uint8

// The charsets. All draw box lines for axes but ASCII, which is pure 7-bit.
const (
	Braille Charset = iota // 2×4 dots a cell, U+2800 to U+28FF
	Block                  // 2×2 quadrants a cell, U+2580 to U+259F
	ASCII                  // 1×3 dots a cell from . - ' and |
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
