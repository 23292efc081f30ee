package plot

import (
	"go/parser"
	"go/token"
	"math"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTextsAreSingleWidth(t *testing.T) {
	for _, c := range []struct{ text, braille, ascii string }{
		{"height m", "height m", "height m"},
		{"18 °C, 5 m², 3 µm", "18 °C, 5 m², 3 µm", "18 degC, 5 m2, 3 um"},
		{"a\tb\nc\x1b[31m", "a b c [31m", "a b c [31m"},
		{"e\u0301t\u0301e", "ete", "ete"},
		{"火箭", "??", "??"},
		{"🚀 up", "? up", "? up"},
		{"🇨🇭", "??", "??"},
		{"\xff\xfe", "??", "??"},
		{"a\u200bb\u202ec", "abc", "abc"},
		{"", "", ""},
	} {
		for charset, want := range map[Charset]string{Braille: c.braille, Block: c.braille, ASCII: c.ascii} {
			s := Stack{Charset: charset, Charts: []Chart{{Y: Axis{Title: c.text, Hide: true}}}}
			g := s.Draw(40, 4)
			checkGrid(t, g, charset, 40, 4)
			first, _, _ := strings.Cut(g.String(), "\n")
			assert.Equal(t, want, first)
			assert.Equal(t, utf8.RuneCountInString(want), cellsOf(c.text, charset))
		}
	}
}

func TestCharsetNames(t *testing.T) {
	for _, c := range charsets {
		got, err := ParseCharset(c.String())
		require.NoError(t, err)
		assert.Equal(t, c, got)
	}
	_, err := ParseCharset("sixel")
	assert.EqualError(t, err, `charset "sixel": unknown; choose braille, block or ascii`)
	assert.Equal(t, "charset 9", Charset(9).String())
	s := Stack{Charset: 9, Charts: []Chart{{Series: []Series{{Y: []float64{1, 2}}}}}}
	checkGrid(t, s.Draw(20, 5), ASCII, 20, 5)
}

func TestBar(t *testing.T) {
	for _, c := range []struct {
		share         float64
		blocks, ascii string
	}{
		{0, "    ", "    "},
		{-1, "    ", "    "},
		{math.NaN(), "    ", "    "},
		{1e-9, "▏   ", "#   "},
		{0.25, "█   ", "#   "},
		{0.3, "█▎  ", "#   "},
		{0.5, "██  ", "##  "},
		{0.9, "███▋", "####"},
		{1, "████", "####"},
		{1.2, "███>", "###>"},
		{math.Inf(1), "███>", "###>"},
	} {
		assert.Equal(t, c.blocks, Bar(c.share, 4, Braille), c.share)
		assert.Equal(t, c.blocks, Bar(c.share, 4, Block), c.share)
		assert.Equal(t, c.ascii, Bar(c.share, 4, ASCII), c.share)
	}
	assert.Equal(t, "", Bar(0.5, 0, Braille))
	assert.Equal(t, "", Bar(0.5, -1, Braille))
	assert.Equal(t, ">", Bar(2, 1, Braille))
}

// The house keeps terminals out of here: a grid is only cells.
func TestNoTerminalIsImported(t *testing.T) {
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	seen := 0
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), f.Name(), nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, i := range parsed.Imports {
			seen++
			outside := strings.Contains(i.Path.Value, ".")
			assert.False(t, outside && i.Path.Value != `"github.com/mattn/go-runewidth"`, "%s imports %s", f.Name(), i.Path.Value)
			assert.NotContains(t, i.Path.Value, "ullage/")
		}
	}
	assert.Positive(t, seen)
}
