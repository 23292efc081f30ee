package opening

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows a rocket in the view.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), f, size)
}

// drogued adds a canopy to the rocket.
func drogued(f *frame) {
	f.T.Helper()
	file, name, err := f.File().AddCanopy()
	require.Equal(f.T, "drogue", name)
	f.Edit(file, err)
}

// What each key of the view does.
var trials = map[string]func(t *testing.T, f *frame){
	"Next": func(t *testing.T, f *frame) {
		drogued(f)
		f.Press("e")
		require.Equal(t, "drogue", f.V.canopy)
		require.Equal(t, "canopy.drogue.deploy.water", f.Chosen())
		f.Press("e")
		require.Contains(t, f.Shown(), "main (1 of 2)")
	},
	"Prev": func(t *testing.T, f *frame) {
		drogued(f)
		f.Press("E")
		require.Contains(t, f.Shown(), "drogue (2 of 2)")
		f.Press("E")
		require.Contains(t, f.Shown(), "main (1 of 2)")
	},
	"Best": func(t *testing.T, f *frame) {
		o := f.V.study.Result
		best := o.values[o.best]
		f.Press("b")
		require.InDelta(t, best.Value, f.File().Rocket().Canopies[0].Water.Value, 1e-9)
		require.InDelta(t, best.Airspeed, f.Scene.Now.Flight.Results.Canopies[0].Airspeed, 1e-9)
		require.Contains(t, f.Shown(), "*as planned")
		f.Press("u")
		require.InDelta(t, 1, f.File().Rocket().Canopies[0].Water.Value, 1e-12)
	},
	"Slower": func(t *testing.T, f *frame) { f.Press("["); require.Contains(t, f.Shown(), "to land at 4.5 m/s") },
	"Faster": func(t *testing.T, f *frame) { f.Press("]"); require.Contains(t, f.Shown(), "to land at 5.5 m/s") },
	"Type": func(t *testing.T, f *frame) {
		f.Press("l")
		f.Type("20 ft/s")
		require.InDelta(t, 6.096, f.V.wanted, 1e-12)
		require.InDelta(t, 6.096, f.V.sized.Result.Vertical, 0.01)
	},
	"Take": func(t *testing.T, f *frame) {
		size := f.V.sized.Result.Diameter
		f.Press("[", "[", "k")
		require.Greater(t, f.File().Rocket().Canopies[0].Diameter, size)
		down := f.Scene.Now.Flight.Results.Landing.Vertical
		require.Less(t, down, 4.0+1e-3, "rounded up")
		require.InDelta(t, 4, down, 0.05)
		require.Contains(t, f.Said, "rounded up")
		f.Press("u")
		require.InDelta(t, 1.1, f.File().Rocket().Canopies[0].Diameter, 1e-12)
	},
	"Sheet": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "load N")
		f.Press("z")
		require.Contains(t, f.Shown(), "height m")
		f.Press("z")
		require.Contains(t, f.Shown(), "load N")
	},
	"SheetBack": func(t *testing.T, f *frame) {
		f.Drive()
		f.Press("Z")
		require.Contains(t, f.Shown(), "can be had")
		f.Press("Z")
		require.Contains(t, f.Shown(), "height m")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Plover(t), viewtest.Small) }, trials)
}

// Entering the view chooses the number in the rule, so that the keys of an input walk along.
func TestEnter(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	require.Equal(t, "canopy.main.deploy.water", f.Chosen())
	f.Press("right")
	require.InDelta(t, 1.1, f.Value(f.Chosen()), 1e-9)
	require.Contains(t, f.Shown(), "1.1 s after apogee")
}

// What is planned is the flight on the screen, of a point mass or a rigid body.
func TestAgreesWithTheFlight(t *testing.T) {
	for name, file := range map[string]*rocketfile.File{"point": viewtest.Plover(t), "rigid": rocketfile.Starter(), "two": viewtest.TwoCanopies(t)} {
		t.Run(name, func(t *testing.T) {
			f := start(t, file, viewtest.Large)
			o := f.V.study.Result
			require.Equal(t, study.AsPlanned, o.cases[0].Case)
			require.Equal(t, f.Scene.Now.Flight.Results.Canopies, o.cases[0].Flight.Results.Canopies)
			require.Equal(t, f.Scene.Now.Flight.Results.Landing, o.cases[0].Flight.Results.Landing)
		})
	}
}

