package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
)

// heron is a rocket without a shape, so that fly flies a point mass as studies do.
const heron = "testdata/rocket/heron.toml"

// object runs a command that prints one JSON object.
func object(t *testing.T, args ...string) map[string]any {
	t.Helper()
	got := runWith(context.Background(), strings.NewReader(""), args...)
	require.Equal(t, statusDone, got.status, got.err)
	var doc map[string]any
	require.NoError(t, json.Unmarshal([]byte(got.out), &doc))
	return doc
}

// Every number of a study is that of `fly` with the same values.

func TestSweepAgreesWithFly(t *testing.T) {
	file := heron
	for setting, axis := range map[string]string{
		"water.fill=0.35":             "water.fill=0.35,0.2",
		"water.throat=11 mm":          "water.throat=11mm,9mm",
		"power=motor":                 "power=motor",
		"water.gas=helium":            "water.gas=helium",
		"rail.tilt=5 deg":             "rail.tilt=5deg",
		"site.temperature=25 degC":    "site.temperature=25degC",
		"canopy.main.diameter=1.5 m":  "canopy.main.diameter=1.5m",
		"canopy.main.deploy.water=2s": "canopy.main.deploy.water=2s",
	} {
		got := runWith(context.Background(), strings.NewReader(""), "sweep", file, axis, "--json")
		require.Equal(t, statusDone, got.status, got.err)
		line, _, _ := strings.Cut(got.out, "\n")
		var swept map[string]any
		require.NoError(t, json.Unmarshal([]byte(line), &swept))
		assert.Len(t, swept["inputs"], 1)
		delete(swept, "inputs")
		delete(swept, "invalid")
		assert.Equal(t, object(t, "fly", file, "--json", "--set", setting), swept, setting)
	}
}

// shaped is a rocket with a shape, which flies as a rigid body.
const shaped = `
[body]
diameter = "86.4 mm"
mass = "0.85 kg"
drag = 0.42
length = "1.4 m"
balance = "0.7 m"
[nose]
shape = "tangent ogive"
length = "0.25 m"
[[section]]
name = "tube"
length = "1.15 m"
[[fins]]
name = "fins"
count = 4
root = "120 mm"
tip = "60 mm"
span = "90 mm"
sweep = "50 mm"
thickness = "3 mm"
position = "1.27 m"
[water]
volume = "7 L"
bore = "84 mm"
throat = "15 mm"
fill = 0.3
pressure = "12 bar"
[[canopy]]
name = "main"
diameter = "1 m"
deploy = "apogee + 1 s"
[rail]
length = "1.8 m"
[wind]
speed = "4 m/s"
`

// Every command flies the rocket's own model, the quick one where --point asks for it, and
// says which in the same words.
func TestOneModelUnlessToldOtherwise(t *testing.T) {
	long.Unraced(t)
	file := filepath.Join(t.TempDir(), "shaped.toml")
	require.NoError(t, os.WriteFile(file, []byte(shaped), 0o644))
	fly := func(more ...string) map[string]any {
		return object(t, append([]string{"fly", file, "--json", "--set", "water.fill=0.35"}, more...)...)
	}
	swept := func(more ...string) map[string]any {
		row := object(t, append([]string{"sweep", file, "water.fill=0.35", "--json"}, more...)...)
		delete(row, "inputs")
		delete(row, "invalid")
		return row
	}
	require.NotNil(t, fly()["stability"])
	assert.Equal(t, fly(), swept())
	assert.Equal(t, fly("--point"), swept("--point"))
	assert.NotEqual(t, fly()["apogee"], fly("--point")["apogee"])
	assert.Equal(t, fly("--set", "flight.model=point"), fly("--point"))

	flat := func(out string) string { return strings.Join(strings.Fields(out), " ") }
	const rigid, point = " rigid body up to the first canopy", " point mass, though its shape is known"
	for _, args := range [][]string{{"fly", file}, {"sweep", file, "water.fill=0.3,0.35"}, {"best", file, "water.fill"},
		{"scatter", file, "--flights", "20"}, {"opening", file}, {"card", file},
		{"plot", file}, {"plot", file, "--sweep", "water.fill=0.3..0.35/3"}, {"plot", file, "--scatter", "--flights", "20"}} {
		got := flat(runWith(context.Background(), strings.NewReader(""), args...).out)
		assert.Contains(t, got, rigid, args)
		assert.NotContains(t, got, point, args)
		got = flat(runWith(context.Background(), strings.NewReader(""), append(args, "--point")...).out)
		assert.Contains(t, got, point, args)
		assert.NotContains(t, got, rigid, args)
		refused := runWith(context.Background(), strings.NewReader(""), append(args, "--rigid")...)
		assert.Equal(t, statusInput, refused.status)
		assert.Contains(t, refused.err, "--rigid: that is the rule now")
	}
	got := runWith(context.Background(), strings.NewReader(""), "sweep", heron, "water.fill=0.3,0.35", "--point")
	require.Equal(t, statusDone, got.status, got.err)
	assert.NotContains(t, got.out, "though", "without a shape there is nothing else to fly")
}

