package terminal

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseBackground(t *testing.T) {
	for _, c := range []struct {
		in        string
		light, ok bool
	}{
		{"rgb:1818/1818/1818", false, true},
		{"rgb:ffff/ffff/ffff", true, true},
		{"rgb:f/f/e", true, true},
		{"rgb:ff/ff", false, false},
		{"rgb:xx/ff/ff", false, false},
		{"rgba:1/1/1", false, false},
		{"rgb:12345/1/1", false, false},
		{"", false, false},
	} {
		light, ok := parseBackground(c.in)
		require.Equal(t, c.ok, ok, c.in)
		require.Equal(t, c.light, light, c.in)
	}
}

func TestGuessBackground(t *testing.T) {
	for value, want := range map[string][2]bool{
		"": {}, "15;0": {false, true}, "0;15": {true, true}, "0;default;7": {true, true},
		"0;8": {false, true}, "x;y": {}, "7;99": {}, "7": {},
	} {
		t.Setenv("COLORFGBG", value)
		light, ok := GuessBackground()
		require.Equal(t, want, [2]bool{light, ok}, value)
	}
}
