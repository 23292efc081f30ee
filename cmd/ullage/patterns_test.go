package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// What the screen writes is what the command writes; a file that is there is kept, with every other.
func TestPatternsFromTheScreen(t *testing.T) {
	f, err := rocketfile.Open("../../testdata/bottle.toml")
	require.NoError(t, err)
	s := &streams{ctx: t.Context()}
	folder := filepath.Join(t.TempDir(), "drawn")
	write, err := s.patternWriter(f.Rocket(), quantity.Metric, folder)
	require.NoError(t, err)
	require.NoDirExists(t, folder, "nothing is written before it is run")
	says, err := write(t.Context())
	require.NoError(t, err)
	require.Contains(t, says, "written to "+folder)
	var there []string
	for _, form := range []string{"*.pdf", "*.svg"} {
		all, err := filepath.Glob(filepath.Join(folder, form))
		require.NoError(t, err)
		require.NotEmpty(t, all)
		there = append(there, all...)
	}
	for _, path := range there[1:] {
		require.NoError(t, os.Remove(path))
	}
	_, err = s.patternWriter(f.Rocket(), quantity.US, folder)
	require.ErrorContains(t, err, filepath.Base(there[0])+" is there and is kept")
	_, err = s.patternWriter(f.Rocket(), quantity.Metric, there[0])
	require.ErrorContains(t, err, "is a file; give the name of a folder")
}
