package rocketfile

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// shapely is whole with a shape, a mass list, and every key that comes with them.
var shapely = strings.NewReplacer(
	"drag_factor = 1.02\n", `drag_factor = 1.02
length      = "1.50 m"
balance     = "0.72 m"
inertia     = "0.11 kg*m2"
roll_inertia = "0.0008 kg*m2"
roughness   = "20 um"
rail_buttons = "60 mm2"

[nose]
shape    = "power series"
length   = "230 mm"
exponent = 0.6
diameter = "70 mm"

[gust]
speed  = "3 m/s"
from   = "180 deg"
height = "60 m"

[flight]
model        = "rigid"
misalignment = "0.25 deg"
offset       = "-0.5 mm"
`,
	`fittings    = "180 g"`, "fittings    = \"180 g\"\nnozzle      = \"1510 mm\"\nfittings_at = \"1490 mm\"",
	`fittings   = "60 g"`, "fittings   = \"60 g\"\nposition   = \"1505 mm\"\nfittings_at = \"1480 mm\"",
	"[site]", `[[section]]
name   = "front"
length = "300 mm"
forward = "70 mm"
aft    = "70.4 mm"

[[section]]
length = "4 in"

[[fins]]
name      = "tail"
count     = 3
root      = "120 mm"
tip       = "60 mm"
span      = "80 mm"
sweep     = "50 mm"
thickness = "3 mm"
section   = "airfoil"
position  = "1370 mm"
cant      = "0.5 deg"

[[fins]]
count     = 4
root      = "60 mm"
tip       = "0 mm"
span      = "40 mm"
sweep     = "-10 mm"
thickness = "2 mm"
position  = "700 mm"

[[part]]
name     = "battery"
mass     = "45 g"
position = "400 mm"
length   = "50 mm"
diameter = "30 mm"

[[part]]
mass     = "1 kg"
position = "800 mm"

[site]`,
).Replace(whole)

// finned is plain with the least that makes a shape and a balance.
var finned = strings.NewReplacer(
	"drag = 0.5\n", `length = "1400 mm"
balance = "650 mm"

[nose]
shape = "conical"
length = "200 mm"

[[section]]
name = "tail"
length = "100 mm"

[[fins]]
count = 4
root = "110 mm"
tip = "60 mm"
span = "75 mm"
sweep = "40 mm"
thickness = "3 mm"
position = "1290 mm"

`).Replace(plain)

// listed is finned with a mass list instead of measurements.
var listed = strings.NewReplacer("mass = \"1 kg\"\n", "", "balance = \"650 mm\"\n", "",
	"[water]\n", "[[part]]\nname = \"tube\"\nmass = \"800 g\"\nposition = \"700 mm\"\nlength = \"1200 mm\"\n\n[[part]]\nmass = \"200 g\"\nposition = \"100 mm\"\n\n[water]\n").Replace(finned)

