package tui

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// motors is the motors view, in sight.
func (s *screen) motors() *motorsView {
	s.t.Helper()
	v, ok := s.m.view().(*motorsView)
	require.True(s.t, ok, "the motors view is not in sight")
	return v
}

// named is what the list calls its motors, the chosen one marked.
func (s *screen) named() string {
	v := s.motors()
	var out []string
	for i, e := range v.set.Result.motors {
		name := e.name
		if i == v.at() {
			name = ">" + name
		}
		out = append(out, name)
	}
	return strings.Join(out, " ")
}

// Invented motors, all but the first in the folder of the rocket.
var motorTexts = map[string]string{
	"far/whin.toml": "curve = \"whin.csv\"\ncase = \"60 g\"\npropellant = \"40 g\"\ndelay = \"5 s\"\ndelays = [\"3 s\", \"5 s\"]\ndiameter = \"24 mm\"\nlength = \"90 mm\"\n",
	"far/whin.csv":  "time_s,thrust_n\n0.05,90\n0.3,60\n1.0,50\n1.2,0\n",
	"straw.toml":    "curve = \"straw.csv\"\ncase = \"150 g\"\npropellant = \"110 g\"\ndelay = \"9 s\"\ndelays = [\"7 s\", \"9 s\"]\ndiameter = \"29 mm\"\nlength = \"200 mm\"\nfittings = \"20 g\"\n",
	"straw.csv":     "time_s,thrust_n\n0.02,160\n0.5,140\n1.1,110\n1.3,0\n",
	"elder.toml":    "curve = \"elder.csv\"\ncase = \"300 g\"\npropellant = \"420 g\"\ndiameter = \"29 mm\"\nlength = \"240 mm\"\n",
	"elder.csv":     "time_s,thrust_n\n0.05,500\n1.0,480\n1.8,300\n2,0\n",
	"sedge.toml":    "curve = \"straw.csv\"\ncase = \"200 g\"\npropellant = \"110 g\"\ndiameter = \"38 mm\"\ndelays = [\"6 s\", \"10 s\"]\ndelay = \"10 s\"\n",
	"torn.toml":     "curve = \"none.csv\"\ncase = \"3 kg\"\npropellant = \"1 g\"\n",
}

// aviary is the rocket of the tests in a working directory of its own, with a
// mount and motor files beside it.
func aviary(t testing.TB) *rocketfile.File {
	t.Helper()
	dir := t.TempDir()
	f := plover(t)
	files := map[string]string{"plover.toml": string(f.Text()) + "\n[motor_mount]\ndiameter = \"29 mm\"\nlength = \"250 mm\"\n"}
	curve, err := os.ReadFile(filepath.Join("testdata", "plover.csv"))
	require.NoError(t, err)
	files["plover.csv"] = string(curve)
	for name, text := range motorTexts {
		files[name] = text
	}
	require.NoError(t, os.Mkdir(filepath.Join(dir, "far"), 0o700))
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	if t, ok := t.(*testing.T); ok {
		t.Chdir(dir)
		dir = ""
	}
	f, err = rocketfile.Open(filepath.Join(dir, "plover.toml"))
	require.NoError(t, err)
	return f
}

func TestMotorsGoldens(t *testing.T) {
	home, err := os.Getwd()
	require.NoError(t, err)
	for _, c := range []struct {
		name    string
		w, h    int
		charset plot.Charset
		keys    []string
	}{
		{"motors-80x24", 80, 24, plot.Braille, []string{"m"}},
		{"motors-120x40", 120, 40, plot.Braille, []string{"m"}},
		{"motors-200x60", 200, 60, plot.Braille, []string{"m"}},
		{"motors-large-80x24", 80, 24, plot.Braille, []string{"m", "]"}},
		{"motors-torn-80x24", 80, 24, plot.Braille, []string{"m", "]", "]", "]", "]", "z"}},
		{"motors-block-120x40", 120, 40, plot.Block, []string{"m", "]"}},
		{"motors-ascii-80x24", 80, 24, plot.ASCII, []string{"m", "]", "]", "]"}},
		{"motors-us-120x40", 120, 40, plot.Braille, []string{"m", "x"}},
		{"motors-taken-120x40", 120, 40, plot.Braille, []string{"m", "]", "]", "]", "k"}},
		{"motors-add-80x24", 80, 24, plot.Braille, []string{"m", "a", "y", "enter"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, aviary(t), c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			t.Chdir(home)
			s.golden(c.name)
		})
	}
}

