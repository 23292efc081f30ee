package rocketfile

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/layup"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// whole has every key of a rocket file, in units of all sorts.
const whole = `name  = "Twin Heron"
power = "water"

[body]
diameter = "70.4 mm"
mass     = "1.10 kg"
drag     = [[0.0, 0.46], [0.8, 0.55], [1.1, 0.90]]
drag_factor = 1.02

[water]
volume      = "4.2 L"
bore        = "68 mm"
throat      = "0.5 in"
discharge   = 0.96
fill        = "30 %"
pressure    = "130 psi"
exponent    = 1.3
gas         = "nitrogen"
temperature = "18 degC"
density     = "998.9 kg/m3"
flow        = "steady"
fittings    = "180 g"

[water.tube]
length = "0.60 m"
outer  = "12.5 mm"
inner  = "9 mm"
dead_volume = "0.1 L"

[motor]
curve      = "h.csv"
case       = "210 g"
propellant = "140 g"
delay      = "8 s"
delays     = ["6 s", "8 s", "10 s"]
diameter   = "29 mm"
length     = "230 mm"
fittings   = "60 g"

[motor_mount]
diameter = "29 mm"
length   = "250 mm"

[[canopy]]
name          = "main"
diameter      = "1.10 m"
coefficient   = 0.8
fill_constant = 6
opening_force_coefficient = 1.6
deploy        = { water = "apogee - 1 s", motor = "ejection" }

[[canopy]]
area   = "0.1 m2"
deploy = "falling through 120 m"

[site]
elevation   = "320 m"
temperature = "18 degC"
pressure    = "975 hPa"
humidity    = 0.4
latitude    = 50.5
longitude   = -1.25

[rail]
length  = "1.8 m"
tilt    = "3 deg"
heading = "90 deg"

[wind]
speed    = "4 m/s"
height   = "2 m"
exponent = 0.2
from     = "270 deg"
`

func TestReadsEveryKey(t *testing.T) {
	r := readIn(t, folder(t), whole).Rocket()
	require.Equal(t, 3, r.Motor.Curve.Len()-1)
	r.Motor.Curve = nil
	want := &rocket.Rocket{
		Name:  "Twin Heron",
		Power: rocket.WaterPower,
		Body:  rocket.Body{Diameter: 0.0704, Mass: 1.1, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0.46}, {Mach: 0.8, Drag: 0.55}, {Mach: 1.1, Drag: 0.9}}, DragFactor: 1.02},
		Water: &rocket.Water{
			Volume: 0.0042, Bore: 0.068, Throat: 0.0127, Discharge: 0.96, Fill: 0.3, Pressure: 896318.4, Exponent: 1.3,
			Gas: thrust.Nitrogen, Temperature: 291.15, Density: 998.9, Flow: rocket.SteadyFlow, Fittings: 0.18,
			Tube: &rocket.LaunchTube{Length: 0.6, Outer: 0.0125, Inner: 0.009, DeadVolume: 1e-4},
		},
		Motor:      &rocket.Motor{Case: 0.21, Propellant: 0.14, Delay: 8, Delays: []float64{6, 8, 10}, Diameter: 0.029, Length: 0.23, Fittings: 0.06},
		MotorMount: &rocket.MotorMount{Diameter: 0.029, Length: 0.25},
		Canopies: []rocket.Canopy{
			{Name: "main", Diameter: 1.1, Coefficient: 0.8, FillConstant: 6, OpeningForceCoefficient: 1.6, Water: rocket.Rule{Trigger: rocket.AfterApogee, Value: -1}, Motor: rocket.Rule{Trigger: rocket.Ejection}},
			{Name: "2", Area: 0.1, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7, Water: rocket.Rule{Trigger: rocket.Falling, Value: 120}, Motor: rocket.Rule{Trigger: rocket.Falling, Value: 120}},
		},
		Site: atmosphere.Site{Elevation: 320, Temperature: 291.15, Pressure: 97500, Humidity: 0.4, Latitude: 50.5, Longitude: -1.25, Located: true},
		Rail: rocket.Rail{Length: 1.8, Tilt: 3 * math.Pi / 180, Heading: math.Pi / 2},
		Wind: atmosphere.Wind{Speed: 4, Height: 2, Exponent: 0.2, From: 1.5 * math.Pi},

		Layup: layup.Practice{Wrap: layup.OneRoll, Peel: layup.PeelOutside},
	}
	// 130 psi by NIST SP 811: the pound-force over the square inch.
	require.InDelta(t, want.Water.Pressure, r.Water.Pressure, 0.05)
	want.Water.Pressure = r.Water.Pressure
	require.Equal(t, rounded(want), rounded(r))
}

// rounded drops the last bits, in which 4.2/1000 and 0.0042 differ.
func rounded(r *rocket.Rocket) *rocket.Rocket {
	c := r.Clone()
	for _, in := range Inputs(c) {
		if v, given := in.Get(c); given && in.Kind == NumberKind && in.Name != "body.drag" {
			q := v
			if v != 0 {
				digits := math.Pow(10, 12-math.Ceil(math.Log10(math.Abs(v))))
				q = math.Round(v*digits) / digits
			}
			if err := in.Set(c, q); err != nil {
				return nil
			}
		}
	}
	return c
}

