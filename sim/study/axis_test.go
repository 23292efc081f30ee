package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocketfile"
)

func TestParseAxis(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	deg := math.Pi / 180
	for text, want := range map[string][]float64{
		"water.fill=0.2..0.4/3":                    {0.2, 0.3, 0.4},
		"water.fill=20..40%/3":                     {0.2, 0.3, 0.4},
		"water.fill = 0.4 .. 0.2 / 2":              {0.4, 0.2},
		"water.fill=0.3":                           {0.3},
		"water.throat=9mm,11mm,13mm":               {0.009, 0.011, 0.013},
		"water.throat=9,11,13mm":                   {0.009, 0.011, 0.013},
		"water.throat=1cm,11,13 mm":                {0.010, 0.011, 0.013},
		"water.throat=9..13mm/5":                   {0.009, 0.010, 0.011, 0.012, 0.013},
		"water.pressure=80..160psi/2":              {80 * 6894.757293168361, 160 * 6894.757293168361},
		"wind.speed=0m/s..10m/s/3":                 {0, 5, 10},
		"wind.speed=0..10m/s/3":                    {0, 5, 10},
		"site.temperature=-10..20 degC/4":          {263.15, 273.15, 283.15, 293.15},
		"rail.heading=-90..90 deg/3":               {-90 * deg, 0, 90 * deg},
		"canopy.main.deploy.water=0..2s/3":         {0, 1, 2},
		"canopy.main.deploy.water=-1 s,0.5 s,2.5s": {-1, 0.5, 2.5},
		"body.drag=0.3..0.5/3":                     {0.3, 0.4, 0.5},
		"motor.delay=6,8,10 s":                     {6, 8, 10},
	} {
		a, err := ParseAxis(r, text)
		require.NoError(t, err, text)
		require.Len(t, a.Values, len(want), text)
		for i, v := range a.Values {
			require.Empty(t, v.Word, text)
			require.InDelta(t, want[i], v.Number, 1e-9*math.Max(1, math.Abs(want[i])), text)
		}
	}
	for text, want := range map[string][]Value{
		"water.gas=air,helium,carbon dioxide":                    {{Word: "air"}, {Word: "helium"}, {Word: "carbon dioxide"}},
		"power=motor, water":                                     {{Word: "motor"}, {Word: "water"}},
		"canopy.main.deploy.water=launch + 9 s,apogee + 1 s,2 s": {{Word: "launch + 9 s"}, {Word: "apogee + 1 s"}, {Number: 2}},
	} {
		a, err := ParseAxis(r, text)
		require.NoError(t, err, text)
		require.Equal(t, want, a.Values, text)
	}
	require.Equal(t, rocketfile.Starter().Rocket(), r, "reading changes nothing")
}

func TestParseAxisFaults(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for text, want := range map[string]string{
		"":                            "no such input",
		"water.fil=0.2..0.4/3":        "perhaps water.fill is meant",
		"water.fill":                  "no values",
		"water.fill=":                 "no values",
		"water.fill=0.2..0.4":         "no number of points; write it after a slash: water.fill=0.2..0.4/11",
		"wind.speed=0..4 m/s":         "no number of points",
		"water.fill=0.2..0.4/1":       "fewer than 2 points",
		"water.fill=0.2..0.4/-3":      "fewer than 2",
		"water.fill=0.2..0.4/x":       "no number of points",
		"water.fill=0.2..0.4/2000000": "too many points",
		"water.fill=0.2..0.4/99999999999999999999": "no number of points",
		"water.fill=0.3..0.3/3":                    "ends where it begins",
		"water.fill=0.3../3":                       "water.fill",
		"water.fill=..0.3/3":                       "water.fill",
		"water.fill=0.2..1.4/3":                    "too large",
		"water.fill=-0.2..0.4/3":                   "negative",
		"water.fill=nan..0.4/3":                    "water.fill",
		"water.throat=9..13/3":                     "unit",
		"water.throat=9 kg,10 mm":                  "9 kg",
		"water.throat=9mm,,13mm":                   "empty place",
		"water.throat=,":                           "empty place",
		"water.gas=air,lead":                       "lead",
		"water.gas=0..3/4":                         "list them: water.gas=air",
		"name=1..2/3":                              "list its values",
		"canopy.main.deploy.water=soon":            "soon",
	} {
		_, err := ParseAxis(r, text)
		require.ErrorContains(t, err, want, text)
		require.IsType(t, fault.List{}, err, text)
	}
	_, err := ParseAxis(r, "water.throat=1 kg,2 s,13 mm")
	require.Len(t, err, 2, "all at once")
	_, err = ParseAxis(r, "water.fill=-1..2/3")
	require.Len(t, err, 2)
}

func TestParseAxes(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	axes, err := ParseAxes(r, []string{"water.fill=0.2..0.4/3", "water.gas=air,helium"})
	require.NoError(t, err)
	require.Equal(t, 6, Count(axes))
	for want, texts := range map[string][]string{
		"no input to sweep over":              nil,
		"given twice":                         {"water.fill=0.2,0.3", "water.fill=0.2..0.4/3"},
		"third input":                         {"water.fill=0.2,0.3", "water.throat=9..13mm/3", "body.mass=1,2kg"},
		"the grid has 16000000 flights":       {"water.fill=0.2..0.4/4000", "water.throat=9..13mm/4000"},
		"perhaps water.throat is meant":       {"water.fill=0.2,0.3", "water.throt=9..13mm/3"},
		"water.fill = 0.2: no number of poin": {"water.fill=0.2..0.4", "water.throt=9..13mm/3"},
	} {
		_, err := ParseAxes(r, texts)
		require.IsType(t, fault.List{}, err)
		if want[:10] != "water.fill" {
			require.ErrorContains(t, err, want)
		} else {
			require.Len(t, err, 2, "all at once")
		}
	}
}

func TestCount(t *testing.T) {
	require.Equal(t, 1, Count(nil))
	require.Equal(t, 0, Count([]Axis{{}}))
	big := Axis{Values: make([]Value, maxPoints)}
	require.Equal(t, math.MaxInt, Count([]Axis{big, big, big, big}))
}

// Ends are met exactly, however many points there are.
func TestLinear(t *testing.T) {
	in := input(t, bottle(), "water.fill")
	for _, n := range []int{2, 3, 7, 101} {
		v := Linear(in, 0.1, 0.7, n).Values
		require.Equal(t, 0.1, v[0].Number)
		require.Equal(t, 0.7, v[n-1].Number)
	}
}