// What each key of the view does. A key without a row fails TestMotorsKeys. They
// start with the rocket's own motor alone on the list.
var motorsTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) { require.Equal(t, ">own motor", s.named()) },
	"Prev": func(t *testing.T, s *screen) {
		s.fly(aviary(t))
		s.press("]", "]", "[")
		require.Equal(t, "own motor >elder sedge straw torn", s.named())
	},
	"Next": func(t *testing.T, s *screen) {
		s.fly(aviary(t))
		s.press("]", "]")
		require.Equal(t, "own motor elder >sedge straw torn", s.named())
	},
	"Add": func(t *testing.T, s *screen) {
		s.fly(aviary(t))
		s.add("far/whin.toml")
		require.Equal(t, "own motor elder sedge straw torn >whin", s.named())
		s.add("./far/whin.toml")
		require.Equal(t, "own motor elder sedge straw torn >whin", s.named(), "each file once")
	},
	"Remove": func(t *testing.T, s *screen) {
		s.fly(aviary(t))
		s.press("r")
		require.Contains(t, s.view(), "Only a motor that was added")
		s.add("far/whin.toml")
		s.press("r")
		require.Equal(t, "own motor elder sedge straw >torn", s.named())
	},
	"Take": func(t *testing.T, s *screen) {
		s.fly(aviary(t))
		s.press("]", "]", "]", "k")
		r := s.m.now.Flight.Rocket
		require.Equal(t, rocket.MotorPower, r.Power)
		require.InDelta(t, 0.110, r.Motor.Propellant, 1e-12)
		require.Contains(t, s.text(), `file = "straw.toml"`)
		require.Equal(t, "elder sedge >straw torn", s.named())
		s.press("k")
		require.Contains(t, s.view(), "flies on this motor already")
		s.press("ctrl+s")
		require.Contains(t, s.onDisk(), `file = "straw.toml"`)
		again, err := rocketfile.Open("plover.toml")
		require.NoError(t, err)
		require.InDelta(t, 0.110, again.Rocket().Motor.Propellant, 1e-12)
		s.press("u")
		require.InDelta(t, 0.140, s.m.now.Flight.Rocket.Motor.Propellant, 1e-12)
		require.Equal(t, rocket.WaterPower, s.m.now.Flight.Rocket.Power, "one step back")
		require.Equal(t, "own motor elder sedge >straw torn", s.named())
	},
	"Plot": func(t *testing.T, s *screen) {
		require.Contains(t, s.said(), "thrust N")
		s.press("z")
		require.Contains(t, s.said(), "height m")
	},
}

func TestMotorsKeys(t *testing.T) {
	tryViewKeys(t, newMotorsKeys(view.DefaultKeys()), newMotorsView(view.DefaultKeys()), "m", motorsTrials)
}

// fly shows another rocket on the same screen, in the motors view.
func (s *screen) fly(f *rocketfile.File) {
	s.t.Helper()
	*s = *newScreen(s.t, f, s.m.layout.width, s.m.layout.height)
	s.press("m")
}

// add adds a motor file by its path.
func (s *screen) add(path string) {
	s.t.Helper()
	s.press("a")
	s.write(path)
	s.press("enter")
}

