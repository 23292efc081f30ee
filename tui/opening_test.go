package tui

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// opening is the opening view, in sight.
func (s *screen) opening() *openingView {
	s.t.Helper()
	v, ok := s.m.view().(*openingView)
	require.True(s.t, ok, "the opening view is not in sight")
	return v
}

// twoCanopies is the rocket of the tests on its motor, with a drogue that the
// charge opens and a main that opens low.
func twoCanopies(t testing.TB) *rocketfile.File {
	t.Helper()
	f := with(t, rocketfile.Change{Input: "power", Value: "motor"}, rocketfile.Change{Input: "canopy.main.deploy.motor", Value: "falling through 40 m"})
	text := string(f.Text()) + "\n[[canopy]]\nname = \"drogue\"\ndiameter = \"0.4 m\"\ndeploy = { motor = \"ejection\" }\n"
	f, err := f.WithText([]byte(text))
	require.NoError(t, err)
	return f
}

func TestOpeningGoldens(t *testing.T) {
	for _, c := range []struct {
		name    string
		w, h    int
		charset plot.Charset
		file    *rocketfile.File
		keys    []string
	}{
		{"opening-80x24", 80, 24, plot.Braille, plover(t), []string{"o"}},
		{"opening-120x40", 120, 40, plot.Braille, plover(t), []string{"o"}},
		{"opening-200x60", 200, 60, plot.Braille, plover(t), []string{"o"}},
		{"opening-top-80x24", 80, 24, plot.Braille, plover(t), []string{"o", "z"}},
		{"opening-block-120x40", 120, 40, plot.Block, plover(t), []string{"o", "b"}},
		{"opening-ascii-80x24", 80, 24, plot.ASCII, plover(t), []string{"o", "right"}},
		{"opening-us-120x40", 120, 40, plot.Braille, plover(t), []string{"o", "x", "]"}},
		{"opening-motor-80x24", 80, 24, plot.Braille, plover(t), []string{"d", "o"}},
		{"opening-delays-80x24", 80, 24, plot.Braille, plover(t), []string{"d", "o", "z", "z"}},
		{"opening-motor-120x40", 120, 40, plot.Braille, plover(t), []string{"d", "o"}},
		{"opening-motor-200x60", 200, 60, plot.Braille, plover(t), []string{"d", "o"}},
		{"opening-two-80x24", 80, 24, plot.Braille, twoCanopies(t), []string{"o", "e"}},
		{"opening-height-120x40", 120, 40, plot.Braille, twoCanopies(t), []string{"o"}},
		{"opening-typed-80x24", 80, 24, plot.Braille, plover(t), []string{"o", "l"}},
		{"opening-none-80x24", 80, 24, plot.Braille, plover(t), []string{"C", "o"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, c.file, c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			s.golden(c.name)
		})
	}
}

// What each key of the view does. A key without a row fails TestOpeningKeys.
var openingTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) {
		require.Equal(t, "canopy.main.deploy.water", s.m.inputs.chosen().Name)
		s.press("right")
		require.Equal(t, "apogee + 1.1 s", s.value(), "the keys that change an input walk along")
		require.Contains(t, s.said(), "1.1 s after the top")
	},
	"Next": func(t *testing.T, s *screen) {
		s.press("c", "e")
		require.Equal(t, "drogue", s.opening().canopy)
		require.Equal(t, "canopy.drogue.deploy.water", s.m.inputs.chosen().Name)
		s.press("e")
		require.Contains(t, s.said(), "main (1 of 2)")
	},
	"Prev": func(t *testing.T, s *screen) {
		s.press("c", "E")
		require.Contains(t, s.said(), "drogue (2 of 2)")
		s.press("E")
		require.Contains(t, s.said(), "main (1 of 2)")
	},
	"Best": func(t *testing.T, s *screen) {
		o := s.opening().study.Result
		best := o.values[o.best]
		s.press("b")
		require.InDelta(t, best.Value, s.m.file().Rocket().Canopies[0].Water.Value, 1e-9)
		require.InDelta(t, best.Airspeed, s.m.now.Flight.Results.Canopies[0].Airspeed, 1e-9)
		require.Contains(t, s.said(), "*as planned")
		s.press("u")
		require.InDelta(t, 1, s.m.file().Rocket().Canopies[0].Water.Value, 1e-12)
	},
	"Slower": func(t *testing.T, s *screen) { s.press("["); require.Contains(t, s.said(), "to land at 4.5 m/s") },
	"Faster": func(t *testing.T, s *screen) { s.press("]"); require.Contains(t, s.said(), "to land at 5.5 m/s") },
	"Type": func(t *testing.T, s *screen) {
		s.press("l", "ctrl+u")
		s.write("20 ft/s")
		s.press("enter")
		require.InDelta(t, 6.096, s.opening().wanted, 1e-12)
		require.InDelta(t, 6.096, s.opening().sized.Result.Vertical, 0.01)
	},
	"Take": func(t *testing.T, s *screen) {
		size := s.opening().sized.Result.Diameter
		s.press("[", "[", "k")
		require.Greater(t, s.m.file().Rocket().Canopies[0].Diameter, size)
		down := s.m.now.Flight.Results.Landing.Vertical
		require.Less(t, down, 4.0+1e-3, "rounded up")
		require.InDelta(t, 4, down, 0.05)
		require.Contains(t, s.view(), "rounded up")
		s.press("u")
		require.InDelta(t, 1.1, s.m.file().Rocket().Canopies[0].Diameter, 1e-12)
	},
	"Sheet": func(t *testing.T, s *screen) {
		require.Contains(t, s.said(), "load N")
		s.press("z")
		require.Contains(t, s.said(), "height m")
		s.press("z")
		require.Contains(t, s.said(), "load N")
	},
	"SheetBack": func(t *testing.T, s *screen) {
		s.press("d", "Z")
		require.Contains(t, s.said(), "can be had")
		s.press("Z")
		require.Contains(t, s.said(), "height m")
	},
}

