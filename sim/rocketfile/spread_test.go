package rocketfile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

const certain = `name = "Hobby"
[body]
diameter = "70 mm"
mass = "0.6 kg"
drag = 0.5
[water]
volume = "2 L"
bore = "68 mm"
throat = "9 mm"
fill = 0.3
pressure = "5 bar"
[[canopy]]
name = "main"
diameter = "0.8 m"
deploy = "apogee + 1 s"
[rail]
length = "1.8 m"
`

func spreadsOf(t *testing.T, text string) map[string]float64 {
	t.Helper()
	f, err := Read("test.toml", ".", []byte(text))
	require.NoError(t, err)
	sds := map[string]float64{}
	for _, s := range f.Spreads() {
		sds[s.Input.Name] = s.SD
	}
	return sds
}

func TestSpread(t *testing.T) {
	require.Empty(t, spreadsOf(t, certain))
	require.Empty(t, spreadsOf(t, certain+"[spread]\n"))
	got := spreadsOf(t, certain+`[spread]
"water.fill" = "1 %"
"body.mass" = "20 g"
"wind.from" = "15 deg"
water.pressure = "0.1 bar"
"site.temperature" = "2 degC"
"water.temperature" = "3 K"
"canopy.main.deploy.water" = "0.2 s"
canopy.main.coefficient = 0.05
"water.exponent" = 0.03
"body.drag_factor" = 0
`)
	want := map[string]float64{"water.fill": 0.01, "body.mass": 0.02, "wind.from": 15 * math.Pi / 180,
		"water.pressure": 1e4, "site.temperature": 2, "water.temperature": 3, "canopy.main.deploy.water": 0.2,
		"canopy.main.coefficient": 0.05, "water.exponent": 0.03, "body.drag_factor": 0}
	require.InDeltaMapValues(t, want, got, 1e-12)
}

// The order is the text's, so that reports and drawn numbers keep it.
func TestSpreadOrder(t *testing.T) {
	f, err := Read("test.toml", ".", []byte(certain+"[spread]\n\"wind.speed\" = \"1 m/s\"\nbody.mass = \"5 g\"\n\"body.drag\" = 0.02\n"))
	require.NoError(t, err)
	var names []string
	for _, s := range f.Spreads() {
		names = append(names, s.Input.Name)
	}
	require.Equal(t, []string{"wind.speed", "body.mass", "body.drag"}, names)
}

func TestSpreadFaults(t *testing.T) {
	for line, want := range map[string]string{
		`"water.fil" = 0.01`:                           `test.toml:19: spread.water.fil = 0.01: the rocket has no such input; perhaps water.fill is meant`,
		`"water.gas" = 1`:                              `test.toml:19: spread.water.gas = 1: no number, so it has no standard deviation`,
		`"name" = "x"`:                                 `test.toml:19: spread.name = "x": no number`,
		`"body.mass" = 20`:                             `test.toml:19: spread.body.mass = 20:`,
		`"body.mass" = "20 mm"`:                        `test.toml:19: spread.body.mass = "20 mm":`,
		`"body.mass" = "-20 g"`:                        `negative`,
		`"body.mass" = "1e9 kg"`:                       `too large`,
		`"body.mass" = nan`:                            `spread.body.mass = nan`,
		`"body.mass" = true`:                           `spread.body.mass = true`,
		`"body.mass" = ["20 g"]`:                       `spread.body.mass`,
		`"canopy.drogue.coefficient" = 0.1`:            `no such input`,
		`"canopy.main.drag" = 0.1`:                     `no such input`,
		`"motor.delay" = "1 s"`:                        `no such input`,
		`"water.tube.length" = "1 mm"`:                 `no such input`,
		"\"body.mass\" = \"1 g\"\nbody.mass = \"2 g\"": `given twice`,
		`spread = 1`:                                   `no such input`,
	} {
		_, err := Read("test.toml", ".", []byte(certain+"[spread]\n"+line+"\n"))
		require.ErrorContains(t, err, want, line)
		require.IsType(t, fault.List{}, err)
	}
	_, err := Read("test.toml", ".", []byte("spread = 3\n"+certain))
	require.ErrorContains(t, err, "test.toml:1: spread: not written as it must be; write it as [spread] with keys below")
}