// The figures are those of the engine's flights; what does not fit or is above
// the class has a sign and a word; the highest of the rest is the best.
func TestMotorsFigures(t *testing.T) {
	s := newScreen(t, aviary(t), 200, 60)
	s.press("m")
	set := s.motors().set.Result
	require.Len(t, set.motors, 5)
	for _, e := range set.motors {
		if e.path == "torn.toml" {
			require.Nil(t, e.Flight)
			require.Equal(t, `line 1: motor.curve = "none.csv": there is no such file; name a CSV file with the header time_s,thrust_n`, e.fault)
			continue
		}
		f := s.m.file()
		if e.path != "" {
			var err error
			f, err = f.WithMotor(e.path)
			require.NoError(t, err)
		}
		r := f.Rocket()
		r.Power = rocket.MotorPower
		fl, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		require.Equal(t, fl.Results, e.Flight.Results, e.name)
	}
	require.Equal(t, ownMotor, set.motors[set.best()].name)
	require.Equal(t, 2, strings.Count(s.said(), "!large"))
	require.Equal(t, 1, strings.Count(s.said(), "*best"))
	s.press("]")
	require.Contains(t, s.said(), "large, above the impulse limit of 640 N·s (US practice")
	s.press("]")
	require.Contains(t, s.said(), "large, wider than the mount")
}

// The flights on motors are as the rocket itself flies: rigid, if it is.
func TestMotorsOfARigidRocket(t *testing.T) {
	s := newScreen(t, rocketfile.Starter(), 120, 40)
	s.press("d", "m")
	require.True(t, s.m.now.Flight.Rocket.Rigid())
	require.Equal(t, s.m.now.Flight.Results.Apogee, s.motors().set.Result.motors[0].Flight.Results.Apogee)
}

// A path that leads to no motor stays open with one line on why.
func TestBadMotorFiles(t *testing.T) {
	s := newScreen(t, aviary(t), 80, 24)
	require.NoError(t, os.WriteFile("kink.toml", []byte("curve = \"kink.csv\"\ncase = \"1 g\"\npropellant = \"1 g\"\n"), 0o600))
	require.NoError(t, os.WriteFile("kink.csv", []byte("time_s,thrust_n\n0,1\n0,2\n"), 0o600))
	s.press("m")
	list, text := s.named(), s.text()
	for path, why := range map[string]string{
		"": "path is missing", "nowhere.toml": "no such file", "far": "folder", "straw.csv": "line 1: time_s,thrust_n: expected", "torn.toml": "none.csv",
		"plover.toml": "unknown key", "kink.toml": "kink.csv line 3",
	} {
		s.press("a")
		s.write(path)
		s.press("enter")
		require.NotNil(t, s.m.asking, "%q stays open", path)
		require.Contains(t, s.m.asking.wrong, why, path)
		require.NotContains(t, s.m.asking.wrong, "\n")
		s.checkSize()
		s.press("esc")
		require.Equal(t, text, s.text())
	}
	require.Equal(t, list, s.named())
	s.press("[", "[", "]", "]", "]", "]", "]", "k")
	require.Contains(t, s.words(), "Not put in: line 1: motor.curve")
	require.Equal(t, text, s.text())
}

func TestNoMotors(t *testing.T) {
	f := plover(t)
	before, rest, _ := strings.Cut(string(f.Text()), "[motor]")
	_, after, _ := strings.Cut(rest, "[[canopy]]")
	f, err := f.WithText([]byte(strings.Replace(before+"[[canopy]]"+after, `, motor = "ejection"`, "", 1)))
	require.NoError(t, err)
	s := newScreen(t, f, 80, 24)
	s.press("m")
	require.Contains(t, s.said(), "no [motor], and there is no motor file in its folder. Press a to add one")
	before = s.text()
	s.press("]", "k", "r", "z", "[")
	require.Equal(t, before, s.text())
	s.checkSize()
}