func TestOpeningKeys(t *testing.T) {
	tryViewKeys(t, newOpeningKeys(view.DefaultKeys()), newOpeningView(view.DefaultKeys()), "o", openingTrials)
}

// What is planned is the flight on the screen, of a point mass or a rigid body.
func TestOpeningAgreesWithTheFlight(t *testing.T) {
	for name, f := range map[string]*rocketfile.File{"point": plover(t), "rigid": rocketfile.Starter(), "two": twoCanopies(t)} {
		t.Run(name, func(t *testing.T) {
			s := newScreen(t, f, 200, 60)
			s.press("o")
			o := s.opening().study.Result
			require.Equal(t, study.AsPlanned, o.cases[0].Case)
			require.Equal(t, s.m.now.Flight.Results.Canopies, o.cases[0].Flight.Results.Canopies)
			require.Equal(t, s.m.now.Flight.Results.Landing, o.cases[0].Flight.Results.Landing)
		})
	}
}

// Walking along the delays changes the motor's; the table knows which can be had.
func TestOpeningByCharge(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("d", "o")
	require.Equal(t, "motor.delay", s.m.inputs.chosen().Name)
	listed := 0
	for _, d := range s.opening().delays() {
		if d.Listed {
			listed++
		}
	}
	require.Equal(t, 3, listed)
	require.Equal(t, 3, strings.Count(s.said(), "+ 4 s")+strings.Count(s.said(), "+ 6 s")+strings.Count(s.said(), "+ 8 s"))
	s.press("right", "b")
	r := s.m.file().Rocket()
	require.Contains(t, r.Motor.Delays, r.Motor.Delay, "the best is one that can be had")
	require.Contains(t, s.said(), "as set, best")
}

// What never opens says why, and choosing the view leads to the rule.
func TestOpeningWithoutANumber(t *testing.T) {
	never := with(t, rocketfile.Change{Input: "power", Value: "motor"}, rocketfile.Change{Input: "motor.delay", Value: "6 s"})
	never, err := never.Reset("motor.delay")
	require.NoError(t, err)
	s := newScreen(t, never, 120, 40)
	s.press("o")
	require.Contains(t, s.said(), "waits for a charge")
	require.Contains(t, s.said(), "never")
	before := s.text()
	s.press("b", "k")
	require.Equal(t, before, s.text())

	water, err := plover(t).WithText([]byte(strings.Replace(string(plover(t).Text()), `water = "apogee + 1 s", `, "", 1)))
	require.NoError(t, err)
	s = newScreen(t, water, 80, 24)
	s.press("o")
	require.Contains(t, s.said(), "has no rule for a flight on water")
	require.Equal(t, "canopy.main.deploy.water", s.m.inputs.chosen().Name)
	s.press("C")
	require.Contains(t, s.said(), "no canopy: nothing slows its fall")
	s.press("e", "b", "k", "[", "z")
	s.checkSize()
}

// A rocket that stays on its rail has no opening to choose.
func TestOpeningOfARocketThatStays(t *testing.T) {
	s := newScreen(t, with(t, rocketfile.Change{Input: "water.pressure", Value: "0.1 bar"}), 120, 40)
	s.press("o")
	require.Contains(t, s.said(), "does not leave its rail")
	s.press("b", "k")
	s.checkSize()
}

// The canopy whose input is chosen is the one looked at.
func TestOpeningOfTheChosenCanopy(t *testing.T) {
	s := newScreen(t, twoCanopies(t), 120, 40)
	s.choose("canopy.drogue.diameter")
	s.press("o")
	require.Contains(t, s.said(), "drogue (2 of 2)")
	require.Equal(t, "motor.delay", s.m.inputs.chosen().Name)
	s.press("e")
	require.Contains(t, s.said(), "main (1 of 2) falling through 40 m")
	require.Contains(t, s.said(), "the rule counts no seconds")
}

