package rocketfile

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

func TestInputsAreWellMade(t *testing.T) {
	r := readIn(t, folder(t), shapely).Rocket()
	seen := map[string]bool{}
	for _, in := range Inputs(r) {
		require.False(t, seen[in.Name], in.Name)
		seen[in.Name] = true
		require.LessOrEqual(t, utf8.RuneCountInString(in.Label), 12, in.Name)
		require.NotEmpty(t, in.Label, in.Name)
		require.NotEmpty(t, in.Group, in.Name)
		require.True(t, strings.HasSuffix(in.Help, "."), in.Name)
		require.NotContains(t, strings.ToLower(in.Help), "safe", in.Name)
		found, err := Find(r, in.Name)
		require.NoError(t, err)
		require.Equal(t, in.Label, found.Label)
		switch in.Kind {
		case NumberKind:
			require.Less(t, in.Min, in.Max, in.Name)
			require.Positive(t, in.Step, in.Name)
			require.GreaterOrEqual(t, in.Coarse, in.Step, in.Name)
			require.Equal(t, in.Dimension, in.Unit.Dimension, in.Name)
			v, _ := in.Get(r)
			require.False(t, math.IsNaN(v), in.Name)
		case ChoiceKind:
			require.NotEmpty(t, in.Choices, in.Name)
			require.Contains(t, in.Choices, in.Text(r), in.Name)
		}
	}
	for _, name := range []string{"name", "power", "body.drag", "water.tube.dead_volume", "motor.delays", "motor_mount.length",
		"canopy.main.deploy.water", "canopy.2.deploy.motor", "site.sea_level_pressure", "wind.from"} {
		require.True(t, seen[name], name)
	}
}

// Labels are unique within their group, so that a screen can do without the rest.
func TestLabelsWithinAGroup(t *testing.T) {
	r := readIn(t, folder(t), shapely).Rocket()
	seen := map[[3]string]bool{}
	for _, in := range Inputs(r) {
		key := [3]string{in.Group, in.Label, string(in.Drive)}
		require.False(t, seen[key], in.Name)
		seen[key] = true
	}
}

func TestInputsOfWhatIsThere(t *testing.T) {
	names := func(r *rocket.Rocket) (all []string) {
		for _, in := range Inputs(r) {
			all = append(all, in.Name)
		}
		return all
	}
	r := readIn(t, folder(t), shapely).Rocket()
	r.Motor, r.MotorMount, r.Water.Tube, r.Canopies, r.Shape = nil, nil, nil, r.Canopies[:1], nil
	all := strings.Join(names(r), " ")
	require.NotContains(t, all, "motor")
	require.NotContains(t, all, "tube")
	require.NotContains(t, all, "canopy.2")
	require.Contains(t, all, "canopy.main.deploy.water")
	for _, gone := range []string{"nose", "section", "fins", "balance", "inertia", "fittings_at", "flight", "roughness"} {
		require.NotContains(t, all, gone)
	}
	power, err := Find(r, "power")
	require.NoError(t, err)
	require.Equal(t, []string{"water"}, power.Choices)
	require.Empty(t, names(&rocket.Rocket{})[46:], "an empty rocket has few inputs, and no panic")
}