func TestReadsTheShape(t *testing.T) {
	r := rounded(readIn(t, folder(t), shapely).Rocket())
	require.Equal(t, &airframe.Shape{
		Length: 1.5, Diameter: 0.0704, Roughness: 20e-6, RailButtons: 60e-6,
		Nose:     airframe.Nose{Shape: airframe.PowerSeries, Length: 0.23, Exponent: 0.6, Diameter: 0.07},
		Sections: []airframe.Section{{Name: "front", Length: 0.3, Forward: 0.07, Aft: 0.0704}, {Name: "2", Length: 0.1016}},
		Fins: []airframe.Fins{
			{Name: "tail", Count: 3, Root: 0.12, Tip: 0.06, Span: 0.08, Sweep: 0.05, Thickness: 0.003, Section: airframe.AirfoilSection, Position: 1.37, Cant: r.Shape.Fins[0].Cant},
			{Name: "2", Count: 4, Root: 0.06, Span: 0.04, Sweep: -0.01, Thickness: 0.002, Section: airframe.FlatSection, Position: 0.7},
		},
	}, r.Shape)
	require.InDelta(t, math.Pi/360, r.Shape.Fins[0].Cant, 1e-12)
	require.Equal(t, []airframe.Part{{Name: "battery", Mass: 0.045, Position: 0.4, Length: 0.05, Diameter: 0.03}, {Name: "2", Mass: 1, Position: 0.8}}, r.Parts)
	require.Equal(t, [3]float64{0.72, 0.11, 0.0008}, [3]float64{r.Body.Balance, r.Body.Inertia, r.Body.RollInertia})
	require.Equal(t, [2]float64{1.51, 1.49}, [2]float64{r.Water.Nozzle, r.Water.FittingsAt})
	require.Equal(t, [2]float64{1.505, 1.48}, [2]float64{r.Motor.Position, r.Motor.FittingsAt})
	require.Equal(t, rocket.RigidModel, r.Model)
	require.InDelta(t, math.Pi/720, r.Alignment.Angle, 1e-12)
	require.Equal(t, -0.0005, r.Alignment.Offset)
	require.InDelta(t, math.Pi, r.Gust.From, 1e-12)
	require.Equal(t, [2]float64{3, 60}, [2]float64{r.Gust.Speed, r.Gust.Height})
}

// A file without a shape has none, whatever else it says.
func TestShapeless(t *testing.T) {
	f := readIn(t, folder(t), plain+"[gust]\nspeed = \"2 m/s\"\n[flight]\nmodel = \"point\"\n")
	r := f.Rocket()
	require.Nil(t, r.Shape)
	require.False(t, r.Rigid())
	require.Equal(t, 2.0, r.Gust.Speed)
	count := len(Inputs(readIn(t, folder(t), plain).Rocket()))
	for _, in := range Inputs(r) {
		require.NotContains(t, []string{"airframe", "nose", "flight"}, in.Group)
	}
	require.Len(t, Inputs(r), count+4, "the gust alone is more")
	_, err := Find(r, "body.balance")
	require.ErrorContains(t, err, "no such input")
	in, err := Find(readIn(t, folder(t), plain).Rocket(), "gust.speed")
	require.NoError(t, err, "a gust can be set where none is listed")
	require.NoError(t, in.Set(r, 4))
}

func TestShapeDefaults(t *testing.T) {
	f := readIn(t, folder(t), finned)
	r := f.Rocket()
	require.Empty(t, r.Body.Drag)
	require.InDelta(t, 30e-6, r.Shape.Roughness, 1e-18)
	require.Zero(t, r.Shape.RailButtons)
	require.Equal(t, airframe.FlatSection, r.Shape.Fins[0].Section)
	require.Equal(t, "1", r.Shape.Fins[0].Name)
	require.True(t, r.Rigid())
	require.Equal(t, r.Body.Diameter, r.Shape.Diameter)

	lump := r.DryBody()
	s := r.Site.Column()
	air := s.Air(0)
	drag, _ := r.Shape.Drag(airframe.Flow{Speed: 50, Density: air.Density, SoundSpeed: air.SoundSpeed, Viscosity: air.Viscosity()}, 0)
	for name, want := range map[string]float64{
		"body.drag": drag, "body.inertia": lump.Pitch, "body.roll_inertia": lump.Roll,
		"nose.diameter": 0.07, "section.tail.forward": 0.07, "section.tail.aft": 0.07,
		"water.nozzle": 1.4, "water.fittings_at": 1.4, "motor.position": 1.4, "motor.fittings_at": 1.4, "flight.model": 0,
	} {
		in, err := Find(r, name)
		require.NoError(t, err)
		v, given := in.Get(r)
		require.False(t, given, name)
		require.False(t, f.Given(name), name)
		require.InDelta(t, want, v, 6e-4*max(want, 1), name)
	}
	_, err := Find(r, "nose.exponent")
	require.Error(t, err, "a cone has none")
	f, err = f.Set("nose.shape", "power series")
	require.NoError(t, err)
	in, err := Find(f.Rocket(), "nose.exponent")
	require.NoError(t, err)
	require.Equal(t, "0.5", in.Text(f.Rocket()))
}

