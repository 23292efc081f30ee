package tui

import (
	"testing"

	"ullage/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestParseBackground(t *testing.T) {
	for _, c := range []struct {
		in   string
		want draw.Background
		ok   bool
	}{
		{"rgb:1818/1818/1818", draw.DarkBackground, true},
		{"rgb:ffff/ffff/ffff", draw.LightBackground, true},
		{"rgb:f/f/e", draw.LightBackground, true},
		{"rgb:ff/ff", draw.AnyBackground, false},
		{"rgb:xx/ff/ff", draw.AnyBackground, false},
		{"rgba:1/1/1", draw.AnyBackground, false},
		{"rgb:12345/1/1", draw.AnyBackground, false},
		{"", draw.AnyBackground, false},
	} {
		got, ok := parseBackground(c.in)
		require.Equal(t, c.ok, ok, c.in)
		require.Equal(t, c.want, got, c.in)
	}
}

func TestGuessBackground(t *testing.T) {
	for value, want := range map[string]draw.Background{
		"": draw.AnyBackground, "15;0": draw.DarkBackground, "0;15": draw.LightBackground, "0;default;7": draw.LightBackground,
		"0;8": draw.DarkBackground, "x;y": draw.AnyBackground, "7;99": draw.AnyBackground,
	} {
		t.Setenv("COLORFGBG", value)
		require.Equal(t, want, guessBackground(), value)
	}
}

// However the bytes are cut into reads, what is typed comes through whole and
// in order, and the answer is found.
func TestAnswerFilter(t *testing.T) {
	const answer, bell = "\x1b]11;rgb:ffff/ffff/ffff\x1b\\", "\x1b]11;rgb:0000/0000/0000\a"
	for _, c := range []struct{ in, want string }{
		{answer, ""},
		{"ab" + answer + "cd", "abcd"},
		{"q" + bell + "\x1b[A", "q\x1b[A"},
		{"\x1b[A\x1b[1;2D" + answer, "\x1b[A\x1b[1;2D"},
		{"\x1b", "\x1b"},
		{"x\x1by", "x\x1by"},
		{"\x1b\x1b" + answer, "\x1b\x1b"},
	} {
		var found []draw.Background
		f := answerFilter{found: func(b draw.Background) { found = append(found, b) }}
		require.Equal(t, c.want, string(f.pass([]byte(c.in))), "%q", c.in)
		require.Len(t, found, map[bool]int{true: 1}[len(c.in) > len(c.want)], "%q", c.in)
	}

	rapid.Check(t, func(t *rapid.T) {
		before := rapid.StringMatching(`([a-z]|\x1b\[[ABCD]){0,6}`).Draw(t, "before")
		after := rapid.StringMatching(`([a-z]|\x1b\[[ABCD]){0,6}`).Draw(t, "after")
		in, out := []byte(before+answer+after), []byte{}
		found := 0
		f := answerFilter{found: func(draw.Background) { found++ }}
		for len(in) > 0 {
			n := rapid.IntRange(1, len(in)).Draw(t, "read")
			if in[n-1] == '\x1b' { // terminals write a sequence at once
				n = min(n+2, len(in))
			}
			out = append(out, f.pass(in[:n])...)
			in = in[n:]
		}
		require.Equal(t, before+after, string(out))
		require.Equal(t, 1, found)
	})
}

// An answer without an end is no answer: it is given back.
func TestAnswerFilterGivesUp(t *testing.T) {
	f := answerFilter{found: func(draw.Background) {}}
	long := "\x1b]11;" + string(make([]byte, 2*longestAnswer))
	require.Equal(t, long, string(f.pass([]byte(long))))
}
