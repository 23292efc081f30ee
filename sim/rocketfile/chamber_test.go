package rocketfile

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// vesselled is a file with everything that concerns the chamber.
const vesselled = `power = "water"
[body]
diameter = "71 mm"
mass = "1 kg"
drag = 0.5
[water]
volume = "4 L"
bore = "68 mm"
throat = "13 mm"
fill = 0.3
pressure = "9 bar"
[chamber]
material = "E-glass/epoxy"
fibre_fraction = 0.4
temperature = "35 degC"
cycles = 12
proof = "15 bar"
proof_date = "2026-05-01"
[[chamber.ply]]
name = "cloth"
cloth = "200 g/m2"
count = 3
[[chamber.ply]]
cloth = "150 g/m2"
count = 2
weave = "braided"
direction = "55 deg"
[chamber.forward]
shape = "cone"
half_angle = "35 deg"
overlap = "30 mm"
bond_strength = "6 MPa"
[chamber.aft]
shape = "ellipsoid"
overlap = "25 mm"
wall = "2 mm"
[chamber.thread]
diameter = "36 mm"
pitch = "2 mm"
engaged = "10 mm"
seal = "34 mm"
[chamber.heating]
temperature = "90 degC"
time = "12 s"
[recovery]
pin = "4 mm"
line = "1200 N"
[field]
ceiling = "300 m"
[limits]
landing = "5 m/s"
[rail]
length = "1.8 m"
[spread]
"water.fill" = 0.01
`

func TestChamberIsRead(t *testing.T) {
	r := readIn(t, t.TempDir(), vesselled).Rocket()
	c := r.Chamber
	require.NotNil(t, c)
	assert.Equal(t, chamber.GlassEpoxy, c.Material)
	assert.Equal(t, 0.4, c.FibreFraction)
	assert.InDelta(t, 308.15, c.Temperature, 1e-9)
	assert.Equal(t, 12, c.Cycles)
	assert.Equal(t, 15e5, c.Proof)
	assert.Equal(t, "2026-05-01", c.ProofDate)
	assert.Equal(t, []chamber.Ply{
		{Name: "cloth", Cloth: 0.2, Count: 3, Weave: chamber.Woven},
		{Name: "2", Cloth: 0.15, Count: 2, Weave: chamber.Braided, Direction: 55 * math.Pi / 180},
	}, c.Plies)
	assert.InDelta(t, 35*math.Pi/180, c.Forward.HalfAngle, 1e-15)
	c.Forward.HalfAngle = 0
	assert.Equal(t, &chamber.Closure{Shape: chamber.Cone, Overlap: 0.03, BondStrength: 6e6}, c.Forward)
	assert.Equal(t, 0.002, c.Aft.Wall)
	assert.Equal(t, &chamber.Thread{Diameter: 0.036, Pitch: 0.002, Engaged: 0.01, Seal: 0.034}, c.Thread)
	assert.InDelta(t, 0.05e5, c.Heating.Rise, 1e-9, "by default")
	assert.Equal(t, &chamber.Mount{Pin: 0.004, Planes: 1, Line: 1200}, r.Recovery)
	assert.Equal(t, rocket.Field{Ceiling: 300}, r.Field)
	assert.Equal(t, rocket.Limits{Landing: 5}, r.Limits)
}

// What the rest of the rocket says of the chamber is filled in.
func TestVessel(t *testing.T) {
	r := readIn(t, t.TempDir(), vesselled).Rocket()
	v := r.Vessel()
	assert.Equal(t, 0.068, v.Diameter)
	assert.InEpsilon(t, 0.004, v.Volume(), 1e-12, "closures and tube make the volume")
	assert.Equal(t, 0.013, v.Thread.Hole)
	assert.Zero(t, r.Chamber.Thread.Hole, "the rocket itself is as the file says")
	for name, want := range map[string]float64{
		"chamber.diameter": 0.068, "chamber.length": v.Length, "chamber.wall": v.WallThickness(), "chamber.thread.hole": 0.013,
		"chamber.thread.female_strength": chamber.TypicalThread, "chamber.heat_factor": 1, "limits.rail_exit": 15,
		"chamber.cycle_factor": 1 - 0.1*math.Log10(12),
	} {
		in, err := Find(r, name)
		require.NoError(t, err)
		got, given := in.Get(r)
		assert.False(t, given, name)
		assert.InDelta(t, want, got, 1e-12, name)
	}
	in, err := Find(r, "limits.landing")
	require.NoError(t, err)
	got, given := in.Get(r)
	assert.True(t, given)
	assert.Equal(t, 5.0, got)
}

// A copy shares nothing that can be changed.
func TestCloneOfChamber(t *testing.T) {
	r := readIn(t, t.TempDir(), vesselled).Rocket()
	c := r.Clone()
	require.Equal(t, r, c)
	for _, name := range []string{
		"chamber.cycles", "chamber.ply.cloth.count", "chamber.ply.2.cloth", "chamber.forward.overlap", "chamber.aft.wall",
		"chamber.thread.engaged", "recovery.pin", "limits.landing", "field.ceiling",
	} {
		in, err := Find(c, name)
		require.NoError(t, err, name)
		was, _ := in.Get(r)
		require.NoError(t, in.Set(c, was+in.Step), name)
		is, _ := in.Get(r)
		assert.Equal(t, was, is, name)
	}
}