func TestBestAgreesWithFlyAndWithASweep(t *testing.T) {
	file := heron
	best := object(t, "best", file, "water.fill", "--json")
	fill := best["inputs"].(map[string]any)["water.fill"].(float64)
	apogee := best["apogee_m"].(float64)
	flown := object(t, "fly", file, "--json", "--set", "water.fill="+strconv.FormatFloat(fill, 'g', -1, 64))
	assert.InEpsilon(t, flown["apogee"].(map[string]any)["height_m"], apogee, 1e-9)

	// None of a dense sweep is higher, and the band is where they are within 1 %.
	within := best["within_1_percent"].(map[string]any)["water.fill"].([]any)
	got := runWith(context.Background(), strings.NewReader(""), "sweep", file, "water.fill=0.05..0.6/221", "--csv")
	require.Equal(t, statusDone, got.status, got.err)
	for _, line := range strings.Split(strings.TrimSpace(got.out), "\n")[1:] {
		cells := strings.Split(line, ",")
		x, err := strconv.ParseFloat(cells[0], 64)
		require.NoError(t, err)
		if cells[6] != "0" || cells[3] == "" {
			continue // left liquid or never left
		}
		y, err := strconv.ParseFloat(cells[1], 64)
		require.NoError(t, err)
		assert.LessOrEqual(t, y, apogee*(1+1e-6), "fill %v", x)
		if x > within[0].(float64)+0.002 && x < within[1].(float64)-0.002 {
			assert.GreaterOrEqual(t, y, 0.99*apogee, "fill %v is inside the band", x)
		}
		if x < within[0].(float64)-0.002 || x > within[1].(float64)+0.002 {
			assert.Less(t, y, 0.99*apogee, "fill %v is outside the band", x)
		}
	}
}

func TestMotorsAgreeWithFly(t *testing.T) {
	compared := object(t, "motors", "../../testdata/heron.toml", "../../testdata/h-trainer.toml", "--json")
	flown := object(t, "fly", "../../testdata/heron.toml", "--json", "--set", "power=motor", "--set", "motor.file=h-trainer.toml")
	for key, want := range flown {
		assert.Equal(t, want, compared[key], key)
	}
}

func TestOpeningAgreesWithFly(t *testing.T) {
	file := heron
	opening := object(t, "opening", file, "--set", "power=motor", "--landing", "4 m/s", "--json")
	for i, d := range opening["delays"].([]any) {
		delay := d.(map[string]any)
		flown := object(t, "fly", file, "--json", "--set", "power=motor",
			"--set", "motor.delay="+strconv.FormatFloat(delay["delay_s"].(float64), 'g', -1, 64)+" s")
		canopy := flown["canopies"].([]any)[0].(map[string]any)
		for _, key := range []string{"airspeed_mps", "height_m", "load_n", "load_bound_n"} {
			assert.Equal(t, canopy[key], delay[key], "%s of delay %d", key, i)
		}
		assert.Equal(t, flown["landing"], delay["landing"])
	}
	planned := opening["what_if"].([]any)[0].(map[string]any)
	assert.Equal(t, object(t, "fly", file, "--json", "--set", "power=motor")["landing"], planned["landing"])

	sized := opening["sized"].(map[string]any)
	flown := object(t, "fly", file, "--json", "--set", "power=motor",
		"--set", "canopy.main.diameter="+strconv.FormatFloat(sized["diameter_m"].(float64), 'g', -1, 64)+" m")
	assert.InDelta(t, sized["vertical_mps"], flown["landing"].(map[string]any)["vertical_mps"], 1e-9)
	assert.InDelta(t, 4, sized["vertical_mps"], 0.01)
}

