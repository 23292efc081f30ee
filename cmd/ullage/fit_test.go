package main

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/flown"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// A rocket file that somebody changes while a fit runs keeps what they wrote.
func TestFitOfAFileThatWasChangedMeanwhile(t *testing.T) {
	text, err := os.ReadFile("../../testdata/wagtail.toml")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "wagtail.toml")
	require.NoError(t, os.WriteFile(path, text, 0o600))
	file, err := rocketfile.Open(path)
	require.NoError(t, err)
	same := func(f *rocketfile.File) (*rocketfile.File, error) { return f, nil }
	l, err := flown.Days{}.Open("../../testdata/logs/one.csv", file, flown.Told{}, same)
	require.NoError(t, err)
	inputs, err := flown.Vary(file.Rocket(), study.Spreads(file), []string{"body.drag_factor"})
	require.NoError(t, err)
	fitted, err := flown.Fit(context.Background(), []flown.Logged{l}, inputs)
	require.NoError(t, err)

	theirs := append(text, "\n# by hand\n"...)
	require.NoError(t, os.WriteFile(path, theirs, 0o600))
	err = keepFitted(file, fitted)
	require.ErrorContains(t, err, "wagtail.toml was changed by someone else since it was read, so that nothing is written; run it again")
	assert.Equal(t, statusInput, status(err))
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(theirs), string(now))

	file, err = rocketfile.Open(path)
	require.NoError(t, err)
	require.NoError(t, keepFitted(file, fitted))
	file, err = rocketfile.Open(path)
	require.NoError(t, err)
	assert.True(t, file.HasDigest(l.Log.Digest))
}
