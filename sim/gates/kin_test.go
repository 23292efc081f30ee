package gates

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// holdsAndField is what any rocket has to state: what holds its canopies, and its field.
const holdsAndField = `
[recovery]
line = "1200 N"
pin = "4 mm"
pin_strength = "200 MPa"
bond_area = "15 cm2"
bond_strength = "8 MPa"
line_length = "3 m"
line_stretch = "15 %"
canopy_mass = "60 g"
[field]
ceiling = "1500 m"
radius = "2500 m"
`

// A bottle as burst and proved by its builder: invented figures.
const provedBottle = `
[chamber]
material = "PET bottle"
temperature = "25 degC"
wall = "0.35 mm"
burst = "16 bar"
cycles = 0
proof = "PROOF"
proof_date = "2026-10-01"
liner = "lined"
`

// finned is a nose and four fins.
func finned(nose, root, tip, span, sweep, thickness, position string) string {
	return `
[nose]
shape = "tangent ogive"
length = "` + nose + ` mm"
[[fins]]
name = "tail"
count = 4
section = "rounded"
shear_modulus = "4 GPa"
root = "` + root + ` mm"
tip = "` + tip + ` mm"
span = "` + span + ` mm"
sweep = "` + sweep + ` mm"
thickness = "` + thickness + ` mm"
position = "` + position + ` mm"
`
}

// kin is an example with what it lacks stated and what fails mended.
type kin struct {
	file, body, more string
	power            rocket.Power
	sets             [][2]string
}

// kins are one of every example on each drive that it has.
var kins = []kin{
	{file: "heron", power: rocket.WaterPower},
	{file: "heron", power: rocket.MotorPower},
	{file: "heron", power: rocket.WaterPower, more: "", sets: [][2]string{{"chamber.burst", "24 bar"}}}, // less than is estimated
	{file: "mass-list", power: rocket.MotorPower, more: holdsAndField,
		sets: [][2]string{{"canopy.main.deploy.motor", "apogee + 1 s"}, {"motor_mount.retainer", "25 mm"}}}, // a timer in place of the charge
	{file: "drogue-main", power: rocket.MotorPower, body: "length = \"1600 mm\"\nbalance = \"900 mm\"",
		more: holdsAndField + finned("300", "180", "90", "69", "90", "4", "1415"),
		sets: [][2]string{{"canopy.drogue.deploy.motor", "apogee + 0.5 s"}, {"motor_mount.retainer", "34 mm"}}},
	{file: "bottle", power: rocket.WaterPower, body: "length = \"640 mm\"\nbalance = \"300 mm\"",
		more: holdsAndField + strings.Replace(provedBottle, "PROOF", "8 bar", 1) + finned("180", "90", "60", "90", "40", "3", "540"),
		sets: [][2]string{{"water.fill", "28 %"}}},
	{file: "tube", power: rocket.WaterPower, body: "length = \"800 mm\"\nbalance = \"240 mm\"",
		more: holdsAndField + strings.Replace(provedBottle, "PROOF", "12 bar", 1) + finned("180", "90", "60", "160", "40", "3", "700") +
			"[limits]\nmargin_most = 5\n", // far aft full, far forward empty
		sets: [][2]string{{"water.fill", "16 %"}}},
	{file: "wagtail", power: rocket.WaterPower, body: "length = \"1500 mm\"\nbalance = \"982 mm\"",
		more: holdsAndField + strings.NewReplacer("PROOF", "14 bar", "16 bar", "20 bar").Replace(provedBottle) + finned("230", "140", "70", "90", "80", "3", "1350"),
		sets: [][2]string{{"water.nozzle", "1440 mm"}, {"rail.length", "3 m"}}},
}

// bare is the example as it is.
func (k *kin) bare(t *testing.T) []byte {
	text, err := os.ReadFile("../../testdata/" + k.file + ".toml")
	require.NoError(t, err)
	return text
}

// open reads the kin.
func (k *kin) open(t *testing.T) *rocketfile.File {
	text := strings.Replace(string(k.bare(t)), "[body]", "[body]\n"+k.body, 1) + k.more
	f, err := rocketfile.Read(k.file+".toml", "../../testdata", []byte(text))
	require.NoError(t, err)
	for _, set := range append(k.sets, [2]string{"power", string(k.power)}) {
		f, err = f.Set(set[0], set[1])
		require.NoError(t, err)
	}
	return f
}

// A go can be had and not only refused: the heron states all that is asked and is a go on
// both drives, and every other example is one once it states what it lacks and mends what
// fails.
func TestEveryExampleHasAGoKin(t *testing.T) {
	long.Unraced(t)
	for _, k := range kins {
		t.Run(k.file+" "+string(k.power), func(t *testing.T) {
			f := k.open(t)
			r := f.Rocket()
			v := judge(t, r, Options{Spreads: study.Spreads(f), Respread: study.Respread(f), Remedies: true})
			for i := range v.Checks {
				c := &v.Checks[i]
				assert.True(t, c.Pass, "%s: %g, %s", c.Name, c.Value, c.Word)
			}
			assert.Equal(t, WordGo, v.Word())
			if k.more == "" {
				return
			}
			bare, err := rocketfile.Read(k.file+".toml", "../../testdata", k.bare(t))
			require.NoError(t, err)
			without := judge(t, bare.Rocket(), all(bare.Rocket()))
			assert.NotEqual(t, WordGo, without.Word(), "as it is it lacks something")
		})
	}
}

// Whatever example there is has its kin, on each drive that it has.
func TestNoExampleWithoutKin(t *testing.T) {
	files, err := filepath.Glob("../../testdata/*.toml")
	require.NoError(t, err)
	rockets := 0
	for _, path := range files {
		f, err := rocketfile.Open(path)
		if err != nil {
			require.Contains(t, err.Error(), "a motor file, not a rocket file", "%s is wrong", path)
			continue
		}
		rockets++
		for _, power := range f.Rocket().Drives() {
			assert.True(t, slices.ContainsFunc(kins, func(k kin) bool {
				return k.file+".toml" == filepath.Base(path) && k.power == power
			}), "%s on %s has no kin", path, power)
		}
	}
	assert.GreaterOrEqual(t, rockets, 6)
}
