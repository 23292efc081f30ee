package draw

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Width is how many cells a text without styling takes.
func Width(s string) int {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return ansi.StringWidth(s)
		}
	}
	return len(s)
}

// Padded is s with blanks after it to w cells; longer texts stay as they are.
func Padded(s string, w int) string { return s + Blanks(w-Width(s)) }

// Aligned is s with blanks before it to w cells.
func Aligned(s string, w int) string { return Blanks(w-Width(s)) + s }

func Blanks(n int) string {
	if n <= 0 {
		return ""
	}
	return strings.Repeat(" ", n)
}

// fitted is exactly w cells of s: cut between words with a trailing ellipsis
// if it is too long, inside a word only if the first is too long already.
func fitted(s string, w int, ellipsis string) string {
	if w <= 0 {
		return ""
	}
	if Width(s) <= w {
		return Padded(s, w)
	}
	room := w - Width(ellipsis)
	if room <= 0 {
		return Padded(ansi.Truncate(s, w, ""), w)
	}
	cut := ansi.Truncate(s, room, "")
	if rest := s[len(cut):]; !strings.HasPrefix(rest, " ") {
		if i := strings.LastIndexByte(cut, ' '); i > 0 {
			cut = cut[:i]
		}
	}
	return Padded(strings.TrimRight(cut, " ,;:")+ellipsis, w)
}

// Wrapped breaks s into lines of at most w cells, between words where it can.
func Wrapped(s string, w int) []string {
	if w <= 0 {
		return nil
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && Width(line)+1+Width(word) <= w {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for Width(word) > w {
			head := ansi.Truncate(word, w, "")
			if head == "" { // one character is wider than the line
				_, n := utf8.DecodeRuneInString(word)
				head = word[:n]
			}
			lines = append(lines, head)
			word = word[len(head):]
		}
		line = word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// Clean takes out of a text from a file or the user what would move the
// terminal's cursor or hide: control and format characters, line breaks,
// variation selectors and broken bytes.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case r == utf8.RuneError || !unicode.IsGraphic(r) || unicode.Is(unicode.Variation_Selector, r):
			return -1
		}
		return r
	}, s)
}

// sevenBit spells in ASCII the signs the program uses itself.
var sevenBit = map[rune]string{
	'·': "-", '•': "*", '…': "...", '–': "-", '—': "-", '‘': "'", '’': "'", '“': `"`, '”': `"`,
	'←': "left", '→': "right", '↑': "up", '↓': "down", '⏎': "enter", '▸': ">", '▴': "^", '▾': "v",
	'²': "2", '³': "3", '°': "deg", 'µ': "u", '×': "x", '½': "1/2", '±': "+/-", '−': "-",
	'≤': "<=", '≥': ">=", '≈': "~", 'Δ': "d", 'α': "alpha", 'β': "beta", 'π': "pi", 'ρ': "rho",
	'│': "|", '─': "-", '┊': ":", '┌': "+", '┐': "+", '└': "+", '┘': "+", '\u00a0': " ", '\u202f': " ",
}

// arrows that stand together need something between them when spelt.
var arrows = strings.NewReplacer("↑↓", "up/down", "←→", "left/right")

// ASCII is s in 7-bit characters; what has no spelling becomes question marks,
// as many as it took cells.
func ASCII(s string) string {
	if IsASCII(s) {
		return s
	}
	var b strings.Builder
	for _, r := range arrows.Replace(s) {
		switch spelt, known := sevenBit[r]; {
		case r < utf8.RuneSelf:
			b.WriteRune(r)
		case known:
			b.WriteString(spelt)
		default:
			b.WriteString(strings.Repeat("?", Width(string(r))))
		}
	}
	return b.String()
}

func IsASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// PadPainted is a painted text with blanks after it to w cells, or cut to them.
func PadPainted(s string, w int) string {
	switch n := ansi.StringWidth(s); {
	case n > w:
		return ansi.Truncate(s, max(w, 0), "")
	case n < w:
		return s + Blanks(w-n)
	}
	return s
}
