package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

// goodRocket flies; every row below spoils it in one way.
const goodRocket = `name = "Marsh Tern"
power = "water"

[body]
diameter = "90 mm"
mass = "0.30 kg"
drag = 0.45

[water]
volume = "2 L"
bore = "88 mm"
throat = "13 mm"
fill = 0.30
pressure = "6 bar"

[water.tube]
length = "0.25 m"
outer = "12.5 mm"
inner = "9 mm"

[motor]
curve = "tern.csv"
case = "30 g"
propellant = "20 g"

[[canopy]]
name = "main"
diameter = "0.6 m"
deploy = { water = "apogee + 1 s", motor = "burnout + 5 s" }

[rail]
length = "1 m"
`

const goodCurve = "time_s,thrust_n\n0.05,20\n0.5,12\n1.0,0\n"

// fly runs the command on a rocket and a curve in a directory of their own. The
// curve is left out when it is empty.
func fly(t *testing.T, rocket, curve string) (result, string) {
	dir := t.TempDir()
	file := filepath.Join(dir, "tern.toml")
	require.NoError(t, os.WriteFile(file, []byte(rocket), 0o644))
	if curve != "" {
		require.NoError(t, os.WriteFile(filepath.Join(dir, "tern.csv"), []byte(curve), 0o644))
	}
	return runWith(context.Background(), strings.NewReader(""), "fly", file), dir
}

func TestGoodRocketFlies(t *testing.T) {
	got, _ := fly(t, goodRocket, goodCurve)
	assert.Equal(t, statusDone, got.status, got.err)
	assert.Empty(t, got.err)
	assert.Contains(t, got.out, "Marsh Tern on water power")
}

// Each row replaces a piece of the rocket and tells what the message must name:
// the key and the value as written. The line is that of the piece.
func TestBadRocket(t *testing.T) {
	long.Unraced(t)
	for _, test := range []struct {
		name, old, new string
		key, value     string
		below          int // how many lines below the piece's first the fault is
	}{
		{"wrong unit", `"0.30 kg"`, `"0.30 m"`, "body.mass", "0.30 m", 0},
		{"no such unit", `"0.30 kg"`, `"0.30 stone"`, "body.mass", "0.30 stone", 0},
		{"bare number", `"0.30 kg"`, `0.30`, "body.mass", "0.30", 0},
		{"number without unit", `"0.30 kg"`, `"0.30"`, "body.mass", "0.30", 0},
		{"NaN", `"0.30 kg"`, `"NaN kg"`, "body.mass", "NaN kg", 0},
		{"TOML nan", `drag = 0.45`, `drag = nan`, "body.drag", "nan", 0},
		{"infinity", `"0.30 kg"`, `"Inf kg"`, "body.mass", "Inf kg", 0},
		{"TOML inf", `fill = 0.30`, `fill = inf`, "water.fill", "inf", 0},
		{"1e400", `"0.30 kg"`, `"1e400 kg"`, "body.mass", "1e400 kg", 0},
		{"bare 1e400", `fill = 0.30`, `fill = 1e400`, "water.fill", "1e400", 0},
		{"negative", `"0.30 kg"`, `"-0.30 kg"`, "body.mass", "-0.30 kg", 0},
		{"zero volume", `volume = "2 L"`, `volume = "0 L"`, "water.volume", "0 L", 0},
		{"fill above 1", `fill = 0.30`, `fill = 1.2`, "water.fill", "1.2", 0},
		{"throat wider than the bore", `throat = "13 mm"`, `throat = "95 mm"`, "water.throat", "95 mm", 0},
		{"tube fatter than the throat", `outer = "12.5 mm"`, `outer = "14 mm"`, "water.tube.outer", "14 mm", 0},
		{"tube longer than the chamber", `length = "0.25 m"`, `length = "2.5 m"`, "water.tube.length", "2.5 m", 0},
		{"bore of the tube wider than it", `inner = "9 mm"`, `inner = "13 mm"`, "water.tube.inner", "13 mm", 0},
		{"unknown key", `fill = 0.30`, `fil = 0.30`, "water.fil", "", 0},
		{"unknown section", `[rail]`, `[rial]`, "rial", "", 0},
		{"two keys", `fill = 0.30`, "fill = 0.30\nfill = 0.31", "water.fill", "", 1},
		{"two sections", `[rail]`, "[body]\n[rail]", "body", "", 0},
		{"unknown power", `power = "water"`, `power = "steam"`, "power", "steam", 0},
		{"a word for a number", `fill = 0.30`, `fill = "much"`, "water.fill", "much", 0},
		{"a list for a number", `fill = 0.30`, `fill = [0.3]`, "water.fill", "", 0},
		{"bad rule", `"apogee + 1 s"`, `"when it likes"`, "canopy.main.deploy.water", "when it likes", 0},
		{"rule without unit", `"apogee + 1 s"`, `"apogee + 1"`, "canopy.main.deploy.water", "apogee + 1", 0},
		{"bad canopy name", `name = "main"`, `name = "Main 1"`, "name", "Main 1", 0},
		{"unquoted text", `"0.30 kg"`, `0.30 kg`, "", "", 0},
		{"unclosed text", `"0.30 kg"`, `"0.30 kg`, "", "", 0},
		{"no rail and no tube", `length = "1 m"`, `length = "0 m"`, "rail.length", "0 m", 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			require.Contains(t, goodRocket, test.old)
			before, _, _ := strings.Cut(goodRocket, test.old)
			line := strings.Count(before, "\n") + 1 + test.below
			got, _ := fly(t, strings.Replace(goodRocket, test.old, test.new, 1), goodCurve)
			assert.Equal(t, statusInput, got.status)
			assert.Empty(t, got.out)
			assert.Contains(t, got.err, fmt.Sprintf("tern.toml:%d: ", line))
			assert.Contains(t, got.err, test.key)
			assert.Contains(t, got.err, test.value)
		})
	}
}

