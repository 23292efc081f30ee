package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A key or a section under a former name is refused with the new one named, in whatever
// way it is written, and whatever hangs on it is told once.
func TestFormerNames(t *testing.T) {
	tests := []struct{ name, old, new, want string }{
		{"section", "[rail]", "[mount]\npin = \"5 mm\"\n[rail]", "x.toml:31: mount: has a new name; write [recovery]"},
		{"braces", "name = \"Plain\"", "mount = { pin = \"5 mm\" }", `x.toml:1: mount = { pin = "5 mm" }: has a new name; write recovery`},
		{"dots", "name = \"Plain\"", "mount.pin = \"5 mm\"", `x.toml:1: mount: has a new name; write recovery`},
		{"body", "drag = 0.5", "drag = 0.5\nguides = \"90 mm2\"", `x.toml:8: body.guides = "90 mm2": has a new name; write rail_buttons`},
		{"no value", "drag = 0.5", "drag = 0.5\nguides = ninety", `x.toml:8: body.guides = ninety: a text without quotes; write "ninety"
x.toml:8: body.guides: has a new name; write rail_buttons`},
		{"canopy", "deploy =", "shock = 1.7\ndeploy =", `x.toml:29: canopy.main.shock = 1.7: has a new name; write opening_force_coefficient`},
		{"canopy without a name", "name = \"main\"", "shock = 1.7", `x.toml:27: canopy.1.shock = 1.7: has a new name; write opening_force_coefficient`},
		{"uncertainty", "[rail]", "[spread]\n\"canopy.main.shock\" = 0.1\n[rail]", `x.toml:32: spread.canopy.main.shock = 0.1: has a new name; write canopy.main.opening_force_coefficient`},
		{"uncertainty with dots", "[rail]", "[spread]\ncanopy.main.shock = 0.1\n[rail]", `x.toml:32: spread.canopy.main.shock = 0.1: has a new name; write canopy.main.opening_force_coefficient`},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(plain, tt.old))
			_, err := Read("x.toml", dir, []byte(strings.Replace(plain, tt.old, tt.new, 1)))
			require.EqualError(t, err, tt.want)
		})
	}
	_, err := Read("x.toml", dir, []byte(strings.Replace(shapely, "\nforward = ", "\nfore = ", 1)))
	require.ErrorContains(t, err, `section.front.fore = "70 mm": has a new name; write forward`)
}

// Flags, sweeps, studies and the screen ask for inputs by name.
func TestFormerNamesOfInputs(t *testing.T) {
	f := readIn(t, folder(t), plain)
	r := f.Rocket()
	for was, is := range map[string]string{
		"mount.pin": "recovery.pin", "mount": "recovery", "section.tail.fore": "section.tail.forward",
		"body.guides": "body.rail_buttons", "canopy.main.shock": "canopy.main.opening_force_coefficient",
	} {
		want := was + ": has a new name; write " + is
		_, err := Find(r, was)
		require.EqualError(t, err, want)
		_, err = ParseSpread(r, was, "1")
		require.EqualError(t, err, want)
		_, err = f.Set(was, "1")
		require.EqualError(t, err, want)
		_, err = f.SetValue(was, 1)
		require.EqualError(t, err, want)
		_, err = f.Reset(was)
		require.EqualError(t, err, want)
	}
}

// Every new name is one of the table of inputs, and no former one is.
func TestFormerNamesAreOfTheSchema(t *testing.T) {
	there := func(dotted string) bool {
		dotted = strings.ReplaceAll(dotted, ".*", "")
		path, key, _ := cutLast(dotted)
		return sectionAt(dotted) != nil || sectionAt(path) != nil && sectionAt(path).field(key) != nil
	}
	for _, f := range former {
		require.True(t, there(f.is), f.is)
		require.False(t, there(f.was), f.was)
	}
}
