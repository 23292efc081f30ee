package viewtest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// at is a path in the module, from where the test runs.
func at(t testing.TB, path ...string) string {
	t.Helper()
	here, err := os.Getwd()
	require.NoError(t, err)
	for top := here; ; top = filepath.Dir(top) {
		if _, err := os.Stat(filepath.Join(top, "go.mod")); err == nil {
			out, err := filepath.Rel(here, filepath.Join(append([]string{top}, path...)...))
			require.NoError(t, err)
			return out
		}
		require.NotEqual(t, filepath.Dir(top), top, "no go.mod above the test")
	}
}

// Plover is the rocket of the screen's tests: on water or a motor, without a shape.
func Plover(t testing.TB) *rocketfile.File {
	t.Helper()
	return open(t, "tui", "testdata", "plover.toml")
}

// Heron is a rocket with everything described.
func Heron(t testing.TB) *rocketfile.File {
	t.Helper()
	return open(t, "testdata", "heron.toml")
}

// Wagtail is the rocket of the made-up logs, as its builder guessed it.
func Wagtail(t testing.TB) *rocketfile.File {
	t.Helper()
	return open(t, "testdata", "wagtail.toml")
}

// Log is the path of a made-up log of Wagtail.
func Log(t testing.TB, name string) string {
	t.Helper()
	return at(t, "testdata", "logs", name)
}

func open(t testing.TB, path ...string) *rocketfile.File {
	t.Helper()
	f, err := rocketfile.Open(at(t, path...))
	require.NoError(t, err)
	return f
}

// With is Plover with some values changed.
func With(t testing.TB, changes ...rocketfile.Change) *rocketfile.File {
	t.Helper()
	f, err := Plover(t).SetAll(changes...)
	require.NoError(t, err)
	return f
}

// Rewritten is a file with its text changed.
func Rewritten(t testing.TB, f *rocketfile.File, change func(text string) string) *rocketfile.File {
	t.Helper()
	out, err := f.WithText([]byte(change(string(f.Text()))))
	require.NoError(t, err)
	return out
}

// Waterless is Plover with its motor alone.
func Waterless(t testing.TB) *rocketfile.File {
	t.Helper()
	return Rewritten(t, Plover(t), func(text string) string {
		before, rest, _ := strings.Cut(text, "[water]")
		_, after, _ := strings.Cut(rest, "[motor]")
		text = strings.Replace(before, `"water"`, `"motor"`, 1) + "[motor]" + after
		return strings.Replace(text, `water = "apogee + 1 s", `, "", 1)
	})
}

// Windy is Heron on a day of so much wind.
func Windy(t testing.TB, speed string) *rocketfile.File {
	t.Helper()
	f, err := Heron(t).Set("wind.speed", speed)
	require.NoError(t, err)
	return f
}

// TwoCanopies is Plover on its motor, with a drogue that the charge opens and a main that
// opens low.
func TwoCanopies(t testing.TB) *rocketfile.File {
	t.Helper()
	f := With(t, rocketfile.Change{Input: "power", Value: "motor"}, rocketfile.Change{Input: "canopy.main.deploy.motor", Value: "falling through 40 m"})
	return Rewritten(t, f, func(text string) string {
		return text + "\n[[canopy]]\nname = \"drogue\"\ndiameter = \"0.4 m\"\ndeploy = { motor = \"ejection\" }\n"
	})
}

// Pointed is Shaped flown as a point mass.
func Pointed(t testing.TB) *rocketfile.File {
	t.Helper()
	f, err := Shaped(t).SetAll(rocketfile.Change{Input: "flight.model", Value: string(rocket.PointModel)})
	require.NoError(t, err)
	return f
}

// Shaped is Plover with a shape and a balance point.
func Shaped(t testing.TB) *rocketfile.File {
	t.Helper()
	return Rewritten(t, Plover(t), func(text string) string {
		text = strings.Replace(text, "[water]", `length  = "1500 mm"
balance = "760 mm"

[nose]
shape  = "tangent ogive"
length = "220 mm"

[[fins]]
count     = 4
root      = "130 mm"
tip       = "70 mm"
span      = "80 mm"
sweep     = "60 mm"
thickness = "3 mm"
position  = "1365 mm"

[water]`, 1)
		return strings.Replace(text, "propellant = ", "diameter = \"29 mm\"\nlength = \"230 mm\"\npropellant = ", 1)
	})
}
