package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/tui/draw"
	"ullage/tui/plot"
)

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
	for _, l := range []*draw.Theme{
		draw.NewTheme(plot.Braille, termenv.Ascii, false, draw.AnyBackground),
		draw.NewTheme(plot.ASCII, termenv.Ascii, false, draw.AnyBackground),
	} {
		rapid.Check(t, func(t *rapid.T) {
			in := newLine(draw.Clean(rapid.StringN(0, 40, -1).Draw(t, "s")))
			in.at = rapid.IntRange(0, len(in.text)).Draw(t, "at")
			w := rapid.IntRange(2, 20).Draw(t, "w")
			require.Equal(t, w, draw.Width(in.view(l, w)))
		})
	}
}
