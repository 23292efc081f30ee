package tui

import (
	"io"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/gates"
	"ullage/sim/long"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// anyKeys are the keys that sequences are made of: all of the KeyMap, what is
// typed into fields and names (no path leaves the folder), sizes and nonsense.
var anyKeys = []tea.Msg{
	keyNamed("up"), keyNamed("down"), keyNamed("left"), keyNamed("right"), keyNamed("shift+left"), keyNamed("shift+right"),
	keyNamed("home"), keyNamed("end"), keyNamed("pgup"), keyNamed("pgdown"), keyNamed("tab"), keyNamed("shift+tab"),
	keyNamed("enter"), keyNamed("esc"), keyNamed("backspace"), keyNamed("delete"), keyNamed("space"),
	keyNamed("ctrl+s"), keyNamed("ctrl+r"), keyNamed("ctrl+c"), keyNamed("ctrl+z"), keyNamed("ctrl+l"), keyNamed("ctrl+u"),
	runes("<"), runes(">"), runes("["), runes("]"), runes("{"), runes("}"), runes("?"), runes("/"), runes("i"), runes("*"), runes("!"), runes("+"), runes("D"), runes("("), runes(")"), runes("~"), runes("."), runes("-"),
	runes("0"), runes("1"), runes("3"), runes("7"), runes("c"), runes("C"), runes("d"), runes("e"), runes("E"), runes("f"),
	runes("n"), runes("p"), runes("P"), runes("q"), runes("r"), runes("s"), runes("S"), runes("t"), runes("u"), runes("U"),
	runes("w"), runes("v"), runes("V"), runes("x"), runes("z"), runes("Z"), runes("m"), runes(" mm"), runes("apogee + 2 s"), runes("雪"), runes("\u202e"),
	runes("a"), runes("b"), runes("g"), runes("h"), runes("j"), runes("k"), runes("l"), runes("o"), runes("v"), runes("V"), runes("0.4in"), runes("]]]]"), runes(""), tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("9\x1b[A\n"), Paste: true},
	tea.KeyMsg{Type: tea.KeyF20}, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Alt: true}, keepMsg{},
	tea.WindowSizeMsg{Width: 80, Height: 24}, tea.WindowSizeMsg{Width: 131, Height: 43}, tea.WindowSizeMsg{Width: 20, Height: 3},
	tea.WindowSizeMsg{}, backgroundMsg(draw.LightBackground),
	tea.MouseMsg{X: 4, Y: 9, Button: tea.MouseButtonLeft}, tea.MouseMsg{X: 70, Y: 9, Button: tea.MouseButtonWheelUp},
}

// tryKeys presses keys on a rocket: nothing panics, every screen has its size
// and its charset, and undoing all of it gives the first text again.
func tryKeys(t testing.TB, f *rocketfile.File, charset plot.Charset, keys []tea.Msg) {
	judges := judge(noCorners)
	if len(keys)%4 == 0 { // corners and mends now and then: they cost most
		judges = gates.Judge
	}
	s := newScreenIn(t, f, charset, 80, 24, judges)
	s.m.pointer = true
	first := s.text()
	for _, k := range keys {
		s.send(k)
		if !s.m.layout.short() {
			s.checkSize()
		}
		require.True(t, charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
	}
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	s.press("esc", "esc", "esc")
	require.Nil(t, s.m.asking)
	require.Nil(t, s.m.typed)
	require.Nil(t, s.m.page)
	for s.m.hist.past != nil {
		s.press("u")
	}
	require.Equal(t, first, s.text())
	require.NotNil(t, s.m.now)
}

func TestAnyKeys(t *testing.T) {
	t.Chdir(t.TempDir())
	long.Check(t, 25, func(rt *rapid.T) {
		keys := rapid.SliceOfN(rapid.SampledFrom(anyKeys), 0, 60).Draw(rt, "keys")
		charset := rapid.SampledFrom([]plot.Charset{plot.Braille, plot.Block, plot.ASCII}).Draw(rt, "charset")
		tryKeys(t, rocketfile.Starter(), charset, keys)
	})
}

func FuzzKeys(f *testing.F) {
	f.Add([]byte{0, 1, 2, 3})
	f.Add([]byte("SCcdt?fqs"))
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, picks []byte) {
		t.Chdir(dir)
		keys := make([]tea.Msg, 0, 64)
		for _, p := range picks[:min(len(picks), 64)] {
			keys = append(keys, anyKeys[int(p)%len(anyKeys)])
		}
		tryKeys(t, rocketfile.Starter(), plot.ASCII, keys)
	})
}

// Undo and redo walk the same path back and forth.
func TestUndoRedo(t *testing.T) {
	long.Unraced(t)
	long.Check(t, 25, func(rt *rapid.T) {
		s := &screen{t: t, m: New(Options{File: rocketfile.Starter(), Output: io.Discard}), hold: true} // no flights: this is about the texts
		s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
		texts := []string{s.text()}
		edits := []string{"left", "right", "<", ">", "d", "c", "C", "t"}
		for _, k := range rapid.SliceOfN(rapid.SampledFrom(append(edits, "up", "down", "tab")), 1, 25).Draw(rt, "keys") {
			s.press(k)
			if text := s.text(); text != texts[len(texts)-1] {
				texts = append(texts, text)
			}
		}
		for i := len(texts) - 1; i >= 0; i-- {
			require.Equal(t, texts[i], s.text())
			s.press("u")
		}
		for _, text := range texts {
			require.Equal(t, text, s.text())
			s.press("ctrl+r")
		}
		require.Equal(t, texts[len(texts)-1], s.text())
	})
}
