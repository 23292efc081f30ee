package rocketfile

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/airframe"
)

// shapely is whole with a shape, a mass list, and every key that comes with them.
var shapely = strings.NewReplacer(
	"drag_factor = 1.02\n", `drag_factor = 1.02
length      = "1.50 m"
balance     = "0.72 m"
inertia     = "0.11 kg*m2"
roll_inertia = "0.0008 kg*m2"
roughness   = "20 um"
guides      = "60 mm2"

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
fore   = "70 mm"
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
		Length: 1.5, Diameter: 0.0704, Roughness: 20e-6, Guides: 60e-6,
		Nose:     airframe.Nose{Shape: airframe.PowerSeries, Length: 0.23, Exponent: 0.6, Diameter: 0.07},
		Sections: []airframe.Section{{Name: "front", Length: 0.3, Fore: 0.07, Aft: 0.0704}, {Name: "2", Length: 0.1016}},
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
	require.Equal(t, sim.RigidModel, r.Model)
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
	require.Len(t, Inputs(r), count+3, "the gust alone is more")
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
	require.Zero(t, r.Shape.Guides)
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
		"nose.diameter": 0.07, "section.tail.fore": 0.07, "section.tail.aft": 0.07,
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
		"[[section]]\nlength = \"50 mm\"\nfore = \"60 mm\"\naft = \"70 mm\"\n[[section]]\nlength = \"900 mm\"\n[[section]]\nlength = \"20 mm\"\naft = \"50 mm\"\n", 1)
	r := readIn(t, folder(t), strings.Replace(text, "1290", "1000", 1)).Rocket()
	for name, want := range map[string]float64{"nose.diameter": 0.06, "section.2.fore": 0.07, "section.2.aft": 0.07, "section.3.fore": 0.07, "section.3.aft": 0.05} {
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
	c := Clone(r)
	c.Shape.Length, c.Shape.Nose.Length, c.Shape.Fins[0].Span, c.Shape.Sections[0].Aft, c.Parts[0].Mass = 9, 9, 9, 9, 9
	require.Equal(t, 1.5, r.Shape.Length)
	require.NotEqual(t, 9.0, r.Shape.Nose.Length)
	require.NotEqual(t, 9.0, r.Shape.Fins[0].Span)
	require.NotEqual(t, 9.0, r.Shape.Sections[0].Aft)
	require.NotEqual(t, 9.0, r.Parts[0].Mass)
}

// A part of a shape makes one, of which the rest is missing then.
func TestOnePartAsksForTheRest(t *testing.T) {
	nose := "x.toml: nose: the section is missing; add [nose] with shape and length"
	length := `x.toml:4: body.length: missing; add it to [body], such as length = "980 mm"`
	for name, tt := range map[string]struct {
		text string
		want []string
	}{
		"length":    {swapped(t, "drag = 0.5", "drag = 0.5\nlength = \"1400 mm\""), []string{nose}},
		"balance":   {swapped(t, "drag = 0.5", "drag = 0.5\nbalance = \"400 mm\""), []string{nose, length}},
		"roughness": {swapped(t, "drag = 0.5", "drag = 0.5\nroughness = \"10 um\""), []string{nose, length}},
		"nose":      {plain + "[nose]\nlength = \"200 mm\"\n", []string{length, "x.toml:33: nose.shape: missing; add it to [nose], such as shape = \"tangent ogive\""}},
		"fins":      {plain + "[[fins]]\ncount = 3\n", []string{nose, length, `x.toml:33: fins.1.root: missing; add it to [[fins]], such as root = "110 mm"`}},
		"section":   {plain + "[[section]]\n", []string{nose, length, `x.toml:33: section.1.length: missing; add it to [[section]], such as length = "120 mm"`}},
		"part":      {plain + "[[part]]\n", []string{`x.toml:33: part.1.mass: missing; add it to [[part]], such as mass = "40 g"`, `x.toml:33: part.1.position: missing; add it to [[part]], such as position = "300 mm"`}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read("x.toml", folder(t), []byte(tt.text))
			require.Error(t, err)
			for _, want := range tt.want {
				require.Contains(t, strings.Split(err.Error(), "\n"), want)
			}
		})
	}
	_, err := Read("x.toml", folder(t), []byte(swapped(t, "drag = 0.5", "")))
	require.EqualError(t, err, "x.toml:4: body.drag: missing; add it to [body], such as drag = 0.48")
}

// Whatever is wrong with a shape is told with line, key, value and mend.
func TestFaultsOfShapes(t *testing.T) {
	tests := []struct{ name, text, old, new, want string }{
		{"nose contour", finned, `"conical"`, `"pointed"`, `x.toml:11: nose.shape = "pointed": not one of the words for it; write "conical", "tangent ogive", "elliptical", "parabolic", "von Karman" or "power series"`},
		{"nose longer than the rocket", finned, `length = "200 mm"`, `length = "1500 mm"`, `x.toml:12: nose.length = "1500 mm": is longer than the whole rocket, 1400 mm; shorten the nose or correct body.length`},
		{"nose too wide", finned, `length = "200 mm"`, "length = \"200 mm\"\ndiameter = \"80 mm\"", `x.toml:13: nose.diameter = "80 mm": is wider than the body, 70 mm; give at most body.diameter, the largest outside diameter`},
		{"exponent", shapely, `exponent = 0.6`, `exponent = 1.5`, `nose.exponent = 1.5: too large; give 0.05 to 1`},
		{"sections too long", finned, `length = "100 mm"`, `length = "1300 mm"`, `x.toml:7: body.length = "1400 mm": is less than nose and sections add up to, 1500 mm; make body.length 1500 mm, or shorten what is in it by 100 mm`},
		{"step", finned, `length = "100 mm"`, "length = \"100 mm\"\nfore = \"60 mm\"\n[[section]]\nlength = \"20 mm\"\nfore = \"70 mm\"", `x.toml:20: section.2.fore = "70 mm": does not meet what is before it, 60 mm wide; give that diameter, or a section between them that tapers`},
		{"narrower than said", finned, `length = "100 mm"`, "length = \"100 mm\"\nfore = \"60 mm\"", `x.toml:5: body.diameter = "70 mm": is more than nose and sections have, 60 mm; give the largest outside diameter, or correct the sections`},
		{"floating fins", finned, `position = "1290 mm"`, `position = "1390 mm"`, `x.toml:25: fins.1.position = "1390 mm": floats: the root ends 100 mm behind the body; give at most 1290 mm for this root and body.length`},
		{"fins on the nose", finned, `position = "1290 mm"`, `position = "100 mm"`, `x.toml:25: fins.1.position = "100 mm": stands on the nose, which ends at 200 mm; move the fins aft onto the body`},
		{"overlapping fins", finned, `position = "1290 mm"`, "position = \"1290 mm\"\n[[fins]]\nname = \"fore\"\ncount = 3\nroot = \"100 mm\"\ntip = \"0 mm\"\nspan = \"50 mm\"\nsweep = \"50 mm\"\nthickness = \"2 mm\"\nposition = \"1200 mm\"", `x.toml:34: fins.fore.position = "1200 mm": overlaps fins.1, whose root goes from 1290 mm to 1400 mm; move one of the two, or make them one set`},
		{"two fins", finned, `count = 4`, `count = 2`, `x.toml:19: fins.1.count = 2: too small; give 3 to 6`},
		{"half a fin", finned, `count = 4`, `count = 3.5`, `x.toml:19: fins.1.count = 3.5: not a whole number; give 3 to 6`},
		{"fins with a unit", finned, `count = 4`, `count = "4 mm"`, `x.toml:19: fins.1.count = "4 mm": has a unit where a plain number is due; write "4"`},
		{"wide tip", finned, `tip = "60 mm"`, `tip = "300 mm"`, `x.toml:21: fins.1.tip = "300 mm": is more than twice the root chord; give at most 220 mm; check that root and tip are not exchanged`},
		{"thick fins", finned, `thickness = "3 mm"`, `thickness = "90 mm"`, `x.toml:24: fins.1.thickness = "90 mm": is too much; give at most half the mean chord, 42.5 mm`},
		{"a profile", finned, `thickness = "3 mm"`, "thickness = \"3 mm\"\nsection = \"oval\"", `x.toml:25: fins.1.section = "oval": not one of the words for it; write "flat", "rounded", "wedge" or "airfoil"`},
		{"cant", finned, `thickness = "3 mm"`, "thickness = \"3 mm\"\ncant = \"12 deg\"", `x.toml:25: fins.1.cant = "12 deg": too large; give -10 deg to 10 deg`},
		{"names twice", shapely, "name      = \"tail\"", "name      = \"2\"", `fins.2.name: a name that another [[fins]] has too; give each a name of its own`},
		{"a name", finned, `name = "tail"`, `name = "Tail end"`, `x.toml:15: section.1.name = "Tail end": not a name for a section; write 1 to 24 small letters, digits and hyphens, such as tail`},
		{"balance behind", finned, `balance = "650 mm"`, `balance = "1650 mm"`, `x.toml:8: body.balance = "1650 mm": out of range; give where the body balances, from the tip of the nose, less than body.length, 1.4 m`},
		{"inertia zero", finned, `balance = "650 mm"`, "balance = \"650 mm\"\ninertia = \"0 kg*m2\"", `x.toml:9: body.inertia = "0 kg*m2": zero; give 0.000001 kg*m2 to 10000 kg*m2`},
		{"inertia of a wall", finned, `balance = "650 mm"`, "balance = \"650 mm\"\ninertia = \"50 kg*m2\"", `x.toml:9: body.inertia = "50 kg*m2": is more than a body of this mass, length and balance can have; give at most 0.5 kg*m2; check the unit, kg*m2`},
		{"roll inertia", finned, `balance = "650 mm"`, "balance = \"650 mm\"\nroll_inertia = \"0.1 kg*m2\"", `x.toml:9: body.roll_inertia = "0.1 kg*m2": is more than a body of this mass and width can have; give at most 0.0121 kg*m2; check the unit, kg*m2`},
		{"roughness", finned, `balance = "650 mm"`, "balance = \"650 mm\"\nroughness = \"2 mm\"", `x.toml:9: body.roughness = "2 mm": too large; give 0 um to 1000 um`},
		{"short body", finned, `length = "1400 mm"`, `length = "60 mm"`, `x.toml:7: body.length = "60 mm": is less than the diameter; give the length from the tip of the nose to the aft end`},
		{"part off the rocket", listed, `position = "700 mm"`, `position = "1700 mm"`, `part.tube.position = "1700 mm": floats: it is off the body, 1400 mm long; give where the part balances, from the tip of the nose`},
		{"part ahead", listed, `length = "1200 mm"`, `length = "1500 mm"`, `part.tube.length = "1500 mm": reaches ahead of the tip of the nose; give at most 1400 mm for a part that balances in its middle there`},
		{"part's mass", listed, `mass = "200 g"`, `mass = "-2 g"`, `part.2.mass = "-2 g": negative; give 0 g to 200000 g`},
		{"no mass", strings.Replace(listed, `"800 g"`, `"0 g"`, 1), `mass = "200 g"`, `mass = "0 g"`, `part.tube.mass = "0 g": and all others are zero: the list has no mass; weigh the parts`},
		{"nozzle off", finned, `throat = "13 mm"`, "throat = \"13 mm\"\nnozzle = \"1700 mm\"", `x.toml:32: water.nozzle = "1700 mm": is off the body, 1.4 m long; give where the nozzle's exit is, from the tip of the nose`},
		{"fittings off", finned, `throat = "13 mm"`, "throat = \"13 mm\"\nfittings_at = \"1700 mm\"", `x.toml:32: water.fittings_at = "1700 mm": is off the body, 1.4 m long; give where the balance point of the fittings is, from the tip of the nose`},
		{"chamber too long", finned, `throat = "13 mm"`, "throat = \"13 mm\"\nnozzle = \"900 mm\"", `x.toml:29: water.volume = "4 L": makes a chamber longer than the rocket: 1.101 m of it before the nozzle's exit at 0.9 m; check volume, bore, body.length and water.nozzle`},
		{"motor off", finned, `case = "200 g"`, "case = \"200 g\"\nposition = \"1700 mm\"", `x.toml:43: motor.position = "1700 mm": is off the body, 1.4 m long; give where the motor's aft end is, from the tip of the nose`},
		{"motor's fittings off", finned, `case = "200 g"`, "case = \"200 g\"\nfittings_at = \"1700 mm\"", `x.toml:43: motor.fittings_at = "1700 mm": is off the body, 1.4 m long; give where the balance point of the fittings is, from the tip of the nose`},
		{"motor too long", finned, `case = "200 g"`, "case = \"200 g\"\nlength = \"300 mm\"\nposition = \"200 mm\"", `x.toml:43: motor.length = "300 mm": reaches ahead of the tip of the nose; give at most 0.2 m, or correct motor.position`},
		{"misalignment", finned, "[rail]", "[flight]\nmisalignment = \"11 deg\"\n[rail]", `x.toml:51: flight.misalignment = "11 deg": too large; give -10 deg to 10 deg`},
		{"offset", finned, "[rail]", "[flight]\noffset = \"60 mm\"\n[rail]", `x.toml:51: flight.offset = "60 mm": too large; give -50 mm to 50 mm`},
		{"model", finned, "[rail]", "[flight]\nmodel = \"stiff\"\n[rail]", `x.toml:51: flight.model = "stiff": not one of the words for it; write "rigid" or "point"`},
		{"gust", finned, "[rail]", "[gust]\nspeed = \"60 m/s\"\n[rail]", `x.toml:51: gust.speed = "60 m/s": too large; give 0 m/s to 50 m/s`},
		{"gust's height", finned, "[rail]", "[gust]\nheight = \"-1 m\"\n[rail]", `x.toml:51: gust.height = "-1 m": negative; give 0 m to 5000 m`},
		{"rigid without a shape", plain, "[rail]", "[flight]\nmodel = \"rigid\"\n[rail]", `x.toml:32: flight.model = "rigid": asks for a rigid body, and the file gives no shape; give [nose], [[fins]], body.length and body.balance, or write "point"`},
		{"rigid without a balance", strings.Replace(finned, "balance = \"650 mm\"\n", "", 1), "[rail]", "[flight]\nmodel = \"rigid\"\n[rail]", `x.toml:50: flight.model = "rigid": asks for a rigid body, and where it balances is not known; give body.balance or a mass list of [[part]], or write "point"`},
		{"a key of another section", finned, "[nose]\n", "[nose]\nspan = \"1 mm\"\n", `x.toml:11: nose.span: unknown key; it belongs in [[fins]]`},
		{"a slip", finned, "[nose]\n", "[nose]\nlenght = \"1 mm\"\n", `x.toml:11: nose.lenght: unknown key; perhaps length is meant`},
		{"one table", finned, "[[fins]]", "[fins]", `x.toml:18: fins: not written as it must be; write it as [[fins]] with keys below`},
		{"many noses", finned, "[nose]", "[[nose]]", `x.toml:10: nose: not written as it must be; write it as [nose] with keys below`},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(tt.text, tt.old), tt.old)
			_, err := Read("x.toml", dir, []byte(strings.Replace(tt.text, tt.old, tt.new, 1)))
			require.Error(t, err)
			lines := strings.Split(err.Error(), "\n")
			if !strings.HasPrefix(tt.want, "x.toml") {
				for i := range lines { // where it stands matters less than what it says
					if _, rest, ok := strings.Cut(lines[i], ": "); ok {
						lines[i] = rest
					}
				}
			}
			require.Contains(t, lines, tt.want)
			require.Len(t, lines, 1, "one slip, one fault")
			var faults Faults
			require.ErrorAs(t, err, &faults)
			_, key, _ := cutLast(faults[0].Key)
			if faults[0].Value != "" {
				require.Contains(t, strings.Split(strings.Replace(tt.text, tt.old, tt.new, 1), "\n")[faults[0].Line-1], key, "the line has the key")
			}
		})
	}
	_, err := Read("x.toml", dir, []byte(finned+manyLines(65, "[[part]]\nname = \"p%d\"\nmass = \"1 g\"\nposition = \"1 m\"\n")))
	require.ErrorContains(t, err, "part: more than 64 of them; take some out")
	_, err = Read("x.toml", dir, []byte(finned+manyLines(64, "[[part]]\nname = \"p%d\"\nmass = \"1 g\"\nposition = \"1 m\"\n")))
	require.NoError(t, err)
}

