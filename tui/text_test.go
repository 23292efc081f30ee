package tui

import (
	"strings"
	"testing"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/tui/plot"
)

func TestFitted(t *testing.T) {
	for _, c := range []struct {
		in   string
		w    int
		want string
	}{
		{"short", 8, "short   "},
		{"exactly8", 8, "exactly8"},
		{"two words here", 11, "two words… "},
		{"two words here", 10, "two words…"},
		{"two words, here", 12, "two words…  "},
		{"oneverylongword", 6, "onever"[:5] + "…"},
		{"雪雪雪雪", 5, "雪雪…"},
		{"雪雪雪雪", 4, "雪… "},
		{"x", 0, ""},
	} {
		require.Equal(t, c.want, fitted(c.in, c.w, "…"), "%q in %d", c.in, c.w)
	}
}

func TestFittedIsAsWideAsAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := clean(rapid.StringN(0, 40, -1).Draw(t, "s"))
		w := rapid.IntRange(0, 30).Draw(t, "w")
		require.Equal(t, w, width(fitted(s, w, "…")))
	})
}

func TestWrapped(t *testing.T) {
	require.Equal(t, []string{"a bb", "ccc", "dddd", "d"}, wrapped("a bb  ccc ddddd", 4))
	require.Empty(t, wrapped("", 4))
	require.Empty(t, wrapped("a", 0))
	rapid.Check(t, func(t *rapid.T) {
		s := clean(rapid.StringN(0, 60, -1).Draw(t, "s"))
		w := rapid.IntRange(1, 30).Draw(t, "w")
		lines := wrapped(s, w)
		for _, l := range lines {
			require.LessOrEqual(t, width(l), max(w, 2), "%q", l)
		}
	})
}

func TestClean(t *testing.T) {
	require.Equal(t, "ab c", clean("a\x1bb\nc\x00\u202e\u200b"))
	require.Equal(t, "[2Jx", clean("\x1b[2Jx"))
	require.Equal(t, "ok", clean("o\xffk"))
}

func TestASCII(t *testing.T) {
	require.Equal(t, "left 3 deg >= x - y", ascii("← 3 ° ≥ x · y"))
	require.Equal(t, "??ok?", ascii("雪okλ"))
	rapid.Check(t, func(t *rapid.T) {
		for _, r := range ascii(rapid.String().Draw(t, "s")) {
			require.Less(t, r, rune(utf8.RuneSelf))
		}
	})
}

func typeInto(l *line, keys ...tea.KeyMsg) {
	for _, k := range keys {
		l.press(k)
	}
}

func TestLine(t *testing.T) {
	l := newLine("12 mm")
	typeInto(&l, tea.KeyMsg{Type: tea.KeyHome}, tea.KeyMsg{Type: tea.KeyDelete}, runes("4"), tea.KeyMsg{Type: tea.KeyEnd},
		tea.KeyMsg{Type: tea.KeyLeft}, tea.KeyMsg{Type: tea.KeyBackspace}, runes("k"))
	require.Equal(t, "42 km", l.String())
	typeInto(&l, tea.KeyMsg{Type: tea.KeyEnd}, tea.KeyMsg{Type: tea.KeyCtrlW})
	require.Equal(t, "42 ", l.String())
	typeInto(&l, tea.KeyMsg{Type: tea.KeyCtrlU}, runes("a\nb\x1b"))
	require.Equal(t, "a b", l.String())
	typeInto(&l, tea.KeyMsg{Type: tea.KeyHome}, tea.KeyMsg{Type: tea.KeyRight}, tea.KeyMsg{Type: tea.KeyCtrlK})
	require.Equal(t, "a", l.String())
	l.insert([]rune(strings.Repeat("x", 2*longestTyped)))
	require.Len(t, l.text, longestTyped)
}

func TestLineViewIsAsWideAsAsked(t *testing.T) {
	for _, l := range []*look{
		newLook(plot.Braille, termenv.Ascii, false, anyBackground),
		newLook(plot.ASCII, termenv.Ascii, false, anyBackground),
	} {
		rapid.Check(t, func(t *rapid.T) {
			in := newLine(clean(rapid.StringN(0, 40, -1).Draw(t, "s")))
			in.at = rapid.IntRange(0, len(in.text)).Draw(t, "at")
			w := rapid.IntRange(2, 20).Draw(t, "w")
			require.Equal(t, w, width(in.view(l, w)))
		})
	}
}

// A colour is never alone: without colours every role that says something looks
// different from plain text by its attributes.
func TestAttributesWithoutColour(t *testing.T) {
	l := newLook(plot.Braille, termenv.ANSI, false, anyBackground)
	for _, r := range []role{dimText, strongText, focused, entry, caret, cautionWord, badWord, asked} {
		require.NotEmpty(t, l.brushes[r].on, "role %d", r)
	}
	for r := range roles {
		require.NotContains(t, l.brushes[r].on, "3", "role %d has a colour", r)
	}
	require.Equal(t, "x", newLook(plot.Braille, termenv.Ascii, true, anyBackground).in(badWord, "x"))
}
