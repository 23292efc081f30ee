package motors

import (
	"context"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows a rocket in the view.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), f, size)
}

// named is what the list calls its motors, the chosen one marked.
func named(f *frame) string {
	var out []string
	for i, e := range f.V.set.Result.motors {
		name := e.name
		if i == f.V.at() {
			name = ">" + name
		}
		out = append(out, name)
	}
	return strings.Join(out, " ")
}

// add adds a motor file by its path.
func add(f *frame, path string) {
	f.T.Helper()
	f.Press("a")
	f.Type(path)
}

// What each key of the view does.
var trials = map[string]func(t *testing.T, f *frame){
	"Prev": func(t *testing.T, f *frame) {
		f.Press("]", "]", "[")
		require.Equal(t, "own motor >elder sedge straw torn", named(f))
	},
	"Next": func(t *testing.T, f *frame) {
		f.Press("]", "]")
		require.Equal(t, "own motor elder >sedge straw torn", named(f))
	},
	"Add": func(t *testing.T, f *frame) {
		add(f, "far/whin.toml")
		require.Equal(t, "own motor elder sedge straw torn >whin", named(f))
		add(f, "./far/whin.toml")
		require.Equal(t, "own motor elder sedge straw torn >whin", named(f), "each file once")
	},
	"Remove": func(t *testing.T, f *frame) {
		f.Press("r")
		require.Contains(t, f.Said, "Only a motor that was added")
		add(f, "far/whin.toml")
		f.Press("r")
		require.Equal(t, "own motor elder sedge straw >torn", named(f))
	},
	"Take": func(t *testing.T, f *frame) {
		f.Press("]", "]", "]", "k")
		r := f.Scene.Now.Flight.Rocket
		require.Equal(t, rocket.MotorPower, r.Power)
		require.InDelta(t, 0.110, r.Motor.Propellant, 1e-12)
		require.Contains(t, f.Source(), `file = "straw.toml"`)
		require.Equal(t, "elder sedge >straw torn", named(f))
		f.Press("k")
		require.Contains(t, f.Said, "flies on this motor already")
		require.NoError(t, f.File().Save())
		again, err := rocketfile.Open("plover.toml")
		require.NoError(t, err)
		require.InDelta(t, 0.110, again.Rocket().Motor.Propellant, 1e-12)
		f.Press("u")
		require.InDelta(t, 0.140, f.Scene.Now.Flight.Rocket.Motor.Propellant, 1e-12)
		require.Equal(t, rocket.WaterPower, f.Scene.Now.Flight.Rocket.Power, "one step back")
		require.Equal(t, "own motor elder sedge >straw torn", named(f))
	},
	"Plot": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "thrust N")
		f.Press("z")
		require.Contains(t, f.Shown(), "height m")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Aviary(t), viewtest.Small) }, trials)
}

// Without motor files the rocket's own motor is alone on the list.
func TestOwnMotorAlone(t *testing.T) {
	require.Equal(t, ">own motor", named(start(t, viewtest.Plover(t), viewtest.Small)))
}

// The figures are those of the engine's flights; what does not fit or is above
// the class has a sign and a word; the highest of the rest is the best.
func TestFigures(t *testing.T) {
	f := start(t, viewtest.Aviary(t), viewtest.Large)
	set := f.V.set.Result
	require.Len(t, set.motors, 5)
	for _, e := range set.motors {
		if e.path == "torn.toml" {
			require.Nil(t, e.Flight)
			require.Equal(t, `line 1: motor.curve = "none.csv": there is no such file; name a CSV file with the header time_s,thrust_n`, e.fault)
			continue
		}
		file := f.File()
		if e.path != "" {
			var err error
			file, err = file.WithMotor(e.path)
			require.NoError(t, err)
		}
		r := file.Rocket()
		r.Power = rocket.MotorPower
		fl, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		require.Equal(t, fl.Results, e.Flight.Results, e.name)
	}
	require.Equal(t, ownMotor, set.motors[set.best()].name)
	require.Equal(t, 2, strings.Count(f.Shown(), "!large"))
	require.Equal(t, 1, strings.Count(f.Shown(), "*best"))
	f.Press("]")
	require.Contains(t, f.Shown(), "large, above the impulse limit of 640 N·s (US practice")
	f.Press("]")
	require.Contains(t, f.Shown(), "large, wider than the mount")
}

