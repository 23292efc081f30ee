package draw

import (
	"testing"

	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"

	"ullage/tui/plot"
)

// A colour is never alone: without colours every role that says something looks
// different from plain text by its attributes.
func TestAttributesWithoutColour(t *testing.T) {
	l := NewTheme(plot.Braille, termenv.ANSI, false, AnyBackground)
	for _, r := range []Role{Dim, Strong, Focused, Entry, Caret, Caution, Bad, Asked} {
		require.NotEmpty(t, l.brushes[r].on, "role %d", r)
	}
	for r := range roles {
		require.NotContains(t, l.brushes[r].on, "3", "role %d has a colour", r)
	}
	require.Equal(t, "x", NewTheme(plot.Braille, termenv.Ascii, true, AnyBackground).Paint(Bad, "x"))
}