// Diameters that are not given follow those before them.
func TestDiametersInForce(t *testing.T) {
	text := strings.Replace(finned, "[[section]]\nname = \"tail\"\nlength = \"100 mm\"\n",
		"[[section]]\nlength = \"50 mm\"\nforward = \"60 mm\"\naft = \"70 mm\"\n[[section]]\nlength = \"900 mm\"\n[[section]]\nlength = \"20 mm\"\naft = \"50 mm\"\n", 1)
	r := readIn(t, folder(t), strings.Replace(text, "1290", "1000", 1)).Rocket()
	for name, want := range map[string]float64{"nose.diameter": 0.06, "section.2.forward": 0.07, "section.2.aft": 0.07, "section.3.forward": 0.07, "section.3.aft": 0.05} {
		in, err := Find(r, name)
		require.NoError(t, err)
		v, _ := in.Get(r)
		require.InDelta(t, want, v, 1e-12, name)
	}
}

// The mass list stands in for the scales.
func TestMassList(t *testing.T) {
	f := readIn(t, folder(t), listed)
	r := f.Rocket()
	require.Zero(t, r.Body.Mass)
	require.True(t, r.Rigid())
	for name, want := range map[string]float64{"body.mass": 1, "body.balance": 0.8*0.7 + 0.2*0.1} {
		in, err := Find(r, name)
		require.NoError(t, err)
		v, given := in.Get(r)
		require.False(t, given)
		require.InDelta(t, want, v, 1e-12)
	}
	flight, err := sim.Fly(context.Background(), r, sim.Options{})
	require.NoError(t, err)
	require.InDelta(t, 1+4e-3*0.3*998.2, flight.LiftOffMass, 0.06, "body, water, and some gas")

	weighed, err := f.Set("body.mass", "1.1 kg")
	require.NoError(t, err)
	require.Equal(t, 1.1, weighed.Rocket().Body.Mass)
	back, err := weighed.Reset("body.mass")
	require.NoError(t, err)
	require.Equal(t, listed, string(back.Text()))
	none, err := f.RemovePart("tube")
	require.NoError(t, err)
	_, err = none.RemovePart("1")
	require.EqualError(t, err, `body.mass: missing; add it to [body], such as mass = "1.1 kg"`)
}

// The body's diameter is the shape's, whoever sets it.
func TestDiameterOfBodyAndShape(t *testing.T) {
	f := readIn(t, folder(t), finned)
	r := f.Rocket()
	in, err := Find(r, "body.diameter")
	require.NoError(t, err)
	require.NoError(t, in.Set(r, 0.075))
	require.Equal(t, 0.075, r.Shape.Diameter)
	require.NoError(t, in.SetText(r, "80 mm"))
	require.Equal(t, 0.08, r.Shape.Diameter)
	require.NoError(t, r.Validate())
	f, err = f.Set("body.diameter", "75 mm")
	require.NoError(t, err)
	require.Equal(t, 0.075, f.Rocket().Shape.Diameter)
}

func TestCloneCopiesTheShape(t *testing.T) {
	r := readIn(t, folder(t), shapely).Rocket()
	c := r.Clone()
	c.Shape.Length, c.Shape.Nose.Length, c.Shape.Fins[0].Span, c.Shape.Sections[0].Aft, c.Parts[0].Mass = 9, 9, 9, 9, 9
	require.Equal(t, 1.5, r.Shape.Length)
	require.NotEqual(t, 9.0, r.Shape.Nose.Length)
	require.NotEqual(t, 9.0, r.Shape.Fins[0].Span)
	require.NotEqual(t, 9.0, r.Shape.Sections[0].Aft)
	require.NotEqual(t, 9.0, r.Parts[0].Mass)
}
