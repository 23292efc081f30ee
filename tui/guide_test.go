package tui

import (
	"os"
	"path/filepath"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/plot"
)

// heronTyped is what a user types for the dual airframe of the examples from nothing, question by question: "" takes
// what is offered, or leaves open what the file of the example does not give either. Every character is a key, and so
// is each enter after it.
var heronTyped = []string{
	"b", "69.4", "1520", "68", "4.2", "e", // drives, body, chamber
	"163", "3", "", "", "150", "1", "u", "90", "", // plies, and no more of them
	"35", "240", "140", "30",
	"e", "1.6", "30", "200", "6", "", "", "", "200", "6", ".2", "20", "2", "5", // closures
	"13", "1440", "95", "46", "14", "6", "36", "2", "10", "240", "240", "34", "20", // nozzle
	"", "140", "70", "97", "80", "3", "a", "1375", "4.5", // fins
	"v", "230", "20", "", // nose and paint; nothing is said of the rail buttons
	".62", "1m", // on the scales and on an edge
	"1", "", "", "4", "200", "15", "8", "1200", "3", "15", "60", // canopy and what holds it
	"", "10", "e", "16", "9-12", "6", // fill, pressure, burst and proof
	"", "", "", "25", "52", "15", // the motor beside the file, its mount and retainer, the sealed chamber ahead of it
	"2.2", "3", "1000", "1300", // the site
}

// From nothing to a go card on the screen alone in under 250 keys, for the dual airframe of the examples on both drives:
// the proof is typed, and what is offered states nothing about strength, proof, balance or mass.
func TestFromBareToAGoCard(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"h-trainer.toml", "h-trainer.csv"} {
		text, err := os.ReadFile(filepath.Join("..", "testdata", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o600))
	}
	bare, err := rocketfile.FromForm("bare")
	require.NoError(t, err)
	f, err := bare.SaveAs(filepath.Join(dir, "new.toml"), false) // ullage new --from bare new.toml
	require.NoError(t, err)
	s := newScreenIn(t, f, plot.Braille, 80, 24, noCorners)
	keys := 0
	press := func(k tea.Msg) { keys++; s.send(k) }
	press(runes("i"))
	for i, text := range heronTyped {
		require.NotNil(t, s.m.guiding, "over before answer %d, %q", i, text)
		was := s.m.guiding.name
		for _, r := range text {
			press(runes(string(r)))
		}
		press(keyNamed("enter"))
		if s.m.guiding != nil {
			require.Empty(t, s.m.guiding.wrong, "%s: %q", was, text)
		}
		if i%9 == 0 {
			s.checkSize()
		}
	}
	require.Nil(t, s.m.guiding, "asks on for %v", s.m.guiding)
	press(keyNamed("ctrl+s"))
	t.Logf("%d keys", keys)
	require.Less(t, keys, 250)
	require.NotNil(t, s.m.now)

	made, err := rocketfile.Open(filepath.Join(dir, "new.toml"))
	require.NoError(t, err)
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		r := made.Rocket()
		r.Power = power
		require.Empty(t, r.Check(rocket.ForCard))
		v, err := gates.Judge(t.Context(), r, gates.Options{Today: s.m.clock(), Spreads: study.Spreads(made), Respread: study.Respread(made)})
		require.NoError(t, err)
		for i := range v.Checks {
			c := &v.Checks[i]
			require.True(t, v.Cornered)
			require.True(t, c.Judged && !c.Fails(), "%s on %s: %s", c.Name, power, c.Word)
		}
		require.True(t, v.Pass(), power)
	}
}