func TestDefaults(t *testing.T) {
	text := `[body]
diameter = "70 mm"
mass = "1 kg"
drag = 0.5
[water]
volume = "4 L"
bore = "68 mm"
throat = "13 mm"
fill = 0.3
pressure = "9 bar"
[rail]
length = "1.8 m"
`
	f := readIn(t, t.TempDir(), text)
	r := f.Rocket()
	require.Equal(t, rocket.WaterPower, r.Power, "the only drive there is")
	require.Nil(t, r.Motor)
	require.Nil(t, r.MotorMount)
	require.Nil(t, r.Water.Tube)
	require.Empty(t, r.Canopies)
	require.Equal(t, 1.0, r.Body.DragFactor)
	require.Equal(t, rocket.Water{Volume: r.Water.Volume, Bore: 0.068, Throat: 0.013, Fill: 0.3, Pressure: 9e5,
		Discharge: 0.97, Density: 998.2, Flow: rocket.UnsteadyFlow, Gas: thrust.Air}, *r.Water)
	require.Equal(t, atmosphere.Site{}, r.Site)
	require.Equal(t, rocket.Rail{Length: 1.8}, r.Rail)
	require.Equal(t, atmosphere.Wind{Height: 10, Exponent: 1.0 / 7}, r.Wind)

	for name, want := range map[string]float64{
		"water.exponent":    1.3665707, // by SciPy: testdata/reference/moist.py
		"water.temperature": 288.15,    // ISO 2533 at sea level
		"site.temperature":  288.15,
		"site.pressure":     101325,
	} {
		in, err := Find(r, name)
		require.NoError(t, err)
		v, given := in.Get(r)
		require.False(t, given, name)
		require.InDelta(t, want, v, 1e-7*want, name)
		require.False(t, f.Given(name))
	}
	require.True(t, f.Given("water.fill"))
}

// However a text is written, it is the same rocket.
func TestWaysToWriteTheSame(t *testing.T) {
	dir := folder(t)
	want := readIn(t, dir, shapely).Rocket()
	inline := func(text string) string { // each section in braces on one line
		var b strings.Builder
		var items []string
		name := ""
		lists := map[string][]string{}
		flush := func() {
			switch {
			case strings.HasPrefix(name, "["):
				lists[name] = append(lists[name], "{ "+strings.Join(items, ", ")+" }")
			case name != "":
				b.WriteString(name + " = { " + strings.Join(items, ", ") + " }\n")
			default:
				b.WriteString(strings.Join(items, "\n") + "\n")
			}
			items = nil
		}
		for _, line := range strings.Split(strings.Replace(text, "[water.tube]", "[tube]", 1), "\n") {
			switch {
			case strings.HasPrefix(line, "["):
				flush()
				name = line[1 : len(line)-1]
			case line != "":
				items = append(items, line)
			}
		}
		flush()
		for name, items := range lists {
			b.WriteString(strings.Trim(name, "[]") + " = [ " + strings.Join(items, ",\n  # one more\n  ") + ", ]\n")
		}
		out := b.String()
		tube := out[strings.Index(out, "tube = "):]
		tube = tube[:strings.IndexByte(tube, '\n')]
		out = strings.Replace(out, tube+"\n", "", 1)
		return strings.Replace(out, `fittings    = "180 g"`, `fittings = "180 g", `+tube, 1)
	}
	dotted := func(text string) string {
		var b strings.Builder
		prefix := ""
		for _, line := range strings.Split(text, "\n") {
			switch {
			case strings.HasPrefix(line, "[["):
				return b.String() + text[strings.Index(text, "[[canopy]]"):]
			case strings.HasPrefix(line, "["):
				prefix = strings.Trim(line, "[]") + "."
			case line != "":
				b.WriteString(prefix + line + "\n")
			}
		}
		return b.String()
	}
	for name, text := range map[string]string{
		"CRLF":            strings.ReplaceAll(shapely, "\n", "\r\n"),
		"byte order mark": "\xef\xbb\xbf" + shapely,
		"no last newline": strings.TrimSuffix(shapely, "\n"),
		"comments":        strings.ReplaceAll(shapely, "\n", " # said = \"so\"\n"),
		"indented":        "  " + strings.ReplaceAll(shapely, "\n", "\n\t  "),
		"single quotes":   strings.ReplaceAll(shapely, `"`, `'`),
		"long quotes":     strings.ReplaceAll(shapely, `"`, `"""`),
		"escapes":         strings.ReplaceAll(shapely, `"h.csv"`, `"\u0068.csv"`),
		"quoted keys":     strings.NewReplacer("throat ", `"throat" `, "[rail]", "[ 'rail' ]", "[water.tube]", `[water . "tube"]`).Replace(shapely),
		"other order":     shapely[strings.Index(shapely, "[water]"):strings.Index(shapely, "[motor]")] + "\n" + "",
		"braces":          inline(shapely),
		"dots":            dotted(shapely),
		"deploy's table":  strings.Replace(shapely, `deploy        = { water = "apogee - 1 s", motor = "ejection" }`, "[canopy.deploy]\nwater = \"apogee - 1 s\"\nmotor = \"ejection\"", 1),
		"deploy's dots":   strings.Replace(shapely, `deploy        = { water = "apogee - 1 s", motor = "ejection" }`, "deploy.water = \"apogee-1s\"\ndeploy.motor = \"ejection\"", 1),
		"other units":     strings.NewReplacer(`"4.2 L"`, `"4200mL"`, `"68 mm"`, `"6.8 cm"`, `"18 degC"`, `"18 °C"`, `"998.9 kg/m3"`, `"998.9 kg/m³"`, `"30 %"`, `0.30`).Replace(shapely),
		"other numbers":   strings.NewReplacer(`fill_constant = 6`, `fill_constant = 0x6`, `drag_factor = 1.02`, `drag_factor = 1_0.2e-1`, `0.80`, `+8e-1`).Replace(shapely),
	} {
		t.Run(name, func(t *testing.T) {
			if name == "other order" { // what comes first in the file comes last here
				rest := strings.Replace(shapely, text[:len(text)-1], "", 1)
				text = rest + "\n" + text
			}
			f := readIn(t, dir, text)
			require.Equal(t, text, string(f.Text()), "the text stays as it is")
			require.Equal(t, rounded(want), rounded(f.Rocket()))
		})
	}
}