// Walking along the delays changes the motor's; the table knows which can be had.
func TestByCharge(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Drive()
	f.Enter()
	require.Equal(t, "motor.delay", f.Chosen())
	listed := 0
	for _, d := range f.V.delays() {
		if d.Listed {
			listed++
		}
	}
	require.Equal(t, 3, listed)
	said := f.Shown()
	require.Equal(t, 3, strings.Count(said, "+ 4 s")+strings.Count(said, "+ 6 s")+strings.Count(said, "+ 8 s"))
	f.Press("right", "b")
	r := f.File().Rocket()
	require.Contains(t, r.Motor.Delays, r.Motor.Delay, "the best is one that can be had")
	require.Contains(t, f.Shown(), "as set, best")
}

// What never opens says why, and choosing the view leads to the rule.
func TestWithoutANumber(t *testing.T) {
	never := viewtest.With(t, rocketfile.Change{Input: "power", Value: "motor"}, rocketfile.Change{Input: "motor.delay", Value: "6 s"})
	never, err := never.Reset("motor.delay")
	require.NoError(t, err)
	f := start(t, never, viewtest.Medium)
	require.Contains(t, f.Shown(), "waits for a charge")
	require.Contains(t, f.Shown(), "never")
	before := f.Source()
	f.Press("b", "k")
	require.Equal(t, before, f.Source())

	f = start(t, viewtest.Rewritten(t, viewtest.Plover(t), func(text string) string {
		return strings.Replace(text, `water = "apogee + 1 s", `, "", 1)
	}), viewtest.Small)
	require.Contains(t, f.Shown(), "has no rule for a flight on water")
	require.Equal(t, "canopy.main.deploy.water", f.Chosen())
	f.Edit(f.File().RemoveCanopy("main"))
	require.Contains(t, f.Shown(), "no canopy: nothing slows its fall")
	before = f.Source()
	f.Press("e", "b", "k", "[", "z")
	require.Equal(t, before, f.Source())
}

// A rocket that stays on its rail has no opening to choose.
func TestOfARocketThatStays(t *testing.T) {
	f := start(t, viewtest.With(t, rocketfile.Change{Input: "water.pressure", Value: "0.1 bar"}), viewtest.Medium)
	require.Contains(t, f.Shown(), "does not leave its rail")
	before := f.Source()
	f.Press("b", "k")
	require.Equal(t, before, f.Source())
}

// The canopy whose input is chosen is the one looked at.
func TestOfTheChosenCanopy(t *testing.T) {
	f := start(t, viewtest.TwoCanopies(t), viewtest.Medium)
	f.Choose("canopy.drogue.diameter")
	f.Enter()
	require.Contains(t, f.Shown(), "drogue (2 of 2)")
	require.Equal(t, "motor.delay", f.Chosen())
	f.Press("e")
	require.Contains(t, f.Shown(), "main (1 of 2) falling through 40 m")
	require.Contains(t, f.Shown(), "the rule counts no seconds")
}

// Another canopy that opens too fast because this one stays shut is told of.
func TestTellsOfTheOthers(t *testing.T) {
	f := start(t, viewtest.TwoCanopies(t), viewtest.Medium)
	f.Choose("canopy.drogue.diameter")
	f.Enter()
	never := f.V.study.Result.cases[4]
	require.Equal(t, study.NotAtAll, never.Case)
	fastest, any := fastestOther(&never.Flight.Results, 1)
	require.True(t, any)
	require.Equal(t, never.Flight.Results.Canopies[0], fastest)
	require.Greater(t, fastest.Airspeed, 20.0)
	require.Regexp(t, `never shut [0-9.]+ fast`, f.Shown())
}