// A rocket that has no motor of its own flies on one as its file says for that: a canopy opens
// by its rule, and no limit is on a delay.
func TestInARocketOnWaterAlone(t *testing.T) {
	f := start(t, viewtest.Wagtail(t), viewtest.Large)
	set := f.V.set.Result
	require.Len(t, set.motors, 1)
	file, err := f.File().WithMotor(set.motors[0].path)
	require.NoError(t, err)
	r := file.Rocket()
	r.Power = rocket.MotorPower
	fl, err := sim.Fly(context.Background(), r, sim.Options{})
	require.NoError(t, err)
	require.True(t, fl.Canopies[0].Opened)
	require.Equal(t, fl.Results, set.motors[0].Flight.Results)
	require.NotContains(t, f.Shown(), gates.WordNever)
}

// The flights on motors are as the rocket itself flies: rigid, if it is.
func TestOfARigidRocket(t *testing.T) {
	f := start(t, rocketfile.Starter(), viewtest.Medium)
	f.Drive()
	require.True(t, f.Scene.Now.Flight.Rocket.Rigid())
	require.Equal(t, f.Scene.Now.Flight.Results.Apogee, f.V.set.Result.motors[0].Flight.Results.Apogee)
}

// A path that leads to no motor stays open with one line on why.
func TestBadMotorFiles(t *testing.T) {
	aviary := viewtest.Aviary(t)
	require.NoError(t, os.WriteFile("kink.toml", []byte("curve = \"kink.csv\"\ncase = \"1 g\"\npropellant = \"1 g\"\n"), 0o600))
	require.NoError(t, os.WriteFile("kink.csv", []byte("time_s,thrust_n\n0,1\n0,2\n"), 0o600))
	f := start(t, aviary, viewtest.Small)
	list, text := named(f), f.Source()
	for path, why := range map[string]string{
		"": "path is missing", "nowhere.toml": "no such file", "far": "folder", "straw.csv": "without any key of [motor]", "torn.toml": "none.csv",
		"plover.toml": "without any key of [motor]", "kink.toml": "kink.csv line 3",
	} {
		add(f, path)
		require.NotNil(t, f.Asked, "%q stays open", path)
		require.Contains(t, f.Wrong, why, path)
		require.NotContains(t, f.Wrong, "\n")
		f.Press("esc")
		require.Equal(t, text, f.Source())
	}
	require.Equal(t, list, named(f))
	f.Press("[", "[", "]", "]", "]", "]", "]", "k")
	require.Contains(t, f.Said, "Not put in: line 1: motor.curve")
	require.Equal(t, text, f.Source())
}

func TestNoMotors(t *testing.T) {
	f := start(t, viewtest.Rewritten(t, viewtest.Plover(t), func(text string) string {
		before, rest, _ := strings.Cut(text, "[motor]")
		_, after, _ := strings.Cut(rest, "[[canopy]]")
		return strings.Replace(before+"[[canopy]]"+after, `, motor = "ejection"`, "", 1)
	}), viewtest.Small)
	require.Contains(t, f.Shown(), "no [motor], and there is no motor file in its folder. Press a to add one")
	before := f.Source()
	f.Press("]", "k", "r", "z", "[")
	require.Equal(t, before, f.Source())
}

// A motor file that holds what the rocket has is the rocket's own, by its name.
func TestOwnMotorByItsFile(t *testing.T) {
	aviary := viewtest.Aviary(t)
	require.NoError(t, os.WriteFile("same.toml", []byte("curve = \"plover.csv\"\ncase = \"210 g\"\npropellant = \"140 g\"\ndelay = \"6 s\"\ndelays = [\"4 s\", \"6 s\", \"8 s\"]\n"), 0o600))
	f := start(t, aviary, viewtest.Small)
	require.Equal(t, "elder >same sedge straw torn", named(f))
	f.Drive()
	require.Equal(t, "elder >same sedge straw torn", named(f))
	f.Choose("motor.delay")
	f.Press("right")
	require.Contains(t, named(f), "own motor", "it differs now")
}

