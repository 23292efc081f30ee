package tui

import (
	"strconv"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
)

// pasteOf is a message of a terminal that says what was pasted.
func pasteOf(text string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}
}

// A thrust curve is typed and pasted point by point with its plot beside it; each change is one step to undo, what is no
// curve yet is told at its row with the last good flight kept, and undoing all gives the bytes of the start.
func TestThrustTable(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	s.press("d")
	start := s.text()
	flight := s.m.now
	require.True(t, s.m.inputs.choose(thrustInput))
	s.press("enter")
	require.NotNil(t, s.m.tabling)
	require.Contains(t, s.words(), "plover.csv")
	before := len(s.m.points().Rows)
	s.send(pasteOf("time_ms\tthrust_n\r\n0\t0\r\n50\t120,5\r\n900\t90\r\n1000\t0\r\n"))
	require.Len(t, s.m.points().Rows, 4)
	require.Contains(t, s.words(), "4 rows pasted in place of")
	require.NotSame(t, flight, s.m.now, "it flies")
	require.InDelta(t, 120.5, s.m.now.Flight.Rocket.Motor.Curve.Peak(), 1e-9)
	require.Contains(t, s.words(), "class G")
	flight = s.m.now

	s.press("end")
	for _, k := range "0.95 40" {
		s.press(string(k))
	}
	s.press("enter")
	require.Len(t, s.m.points().Rows, 5)
	require.Len(t, s.m.gaps, 1)
	require.Same(t, flight, s.m.now)
	require.Contains(t, s.m.points().Wrong[4], "does not rise above the 1 s")
	require.Contains(t, s.words(), "the time does not rise")
	s.press("up", "(")
	require.Empty(t, s.m.gaps)
	require.Equal(t, 3, s.m.tabling.at)

	s.press("+", "x", "enter") // no number: it stays open
	require.NotNil(t, s.m.tabling.typed)
	require.NotEmpty(t, s.m.tabling.wrong)
	s.checkSize()
	s.press("esc", "home", "enter")
	require.Equal(t, "0 0", s.m.tabling.typed.String())
	s.press("enter") // as it was
	require.Equal(t, 1, s.m.tabling.at)
	s.press("-", "3", " ", "7", "enter")
	require.Contains(t, s.words(), "the time is negative")
	s.press("up", "D")
	require.Len(t, s.m.points().Rows, 4)
	s.send(pasteOf("0 0\n1 2 3"))
	require.Contains(t, s.words(), "line 2, 1 2 3: 3 numbers, not 2")
	require.Len(t, s.m.points().Rows, 4, "none of it is taken")

	saved := s.text()
	_, err := rocketfile.ReadDraft("x.toml", "", []byte(saved))
	require.NoError(t, err)
	s.press("esc")
	require.Nil(t, s.m.tabling)
	require.Equal(t, thrustInput, s.m.inputs.chosen().Name)
	s.press("enter")
	for range 5 {
		require.NotEqual(t, start, s.text())
		s.press("u")
	}
	require.Equal(t, start, s.text())
	require.Len(t, s.m.points().Rows, before)
	s.press("u") // the drive
	require.NotNil(t, s.m.tabling)
	s.checkSize()
}

// Lines pasted where the guide asks for the curve are its points; a table of drag is drawn, and one of delays has the view beside it.
func TestTablesElsewhere(t *testing.T) {
	f, err := rocketfile.FromForm("bare")
	require.NoError(t, err)
	s := newScreen(t, f, 80, 24)
	s.press("i", "m", "enter")
	s.m.askThis(questionOf(t, s.m.file(), thrustInput))
	s.send(pasteOf("0,0\n0.1,50\n1,0"))
	require.NotNil(t, s.m.tabling)
	s.checkSize()
	s.press("esc")
	require.Nil(t, s.m.tabling)
	require.NotNil(t, s.m.guiding)
	require.NotEqual(t, thrustInput, s.m.guiding.name)
	s.press("esc")
	require.Equal(t, 3, s.m.file().Described().Motor.Curve.Len())

	require.True(t, s.m.inputs.choose(dragInput))
	s.send(pasteOf("Mach\tCd\n0\t0,5\n0,9\t0,6\n"))
	require.Contains(t, s.words(), "drag coefficient")
	s.press("esc")
	require.True(t, s.m.inputs.choose("motor.delays"))
	s.press("enter", "6", "enter", "8", "enter", "esc")
	require.Equal(t, []float64{6, 8}, s.m.file().Described().Motor.Delays)
	s.checkSize()
}

func questionOf(t *testing.T, f *rocketfile.File, name string) rocketfile.Question {
	t.Helper()
	for _, q := range f.Questions() {
		if q.Name == name {
			return q
		}
	}
	require.Fail(t, "not asked", name)
	return rocketfile.Question{}
}

// What a motor's name says of it is read where it is a class with an average thrust, and held against the points.
func TestDesignation(t *testing.T) {
	for name, want := range map[string]string{"H120": "H120", "Mourner H140-9": "H140", "G80T": "G80", "Heron 2": "", "I": "", "SH120": "", "P5": ""} {
		class, average, ok := designated(name)
		if want == "" {
			require.False(t, ok, name)
			continue
		}
		require.True(t, ok, name)
		require.Equal(t, want, class+strconv.Itoa(int(average)))
	}
}