func TestExamplesRead(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/*.toml")
	require.NoError(t, err)
	read := 0
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		f, err := Open(path)
		if err != nil { // the motor files among them
			require.EqualError(t, err, path+": a motor file, not a rocket file; name it in the [motor] of a rocket file")
			continue
		}
		read++
		require.Equal(t, path, f.Name())
		require.Equal(t, path, f.Path())
		require.Equal(t, text, f.Text())
		require.False(t, f.Modified())
		require.NoError(t, f.Rocket().Validate())
	}
	require.NotZero(t, read)
}

// The examples with a shape stay stable all the way up, on each drive they have.
func TestExamplesAreStable(t *testing.T) {
	for name, drives := range map[string][]rocket.Power{"heron": {rocket.WaterPower, rocket.MotorPower}, "mass-list": {rocket.MotorPower}} {
		f, err := Open("../../testdata/" + name + ".toml")
		require.NoError(t, err)
		require.Empty(t, f.Rocket().Body.Drag, "the shape gives it")
		for _, power := range drives {
			r := f.Rocket()
			r.Power = power
			flight, err := sim.Fly(context.Background(), r, sim.Options{})
			require.NoError(t, err)
			require.Empty(t, flight.Warnings, "%s on %s", name, power)
			require.True(t, flight.Stability.Known)
			require.GreaterOrEqual(t, flight.Stability.Least, 1.0, "%s on %s", name, power)
			require.LessOrEqual(t, flight.Stability.Burnout.Margin, 3.0, "%s on %s", name, power)
		}
	}
	for _, name := range []string{"bottle", "tube", "drogue-main"} {
		f, err := Open("../../testdata/" + name + ".toml")
		require.NoError(t, err)
		require.Nil(t, f.Rocket().Shape)
	}
}

func TestRocketIsACopy(t *testing.T) {
	f := readIn(t, folder(t), whole)
	r := f.Rocket()
	r.Body.Drag[0].Drag = 9
	r.Water.Fill = 0.9
	r.Water.Tube.Length = 9
	r.Motor.Delays[0] = 9
	r.MotorMount.Length = 9
	r.Canopies[0].Name = "other"
	require.Equal(t, 0.46, f.Rocket().Body.Drag[0].Drag)
	require.Equal(t, 0.3, f.Rocket().Water.Fill)
	require.Equal(t, 0.6, f.Rocket().Water.Tube.Length)
	require.Equal(t, 6.0, f.Rocket().Motor.Delays[0])
	require.Equal(t, 0.25, f.Rocket().MotorMount.Length)
	require.Equal(t, "main", f.Rocket().Canopies[0].Name)

	text := []byte(whole)
	f, err := Read("x.toml", folder(t), text)
	require.NoError(t, err)
	text[0] = 'X'
	require.Equal(t, whole, string(f.Text()))
}

func TestIdleDriveMayBeUnfinished(t *testing.T) {
	f := readIn(t, folder(t), swapped(t, `propellant = "100 g"`, ``))
	require.Nil(t, f.Rocket().Motor)
	_, err := f.Set("power", "motor")
	require.EqualError(t, err, `motor.propellant: missing; add it to [motor], such as propellant = "140 g"`)
	f, err = f.SetAll(Change{"power", "motor"}, Change{"motor.propellant", "100 g"})
	require.NoError(t, err)
	require.Equal(t, 0.1, f.Rocket().Motor.Propellant)
}
