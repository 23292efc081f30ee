package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/tui/recovery"
)

// left is a screen on a file with edits that an earlier run left, as change makes them of its
// text; meanwhile tells what happens to the file afterwards.
func left(t *testing.T, change func(text string) string, meanwhile func(path, text string)) (*screen, string) {
	t.Helper()
	f, dir := copied(t), t.TempDir()
	text := string(f.Text())
	k, _, err := recovery.Open(dir, recordName(f))
	require.NoError(t, err)
	k.Note(recovery.Digest(f.Text()), []byte(change(text)))
	require.NoError(t, k.Close())
	if meanwhile != nil {
		meanwhile(f.Path(), text)
	}
	again, err := rocketfile.Open(f.Path())
	require.NoError(t, err)
	s := newScreen(t, again, 80, 24)
	s.send(s.m.findRecord(dir)())
	return s, dir
}

func filled(text, to string) string { return strings.Replace(text, "0.30", to, 1) }

// Edits are offered that are newer than the file, or were made on what it still holds, however
// it was touched since.
func TestEditsAreOffered(t *testing.T) {
	for _, meanwhile := range []func(path, text string){
		nil,
		func(path, _ string) {
			require.NoError(t, os.Chtimes(path, time.Time{}, time.Now().Add(time.Hour)))
		},
		func(path, text string) { // another change, but before the edits
			require.NoError(t, os.WriteFile(path, []byte(filled(text, "0.40")), 0o600))
			require.NoError(t, os.Chtimes(path, time.Time{}, time.Now().Add(-time.Hour)))
		},
	} {
		s, _ := left(t, func(text string) string { return filled(text, "0.33") }, meanwhile)
		require.NotNil(t, s.m.asking)
		require.Contains(t, s.m.asking.says, "were left behind")
	}
}

// What is offered names the values that were changed, uncertainties among them, and not those
// that follow from them.
func TestDifferencesAreThoseOfTheFile(t *testing.T) {
	s, _ := left(t, func(text string) string { return filled(text, "0.33") + "\n[spread]\nwater.fill = \"1 %\"\n" }, nil)
	require.NotNil(t, s.m.page, "%v", s.m.asking)
	require.Equal(t, "water.fill: 30 % to 33 %\nspread.water.fill: new, 1 %", strings.TrimSpace(strings.Join(s.m.page.write(&s.m, 80), "\n")))
}

// What was saved later is not to be undone by older edits: they are put aside.
func TestOlderEditsAreNotOffered(t *testing.T) {
	s, dir := left(t, func(text string) string { return filled(text, "0.33") }, func(path, text string) {
		require.NoError(t, os.WriteFile(path, []byte(filled(text, "0.40")), 0o600))
		require.NoError(t, os.Chtimes(path, time.Time{}, time.Now().Add(time.Minute)))
	})
	require.Nil(t, s.m.asking)
	require.Contains(t, s.m.notice.says, "are older than the file and not offered; they are in ")
	aside, err := filepath.Glob(filepath.Join(dir, "*.aside"))
	require.NoError(t, err)
	require.Len(t, aside, 1)
	text, err := os.ReadFile(aside[0])
	require.NoError(t, err)
	require.Contains(t, string(text), "0.33")
	_, none, err := recovery.Open(dir, recordName(s.m.lodged))
	require.NoError(t, err)
	require.Nil(t, none, "nor at the next start")
}

// Nothing is offered that would change no value: not for a comment, nor for a number in
// another unit.
func TestEditsThatChangeNothingAreNotOffered(t *testing.T) {
	for _, change := range []func(string) string{
		func(text string) string { return text + "# a note\n" },
		func(text string) string { return filled(text, `"30 %"`) },
	} {
		s, dir := left(t, change, nil)
		require.Nil(t, s.m.asking)
		require.Empty(t, s.m.notice.says)
		records, err := filepath.Glob(filepath.Join(dir, "*.json"))
		require.NoError(t, err)
		require.Empty(t, records)
	}
}
