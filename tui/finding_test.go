package tui

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// An input is found by what it is called, its heading or its help; what is called so comes first; the key goes on
// to the next, round and round, and once more looks for the same again.
func TestFind(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	at := func() string { return s.m.inputs.chosen().Name }
	before := s.text()
	first := at()
	s.press("/")
	s.write("WIND")
	require.Contains(t, s.words(), "Find: WIND")
	names := map[string]bool{}
	for _, d := range s.m.inputs.fields {
		names[d.Name] = true
	}
	require.True(t, names["wind.speed"] && names["wind.from"] && names["limits.rail_exit_wind"])
	require.False(t, names["water.fill"])
	was := at()
	for range s.m.inputs.fields {
		s.press("/")
	}
	require.Equal(t, was, at(), "round and round")
	s.press("esc")
	require.Equal(t, first, at())
	require.Len(t, s.m.inputs.fields, len(s.m.inputs.all))

	s.press("/")
	s.write("compass wind")
	require.Equal(t, "wind.from", at())
	s.press("enter")
	require.Equal(t, "wind.from", at())
	s.press("home", "/", "/")
	require.Equal(t, "wind.from", at(), "the same again")
	s.press("enter")

	s.press("/")
	s.write("zeppelin")
	require.Contains(t, s.words(), "No input is called so")
	s.checkSize()
	s.press("left", "1", "enter")
	require.Equal(t, "wind.from", at())
	require.Equal(t, before, s.text(), "looking changes nothing")

	s.press("/")
	s.write("speed")
	s.press("ctrl+c")
	require.True(t, s.quit)
}

// A group that is folded opens where something in it is chosen.
func TestFoldedGroupsOpen(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("*")
	s.checkSize()
	s.press("end", "up", "home", "/")
	s.write("rail tilt")
	s.press("enter", "4", "enter")
	require.Equal(t, "rail.tilt", s.m.inputs.chosen().Name)
	require.InDelta(t, 0.0698, s.m.file().Rocket().Rail.Tilt, 1e-4)
	s.press("space")
	require.Positive(t, s.m.inputs.chosen().folded, "the heading stands where the input was")
	s.press("u")
	require.Equal(t, "rail.tilt", s.m.inputs.chosen().Name, "and undoing shows what it undid")
}

// A thrust curve is typed point by point on one line of the motor's row too, drawn beside it as it grows, and flies.
func TestThrustIsTyped(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	s.press("d", "/")
	s.write("motor.thrust")
	s.press("enter", "0")
	require.Contains(t, s.words(), "Time in s and thrust in N by turns")
	s.write(" 0, 0.05 90, 1.1 70, 1.2 0")
	require.Contains(t, s.words(), "89.8 N*s, class G; burns")
	s.checkSize()
	s.press("enter")
	require.Equal(t, 4, s.m.now.Flight.Rocket.Motor.Curve.Len())
	require.Contains(t, s.text(), `["0.05 s", "90 N"]`)
	s.press("u")
	require.Contains(t, s.text(), "plover.csv")
}