// A file that is wrong elsewhere is not told that its uncertainties are wrong too.
func TestSpreadBesideFaults(t *testing.T) {
	text := `power = "water"
[body]
diameter = "70 mm"
mass = "0.6 kg"
drag = 0.5
[water]
volume = "2 L"
bore = "68 mm"
throat = "9 mm"
pressure = "5 bar"
[motor]
delay = "3 s"
[rail]
length = "1.8 m"
[spread]
"water.fill" = 0.01
"motor.delay" = "1 s"
`
	_, err := Read("test.toml", ".", []byte(text))
	require.ErrorContains(t, err, "water.fill")
	require.NotContains(t, err.Error(), "spread")
}

// An unfinished motor is left out while water flies, and so is its spread; one
// without a charge has no delay to vary.
func TestSpreadOfAbsent(t *testing.T) {
	got := spreadsOf(t, "power = \"water\"\n"+certain+"[motor]\ncase = \"10 g\"\n[spread]\n\"motor.delay\" = \"1 s\"\n\"body.mass\" = \"1 g\"\n")
	require.Equal(t, map[string]float64{"body.mass": 0.001}, got)
	got = spreadsOf(t, certain+"[spread]\n\"site.sea_level_pressure\" = \"1 hPa\"\n")
	require.Len(t, got, 1, "the value in force varies")
}

func TestSpreadGoesWithItsPart(t *testing.T) {
	f, err := Read("test.toml", ".", []byte(certain+"[water.tube]\nlength = \"200 mm\"\nouter = \"8 mm\"\ninner = \"6 mm\"\n"+
		"[spread]\n\"canopy.main.coefficient\" = 0.1 # guess\nwater.tube.length = \"1 mm\"\nwater.fill = 0.01\n"))
	require.NoError(t, err)
	require.Len(t, f.Spreads(), 3)
	f, err = f.RemoveCanopy("main")
	require.NoError(t, err)
	require.Len(t, f.Spreads(), 2)
	f, err = f.RemoveTube()
	require.NoError(t, err)
	require.Len(t, f.Spreads(), 1)
	require.Contains(t, string(f.Text()), "[spread]\nwater.fill = 0.01\n")
	f, err = f.Set("water.fill", "0.4")
	require.NoError(t, err)
	require.Len(t, f.Spreads(), 1)
}

func TestParseSpread(t *testing.T) {
	r := Starter().Rocket()
	s, err := ParseSpread(r, "body.mass", " 20 g ")
	require.NoError(t, err)
	require.Equal(t, "body.mass", s.Input.Name)
	require.InDelta(t, 0.02, s.SD, 1e-15)
	s, err = ParseSpread(r, "water.fill", "0.01")
	require.NoError(t, err)
	require.InDelta(t, 0.01, s.SD, 1e-15)
	for _, input := range []string{"wind.speed", "water.fill", "site.temperature"} {
		s, err = ParseSpread(r, input, "0") // none, in any unit
		require.NoError(t, err, input)
		require.Zero(t, s.SD, input)
	}
	for input, text := range map[string]string{"water.gas": "0", "body.mass": "20", "body.mas": "1 g", "water.fill": "-1", "wind.speed": ""} {
		_, err := ParseSpread(r, input, text)
		require.IsType(t, fault.List{}, err, input)
	}
}

func TestCloneIsApart(t *testing.T) {
	r := Starter().Rocket()
	c := r.Clone()
	require.Equal(t, r, c)
	for _, in := range Inputs(c) {
		if in.Kind == NumberKind {
			_ = in.Set(c, (in.Min+2*in.Max)/3)
		}
	}
	require.Equal(t, Starter().Rocket(), r)
	require.NotEqual(t, r, c)
}
