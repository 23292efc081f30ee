//go:build linux || darwin

package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPlotIsNoTextForATerminal(t *testing.T) {
	dir := newRocket(t)
	for _, format := range []string{"svg", "png"} {
		term := onTerminal(t, dir, "plot", "heron.toml", "--format", format)
		assert.Equal(t, statusInput, term.status())
		assert.Contains(t, term.output(), "a plot is no text to read on a terminal; give -o FILE.svg")
		assert.NotContains(t, term.output(), "<svg")
	}
}
