//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/flown/logbook"
)

// On a terminal record asks for what is missing, and again for what is wrong; what is told is not asked for.
func TestRecordAsksOnATerminal(t *testing.T) {
	dir := newRocket(t)
	term := onTerminal(t, dir, "record", "heron.toml", "proof", "held=300 s", "--date", "2026-05-17")
	at := term.waitFor(0, "pressure (greatest gauge pressure): ")
	term.press("\r")
	at = term.waitFor(at, "its pressure is missing; write it as in 9 bar")
	term.press("0 bar\r")
	at = term.waitFor(at, "its pressure is missing")
	term.press("16\r")
	at = term.waitFor(at, "has no unit; write")
	term.press("16 bar\r")
	at = term.waitFor(at, "wall_temperature (of the chamber's wall; empty for none): ")
	term.press("15 degC\r")
	at = term.waitFor(at, "damage (what was found damaged; empty for none): ")
	term.press("\r")
	at = term.waitFor(at, "note (anything else; empty for none): ")
	term.press("wet grass\r")
	term.waitFor(at, "proof of 2026-05-17 added")
	assert.Equal(t, statusDone, term.status())
	assert.NotContains(t, term.output(), "held (")
	path := filepath.Join(dir, "heron.logbook.toml")
	book, err := logbook.Open(path)
	require.NoError(t, err)
	require.Len(t, book.Entries, 1)
	e := book.Entries[0]
	assert.InDelta(t, 16e5, e.Pressure, 1e-6)
	assert.InDelta(t, 288.15, e.WallTemperature, 1e-9)
	assert.Equal(t, "wet grass", e.Note)

	// An interrupt ends it, and nothing is entered; the end of the answers enters what there is.
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	term = onTerminal(t, dir, "record", "heron.toml", "flight")
	at = term.waitFor(0, "landing (")
	term.press("-5 m/s\r")
	at = term.waitFor(at, "negative; give a figure that is not")
	term.press("\x03")
	term.waitFor(at, "ullage: interrupted")
	assert.Equal(t, statusInterrupted, term.status())
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(before), string(after))
	term = onTerminal(t, dir, "record", "heron.toml", "flight", "landing=5 m/s")
	term.waitFor(0, "damage (")
	term.press("\x04")
	assert.Equal(t, statusDone, term.status())
	book, err = logbook.Open(path)
	require.NoError(t, err)
	assert.Len(t, book.Entries, 2)
}