// Setting an input of a rocket and setting it in the text are the same.
func TestSetAgreesWithTheText(t *testing.T) {
	f := readIn(t, folder(t), shapely)
	for _, in := range Inputs(f.Rocket()) {
		var texts []string
		switch in.Kind {
		case NumberKind:
			for _, share := range []float64{0, 0.011, 1} {
				v := in.Min + share*(in.Max-in.Min)
				r := f.Rocket()
				if err := in.Set(r, v); err != nil {
					require.True(t, in.Name == "body.drag" || v != math.Trunc(v), in.Name) // a table, a whole number
					continue
				}
				got, given := in.Get(r)
				require.True(t, given || in.Name == "limits.margin_at_angle" && v == 0, in.Name) // whose default that is
				require.Equal(t, v, got, in.Name)
				g, err := f.SetValue(in.Name, v)
				agree(t, in.Name, r, g, err)
			}
			texts = append(texts, in.Text(f.Rocket()))
		case ChoiceKind:
			texts = in.Choices
			for i := range in.Choices {
				r := f.Rocket()
				require.NoError(t, in.Set(r, float64(i)))
				got, given := in.Get(r)
				require.True(t, given)
				require.Equal(t, float64(i), got)
				g, err := f.SetValue(in.Name, float64(i))
				agree(t, in.Name, r, g, err)
			}
			require.Error(t, in.Set(f.Rocket(), 0.5))
			require.Error(t, in.Set(f.Rocket(), -1))
			require.Error(t, in.Set(f.Rocket(), 99))
			require.Error(t, in.Set(f.Rocket(), math.NaN()))
		case TextKind:
			texts = []string{in.Text(f.Rocket())}
			require.Error(t, in.Set(f.Rocket(), 1))
			switch in.Name {
			case "name":
				texts = append(texts, "", "Other", "42", `a "b" \ c`, "été")
			case "body.drag":
				texts = append(texts, "0.5", "[[0, 0.4], [2, 0.6]]")
			case "motor.delays":
				texts = append(texts, `["4 s"]`, `[]`)
			case "field.boundary": // a name of a file that is not there is one to the rocket alone
			default:
				texts = append(texts, "drogue", "7")
			}
		case RuleKind:
			texts = []string{"launch + 9 s", "burnout + 0.5 s", "apogee", "apogee - 1.5 s", "apogee+2s", "falling through 300 ft", "ejection"}
			if v, given := in.Get(f.Rocket()); given {
				texts = append(texts, quantity.Exact(v+1, in.Unit))
				r := f.Rocket()
				require.NoError(t, in.Set(r, v+3))
				g, err := f.SetValue(in.Name, v+3)
				agree(t, in.Name, r, g, err)
			}
		}
		for _, text := range texts {
			if text == "" && in.Kind != TextKind {
				continue
			}
			r := f.Rocket()
			err := in.SetText(r, text)
			g, setErr := f.Set(in.Name, text)
			require.Equal(t, err == nil, setErr == nil, "%s = %s: %v, %v", in.Name, text, err, setErr)
			if err == nil {
				agree(t, in.Name, r, g, nil)
			}
		}
		for _, text := range []string{"nonsense words!", "1 parsec", "NaN", "1e400", "--1", "1_000"} {
			if slices.Contains([]string{"name", "motor.name", "flyer.name", "flyer.certification", "field.boundary"}, in.Name) || strings.HasSuffix(in.Name, ".name") && (text == "1e400" || text == "--1") {
				continue
			}
			r := f.Rocket()
			require.Error(t, in.SetText(r, text), "%s = %s", in.Name, text)
			require.Equal(t, f.Rocket(), r, "a bad value changes nothing")
			_, err := f.Set(in.Name, text)
			require.Error(t, err, "%s = %s", in.Name, text)
			require.NotContains(t, err.Error(), "\n")
		}
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
			r := f.Rocket()
			require.Error(t, in.Set(r, v), in.Name)
			require.Equal(t, f.Rocket(), r)
			_, err := f.SetValue(in.Name, v)
			require.Error(t, err, in.Name)
		}
	}
}

// agree holds that a rocket changed directly is the one that the text describes,
// or that both are refused for the same reason.
func agree(t *testing.T, name string, r *rocket.Rocket, f *File, err error) {
	t.Helper()
	wrong := r.Validate()
	if wrong != nil {
		require.Error(t, err, name)
		return
	}
	require.NoError(t, err, name)
	got := f.Rocket()
	for _, in := range Inputs(got) {
		a, given := in.Get(r)
		b, _ := in.Get(got)
		if in.Kind == NumberKind && given && a != b {
			require.InDelta(t, a, b, 1e-15*math.Max(math.Abs(a), 300), "%s set, %s differs", name, in.Name)
			if in.Name != "body.drag" {
				require.NoError(t, in.Set(got, a))
			}
		}
	}
	require.Equal(t, r, got, name)
}

func TestFindSuggests(t *testing.T) {
	r := readIn(t, folder(t), shapely).Rocket()
	for name, want := range map[string]string{
		"water.fil":             "water.fil: the rocket has no such input; perhaps water.fill is meant",
		"canopy.man.diameter":   "canopy.man.diameter: the rocket has no such input; perhaps canopy.main.diameter is meant",
		"rail.colour":           "rail.colour: the rocket has no such input; there are rail.length, rail.tilt and rail.heading",
		"":                      "the rocket has no such input; ullage inputs lists them",
		"motor.curve":           "motor.curve: the rocket has no such input; perhaps motor.case is meant",
		"canopy.main":           "canopy.main: the rocket has no such input",
		"\x1b[31mwater\x00":     "�[31mwater�: the rocket has no such input",
		strings.Repeat("a", 99): strings.Repeat("a", 60) + "…: the rocket has no such input",
	} {
		_, err := Find(r, name)
		require.Error(t, err)
		require.True(t, strings.HasPrefix(err.Error(), want), err.Error())
		require.IsType(t, fault.List{}, err)
	}
}

func TestSetOfWhatIsNotThere(t *testing.T) {
	r := readIn(t, folder(t), shapely).Rocket()
	for _, in := range Inputs(r) {
		bare := &rocket.Rocket{}
		v, _ := in.Get(r)
		// No part that is absent makes a panic, whatever is asked of it.
		in.Get(bare)
		in.Text(bare)
		_ = in.Set(bare, v)
		_ = in.SetText(bare, in.Text(r))
	}
}
