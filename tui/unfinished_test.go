package tui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/tui/plot"
)

// Values that disagree may come in any order: both rows are marked, it is said in words, the last good flight stays
// and is said to be that, and the file can be saved; once they agree all of that is gone.
func TestDisagreeingValues(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	good := s.m.now
	flown := s.said()
	s.choose("water.throat")
	s.write("80")
	s.press("enter")
	require.Nil(t, s.m.typed, "it is taken")
	require.Same(t, good, s.m.now)
	require.Equal(t, flown, s.said(), "the last good flight stays")
	require.Contains(t, s.words(), "1 at odds last good flight shown")
	require.Contains(t, s.words(), "is as wide as the bore or")
	s.choose("water.bore")
	require.Equal(t, 3, strings.Count(s.words(), "at odds"), "throat and bore, and the finding")
	require.Contains(t, s.words(), "!throat at odds 80 mm")
	require.Contains(t, s.words(), "▸bore at odds")
	s.checkSize()
	s.press("f")
	require.Contains(t, s.words(), "water.throat: is as wide as the bore or wider (water.bore)")
	s.press("esc", "ctrl+s")
	require.Contains(t, s.onDisk(), "80 mm")
	_, err := rocketfile.Open(s.m.lodged.Path())
	require.ErrorContains(t, err, "water.throat", "commands refuse it")
	s.press("!")
	require.Equal(t, "water.throat", s.m.inputs.chosen().Name)
	s.write("12")
	s.press("enter")
	require.NotContains(t, s.words(), "at odds")
	require.NotSame(t, good, s.m.now)
	s.press("u")
	require.Contains(t, s.words(), "at odds")
}

// A rocket with next to nothing described opens, says what every answer takes, goes to it and can be saved; it flies as
// soon as it is all there.
func TestFromBare(t *testing.T) {
	for _, charset := range []plot.Charset{plot.Braille, plot.ASCII} {
		_, err := rocketfile.Read("bare.toml", t.TempDir(), []byte("name = \"New\"\n\n[body]\n\n[water]\n"))
		require.Error(t, err)
		f, err := rocketfile.ReadDraft("bare.toml", t.TempDir(), []byte("name = \"New\"\n\n[body]\n\n[water]\n"))
		require.NoError(t, err)
		s := newScreenIn(t, f, charset, 80, 24, noCorners)
		require.Nil(t, s.m.now)
		require.Contains(t, s.words(), "no flight yet")
		require.Contains(t, s.words(), "flight takes")
		require.Contains(t, s.words(), "chamber takes")
		for _, view := range []string{"w", "n", "o", "m", "g", "h", "j", "[", "k", "f", "esc"} {
			s.press(view)
			s.checkSize()
		}
		given := map[string]string{"body.diameter": "70", "body.mass": "0.9", "body.drag": "0.5", "rail.length": "1.8",
			"water.volume": "4", "water.bore": "68", "water.throat": "13", "water.fill": "30", "water.pressure": "9"}
		for n := 0; s.m.now == nil && n < 12; n++ {
			s.press("!")
			name := s.m.inputs.chosen().Name
			require.NotEmpty(t, given[name], name)
			require.Contains(t, s.words(), "for flight")
			s.write(given[name])
			s.press("enter")
			delete(given, name)
		}
		require.Empty(t, given)
		require.NotNil(t, s.m.now)
		require.NotContains(t, s.view(), "no flight yet")
		for range given {
			s.press("u")
		}
	}
}
