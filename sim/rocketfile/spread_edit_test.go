package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func spreadBy(t *testing.T, f *File, input string) float64 {
	t.Helper()
	for _, s := range f.Spreads() {
		if s.Input.Name == input {
			return s.SD
		}
	}
	t.Fatalf("no spread of %s", input)
	return 0
}

func TestSetSpread(t *testing.T) {
	base := string(Starter().Text())
	for name, end := range map[string]string{
		"none":    "",
		"there":   "\n[spread]\nbody.drag_factor = 0.2 # guessed\n\"wind.speed\" = \"1 m/s\"\n",
		"quoted":  "\n[spread]\n\"body.drag_factor\" = 0.2\n",
		"headed":  "\n[spread.wind]\nspeed = \"1 m/s\"\n",
		"braces":  "\n[spread]\nbody = { drag_factor = 0.2 }\n",
		"windows": "\r\n[spread]\r\nbody.drag_factor = 0.2\r\n",
	} {
		t.Run(name, func(t *testing.T) {
			f, err := Read("x.toml", ".", []byte(withoutSpread(base)+end))
			require.NoError(t, err)
			g, err := f.SetSpread("body.drag_factor", 0.01234, "fitted to a log (sha256:0123456789abcdef)")
			require.NoError(t, err)
			assert.InDelta(t, 0.012, spreadBy(t, g, "body.drag_factor"), 1e-12)
			assert.Contains(t, string(g.Text()), "# fitted to a log (sha256:0123456789abcdef)")
			assert.True(t, g.HasDigest("0123456789abcdef0000"))
			assert.False(t, g.HasDigest("1123456789abcdef0000"))
			assert.False(t, f.HasDigest("0123456789abcdef0000"))
			g, err = g.SetSpread("rail.tilt", 0.02, "")
			require.NoError(t, err)
			assert.InDelta(t, 0.02, spreadBy(t, g, "rail.tilt"), 0.001)
			if strings.Contains(end, "wind") {
				assert.InDelta(t, 1, spreadBy(t, g, "wind.speed"), 0)
			}
			_, err = f.SetSpread("body.no_such", 1, "")
			assert.Error(t, err)
			_, err = f.SetSpread("body.drag_factor", -1, "")
			assert.Error(t, err)
		})
	}
}

func withoutSpread(text string) string {
	before, _, _ := strings.Cut(text, "\n[spread]")
	return before + "\n"
}

func TestSettled(t *testing.T) {
	f := Starter()
	assert.InDelta(t, 0.931, f.Settled("body.drag_factor", 0.93123, 0.012), 1e-12)
	assert.InDelta(t, 0.9312, f.Settled("body.drag_factor", 0.93123, 0.0012), 1e-12)
	assert.InDelta(t, 0.93123, f.Settled("body.drag_factor", 0.93123, 0), 0)
}
