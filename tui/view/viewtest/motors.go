package viewtest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
)

// MotorTexts are invented motors by their files, all but the first in the folder of the rocket.
func MotorTexts() map[string]string {
	return map[string]string{
		"far/whin.toml": "curve = \"whin.csv\"\ncase = \"60 g\"\npropellant = \"40 g\"\ndelay = \"5 s\"\ndelays = [\"3 s\", \"5 s\"]\ndiameter = \"24 mm\"\nlength = \"90 mm\"\n",
		"far/whin.csv":  "time_s,thrust_n\n0.05,90\n0.3,60\n1.0,50\n1.2,0\n",
		"straw.toml":    "curve = \"straw.csv\"\ncase = \"150 g\"\npropellant = \"110 g\"\ndelay = \"9 s\"\ndelays = [\"7 s\", \"9 s\"]\ndiameter = \"29 mm\"\nlength = \"200 mm\"\nfittings = \"20 g\"\n",
		"straw.csv":     "time_s,thrust_n\n0.02,160\n0.5,140\n1.1,110\n1.3,0\n",
		"elder.toml":    "curve = \"elder.csv\"\ncase = \"300 g\"\npropellant = \"420 g\"\ndiameter = \"29 mm\"\nlength = \"240 mm\"\n",
		"elder.csv":     "time_s,thrust_n\n0.05,500\n1.0,480\n1.8,300\n2,0\n",
		"sedge.toml":    "curve = \"straw.csv\"\ncase = \"200 g\"\npropellant = \"110 g\"\ndiameter = \"38 mm\"\ndelays = [\"6 s\", \"10 s\"]\ndelay = \"10 s\"\n",
		"torn.toml":     "curve = \"none.csv\"\ncase = \"3 kg\"\npropellant = \"1 g\"\n",
	}
}

// Aviary is Plover in a working directory of its own, with a mount and motor files beside
// it. Of a benchmark the working directory stays.
func Aviary(t testing.TB) *rocketfile.File {
	t.Helper()
	dir := t.TempDir()
	curve, err := os.ReadFile(at(t, "tui", "testdata", "plover.csv"))
	require.NoError(t, err)
	files := map[string]string{
		"plover.toml": string(Plover(t).Text()) + "\n[motor_mount]\ndiameter = \"29 mm\"\nlength = \"250 mm\"\n",
		"plover.csv":  string(curve),
	}
	for name, text := range MotorTexts() {
		files[name] = text
	}
	require.NoError(t, os.Mkdir(filepath.Join(dir, "far"), 0o700))
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	if t, ok := t.(*testing.T); ok {
		t.Chdir(dir)
		dir = ""
	}
	f, err := rocketfile.Open(filepath.Join(dir, "plover.toml"))
	require.NoError(t, err)
	return f
}
