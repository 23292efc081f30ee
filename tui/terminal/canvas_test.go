package terminal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/tui/terminal/emulated"
)

const wide, high = 24, 4

// painted draws a row as themes paint them: pieces, styled or not, blanks to its width.
func painted(t *rapid.T, name string) string {
	pieces := rapid.SliceOfN(rapid.SampledFrom([]string{
		"a", "bc", "  ", "⣀", "│", "·", "\x1b[1mab\x1b[0m", "\x1b[31m⣀⡠\x1b[0m", "\x1b[1;31mx\x1b[0m", "\x1b[31m \x1b[0m", "\x1b[7m \x1b[0m",
		"\x1b[38;2;1;2;3ma b\x1b[0m", "\x1b[38;5;7m  \x1b[0m", "\x1b[4m a \x1b[0m", "\x1b[48;2;3;2;1m  b\x1b[0m",
		"日", "e\u0301", "👩‍🚀",
	}), 0, 8).Draw(t, name)
	cells, row := 0, ""
	for _, p := range pieces {
		s := emulated.New(wide, 1)
		_, _ = s.Write([]byte(p))
		cells += s.Column()
		row += p
	}
	return row + strings.Repeat(" ", wide-cells)
}

// Whatever was shown before, what is written brings the terminal to show what a blank one
// would; and no more is written than needed when a row stays as it is.
func TestCanvasShowsWhatItIsGiven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var c canvas
		now := emulated.New(wide, high)
		for range rapid.IntRange(1, 4).Draw(t, "frames") {
			rows := make([]string, high)
			for i := range rows {
				rows[i] = painted(t, "row")
			}
			_, _ = now.Write(c.paint(nil, rows, wide))
			fresh := emulated.New(wide, high)
			_, _ = fresh.Write((&canvas{}).paint(nil, rows, wide))
			require.True(t, now.Same(fresh), "%q\nshows\n%s\nnot\n%s", rows, now.Text(), fresh.Text())
			require.Empty(t, now.Unknown())
			require.Empty(t, c.paint(nil, rows, wide))
		}
	})
}

// Of a row whose number changes the number is written, with its style; of one that becomes
// shorter the rest is erased.
func TestCanvasWritesWhatDiffers(t *testing.T) {
	var c canvas
	whole := string(c.paint(nil, []string{"fill   \x1b[1m30 %\x1b[0m  ", "a long text"}, 13))
	require.True(t, strings.HasPrefix(whole, "\x1b[H\x1b[J"))
	require.Equal(t, "\x1b[1m\x1b[1;9H1\x1b[m", string(c.paint(nil, []string{"fill   \x1b[1m31 %\x1b[0m  ", "a long text"}, 13)))
	require.Equal(t, "\x1b[2;2H\x1b[K", string(c.paint(nil, []string{"fill   \x1b[1m31 %\x1b[0m  ", "a          "}, 13)))
	require.Contains(t, string(c.paint(nil, []string{"fill   \x1b[1m31 %\x1b[0m  ", "a          "}, 14)), "fill", "of another size, everything")
}

func BenchmarkCanvas(b *testing.B) {
	rows := make([][]string, 2)
	for i := range rows {
		rows[i] = make([]string, 60)
		for y := range rows[i] {
			rows[i][y] = strings.Repeat([]string{"\x1b[38;2;1;2;3m⣀⡠\x1b[0m ab ", " cd \x1b[38;2;1;2;3m⣀⡠\x1b[0m "}[i], 29)
		}
	}
	var c canvas
	var out []byte
	for i := 0; b.Loop(); i++ {
		out = c.paint(out[:0], rows[i%2], 203)
	}
}