// Adding leaves every line that is there as it is, and removing what was added
// leaves the very text.
func TestPartsOfShapesComeAndGo(t *testing.T) {
	for name, text := range map[string]string{
		"starter":  string(Starter().Text()),
		"CRLF":     strings.ReplaceAll(finned, "\n", "\r\n"),
		"comments": strings.ReplaceAll(finned, "\"\n", "\" # note\n"),
		"listed":   listed,
	} {
		f, err := fuzzed([]byte(text))
		require.NoError(t, err)
		bare := f
		if shaped(f.Rocket()) && len(f.Rocket().Body.Drag) == 0 {
			bare, err = f.Set("body.drag", "0.5")
			require.NoError(t, err)
		}
		if shaped(bare.Rocket()) {
			bare, err = bare.RemoveShape()
			require.NoError(t, err, name)
			require.Nil(t, bare.Rocket().Shape)
			require.NotContains(t, string(bare.Text()), "[nose]")
			require.NotContains(t, string(bare.Text()), "balance")
		}
		_, _, err = bare.AddFins()
		require.EqualError(t, err, "fins: the rocket has no shape; add one first: [nose], [[fins]] and body.length")
		_, err = bare.RemoveShape()
		require.Error(t, err)

		formed, err := bare.AddShape()
		require.NoError(t, err, name)
		require.NoError(t, formed.Rocket().Validate())
		require.False(t, formed.Rocket().Balanced() && len(formed.Rocket().Parts) == 0, "where it balances is for the scales to say")
		again, err := formed.RemoveShape()
		require.NoError(t, err)
		require.Equal(t, string(bare.Text()), string(again.Text()), name)
		_, err = formed.AddShape()
		require.EqualError(t, err, "nose: the rocket has a shape; change that one")

		for what, change := range map[string]struct {
			add    func(*File) (*File, string, error)
			remove func(*File, string) (*File, error)
		}{
			"fins":    {(*File).AddFins, (*File).RemoveFins},
			"section": {(*File).AddSection, (*File).RemoveSection},
			"part":    {(*File).AddPart, (*File).RemovePart},
		} {
			g, made, err := change.add(formed)
			require.NoError(t, err, what)
			_, err = Find(g.Rocket(), what+"."+made+".length")
			if what != "fins" {
				require.NoError(t, err)
			}
			back, err := change.remove(g, made)
			require.NoError(t, err)
			require.Equal(t, string(formed.Text()), string(back.Text()), "%s %s", name, what)
			_, err = change.remove(g, "none")
			require.ErrorContains(t, err, what+".none: the rocket has no such "+what+"; there is ")
		}
	}
}

