package page

import (
	"sort"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	text "ullage/sim/report/page"
)

// typeface is the name of the fonts in the program.
const typeface = font.Typeface("Liberation Sans")

// fonts reads the two fonts when text is drawn for the first time.
var fonts = sync.OnceValue(func() *font.Cache {
	parse := func(weight xfont.Weight, ttf []byte) font.Face {
		face, err := opentype.Parse(ttf)
		if err != nil {
			panic("page: a font in the program is broken")
		}
		return font.Face{Font: font.Font{Typeface: typeface, Weight: weight}, Face: face}
	}
	return font.NewCache(font.Collection{
		parse(xfont.WeightNormal, liberationsansregular.TTF),
		parse(xfont.WeightBold, liberationsansbold.TTF),
	})
})

// face is a font at a size in points.
func face(size vg.Length, weight xfont.Weight) *font.Face {
	f := fonts().Lookup(font.Font{Typeface: typeface, Weight: weight}, size)
	return &f
}

// Sizes of text, in points.
const (
	titleSize = vg.Length(15)
	lineSize  = vg.Length(9.5)
	axisSize  = vg.Length(9)
	tickSize  = vg.Length(8.5)
	labelSize = vg.Length(8.5)
	noteSize  = vg.Length(7.5)
	leastSize = vg.Length(6.5) // can still be read

	leading = 1.25 // lines of text are so many sizes apart
	middle  = 0.36 // half the height of capitals: what centres text on a line
)

// plain is the usual font at a size.
func plain(size vg.Length) *font.Face { return face(size, xfont.WeightNormal) }

// bold is the font of titles.
func bold(size vg.Length) *font.Face { return face(size, xfont.WeightBold) }

// clean makes text of any bytes fit for paper and for XML: no control characters.
func clean(s string) string { return strings.ReplaceAll(glued(s), text.Glue, " ") }

// glued is clean but for what keeps two words on one line.
func glued(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case string(r) == text.Glue:
			return r
		case r == utf8.RuneError || !unicode.IsPrint(r) && !unicode.IsSpace(r):
			return -1
		case unicode.IsSpace(r):
			return ' '
		}
		return r
	}, s)
}

// fit cuts text with an ellipsis where it is wider than the room.
func fit(f *font.Face, room vg.Length, s string) string {
	s = clean(s)
	if f.Width(s) <= room {
		return s
	}
	runes := []rune(s)
	// The widest beginning that fits.
	n := sort.Search(len(runes), func(i int) bool { return f.Width(string(runes[:i+1])+"…") > room })
	return strings.TrimRight(string(runes[:n]), " ") + "…"
}

// wrap breaks text at spaces into lines no wider than the room; a word that is
// wider is cut.
func wrap(f *font.Face, room vg.Length, s string) []string {
	lines := text.WrapTo(glued(s), func(line string) bool { return f.Width(line) <= room })
	for i := range lines {
		lines[i] = fit(f, room, lines[i])
	}
	return lines
}
