package draw

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFitted(t *testing.T) {
	for _, c := range []struct {
		in   string
		w    int
		want string
	}{
		{"short", 8, "short   "},
		{"exactly8", 8, "exactly8"},
		{"two words here", 11, "two words… "},
		{"two words here", 10, "two words…"},
		{"two words, here", 12, "two words…  "},
		{"oneverylongword", 6, "onever"[:5] + "…"},
		{"雪雪雪雪", 5, "雪雪…"},
		{"雪雪雪雪", 4, "雪… "},
		{"x", 0, ""},
	} {
		require.Equal(t, c.want, fitted(c.in, c.w, "…"), "%q in %d", c.in, c.w)
	}
}

func TestFittedIsAsWideAsAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(rapid.StringN(0, 40, -1).Draw(t, "s"))
		w := rapid.IntRange(0, 30).Draw(t, "w")
		require.Equal(t, w, Width(fitted(s, w, "…")))
	})
}

func TestWrapped(t *testing.T) {
	require.Equal(t, []string{"a bb", "ccc", "dddd", "d"}, Wrapped("a bb  ccc ddddd", 4))
	require.Empty(t, Wrapped("", 4))
	require.Empty(t, Wrapped("a", 0))
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(rapid.StringN(0, 60, -1).Draw(t, "s"))
		w := rapid.IntRange(1, 30).Draw(t, "w")
		lines := Wrapped(s, w)
		for _, l := range lines {
			require.LessOrEqual(t, Width(l), max(w, 2), "%q", l)
		}
	})
}

func TestClean(t *testing.T) {
	require.Equal(t, "ab c", Clean("a\x1bb\nc\x00\u202e\u200b"))
	require.Equal(t, "[2Jx", Clean("\x1b[2Jx"))
	require.Equal(t, "ok", Clean("o\xffk"))
}

func TestASCII(t *testing.T) {
	require.Equal(t, "left 3 deg >= x - y", ASCII("← 3 ° ≥ x · y"))
	require.Equal(t, "??ok?", ASCII("雪okλ"))
	rapid.Check(t, func(t *rapid.T) {
		for _, r := range ASCII(rapid.String().Draw(t, "s")) {
			require.Less(t, r, rune(utf8.RuneSelf))
		}
	})
}
