//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The screen opens with a log, fits it and keeps what it learned; what is no file is refused.
func TestScreenWithALog(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"wagtail.toml", "logs/one.csv"} {
		text, err := os.ReadFile(filepath.Join("../../testdata", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, filepath.Base(name)), text, 0o600))
	}
	term := onTerminal(t, dir, "wagtail.toml", "--log", "one.csv")
	at := term.waitFor(0, "lift-off 12.36 s")
	require.NoError(t, os.Remove(filepath.Join(dir, "one.csv"))) // it is read; what is shown stays
	term.press("b")
	at = term.waitFor(at, "Fit to one.csv")
	term.press("k")
	at = term.waitFor(at, "undo brings back what it had")
	term.press("\x13")
	term.waitFor(at, "Saved to wagtail.toml")
	term.press("q")
	assert.Equal(t, statusDone, term.status())
	after, err := os.ReadFile(filepath.Join(dir, "wagtail.toml"))
	require.NoError(t, err)
	assert.Contains(t, string(after), "drag_factor fitted on ")

	require.NoError(t, syscall.Mkfifo(filepath.Join(dir, "pipe.csv"), 0o600))
	for args, says := range map[[2]string]string{
		{"--log", "none.csv"}:    "none.csv: there is no such file",
		{"--log", "pipe.csv"}:    "it is not a plain file",
		{"--log", "."}:           "it is a folder",
		{"--rate", "20 Hz"}:      "give --log FILE too",
		{"--column", "height=2"}: "give --log FILE too",
	} {
		term := onTerminal(t, dir, "wagtail.toml", args[0], args[1])
		assert.Equal(t, statusInput, term.status(), args)
		assert.Contains(t, term.output(), says)
	}
}
