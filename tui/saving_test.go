package tui

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
)

func TestSaveAs(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	dir := t.TempDir()
	first := s.m.lodged.Path()
	s.press("right", "S", "ctrl+u")
	s.write(filepath.Join(dir, "other"))
	s.press("enter")
	path := filepath.Join(dir, "other.toml")
	require.FileExists(t, path)
	require.FileExists(t, filepath.Join(dir, "plover.csv"), "its curve goes with it")
	require.Equal(t, path, s.m.lodged.Path())
	require.False(t, s.m.unsaved())

	// What is undone now belongs to the new file, too.
	s.press("u")
	require.True(t, s.m.unsaved())
	s.press("ctrl+s")
	require.False(t, s.m.unsaved())
	saved, err := os.ReadFile(path)
	require.NoError(t, err)
	untouched, err := os.ReadFile(first)
	require.NoError(t, err)
	require.Equal(t, string(untouched), string(saved))
	s.press("U", "u")
	require.False(t, s.m.unsaved())

	// A file that is there is not replaced without asking.
	s.press("right", "S", "ctrl+u")
	s.write(first)
	s.press("enter")
	require.Contains(t, s.view(), "exists")
	after, err := os.ReadFile(first)
	require.NoError(t, err)
	require.Equal(t, string(untouched), string(after))
	s.press("w")
	require.Equal(t, first, s.m.lodged.Path())
	require.Contains(t, s.onDisk(), "31")
}

func TestSaveAsRules(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	dir := t.TempDir()
	for _, c := range []struct{ typed, says string }{
		{"", "missing"}, {"   ", "missing"}, {"..", "folder"}, {dir + "/", "folder"}, {dir + "/no/", "missing"}, {dir, "folder"},
		{filepath.Join(dir, "no", "such", "folder.toml"), "no folder"},
	} {
		s.press("S", "ctrl+u")
		s.write(c.typed)
		s.press("enter")
		require.Contains(t, s.words(), c.says, "%q", c.typed)
		require.NotNil(t, s.m.asking, "%q", c.typed)
		s.press("esc")
	}
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Empty(t, left)
}

func TestStarterAsksForAName(t *testing.T) {
	s := newScreen(t, rocketfile.Starter(), 80, 24)
	require.False(t, s.m.unsaved())
	s.press("right", "ctrl+s")
	require.Contains(t, s.view(), "Save as: twin-heron.toml")
	s.press("ctrl+u")
	s.write(filepath.Join(t.TempDir(), "mine.toml"))
	s.press("enter")
	require.Nil(t, s.m.asking)
	require.False(t, s.m.unsaved())
	require.Contains(t, s.view(), "mine.toml")
	s.press("right", "ctrl+s")
	require.False(t, s.m.unsaved())
}

func TestFileName(t *testing.T) {
	for in, want := range map[string]string{
		"Twin Heron": "twin-heron.toml", "": "rocket.toml", "../../x": "x.toml", "---": "rocket.toml", "Ångström 2": "ångström-2.toml",
		"a\x1b[2Jb": "a2jb.toml",
	} {
		require.Equal(t, want, fileName(in))
	}
}

func TestQuitAndStay(t *testing.T) {
	s := newScreen(t, copied(t), 80, 24)
	s.press("right", "q", "esc")
	require.False(t, s.quit)
	require.Nil(t, s.m.asking)
	s.press("right")
	require.Equal(t, "32 %", s.value())
}

// Saving on the way out goes on to quit even when it has to ask first, and
// staying on the way takes that back.
func TestQuitThroughAName(t *testing.T) {
	s := newScreen(t, rocketfile.Starter(), 80, 24)
	s.press("right", "q", "s", "esc", "ctrl+s", "ctrl+u")
	s.write(filepath.Join(t.TempDir(), "a"))
	s.press("enter")
	require.False(t, s.quit, "the first answer was taken back")

	s = newScreen(t, rocketfile.Starter(), 80, 24)
	s.press("right", "q", "s", "ctrl+u")
	s.write(filepath.Join(t.TempDir(), "a"))
	s.press("enter")
	require.True(t, s.quit)
}