// An edit changes one value and nothing else of the text.
func TestEditChamber(t *testing.T) {
	f := readIn(t, t.TempDir(), vesselled)
	for _, e := range []struct{ name, value, old, new string }{
		{"chamber.ply.cloth.count", "4", "count = 3", "count = 4"},
		{"chamber.ply.2.direction", "50 deg", `direction = "55 deg"`, `direction = "50 deg"`},
		{"chamber.forward.overlap", "1.5 in", `overlap = "30 mm"`, `overlap = "1.5 in"`},
		{"chamber.thread.pitch", "1.5 mm", `pitch = "2 mm"`, `pitch = "1.5 mm"`},
		{"recovery.line", "900 N", `line = "1200 N"`, `line = "900 N"`},
		{"limits.tilt", "10 deg", "landing = \"5 m/s\"\n", "tilt = \"10 deg\"\nlanding = \"5 m/s\"\n"},
		{"chamber.burst", "40 bar", "proof = \"15 bar\"\n", "burst = \"40 bar\"\nproof = \"15 bar\"\n"},
	} {
		made, err := f.SetAll(Change{Input: e.name, Value: e.value})
		require.NoError(t, err, e.name)
		assert.Equal(t, strings.Replace(vesselled, e.old, e.new, 1), string(made.Text()), e.name)
	}
}

// What cannot be is refused, with the line and the reason.
func TestFaultsOfChambers(t *testing.T) {
	for _, tt := range []struct{ name, old, new, want string }{
		{"fibre fraction", "fibre_fraction = 0.4", "fibre_fraction = 0.76", "x.toml:14: chamber.fibre_fraction = 0.76: too large; give 10 % to 75 %"},
		{"no overlap", `overlap = "25 mm"`, `overlap = "0 mm"`, `x.toml:35: chamber.aft.overlap = "0 mm": zero; give 0.1 mm to 2000 mm`},
		{"no material", "material = \"E-glass/epoxy\"\n", "", `x.toml:12: chamber.material: missing; add it to [chamber], such as material = "E-glass/epoxy"`},
		{"a wall over the radius", "fibre_fraction = 0.4", "wall = \"40 mm\"", `x.toml:14: chamber.wall = "40 mm": is thicker than the inside radius, 34 mm;`},
		{"a material of one's own", `"E-glass/epoxy"`, `"own"`, `chamber.hoop_strength: is not known for a material of your own;`},
		{"a female thread", `seal = "34 mm"`, `female_strength = "-3 MPa"`, `x.toml:41: chamber.thread.female_strength = "-3 MPa": negative;`},
		{"another bore", "[chamber]\n", "[chamber]\ndiameter = \"60 mm\"\n", `x.toml:13: chamber.diameter = "60 mm": differs from water.bore, 68 mm; give one of the two, or both alike`},
		{"another length", "[chamber]\n", "[chamber]\nlength = \"500 mm\"\n", `x.toml:13: chamber.length = "500 mm": makes a chamber of 2.1 L with its closures`},
		{"wider than the body", "count = 3", "count = 30", "chamber.diameter = 68 mm: is"},
		{"closures that fill it", `volume = "4 L"`, `volume = "0.05 L"`, "water.volume"},
		{"a date", `"2026-05-01"`, `"1.5.2026"`, `x.toml:18: chamber.proof_date = "1.5.2026": not a day of the calendar; write year, month and day, as in 2026-05-01`},
		{"burst below the proof", "cycles = 12", `burst = "14 bar"`, `chamber.burst = "14 bar": is below the proof on record, 15 bar`},
		{"a section of a slip", "[chamber.forward]", "[chamber.foreward]", "x.toml:28: chamber.foreward: unknown key; perhaps forward is meant"},
		{"layers", "count = 3", "count = 0", "x.toml:22: chamber.ply.cloth.count = 0: zero; give 1 to 200"},
		{"limits that cross", `landing = "5 m/s"`, "margin_most = 0.5", "limits.margin_least = 1: is more than limits.margin_most, 0.5; give a least margin below the greatest"},
		{"a spread of what no flight feels", `"water.fill" = 0.01`, `"chamber.ply.cloth.cloth" = "5 g/m2"`, `x.toml:55: spread.chamber.ply.cloth.cloth = "5 g/m2": no flight depends on it, so its uncertainty changes none;`},
		{"a wide seal", `seal = "34 mm"`, `seal = "340 mm"`, `x.toml:41: chamber.thread.seal = "340 mm": is much wider than the chamber inside, 68 mm;`},
		{"kilograms of cloth", `cloth = "200 g/m2"`, `cloth = "0.2"`, `write "0.2 g/m2"`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			text := strings.Replace(vesselled, tt.old, tt.new, 1)
			require.NotEqual(t, vesselled, text)
			_, err := Read("x.toml", t.TempDir(), []byte(text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), tt.want)
		})
	}
}

// A closure within tolerance of what was measured is measuring, not a contradiction.
func TestChamberAgreesWithinMeasuring(t *testing.T) {
	v := readIn(t, t.TempDir(), vesselled).Rocket().Vessel()
	for share, ok := range map[float64]bool{0.985: true, 1.015: true, 0.96: false, 1.04: false} {
		f := readIn(t, t.TempDir(), vesselled)
		_, err := f.SetAll(Change{Input: "chamber.length", Value: formatMillimetres(v.Length * share)})
		assert.Equal(t, ok, err == nil, "%g: %v", share, err)
	}
}

func formatMillimetres(v float64) string {
	return strings.Trim(inMillimetres(math.Round(v*1e5)/1e5), `"`)
}
