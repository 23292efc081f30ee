package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The motor's file and curve are rows: a path is completed from the rocket's folder, of files that can be meant, another
// is taken with one key, one that is none stays typed with what is wrong, and each is one step to undo.
func TestMotorFileIsARow(t *testing.T) {
	f := copied(t)
	dir := filepath.Dir(f.Path())
	text := "curve = \"plover.csv\"\ncase = \"100 g\"\npropellant = \"90 g\"\ndelay = \"7 s\"\n"
	require.NoError(t, os.Mkdir(filepath.Join(dir, "mötors"), 0o700))
	for _, name := range []string{"lapwing.toml", "linnet.toml", "linnet.md"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	s := newScreen(t, f, 80, 24)
	s.press("d")
	start := s.text()
	require.True(t, s.m.inputs.choose(motorFileInput))
	require.Contains(t, s.words(), "none")
	s.press("enter")
	s.write("l")
	s.press("tab")
	require.Contains(t, s.words(), "lapwing.toml linnet.toml")
	require.NotContains(t, s.words(), "linnet.md")
	s.write("i")
	s.press("enter")
	require.NotNil(t, s.m.typed, "there is no such file")
	require.Contains(t, s.words(), "there is no such file")
	s.press("tab", "enter")
	require.Contains(t, s.text(), `file = "linnet.toml"`)
	require.NotContains(t, s.text(), "propellant")
	require.InDelta(t, 0.09, s.m.now.Flight.Rocket.Motor.Propellant, 1e-12)
	s.press("left")
	require.Equal(t, "lapwing.toml", s.m.inputs.chosen().words)
	s.press("right", "right")
	require.Equal(t, "lapwing.toml", s.m.inputs.chosen().words, "and round again")
	s.checkSize()
	require.True(t, s.m.inputs.choose("motor.curve"))
	s.press("enter")
	for range len("plover.csv") {
		s.press("backspace")
	}
	s.write("none.csv")
	s.press("enter")
	require.Contains(t, s.words(), "there is no such file")
	s.press("esc")
	for range 4 {
		s.press("u")
	}
	require.Equal(t, start, s.text())
	require.Contains(t, s.words(), "Undone: file none to linnet.toml.")
	_, names := completedIn(dir, "m")
	require.Equal(t, []string{"mötors" + string(filepath.Separator)}, names)
}

// Whatever a file may have can be added, found, and taken out on the screen: also what is listed only where it is stated.
func TestEverySectionIsAdded(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	start := strings.TrimSpace(s.text())
	for _, a := range s.m.file().Additions() {
		s.m.addPart(a.Path)
		s.m.refill()
		require.NotEmpty(t, a.Help, a.Path)
		require.NotEqual(t, start, strings.TrimSpace(s.text()), a.Path)
		name := s.m.inputs.chosen().Name
		require.True(t, strings.HasPrefix(name, a.Path+".") || s.m.notice.says != "", "%s: %s", a.Path, name)
		s.press("u")
		require.Equal(t, start, strings.TrimSpace(s.text()), a.Path)
	}
	s.m.addPart("seal")
	s.m.refill()
	require.Equal(t, "seal.cord", s.m.inputs.chosen().Name)
	s.press("3", "enter")
	require.Contains(t, s.text(), `cord = "3 mm"`)
	s.press("D")
	require.Equal(t, start, strings.TrimSpace(s.text()))
	require.True(t, s.m.inputs.choose("water.fill"))
	s.press("+")
	s.write("unc")
	s.press("enter", "1", "enter")
	require.Contains(t, s.text(), "[spread]")
	s.checkSize()
}

// A name is completed as the last word, by what it begins with, else by what stands in it.
func TestCompletedName(t *testing.T) {
	all := []string{"apogee.height", "apogee.time", "landing.drift", "max.speed"}
	for text, want := range map[string]string{
		"ap": "apogee.", "least lan": "least landing.drift", "drift": "landing.drift", "least drift": "least landing.drift",
		"apogee.h": "apogee.height", "y": "y", "x": "max.speed", "": "", "e": "e",
	} {
		line, names := completedName(text, all)
		require.Equal(t, want, line, "%q %v", text, names)
	}
	_, names := completedName("e", all)
	require.Len(t, names, 3, "all in which it stands are offered")
}