func TestScatterOfWhatIsCertainIsTheFlight(t *testing.T) {
	file := heron
	args := []string{"scatter", file, "--flights", "20", "--json"}
	for _, i := range object(t, args...)["importance"].([]any) {
		args = append(args, "--spread", i.(map[string]any)["input"].(string)+"=0"+unitOf(t, i.(map[string]any)["input"].(string)))
	}
	sure := object(t, args...)
	flown := object(t, "fly", file, "--json")
	assert.Empty(t, sure["importance"])
	apogee := sure["apogee_m"].(map[string]any)
	for _, key := range []string{"mean", "q05", "q50", "q95"} {
		assert.InEpsilon(t, flown["apogee"].(map[string]any)["height_m"], apogee[key], 1e-12)
	}
	assert.InDelta(t, 0, apogee["sd"], 1e-9)
	assert.InDelta(t, flown["landing"].(map[string]any)["east_m"], sure["landing"].(map[string]any)["east_m"], 1e-9)
}

// unitOf is what to write after the number 0 of an input.
func unitOf(t *testing.T, name string) string {
	file, err := rocketfile.Open(heron)
	require.NoError(t, err)
	in, err := rocketfile.Find(file.Rocket(), name)
	require.NoError(t, err)
	if in.Unit.Name == "" {
		return ""
	}
	return " " + in.Unit.Name
}

// interrupter is an output whose reader interrupts once it has seen enough.
type interrupter struct {
	bytes.Buffer
	after  int
	cancel context.CancelFunc
}

func (w *interrupter) Write(b []byte) (int, error) {
	n, err := w.Buffer.Write(b)
	if w.Len() > w.after {
		w.cancel()
	}
	return n, err
}

// interrupted runs a command whose output is interrupted after some bytes.
func interrupted(t *testing.T, after int, args ...string) result {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	out := &interrupter{after: after, cancel: cancel}
	var stderr bytes.Buffer
	status := run(ctx, args, strings.NewReader(""), out, &stderr)
	return result{status, out.String(), stderr.String()}
}

const endlessSweep = "water.fill=0.2..0.4/900000"

// The interrupt comes with the first rows: it need not be endless.
func TestInterruptedSweepKeepsItsRows(t *testing.T) {
	const long = "water.fill=0.2..0.4/90000"
	file := heron
	got := interrupted(t, 2000, "sweep", file, long, "--csv")
	assert.Equal(t, statusInterrupted, got.status)
	assert.Contains(t, got.err, "ullage: interrupted; the output is partial")
	lines := strings.Split(got.out, "\n")
	assert.Greater(t, len(lines), 10)
	assert.Empty(t, lines[len(lines)-1], "the last row is whole")
	for _, l := range lines[:len(lines)-1] {
		assert.Equal(t, 9, strings.Count(l, ","))
	}

	got = interrupted(t, 2000, "sweep", file, long, "--json")
	assert.Equal(t, statusInterrupted, got.status)
	for _, l := range strings.Split(strings.TrimSpace(got.out), "\n") {
		assert.True(t, json.Valid([]byte(l)))
	}

	got = interrupted(t, 2000, "sweep", file, long)
	assert.Equal(t, statusInterrupted, got.status)
	assert.Contains(t, got.out, "  partial: ")
	assert.Contains(t, got.out, "of 90000 flights.")
	assert.Contains(t, got.out, "range officer", "it comes to a good end")

	got = interrupted(t, 1000, "sweep", file, "water.fill=0.2..0.4/30000", "water.throat=9,11,13mm")
	assert.Equal(t, statusInterrupted, got.status)
	assert.Contains(t, got.out, "rail exit speed, m/s")
	assert.Contains(t, got.out, "  partial: ")
}

// later interrupts after a while: for what writes nothing until the end. A busy machine may
// have flown nothing by then; it is given longer until it has.
func later(t *testing.T, args ...string) result {
	t.Helper()
	for wait := 300 * time.Millisecond; ; wait *= 3 {
		ctx, cancel := context.WithTimeout(context.Background(), wait)
		stop, interrupt := context.WithCancel(context.Background())
		context.AfterFunc(ctx, interrupt)
		got := runWith(stop, strings.NewReader(""), args...)
		interrupt()
		cancel()
		if got.err != "ullage: interrupted\n" || wait > time.Minute {
			return got
		}
	}
}

