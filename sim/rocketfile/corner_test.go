package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

func TestTablesThatClash(t *testing.T) {
	const remedy = "; write the table in one way: a header, dotted keys or braces"
	tests := []struct{ name, old, new, want string }{
		{"a value and a header", "[rail]", "[body.mass]\n[rail]", "x.toml:31: body.mass: already given another way on line 6" + remedy},
		{"a value and a header below it", "[rail]", "[body.mass.kg]\n[rail]", "x.toml:31: body.mass: already given another way on line 6" + remedy},
		{"a header and a list", "[rail]", "[[body]]\n[rail]", "x.toml:31: body: already given another way on line 4" + remedy},
		{"dots into a header's table", "[water]", "[site.air]\n[site]\nair.hot = 1\n[water]", "x.toml:9: site.air: unknown key"},
		{"dots into a value", `mass = "1 kg"`, "mass = \"1 kg\"\nmass.net = \"1 kg\"", "x.toml:7: body.mass: already given another way on line 6" + remedy},
		{"a list in braces and a header", `power = "water"`, "power = \"water\"\nsite = { elevation = \"1 m\" }\n[site.air]", "x.toml:4: site: already given another way on line 3" + remedy},
	}
	dir := folder(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read("x.toml", dir, []byte(swapped(t, tt.old, tt.new)))
			require.Error(t, err)
			require.Contains(t, err.Error(), tt.want)
		})
	}
}

// onMotorText flies on a motor; what is said of the water drive is unfinished.
func onMotorText(water string) string {
	return "power = \"motor\"\nmotor = { curve = \"h.csv\", case = \"200 g\", propellant = \"100 g\" }\n" + base + water
}

func TestSetCompletesATableThatIsOnlyImplied(t *testing.T) {
	changes := []Change{{"water.volume", "4 L"}, {"water.bore", "68 mm"}, {"water.throat", "13 mm"}, {"water.fill", "0.3"}, {"water.pressure", "9 bar"}}
	tube := rocket.LaunchTube{Length: 0.6, Outer: 0.012, Inner: 0.009}
	for name, tt := range map[string]struct{ water, want string }{
		"header": {
			"\n# The tube.\n[water.tube]\nlength = \"0.6 m\"\nouter = \"12 mm\"\ninner = \"9 mm\"\n",
			"\n[water]\nfill = 0.3\npressure = \"9 bar\"\nthroat = \"13 mm\"\nvolume = \"4 L\"\nbore = \"68 mm\"\n\n# The tube.\n[water.tube]\n",
		},
		"dots": {
			"water.tube.length = \"0.6 m\"\nwater . tube . outer = \"12 mm\"\n\"water\".tube.inner = \"9 mm\"\n",
			"\"water\".tube.inner = \"9 mm\"\n\"water\".volume = \"4 L\"\n\"water\".bore = \"68 mm\"\n\"water\".throat = \"13 mm\"\n\"water\".fill = 0.3\n\"water\".pressure = \"9 bar\"\n",
		},
		"braces": {
			"water = { tube = { length = \"0.6 m\", outer = \"12 mm\", inner = \"9 mm\" } }\n",
			"inner = \"9 mm\" }, volume = \"4 L\", bore = \"68 mm\", throat = \"13 mm\", fill = 0.3, pressure = \"9 bar\" }\n",
		},
		"braces with dots": {
			"water = { tube.length = \"0.6 m\", tube.outer = \"12 mm\", tube.inner = \"9 mm\" }\n",
			"tube.inner = \"9 mm\", volume = \"4 L\", bore = \"68 mm\", throat = \"13 mm\", fill = 0.3, pressure = \"9 bar\" }\n",
		},
	} {
		t.Run(name, func(t *testing.T) {
			f := readIn(t, folder(t), onMotorText(tt.water))
			require.Nil(t, f.Rocket().Water)
			g, err := f.SetAll(changes...)
			require.NoError(t, err)
			require.Contains(t, string(g.Text()), tt.want)
			require.Equal(t, tube, *g.Rocket().Water.Tube)
			none, err := g.RemoveTube()
			require.NoError(t, err)
			require.Nil(t, none.Rocket().Water.Tube)
			require.NotContains(t, string(none.Text()), "tube.")
			for _, c := range changes { // one after the other does as well
				f, err = f.Set(c.Input, c.Value)
				require.NoError(t, err)
			}
			sameRocket(t, g, f)
		})
	}
}

// What is wrong with values that no text gives points at their section.
func TestFaultOfADefault(t *testing.T) {
	dir := folder(t)
	_, err := Read("x.toml", dir, []byte(strings.Replace(plain[:strings.Index(plain, "[rail]")], plain[strings.Index(plain, "[water.tube]"):strings.Index(plain, "[motor]")], "", 1)+"[rail]\ntilt = \"2 deg\"\n"))
	require.EqualError(t, err, `x.toml:26: rail.length: missing; add it to [rail], such as length = "1.8 m"`)
}
