package view

import (
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// A pane is filled exactly: with what is painted, cut or filled up with blanks, or with
// what is said instead.
func TestPaneIsFilled(t *testing.T) {
	nothing := func() string { return "" }
	p := Pane{Columns: 5, Rows: 3}
	p.Draw(nothing, func() { t.Error("painted without a theme") })
	require.Empty(t, p.Lines())

	p.Scene.Theme = draw.NewTheme(plot.Braille, termenv.Ascii, false, draw.AnyBackground)
	p.Draw(nothing, func() { p.Add("one  ") })
	require.Equal(t, []string{"one  ", "     ", "     "}, p.Lines())
	p.Draw(nothing, func() { p.Add("one  ", "two  ", "three", "four ") })
	require.Equal(t, []string{"one  ", "two  ", "three"}, p.Lines())
	p.Draw(func() string { return "no" }, func() { t.Error("painted besides") })
	require.Equal(t, []string{"     ", " no  ", "     "}, p.Lines())

	// Who decides stands in a row to spare, of what is said instead too.
	p.Scene.Now = &Outcome{Flight: &sim.Flight{Rocket: &rocket.Rocket{Power: rocket.WaterPower}}}
	caution := words.ShortCautions(rocket.WaterPower)[0]
	for i, columns := range []int{80, 47} { // as wide as the room is on a screen of 80 columns
		p.Resize(columns, 3)
		caution = words.ShortCautions(rocket.WaterPower)[i]
		for _, instead := range []string{"", "no"} {
			p.Draw(func() string { return instead }, func() { p.Add(draw.Padded("one", columns)) })
			require.Equal(t, draw.Padded(caution, columns), p.Lines()[2])
		}
	}
	p.Resize(80, 2)
	p.Draw(func() string { return "no " + strings.Repeat("room ", 30) }, nil)
	require.NotContains(t, p.Lines()[1], caution)
	p.Resize(0, 9)
	p.Draw(nothing, func() { t.Error("painted without room") })
	require.Empty(t, p.Lines())
}

// The first key that matches does what it does, and the others nothing.
func TestPress(t *testing.T) {
	did := ""
	on := func(name string, keys ...string) Key {
		return On(key.NewBinding(key.WithKeys(keys...)), func(Frame) { did += name })
	}
	keys := []Key{on("a", "a", "up"), on("b", "b", "a")}
	require.True(t, Press(keys, nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("a")}))
	require.True(t, Press(keys, nil, tea.KeyMsg{Type: tea.KeyUp}))
	require.True(t, Press(keys, nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("b")}))
	require.False(t, Press(keys, nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("c")}))
	require.Equal(t, "aab", did)
}
