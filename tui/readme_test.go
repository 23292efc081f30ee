package tui

import (
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/golden"
	"ullage/sim/rocketfile"
	"ullage/tui/plot"
)

// The screen in the README is this one: the rocket built in, its pressure two steps above
// the one kept, over the whole flight.
func TestREADMEShowsTheScreen(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	_, block, found := strings.Cut(string(text), "## The screen\n\n```\n")
	require.True(t, found)
	block, _, _ = strings.Cut(block, "```\n")

	s := newScreenIn(t, rocketfile.Starter(), plot.Braille, 80, 24, gates.Judge)
	s.press("p", "down", "right", "right", "z")
	var now strings.Builder
	for line := range strings.Lines(s.view() + "\n") {
		now.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	if golden.Updating() { // as the goldens are
		require.NoError(t, os.WriteFile("../README.md", []byte(strings.Replace(string(text), block, now.String(), 1)), 0o644))
		return
	}
	if d := diff.Diff("README.md", []byte(block), "now", []byte(now.String())); d != nil {
		t.Errorf("put what is shown now into the README\n%s", d)
	}
}
