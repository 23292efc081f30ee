package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// The rocket is drawn once for each look that it has, within the columns that there are, as plain text.
func TestGrowing(t *testing.T) {
	f, err := rocketfile.FromForm("bare")
	require.NoError(t, err)
	f = f.Draft()
	answered := func(input, value string) {
		f, err = f.Set(input, value)
		require.NoError(t, err)
	}
	for charset, own := range map[string]string{"braille": "⠉", "block": "▀", "ascii": "'"} {
		var out bytes.Buffer
		g, err := (&streams{err: &out}).growing(charset)
		require.NoError(t, err)
		g.columns = 60
		f, err = rocketfile.FromForm("bare")
		require.NoError(t, err)
		f = f.Draft()
		g.show(f)
		require.Empty(t, out.String(), "nothing is known yet")
		answered("body.diameter", "70 mm")
		answered("body.length", "900 mm")
		g.show(f)
		first := out.String()
		require.Contains(t, first, own)
		require.Contains(t, first, "from the tip")
		require.Equal(t, charset == "ascii", draw.IsASCII(first))
		answered("body.mass", "0.6 kg")
		g.show(f)
		require.Equal(t, first, out.String(), "it looks the same")
		answered("body.length", "500 mm")
		g.show(f)
		require.Greater(t, out.Len(), len(first))
		for _, row := range strings.Split(out.String(), "\n") {
			require.Less(t, utf8.RuneCountInString(row), g.columns)
			require.NotContains(t, row, "\x1b")
		}
		g.columns, g.last = 20, ""
		before := out.Len()
		g.show(f)
		require.Equal(t, before, out.Len(), "no room")
	}
	var out bytes.Buffer
	g, err := (&streams{err: &out}).growing("")
	require.NoError(t, err)
	g.show(f)
	require.Empty(t, out.String(), "into a pipe only where it is asked for")
}