func TestBadRocketAsAWhole(t *testing.T) {
	long.Unraced(t)
	for _, test := range []struct{ name, rocket, want string }{
		{"empty", "", "empty"},
		{"blank", "\n\n# nothing\n", "add [body] with diameter, mass"},
		{"missing section", strings.Replace(goodRocket, "[body]\ndiameter = \"90 mm\"\nmass = \"0.30 kg\"\ndrag = 0.45\n", "", 1), "add [body] with diameter, mass"},
		{"missing rail and tube", strings.Replace(strings.Replace(goodRocket, "[rail]\nlength = \"1 m\"\n", "", 1),
			"[water.tube]\nlength = \"0.25 m\"\nouter = \"12.5 mm\"\ninner = \"9 mm\"\n", "", 1), "add [rail] with length"},
		{"binary", "\x7fELF\x02\x01\x01\x00\x00\xff\xfe", "tern.toml:1: "},
		{"UTF-16", "\xff\xfen\x00a\x00m\x00e\x00", "save it as UTF-8"},
		{"not TOML", "<rocket/>\n", "tern.toml:1: "},
		{"deep", strings.Repeat("a = [", 1000) + strings.Repeat("[", 100000), "tern.toml:"},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, _ := fly(t, test.rocket, goodCurve)
			assert.Equal(t, statusInput, got.status)
			assert.Empty(t, got.out)
			assert.Contains(t, got.err, "tern.toml")
			assert.Contains(t, got.err, test.want)
			for _, r := range got.err {
				assert.True(t, r == '\n' || r >= ' ' && r != 0x7f, "%q on the terminal", r)
			}
		})
	}
}

// All the faults of a file are told at once, in the order of its lines.
func TestAllFaultsAtOnce(t *testing.T) {
	bad := strings.NewReplacer(`"0.30 kg"`, `0.30`, `fill = 0.30`, `fill = 2`, `length = "1 m"`, `lenght = "1 m"`).Replace(goodRocket)
	got, _ := fly(t, bad, goodCurve)
	assert.Equal(t, statusInput, got.status)
	mass, fill, rail := strings.Index(got.err, "body.mass"), strings.Index(got.err, "water.fill"), strings.Index(got.err, "rail.lenght")
	assert.True(t, 0 < mass && mass < fill && fill < rail, got.err)
	assert.Contains(t, got.err, "perhaps length is meant", "the nearest key is suggested")
}

func TestBadCurve(t *testing.T) {
	long.Unraced(t)
	for _, test := range []struct {
		name, curve string
		line        int
		value       string
	}{
		{"time not rising", "time_s,thrust_n\n0.1,20\n0.1,12\n1.0,0\n", 3, "0.1"},
		{"time falling", "time_s,thrust_n\n0.5,20\n0.1,12\n", 3, "0.1"},
		{"one point", "time_s,thrust_n\n0.1,20\n", 0, ""},
		{"no points", "time_s,thrust_n\n", 0, ""},
		{"negative thrust", "time_s,thrust_n\n0.1,-20\n0.5,0\n", 2, "-20"},
		{"a word", "time_s,thrust_n\n0.1,much\n0.5,0\n", 2, "much"},
		{"NaN", "time_s,thrust_n\n0.1,NaN\n0.5,0\n", 2, "NaN"},
		{"1e400", "time_s,thrust_n\n0.1,1e400\n0.5,0\n", 2, "1e400"},
		{"three columns", "time_s,thrust_n\n0.1,20,3\n0.5,0\n", 2, ""},
		{"one column", "time_s,thrust_n\n0.1\n0.5,0\n", 2, "0.1"},
		{"other header", "t,F\n0.1,20\n0.5,0\n", 1, ""},
		{"binary", "\x7fELF\x02\x01\x00\xff", 1, ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, _ := fly(t, goodRocket, test.curve)
			assert.Equal(t, statusInput, got.status)
			assert.Empty(t, got.out)
			assert.Contains(t, got.err, "tern.csv")
			if test.line > 0 {
				assert.Contains(t, got.err, fmt.Sprintf("tern.csv:%d", test.line))
			}
			assert.Contains(t, got.err, test.value)
		})
	}
	t.Run("missing", func(t *testing.T) {
		got, _ := fly(t, goodRocket, "")
		assert.Equal(t, statusInput, got.status)
		assert.Empty(t, got.out)
		assert.Contains(t, got.err, "motor.curve")
		assert.Contains(t, got.err, "tern.csv")
	})
}

func TestBadFile(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{dir, filepath.Join(dir, "none.toml"), filepath.Join(dir, "none", "none.toml"), "\x00"} {
		got := runWith(context.Background(), strings.NewReader(""), "fly", name)
		assert.Equal(t, statusInput, got.status, name)
		assert.Empty(t, got.out)
		assert.NotEmpty(t, got.err)
	}
	if os.Getuid() != 0 {
		secret := filepath.Join(dir, "secret.toml")
		require.NoError(t, os.WriteFile(secret, []byte(goodRocket), 0))
		got := runWith(context.Background(), strings.NewReader(""), "fly", secret)
		assert.Equal(t, statusInput, got.status)
		assert.Contains(t, got.err, "secret.toml")
	}
}
