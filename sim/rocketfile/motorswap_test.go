package rocketfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

const (
	brambleCurve = "time_s,thrust_n\n0.1,90\n1.1,60\n1.2,0\n"
	bramble      = "curve = \"bramble.csv\"\ncase = \"120 g\"\npropellant = \"60 g\"\ndelay = \"7 s\"\ndelays = [\"5 s\", \"7 s\"]\ndiameter = \"29 mm\"\n"
)

// motorFolder is a working directory with a rocket, motors and other files.
func motorFolder(t *testing.T, rocket string) *File {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"rocket.toml": rocket, "own.csv": brambleCurve, "bramble.csv": brambleCurve,
		"bramble.toml": bramble, "nettle.TOML": bramble + "fittings = \"20 g\"\n",
		"broken.toml": "curve = \"none.csv\"\ncase = 3\n", "reed.toml": "thrust = [[\"0 s\", \"0 N\"], [\"0.1 s\", \"80 N\"], [\"1 s\", \"0 N\"]]\ncase = \"90 g\"\npropellant = \"40 g\"\n", "notes.toml": "[notes]\nx = 1\n", "binary.toml": "\x00\xff",
	} {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
	}
	require.NoError(t, os.Mkdir("more", 0o700))
	require.NoError(t, os.Rename("nettle.TOML", "more/nettle.toml"))
	require.NoError(t, os.WriteFile("more/bramble.csv", []byte(brambleCurve), 0o600))
	f, err := Open("rocket.toml")
	require.NoError(t, err)
	return f
}

const motorless = `name = "Hobby"
[body]
diameter = "70 mm"
mass = "0.6 kg"
drag = 0.5
[rail]
length = "1.8 m"
`

func TestWithMotor(t *testing.T) {
	own := motorless + `# the motor
[motor]
curve = "own.csv"     # beside
case = "200 g"
propellant = "100 g"
delay = "3 s"
length = "150 mm"
fittings = "45 g"     # the mount
`
	inline := "motor = { curve = \"own.csv\", case = \"200 g\", propellant = \"100 g\", fittings = \"45 g\", delay = \"3 s\" }\n" + motorless
	water := motorless + "[water]\nvolume = \"2 L\"\nbore = \"68 mm\"\nthroat = \"9 mm\"\nfill = 0.3\npressure = \"5 bar\"\n"
	for name, text := range map[string]string{"table": own, "in braces": inline, "none before": water} {
		t.Run(name, func(t *testing.T) {
			f := motorFolder(t, text)
			fittings := 0.0
			if m := f.Rocket().Motor; m != nil {
				fittings = m.Fittings
			}

			g, err := f.WithMotor("bramble.toml")
			require.NoError(t, err)
			m := g.Rocket().Motor
			require.InDelta(t, 0.120, m.Case, 1e-12)
			require.InDelta(t, 7, m.Delay, 1e-12)
			require.Equal(t, []float64{5, 7}, m.Delays)
			require.Zero(t, m.Length, "of the motor that was there")
			require.InDelta(t, fittings, m.Fittings, 1e-12)
			require.Contains(t, string(g.Text()), `"bramble.toml"`)
			require.NotContains(t, string(g.Text()), "own.csv")
			require.Equal(t, f.Rocket().Power, g.Rocket().Power)

			g, err = g.WithMotor(filepath.Join("more", "nettle.toml"))
			require.NoError(t, err)
			require.InDelta(t, 0.020, g.Rocket().Motor.Fittings, 1e-12)
			require.Contains(t, string(g.Text()), `"more/nettle.toml"`)
			require.Equal(t, 1, strings.Count(string(g.Text()), "file"))

			again, err := g.WithMotor("more/nettle.toml")
			require.NoError(t, err)
			require.Same(t, g, again, "is in it already")
		})
	}
}

func TestWithMotorFaults(t *testing.T) {
	f := motorFolder(t, motorless+"[motor]\ncurve = \"own.csv\"\ncase = \"200 g\"\npropellant = \"100 g\"\n")
	for path, want := range map[string]string{
		"": "not the name of a file", "absent.toml": "no such file", "broken.toml": "broken.toml:2: motor.case",
		"more": "folder", "binary.toml": "binary.toml", "notes.toml": "notes", "rocket.toml": "without any key of [motor]",
	} {
		g, err := f.WithMotor(path)
		require.ErrorContains(t, err, want, path)
		require.Nil(t, g)
		require.IsType(t, fault.List{}, err)
	}
}

func TestMotorFiles(t *testing.T) {
	f := motorFolder(t, motorless+"[motor]\ncurve = \"own.csv\"\ncase = \"200 g\"\npropellant = \"100 g\"\n")
	paths, err := f.MotorFiles()
	require.NoError(t, err)
	require.Equal(t, []string{"bramble.toml", "broken.toml", "reed.toml"}, paths)
}

// A motor file whose curve stands in it point by point replaces a curve in a file of its own, and the other way round.
func TestWithMotorByItsPoints(t *testing.T) {
	f := motorFolder(t, motorless+"[motor]\ncurve = \"own.csv\"\ncase = \"200 g\"\npropellant = \"100 g\"\n")
	f, err := f.WithMotor("reed.toml")
	require.NoError(t, err)
	require.InDelta(t, 40, f.Rocket().Motor.Impulse(), 1e-9)
	f, err = f.WithMotor("bramble.toml")
	require.NoError(t, err)
	require.Greater(t, f.Rocket().Motor.Impulse(), 60.)
	f = motorFolder(t, motorless+"[motor]\nthrust = [[\"0 s\", \"0 N\"], [\"0.2 s\", \"30 N\"], [\"1 s\", \"0 N\"]]\ncase = \"90 g\"\npropellant = \"40 g\"\n")
	f, err = f.WithMotor("bramble.toml")
	require.NoError(t, err)
	require.Greater(t, f.Rocket().Motor.Impulse(), 60.)
	require.NotContains(t, string(f.Text()), "thrust")
}

// Where a motor sits is the rocket's, not the motor's.
func TestWithMotorKeepsItsPlace(t *testing.T) {
	f := motorFolder(t, strings.Replace(finned, "h.csv", "own.csv", 1))
	f, err := f.SetAll(Change{"motor.position", "1390 mm"}, Change{"motor.fittings_at", "1300 mm"}, Change{"motor.length", "150 mm"})
	require.NoError(t, err)
	g, err := f.WithMotor("bramble.toml")
	require.NoError(t, err)
	require.Equal(t, 1.39, g.Rocket().Motor.Position)
	require.Equal(t, 1.3, g.Rocket().Motor.FittingsAt)
	require.Zero(t, g.Rocket().Motor.Length)
}

// A motor on disk goes into the starter too.
func TestStarterWithMotor(t *testing.T) {
	motorFolder(t, motorless+"[motor]\ncurve = \"own.csv\"\ncase = \"200 g\"\npropellant = \"100 g\"\n")
	f, err := Starter().WithMotor("more/nettle.toml")
	require.NoError(t, err)
	require.InDelta(t, 0.120, f.Rocket().Motor.Case, 1e-12)
	to := filepath.Join(t.TempDir(), "mine.toml")
	saved, err := f.SaveAs(to, false)
	require.NoError(t, err)
	sameRocket(t, f, saved)
}