// A motor file that holds what the rocket has is the rocket's own, by its name.
func TestOwnMotorByItsFile(t *testing.T) {
	f := aviary(t)
	require.NoError(t, os.WriteFile("same.toml", []byte("curve = \"plover.csv\"\ncase = \"210 g\"\npropellant = \"140 g\"\ndelay = \"6 s\"\ndelays = [\"4 s\", \"6 s\", \"8 s\"]\n"), 0o600))
	s := newScreen(t, f, 80, 24)
	s.press("m")
	require.Equal(t, "elder >same sedge straw torn", s.named())
	s.press("d")
	require.Equal(t, "elder >same sedge straw torn", s.named())
	s.choose("motor.delay")
	s.press("right")
	require.Contains(t, s.named(), "own motor", "it differs now")
}

// New motor files are found when the view is opened again.
func TestMotorsAreLookedForAnew(t *testing.T) {
	s := newScreen(t, aviary(t), 80, 24)
	s.press("m", "esc")
	require.NoError(t, os.Rename("torn.toml", "worn.toml"))
	s.press("m")
	require.Equal(t, ">own motor elder sedge straw worn", s.named())
}

// Many motors scroll, and as many are plotted as can be told apart.
func TestManyMotors(t *testing.T) {
	f := aviary(t)
	for i := range 40 {
		require.NoError(t, os.WriteFile("straw"+string(rune('a'+i%26))+strings.Repeat("x", i/26)+".toml", []byte(motorTexts["straw.toml"]), 0o600))
	}
	for _, size := range [][2]int{{80, 24}, {120, 40}, {200, 60}} {
		s := newScreen(t, f, size[0], size[1])
		s.press("m")
		v := s.motors()
		for range len(v.set.Result.motors) + 2 {
			s.press("]")
			s.checkSize()
			require.LessOrEqual(t, len(v.drawn()), mostMotorTraces)
			e := v.entry()
			require.Contains(t, s.said(), e.name)
			if e.Flight != nil {
				require.Equal(t, v.at(), v.drawn()[len(v.drawn())-1], "the chosen one is drawn, over the others")
			}
		}
	}
}

// The mouse chooses a motor.
func TestMotorsMouse(t *testing.T) {
	s := newScreen(t, aviary(t), 120, 40)
	s.press("m")
	s.motors().Point(3, motorHeading+2)
	require.Equal(t, "own motor elder >sedge straw torn", s.named())
	s.motors().Point(3, 0)
	s.motors().Point(3, 30)
	require.Equal(t, "own motor elder >sedge straw torn", s.named())
}

// Of several sets asked for only the last counts; the old figures stay, marked.
func TestStaleMotors(t *testing.T) {
	s := newScreen(t, aviary(t), 120, 40)
	s.press("m")
	v := s.motors()
	old := v.set.Result
	var late []tea.Cmd
	for _, kg := range []float64{1, 1.1, 1.2} {
		f, err := s.m.file().SetValue("body.mass", kg)
		require.NoError(t, err)
		late = append(late, v.Show(view.Scene{Ctx: context.Background(), File: f, Now: s.m.now, Theme: s.m.theme}))
	}
	require.Equal(t, old.of, v.set.Result.of)
	require.Contains(t, strings.Join(v.Lines(), " "), "computing")
	for _, i := range []int{1, 2, 0} {
		s.run(late[i])
	}
	require.False(t, v.set.Busy)
	require.InDelta(t, 1.2, v.set.Result.motors[0].Flight.Rocket.Body.Mass, 1e-12)
	require.NotContains(t, strings.Join(v.Lines(), " "), "computing")
}

func TestMotorNames(t *testing.T) {
	require.Equal(t, []string{"a", "b"}, motorNames([]string{"x/a.toml", "b.toml"}))
	require.Equal(t, []string{"x/a.toml", "y/a.toml", "b"}, motorNames([]string{"x/a.toml", "y/a.toml", "b.toml"}))
	require.Equal(t, []string{"a.toml", "b.toml"}, eachOnce([]string{"a.toml", "b.toml", "./a.toml"}))
}

func BenchmarkMotors(b *testing.B) {
	f := aviary(b)
	found, err := f.MotorFiles()
	require.NoError(b, err)
	for b.Loop() {
		if _, err := newMotorSet(context.Background(), f, found, nil); err != nil {
			b.Fatal(err)
		}
	}
}