// A tube more changes nothing in the shape, and a list begins with the rocket
// that was weighed.
func TestWhatIsAddedFits(t *testing.T) {
	f := readIn(t, folder(t), finned)
	g, name, err := f.AddSection()
	require.NoError(t, err)
	require.Equal(t, "body", name)
	before, _, _ := f.Rocket().Shape.Aero().Crossflow()
	after, _, _ := g.Rocket().Shape.Aero().Crossflow()
	require.InDelta(t, before, after, 1e-12)
	for err == nil {
		g, _, err = g.AddSection()
	}
	require.EqualError(t, err, "section: nose and sections fill the body; raise body.length or shorten one of them")

	g, name, err = f.AddPart()
	require.NoError(t, err)
	require.Equal(t, "airframe", name)
	a, b := f.Rocket().DryBody(), g.Rocket().DryBody()
	require.InDelta(t, a.Mass, b.Mass, 1e-12)
	require.InDelta(t, a.At, b.At, 1e-12)
	require.InDelta(t, a.Pitch, b.Pitch, 0.2*a.Pitch)
	h, name, err := g.AddPart()
	require.NoError(t, err)
	require.Equal(t, "part-2", name)
	require.InDelta(t, b.Mass, h.Rocket().DryBody().Mass, 1e-12, "the scales outrank the list")

	g, name, err = f.AddFins()
	require.NoError(t, err)
	require.Equal(t, "tail", name)
	for err == nil {
		g, name, err = g.AddFins()
	}
	require.EqualError(t, err, "fins: there is no room for more fins ahead of those there are; shorten those, or move them aft")
}

