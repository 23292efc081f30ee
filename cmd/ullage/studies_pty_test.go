//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"testing"

	"ullage/sim/long"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A long study on a terminal shows how far it is, and an interrupt from the keyboard
// keeps what there is.
func TestProgressOnATerminal(t *testing.T) {
	dir := newRocket(t)
	term := onTerminal(t, dir, "sweep", "heron.toml", endlessSweep, "--csv", "-o", "fill.csv")
	mark := term.waitFor(0, "900000 flights; an interrupt keeps those flown")
	term.waitFor(mark, " of 900000 flights, ")
	term.press("\x03")
	assert.Equal(t, statusInterrupted, term.status())
	assert.Contains(t, term.output(), "ullage: interrupted; fill.csv is partial: it holds what there was by then")
	assert.NotContains(t, term.output(), "\x1b", "no control sequence but the carriage return")
	text, err := os.ReadFile(filepath.Join(dir, "fill.csv"))
	require.NoError(t, err)
	assert.Contains(t, string(text), "water.fill,apogee_m")
}

// Rows that come to the terminal are not drawn over.
func TestNoProgressAmongRows(t *testing.T) {
	flights := long.Of("3000", "8000") // long enough for a bar to come
	term := onTerminal(t, newRocket(t), "sweep", "heron.toml", "water.fill=0.2..0.4/"+flights, "--csv")
	assert.Equal(t, statusDone, term.status())
	assert.NotContains(t, term.output(), "flights, ")
	assert.Contains(t, term.output(), "0.4,")
}