func TestInterruptedScatterSumsUpWhatItHas(t *testing.T) {
	file := heron
	got := later(t, "scatter", file, "--flights", "50000000", "--json")
	assert.Equal(t, statusInterrupted, got.status)
	assert.Contains(t, got.err, "the output is partial")
	var doc map[string]any
	require.NoError(t, json.Unmarshal([]byte(got.out), &doc))
	assert.Equal(t, true, doc["partial"])
	assert.Less(t, doc["flights"], 50000000.0)

	got = later(t, "scatter", file, "--flights", "50000000")
	assert.Equal(t, statusInterrupted, got.status)
	assert.Contains(t, got.out, "partial: ")

	got = interrupted(t, 100_000, "scatter", file, "--flights", "50000000", "--geojson", "--latitude=1", "--longitude=2")
	assert.Equal(t, statusInterrupted, got.status)
	require.NoError(t, json.Unmarshal([]byte(got.out), &doc), "a whole map")
	assert.Equal(t, true, doc["partial"])
	features := doc["features"].([]any)
	assert.Greater(t, len(features), 100)

	got = interrupted(t, 100_000, "scatter", file, "--flights", "50000000", "--csv")
	assert.Equal(t, statusInterrupted, got.status)
	assert.True(t, strings.HasSuffix(got.out, "\n"), "whole rows")
}

func TestInterruptedStudyToAFile(t *testing.T) {
	file := heron
	path := filepath.Join(t.TempDir(), "out.csv")
	got := later(t, "sweep", file, endlessSweep, "--csv", "-o", path)
	assert.Equal(t, statusInterrupted, got.status)
	assert.Empty(t, got.out)
	assert.Contains(t, got.err, path+" is partial: it holds what there was by then")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, bytes.HasSuffix(text, []byte("\n")))
}

// Interrupted before anything is computed, there is nothing to keep.
func TestStudiesInterruptedAtOnce(t *testing.T) {
	file := heron
	dir := t.TempDir()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, args := range [][]string{
		{"best", file, "water.fill"}, {"best", file, "water.fill", "water.throat"}, {"opening", file},
	} {
		got := runWith(ctx, strings.NewReader(""), args...)
		assert.Equal(t, statusInterrupted, got.status, args)
		assert.Empty(t, got.out, args)
		assert.Equal(t, "ullage: interrupted\n", got.err, args)
		got = runWith(ctx, strings.NewReader(""), append(args, "-o", filepath.Join(dir, "out.txt"))...)
		assert.Equal(t, statusInterrupted, got.status, args)
	}
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Empty(t, left)
	got := runWith(ctx, strings.NewReader(""), "motors", "../../testdata/heron.toml", "../../testdata/h-trainer.toml")
	assert.Equal(t, statusInterrupted, got.status)
	assert.Contains(t, got.out, "not flown: interrupted")
}

func TestStudiesTellOfAFullDisk(t *testing.T) {
	file := heron
	for _, args := range [][]string{
		{"sweep", file, "water.fill=0.2..0.4/3"}, {"sweep", file, "water.fill=0.2..0.4/3", "--csv"},
		{"sweep", file, "water.fill=0.2..0.4/3", "--json"}, {"best", file, "water.fill"}, {"best", file, "water.fill", "--json"},
		{"scatter", file, "--flights", "20"}, {"scatter", file, "--flights", "20", "--json"}, {"scatter", file, "--flights", "20", "--csv"},
		{"scatter", file, "--flights", "20", "--geojson", "--latitude=1", "--longitude=1"},
		{"opening", file}, {"opening", file, "--json"}, {"opening", file, "--csv"},
		{"motors", "../../testdata/heron.toml", "../../testdata/h-trainer.toml"},
	} {
		var stderr bytes.Buffer
		status := run(context.Background(), args, strings.NewReader(""), fullDisk{}, &stderr)
		assert.Equal(t, statusFailed, status, args)
		assert.Contains(t, stderr.String(), "no space left on device", args)
	}
}

func TestStudiesMindAReaderThatClosesEarly(t *testing.T) {
	file := heron
	for _, args := range [][]string{
		{"sweep", file, "water.fill=0.2..0.4/300"}, {"scatter", file, "--flights", "3000", "--csv"}, {"best", file, "water.fill"},
	} {
		var stderr bytes.Buffer
		status := run(context.Background(), args, strings.NewReader(""), &limitedPipe{10}, &stderr)
		assert.Equal(t, statusDone, status, args)
		assert.NotContains(t, stderr.String(), "pipe", args)
	}
}

func TestStreamKeepsOrdinaryErrors(t *testing.T) {
	err := outputOptions{}.stream(&streams{ctx: context.Background(), out: fullDisk{}}, func(w io.Writer) error {
		_, err := w.Write([]byte("x"))
		return err
	})
	assert.ErrorIs(t, err, syscall.ENOSPC)
	assert.False(t, errors.As(err, new(partialError)))
}