// What only a rocket with a shape can be uncertain about goes with the shape.
func TestSpreadGoesWithTheShape(t *testing.T) {
	text := strings.Replace(finned, "[rail]", "[spread]\n\"body.balance\" = \"5 mm\"\nfins.1.span = \"1 mm\"\n\"flight.misalignment\" = \"0.2 deg\"\nwater.nozzle = \"2 mm\"\nwater.fill = 0.01\n\n[rail]", 1)
	f := readIn(t, folder(t), strings.Replace(text, "[nose]", "drag = 0.5\n[nose]", 1))
	require.Len(t, f.Spreads(), 5)
	g, err := f.RemoveFins("1")
	require.NoError(t, err)
	require.Len(t, g.Spreads(), 4)
	g, err = f.RemoveShape()
	require.NoError(t, err)
	require.Len(t, g.Spreads(), 1)
}

// An edit of a shape's value changes its bytes and no other.
func TestSetInAShape(t *testing.T) {
	f := readIn(t, folder(t), shapely)
	for _, tt := range []struct{ input, value, old, new string }{
		{"body.length", "60 in", `length      = "1.50 m"`, `length      = "60 in"`},
		{"body.inertia", "0.12 kg*m2", `"0.11 kg*m2"`, `"0.12 kg*m2"`},
		{"nose.shape", "von Karman", `"power series"`, `"von Karman"`},
		{"nose.exponent", "0.75", `exponent = 0.6`, `exponent = 0.75`},
		{"section.2.length", "120 mm", `length = "4 in"`, `length = "120 mm"`},
		{"section.front.name", "fore", `name   = "front"`, `name   = "fore"`},
		{"fins.tail.count", "6", `count     = 3`, `count     = 6`},
		{"fins.2.sweep", "-5 mm", `"-10 mm"`, `"-5 mm"`},
		{"fins.tail.section", "rounded", `"airfoil"`, `"rounded"`},
		{"part.battery.mass", "2 oz", `"45 g"`, `"2 oz"`},
		{"water.nozzle", "1.5 m", `"1510 mm"`, `"1.5 m"`},
		{"motor.fittings_at", "1470 mm", `"1480 mm"`, `"1470 mm"`},
		{"flight.model", "point", `"rigid"`, `"point"`},
		{"flight.offset", "1 mm", `"-0.5 mm"`, `"1 mm"`},
		{"gust.height", "200 ft", `height = "60 m"`, `height = "200 ft"`},
	} {
		require.Equal(t, 1, strings.Count(shapely, tt.old), tt.old)
		g, err := f.Set(tt.input, tt.value)
		require.NoError(t, err, tt.input)
		require.Equal(t, strings.Replace(shapely, tt.old, tt.new, 1), string(g.Text()))
	}
	short := readIn(t, folder(t), finned)
	for _, tt := range []struct{ input, value, after, line string }{
		{"fins.1.cant", "0.5 deg", "position = \"1290 mm\"\n", "cant = \"0.5 deg\"\n"},
		{"fins.1.section", "wedge", "thickness = \"3 mm\"\n", "section = \"wedge\"\n"},
		{"body.inertia", "0.1 kg*m2", "balance = \"650 mm\"\n", "inertia = \"0.1 kg*m2\"\n"},
		{"flight.misalignment", "0.5 deg", "length = \"1.8 m\"\n", "\n[flight]\nmisalignment = \"0.5 deg\"\n"},
		{"gust.speed", "3 m/s", "length = \"1.8 m\"\n", "\n[gust]\nspeed = \"3 m/s\"\n"},
		{"nose.diameter", "70 mm", "shape = \"conical\"\nlength = \"200 mm\"\n", "diameter = \"70 mm\"\n"},
	} {
		g, err := short.Set(tt.input, tt.value)
		require.NoError(t, err, tt.input)
		require.Equal(t, strings.Replace(finned, tt.after, tt.after+tt.line, 1), string(g.Text()))
		back, err := g.Reset(tt.input)
		require.NoError(t, err)
		require.False(t, back.Given(tt.input))
		sameRocket(t, short, back)
	}
}
