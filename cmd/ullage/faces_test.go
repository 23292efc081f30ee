package main

import (
	"context"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every example tells the same flight wherever it is told, on each drive that it has: alone, as
// a row of a sweep, and as what an opening is planned to be.
func TestFacesTellTheSameFlight(t *testing.T) {
	files, err := filepath.Glob("../../testdata/*.toml")
	require.NoError(t, err)
	told := 0
	for _, file := range files {
		for _, power := range []string{"water", "motor"} {
			drive := []string{"--json", "--set", "power=" + power}
			if run(context.Background(), append([]string{"fly", file}, drive...), strings.NewReader(""), io.Discard, io.Discard) != statusDone {
				continue // it has no such drive, or is a motor
			}
			told++
			flown := object(t, append([]string{"fly", file}, drive...)...)
			at := file + " on " + power
			row := object(t, append([]string{"sweep", file, "body.drag_factor=1", "--set", "body.drag_factor=1"}, drive...)...)
			same := object(t, append([]string{"fly", file, "--set", "body.drag_factor=1"}, drive...)...)
			delete(row, "inputs")
			delete(row, "invalid")
			assert.Equal(t, same, row, at)

			if canopies := flown["canopies"].([]any); len(canopies) > 0 {
				opening := object(t, append([]string{"opening", file}, drive...)...)
				planned := opening["what_if"].([]any)[0].(map[string]any)
				assert.Equal(t, flown["landing"], planned["landing"], at)
				assert.Equal(t, flown["model"], opening["model"], at)
				for i, c := range planned["canopies"].([]any) {
					for key, v := range c.(map[string]any) {
						assert.Equal(t, canopies[i].(map[string]any)[key], v, "%s: %s", at, key)
					}
				}
			}
		}
	}
	require.Greater(t, told, 4)
}
