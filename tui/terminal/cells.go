package terminal

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// cell is one character and the sequences that style it.
type cell struct{ text, style string }

// blank is a cell in which nothing is seen.
var blank = cell{text: " "}

// inks are the styles met so far, and whether a blank looks the same in them.
type inks map[string]bool

// cellsOf adds the cells of a painted row. A blank in a style that colours only ink is plain.
// It is not ok when there is more in the row than styles and characters of one cell.
func (k *inks) cellsOf(cells []cell, row string) (_ []cell, ok bool) {
	style, seen := "", false
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
			seen = !k.inkOnly(style)
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
		if c := (cell{row[i : i+n], style}); seen || c.text != blank.text {
			cells = append(cells, c)
		} else {
			cells = append(cells, blank)
		}
		i += n
	}
	return cells, true
}

// inkOnly tells that a style changes nothing in a blank cell: it colours letters, or makes
// them bold, faint or slanted.
func (k *inks) inkOnly(style string) bool {
	only, known := (*k)[style]
	if !known {
		only = inkOnly(style)
		if *k == nil {
			*k = inks{}
		}
		(*k)[strings.Clone(style)] = only
	}
	return only
}

func inkOnly(style string) bool {
	for _, sequence := range strings.SplitAfter(style, "m") {
		numbers := strings.Split(strings.TrimSuffix(strings.TrimPrefix(sequence, "\x1b["), "m"), ";")
		for i := 0; i < len(numbers); i++ {
			switch n := numbers[i]; {
			case n == "38" && i+1 < len(numbers) && numbers[i+1] == "2":
				i += 4 // red, green, blue
			case n == "38" && i+1 < len(numbers) && numbers[i+1] == "5":
				i += 2
			case n == "" && sequence == "", n == "1", n == "2", n == "3":
			case len(n) == 2 && (n[0] == '3' || n[0] == '9') && n[1] <= '7':
			default:
				return false
			}
		}
	}
	return true
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