// Where there is no room for all, every case has its place on a part, its words with it.
func TestEveryFailureIsShown(t *testing.T) {
	f := start(t, viewtest.TwoCanopies(t), viewtest.Small)
	shown := f.Shown()
	for range f.V.sheets() {
		f.Press("z")
		shown += f.Shown()
	}
	for _, c := range f.V.everyCase() {
		if c.flight != nil {
			require.Contains(t, shown, c.name)
		}
	}
	require.Len(t, f.V.everyCase(), len(f.V.study.Result.cases)+1, "and the best")
	require.Regexp(t, `drogue never [0-9.]+ fast shut [0-9.]+ good`, shown)
	require.Regexp(t, `all never shut shut [0-9.]+ hard`, shown, "ballistic")
}

func TestBadLandingSpeeds(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	for _, bad := range []string{"", "5 kg", "-3", "0", "0.1", "200", "NaN", "1e400", "x"} {
		f.Press("l")
		f.Type(bad)
		require.NotNil(t, f.Asked, "%q stays open", bad)
		require.NotEmpty(t, f.Wrong, bad)
		f.Press("esc")
		require.InDelta(t, 5, f.V.wanted, 0)
	}
	for range 20 {
		f.Press("[")
	}
	require.Contains(t, f.Said, "its range is 0.5 m/s to 50 m/s")
	require.InDelta(t, slowestLanding, f.V.wanted, 1e-12)
	f.Press("l")
	f.Type("45")
	require.Contains(t, f.Shown(), "the rocket lands slower")
	before := f.Source()
	f.Press("k")
	require.Equal(t, before, f.Source())
}

// In other units the landing speed wanted is a round one of those.
func TestLandingSpeedInOtherUnits(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Scene.Units = quantity.US
	f.Show()
	f.Press("]")
	require.Regexp(t, `to land at [0-9.]+ ft/s`, f.Shown())
}

// Of several studies asked for only the last counts; the old figures stay, marked.
func TestStale(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	v := f.V
	old := v.study.Result.cases
	f.Hold = true
	for _, delay := range []string{"2", "3", "4"} {
		f.Set("canopy.main.deploy.water", "apogee + "+delay+" s")
	}
	late := f.Held
	f.Hold, f.Held = false, nil
	require.Equal(t, old, v.study.Result.cases)
	require.Contains(t, f.Shown(), "computing")
	before := f.Source()
	v.takeCanopy(f)
	require.Equal(t, before, f.Source(), "nothing is taken from an older rocket's figures")
	now := f.File()
	v.takeBest(f)
	require.InDelta(t, v.study.Result.values[v.study.Result.best].Value, f.File().Rocket().Canopies[0].Water.Value, 1e-9,
		"but the best does not depend on the number itself")
	heavy, err := now.SetValue("body.mass", 2)
	require.NoError(t, err)
	f.Take(heavy, nil, view.Edit{})
	v.takeBest(f)
	require.Equal(t, string(heavy.Text()), f.Source(), "and on the mass it does")
	for _, i := range []int{1, 2, 0} {
		f.Run(late[i])
	}
	require.False(t, v.study.Busy || v.sized.Busy)
	require.InDelta(t, 4, v.study.Result.of.Flight.Rocket.Canopies[0].Water.Value, 1e-12)
	require.NotContains(t, f.Shown(), "computing")
}

// Until the first figures are there, every key is harmless.
func TestBeforeTheFirstFigures(t *testing.T) {
	v := New(view.DefaultKeys())
	f := &frame{T: t, V: v, Hold: true}
	f.Begin(viewtest.Plover(t), viewtest.Small)
	require.Contains(t, f.Shown(), "being computed")
	before := f.Source()
	f.Press("b", "k", "z", "[", "e", "l", "esc")
	require.Equal(t, before, f.Source())
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
	for name, file := range map[string]*rocketfile.File{"point": viewtest.Plover(b), "rigid": rocketfile.Starter()} {
		b.Run(name, func(b *testing.B) {
			fl, err := sim.Fly(context.Background(), file.Rocket(), sim.Options{Keep: true})
			require.NoError(b, err)
			of := view.NewOutcome(context.Background(), file, fl, viewtest.Day())
			for b.Loop() {
				if _, err := newFigures(context.Background(), of, 0); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