// Another canopy that opens too fast because this one stays shut is told of.
func TestOpeningTellsOfTheOthers(t *testing.T) {
	s := newScreen(t, twoCanopies(t), 120, 40)
	s.choose("canopy.drogue.diameter")
	s.press("o")
	never := s.opening().study.Result.cases[4]
	require.Equal(t, study.NotAtAll, never.Case)
	fastest, any := fastestOther(&never.Flight.Results, 1)
	require.True(t, any)
	require.Equal(t, never.Flight.Results.Canopies[0].Airspeed, fastest)
	require.Greater(t, fastest, 20.0)
	require.Regexp(t, `never shut [0-9.]+ m/s fast`, s.said())
}

func TestBadLandingSpeeds(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("o")
	for _, bad := range []string{"", "5 kg", "-3", "0", "0.1", "200", "NaN", "1e400", "x"} {
		s.press("l", "ctrl+u")
		s.write(bad)
		s.press("enter")
		require.NotNil(t, s.m.asking, "%q stays open", bad)
		require.NotEmpty(t, s.m.asking.wrong, bad)
		s.checkSize()
		s.press("esc")
		require.InDelta(t, 5, s.opening().wanted, 0)
	}
	for range 20 {
		s.press("[")
	}
	require.Contains(t, s.view(), "its range is 0.5 m/s to 50 m/s")
	require.InDelta(t, slowestLanding, s.opening().wanted, 1e-12)
	s.press("l", "ctrl+u")
	s.write("45")
	s.press("enter")
	require.Contains(t, s.said(), "the rocket lands slower")
	before := s.text()
	s.press("k")
	require.Equal(t, before, s.text())
}

// Of several studies asked for only the last counts; the old figures stay, marked.
func TestStaleOpenings(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("o")
	v := s.opening()
	old := v.study.Result.cases
	var late []tea.Cmd
	for _, delay := range []float64{2, 3, 4} {
		f, err := s.m.file().SetValue("canopy.main.deploy.water", delay)
		require.NoError(t, err)
		s.m.take(f, nil, view.Edit{})
		fl, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{Keep: true})
		require.NoError(t, err)
		late = append(late, v.Show(view.Scene{Ctx: context.Background(), File: f, Now: view.NewOutcome(context.Background(), f, fl, time.Time{}), Theme: s.m.theme}))
	}
	require.Equal(t, old, v.study.Result.cases)
	require.Contains(t, strings.Join(v.Lines(), " "), "computing")
	before := s.text()
	v.takeCanopy(frame{&s.m})
	require.Equal(t, before, s.text(), "nothing is taken from an older rocket's figures")
	now := s.m.file()
	v.takeBest(frame{&s.m})
	require.InDelta(t, v.study.Result.values[v.study.Result.best].Value, s.m.file().Rocket().Canopies[0].Water.Value, 1e-9,
		"but the best does not depend on the number itself")
	f, err := now.SetValue("body.mass", 2)
	require.NoError(t, err)
	s.m.take(f, nil, view.Edit{})
	v.takeBest(frame{&s.m})
	require.Equal(t, string(f.Text()), s.text(), "and on the mass it does")
	s.m.take(now, nil, view.Edit{})
	for _, i := range []int{1, 2, 0} {
		s.run(late[i])
	}
	require.False(t, v.study.Busy || v.sized.Busy)
	require.InDelta(t, 4, v.study.Result.of.Flight.Rocket.Canopies[0].Water.Value, 1e-12)
	require.NotContains(t, strings.Join(v.Lines(), " "), "computing")
}

// Until the first figures are there, every key is harmless.
func TestOpeningBeforeTheFirstFigures(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.hold = true
	s.press("o")
	require.Contains(t, s.said(), "being computed")
	before := s.text()
	s.press("b", "k", "z", "[", "e", "l", "esc")
	require.Equal(t, before, s.text())
	s.checkSize()
}

func TestRoundedUp(t *testing.T) {
	m, inch := draw.Unit("m"), draw.Unit("in")
	require.InDelta(t, 0.99, roundedUp(0.981, 0.01, m), 1e-12)
	require.InDelta(t, 0.98, roundedUp(0.98, 0.01, m), 1e-12)
	require.InDelta(t, 20.5*0.0254, roundedUp(20.1*0.0254, 0.01, inch), 1e-12)
}

func TestBetween(t *testing.T) {
	require.Equal(t, []float64{1, 2, 3, 4, 5}, between([]float64{5, 1, 2}, 5))
	require.Equal(t, []float64{3}, between([]float64{3}, 9))
	require.Empty(t, between(nil, 9))
}

func TestBearing(t *testing.T) {
	require.Empty(t, bearing(0.1, 0.2))
	for name, angle := range map[string]float64{"N": 0, "E": 90, "SE": 135, "W": -90, "NW": -45, "S": 180} {
		a := angle * math.Pi / 180
		require.Equal(t, name, bearing(100*math.Sin(a), 100*math.Cos(a)))
	}
}

func BenchmarkOpening(b *testing.B) {
	for name, f := range map[string]*rocketfile.File{"point": plover(b), "rigid": rocketfile.Starter()} {
		b.Run(name, func(b *testing.B) {
			fl, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{Keep: true})
			require.NoError(b, err)
			of := view.NewOutcome(context.Background(), f, fl, time.Time{})
			for b.Loop() {
				if _, err := newOpening(context.Background(), of, 0); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
