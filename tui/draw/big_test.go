package draw

import (
	"testing"

	"github.com/muesli/termenv"
	"github.com/stretchr/testify/require"

	"ullage/tui/plot"
)

// Letters in every size are as wide as they say, and capitals five rows for each cell of a dot.
func TestBigLetters(t *testing.T) {
	for _, charset := range []plot.Charset{plot.Braille, plot.ASCII} {
		sizes := BigLetters(NewTheme(charset, termenv.Ascii, false, AnyBackground), 11)
		require.Len(t, sizes, 4)
		for i, b := range sizes {
			rows := b.Rows("GO 95")
			require.Len(t, rows, []int{9, 9, 5, 5}[i])
			for _, row := range rows {
				require.Equal(t, b.Width("GO 95"), Width(row))
				require.True(t, charset != plot.ASCII || IsASCII(row))
			}
			require.Greater(t, len(b.Rows("psi")), len(rows), "what hangs below the line has room")
		}
	}
	small := BigLetters(NewTheme(plot.Block, termenv.Ascii, false, AnyBackground), 5)[1]
	require.Equal(t, []string{"   ▄█ ", " ▄▀ █ ", "█   █ ", "▀▀▀▀█▀", "    ▀ "}, small.Rows("4"))
	require.Empty(t, BigLetters(NewTheme(plot.Block, termenv.Ascii, false, AnyBackground), 3))
}

// Black on white, whatever the terminal: by colours, by reverse video where there are none, by nothing in plain text.
func TestSunlit(t *testing.T) {
	for _, bg := range []Background{AnyBackground, DarkBackground, LightBackground} {
		theme := NewTheme(plot.Block, termenv.TrueColor, true, bg)
		require.Equal(t, "\x1b[38;2;0;0;0;48;2;255;255;255mx\x1b[0m", theme.Paint(Sunlit, "x"))
		require.Equal(t, "\x1b[1;38;2;255;255;255;48;2;0;0;0mx\x1b[0m", theme.Paint(SunlitReverse, "x"))
	}
	require.Equal(t, "\x1b[30;107mx\x1b[0m", NewTheme(plot.Block, termenv.ANSI, true, AnyBackground).Paint(SunlitStrong, "x"))
	without := func(bg Background) *Theme { return NewTheme(plot.Block, termenv.ANSI, false, bg) }
	require.Equal(t, "\x1b[7mx\x1b[0m", without(AnyBackground).Paint(Sunlit, "x"))
	require.Equal(t, "x", without(LightBackground).Paint(Sunlit, "x"))
	require.Equal(t, "\x1b[1mx\x1b[0m", without(DarkBackground).Paint(SunlitReverse, "x"))
	require.Equal(t, "\x1b[1;7mx\x1b[0m", without(LightBackground).Paint(SunlitReverse, "x"))
	require.Equal(t, "x", NewTheme(plot.Block, termenv.Ascii, false, AnyBackground).Paint(SunlitReverse, "x"))
}