// New motor files are found when the view is opened again.
func TestLookedForAnew(t *testing.T) {
	f := start(t, viewtest.Aviary(t), viewtest.Small)
	require.NoError(t, os.Rename("torn.toml", "worn.toml"))
	f.Show()
	require.Equal(t, ">own motor elder sedge straw torn", named(f))
	f.Enter()
	require.Equal(t, ">own motor elder sedge straw worn", named(f))
}

// Many motors scroll, and as many are plotted as can be told apart.
func TestManyMotors(t *testing.T) {
	aviary := viewtest.Aviary(t)
	for i := range 40 {
		require.NoError(t, os.WriteFile("straw"+string(rune('a'+i%26))+strings.Repeat("x", i/26)+".toml", []byte(viewtest.MotorTexts()["straw.toml"]), 0o600))
	}
	f := start(t, aviary, viewtest.Small)
	for _, size := range [][2]int{viewtest.Small, viewtest.Medium, viewtest.Large} {
		v := f.V
		v.chosen = ""
		v.Resize(size[0], size[1])
		f.Show()
		for range len(v.set.Result.motors) + 2 {
			f.Press("]")
			require.Len(t, v.Lines(), size[1])
			require.LessOrEqual(t, len(v.drawn()), mostMotorTraces)
			e := v.entry()
			require.Contains(t, f.Shown(), e.name)
			if e.Flight != nil {
				require.Equal(t, v.at(), v.drawn()[len(v.drawn())-1], "the chosen one is drawn, over the others")
			}
		}
	}
}

// The mouse chooses a motor.
func TestPoint(t *testing.T) {
	f := start(t, viewtest.Aviary(t), viewtest.Medium)
	f.V.Point(3, motorHeading+2)
	require.Equal(t, "own motor elder >sedge straw torn", named(f))
	f.V.Point(3, 0)
	f.V.Point(3, 30)
	require.Equal(t, "own motor elder >sedge straw torn", named(f))
}

// Of several sets asked for only the last counts; the old figures stay, marked.
func TestStale(t *testing.T) {
	f := start(t, viewtest.Aviary(t), viewtest.Medium)
	v, s := f.V, f.Scene
	old := v.set.Result
	var late []tea.Cmd
	for _, kg := range []float64{1, 1.1, 1.2} {
		file, err := f.File().SetValue("body.mass", kg)
		require.NoError(t, err)
		s.File = file
		late = append(late, v.Show(s))
	}
	require.Equal(t, old.of, v.set.Result.of)
	require.Contains(t, f.Shown(), "computing")
	for _, i := range []int{1, 2, 0} {
		f.Run(late[i])
	}
	require.False(t, v.set.Busy)
	require.InDelta(t, 1.2, v.set.Result.motors[0].Flight.Rocket.Body.Mass, 1e-12)
	require.NotContains(t, f.Shown(), "computing")
}

func TestMotorNames(t *testing.T) {
	require.Equal(t, []string{"a", "b"}, motorNames([]string{"x/a.toml", "b.toml"}))
	require.Equal(t, []string{"x/a.toml", "y/a.toml", "b"}, motorNames([]string{"x/a.toml", "y/a.toml", "b.toml"}))
	require.Equal(t, []string{"a.toml", "b.toml"}, eachOnce([]string{"a.toml", "b.toml", "./a.toml"}))
}

func BenchmarkMotors(b *testing.B) {
	f := viewtest.Aviary(b)
	found, err := f.MotorFiles()
	require.NoError(b, err)
	for b.Loop() {
		if _, err := newMotorSet(context.Background(), f, found, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// What is less than a digit away from apogee is at it.
func TestBesideTop(t *testing.T) {
	require.Equal(t, []string{"0.1 s before apogee", "at apogee", "at apogee", "1.2 s after apogee"},
		[]string{besideTop(-0.06), besideTop(-0.02), besideTop(0.04), besideTop(1.2)})
}
