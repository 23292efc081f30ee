package fill

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/plot"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows a rocket in the view.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), f, size)
}

// What each key of the view does.
var trials = map[string]func(t *testing.T, f *frame){
	"Best": func(t *testing.T, f *frame) {
		best := *f.V.today().best
		f.Press("b")
		require.InDelta(t, best.Values[0], f.Scene.Now.Flight.Rocket.Water.Fill, fillStep/2)
		require.InDelta(t, best.Apogee, f.Scene.Now.Flight.Results.Apogee.Height, 1e-4*best.Apogee)
		require.Contains(t, f.Shown(), "same", "nothing is left to gain")
		f.Press("u")
		require.InDelta(t, 0.3, f.Value(fillInput), 1e-12)
	},
	"Wish": func(t *testing.T, f *frame) {
		highest := f.V.today().best.Values[0]
		f.Press("y")
		f.Type("least landing.drft")
		require.Contains(t, f.Wrong, "perhaps landing.drift is meant")
		f.Type("max.acceleration")
		require.Nil(t, f.Asked, f.Wrong)
		c := f.V.today()
		require.Less(t, c.best.Values[0], highest, "less water is faster off")
		require.Contains(t, f.Shown(), c.wish.Row.Label)
		for i := range c.value {
			require.False(t, c.value[i] > c.granted()*(1+1e-6) && !c.left[i])
		}
		f.Press("b")
		require.InDelta(t, c.best.Values[0], f.Value(fillInput), fillStep/2)
		f.Press("u", "y")
		f.Type("apogee.height=30 m")
		require.InDelta(t, 30, f.V.today().granted(), 0.3)
		require.NotContains(t, f.Shown(), "the nearest is")
		f.Press("y")
		f.Type("apogee.height=3000 m")
		require.InDelta(t, highest, f.V.today().best.Values[0], 0.01)
		require.Contains(t, f.Shown(), "no fill comes to apogee of 3000 m")
		f.Press("z")
		require.Contains(t, f.Shown(), "A no fill comes to")
		f.Press("Z", "y")
		f.Type("tube_exit.speed")
		require.Contains(t, f.Shown(), "at no fill is there a speed at tube exit")
		f.Press("b")
		require.Contains(t, f.Said, "There is no best fill")
	},
	"Family": func(t *testing.T, f *frame) {
		for _, want := range []family{byPressure, byThroat, alone} {
			f.Press("z")
			require.Equal(t, want, f.V.family)
		}
	},
	"FamilyBack": func(t *testing.T, f *frame) {
		f.Press("Z")
		require.Equal(t, byThroat, f.V.family)
	},
	"Less":    func(t *testing.T, f *frame) { require.InDelta(t, 0.29, walked(f, "["), 1e-9) },
	"More":    func(t *testing.T, f *frame) { require.InDelta(t, 0.31, walked(f, "]"), 1e-9) },
	"FarLess": func(t *testing.T, f *frame) { require.InDelta(t, 0.25, walked(f, "{"), 1e-9) },
	"FarMore": func(t *testing.T, f *frame) { require.InDelta(t, 0.35, walked(f, "}"), 1e-9) },
}

// walked is the fill after a key that walks whatever input is chosen.
func walked(f *frame, key string) float64 {
	f.Choose("water.throat")
	f.Press(key)
	return f.Scene.Now.Flight.Rocket.Water.Fill
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Plover(t), viewtest.Small) }, trials)
}

// Entering the view chooses the amount of water, so that the keys of an input walk along.
func TestEnter(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	f.Choose("body.mass")
	f.Enter()
	require.Equal(t, fillInput, f.Chosen())
	f.Press("right", "right", "left")
	require.InDelta(t, 0.31, f.Value(fillInput), 1e-9)
}

// The curve is made of the very flights that the engine flies at its fills, and
// the best is the one that the study finds and no point of the curve exceeds.
func TestCurveIsOfTheEnginesFlights(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	c := f.V.today()
	require.Len(t, c.fill, fillPoints)
	require.Zero(t, c.fill[0])
	require.InDelta(t, 0.98, c.fill[fillPoints-1], 1e-12)
	for _, i := range []int{0, 7, 31, 60, 88} {
		r := f.File().Rocket()
		r.Water.Fill = c.fill[i]
		fl, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		require.Equal(t, fl.Results.Apogee.Height, c.value[i])
		require.Equal(t, fl.Results.RailExit.Speed, c.rail[i])
	}
	goal, err := study.ParseGoal(f.File().Rocket(), fillInput)
	require.NoError(t, err)
	best, err := study.FindBest(context.Background(), f.File().Rocket(), []study.Goal{goal}, study.Highest(false), study.Options{})
	require.NoError(t, err)
	require.Equal(t, best.Values, c.best.Values)
	for i, h := range c.value {
		require.False(t, h > best.Apogee*(1+1e-6) && !c.left[i], "%g %% flies higher than the best", 100*c.fill[i])
	}
}

// Curves follow every input but the fill itself, which only walks along them.
func TestCurveIsLive(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	before := f.V.today()
	f.Press("right", "{", "]")
	require.Same(t, before, f.V.today(), "walking flies no curve anew")
	for _, input := range []string{"water.pressure", "body.mass", "rail.length", "wind.speed"} {
		before := slices.Clone(f.V.today().value)
		f.Choose(input)
		f.Press("right")
		require.NotEqual(t, before, f.V.today().value, input)
	}
}

// Of several curves asked for only the last counts, in whatever order they come;
// till then the old one stays, and says that it is old.
func TestStaleCurves(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	v, s := f.V, f.Scene
	old := v.curves.Result
	var late []tea.Cmd
	for _, bar := range []float64{5, 6, 7} {
		file, err := f.File().SetValue("water.pressure", bar*1e5)
		require.NoError(t, err)
		s.File = file
		late = append(late, v.Show(s))
	}
	require.True(t, v.curves.Busy)
	require.Equal(t, old, v.curves.Result)
	require.Contains(t, f.Shown(), "computing")
	for _, i := range []int{2, 0, 1} {
		f.Run(late[i])
	}
	require.False(t, v.curves.Busy)
	require.InDelta(t, 7e5, v.curves.Result[0].rocket.Water.Pressure, 1e-6)
	require.NotContains(t, f.Shown(), "computing")
}

// Where liquid stays aboard there is a sign, where the rocket stays on its rail a
// gap, and both are said in words; the best is neither.
func TestNoFlightsAreShown(t *testing.T) {
	f := start(t, viewtest.With(t, rocketfile.Change{Input: "water.pressure", Value: "2.5 bar"}), viewtest.Medium)
	c := f.V.today()
	left, stuck := slices.Index(c.left, true), slices.Index(c.stuck, true)
	require.GreaterOrEqual(t, stuck, 0)
	require.True(t, math.IsNaN(c.value[stuck]))
	require.Contains(t, f.Shown(), "gap, it never leaves the rail: ")
	if left >= 0 {
		require.Contains(t, f.Shown(), "x liquid stays aboard")
	}
	require.True(t, c.best.Flight.Results.RailExit.Happened)
	require.Zero(t, c.best.Flight.Results.LiquidLeft)
}

// Liquid that stays aboard is marked on the curve.
func TestLeftLiquidIsMarked(t *testing.T) {
	c := fillCurve{
		fill: []float64{0, 0.2, 0.4, 0.6, 0.8}, value: []float64{1, 2, 3, 2, math.NaN()}, rail: []float64{5, 5, 5, 5, math.NaN()},
		left: []bool{false, false, true, true, false}, stuck: []bool{false, false, false, false, true},
	}
	words := strings.Join(noFlights([]drawnCurve{{fillCurve: &c}}), "; ")
	require.Equal(t, "x liquid stays aboard: from 40 % to 60 %; gap, it never leaves the rail: from 80 %", words)
	require.Equal(t, []stretch{{0.4, 0.6}}, c.stretches(c.left))
	require.InDelta(t, 2.5, c.at(0.3), 1e-12)
	require.True(t, math.IsNaN(c.at(0.7)))
}

// With no pressure there is no best fill; that is said, and taking it changes
// nothing.
func TestNoBest(t *testing.T) {
	f := start(t, viewtest.With(t, rocketfile.Change{Input: "water.pressure", Value: "0.05 bar"}), viewtest.Small)
	text := f.Source()
	require.Contains(t, f.Shown(), "no best fill: at no fill does it leave the rail")
	f.Press("b")
	require.Contains(t, f.Said, "There is no best fill")
	require.Equal(t, text, f.Source())
}

// On a motor the view says what it is for and which key brings it.
func TestIsForWater(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	f.Drive()
	require.Contains(t, f.Shown(), "Fill is for water")
	require.Contains(t, f.Shown(), "Press d to fly on water")
	before := f.Source()
	f.Press("b", "z", "]", "{")
	require.Equal(t, before, f.Source())
	f.Drive()
	require.NotNil(t, f.V.today())
	require.Contains(t, f.Shown(), "rail exit speed")

	require.Contains(t, start(t, viewtest.Waterless(t), viewtest.Small).Shown(), "has no [water]")
}

// A best fill that leaves the rail too slowly says so.
func TestBestMayBeSlowOnTheRail(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	require.Less(t, f.V.today().best.Flight.Results.RailExit.Speed, 16.0)
	require.Contains(t, f.Shown(), "rail exit low at the best: 16 m/s asked for")
	require.Contains(t, f.Shown(), "m/s low", "beside the figure too")
	f.Set("rail.length", "2.5 m")
	require.NotContains(t, f.Shown(), "low")
}

// The best fill is taken as a short number: on the side of the flights to have
// where there is an edge.
func TestBestIsAShortNumber(t *testing.T) {
	for _, c := range []struct {
		best, low, high float64
		edge, bound     bool
		want            float64
	}{
		{0.37912345, 0.34, 0.42, false, false, 0.379},
		{0.37962345, 0.34, 0.42, false, false, 0.38},
		{0.37918999, 0.34, 0.37919, true, false, 0.3791},
		{0.37912345, 0.37912, 0.42, true, false, 0.3792},
		{0.9, 0.88, 0.9, false, true, 0.9},
	} {
		curve := fillCurve{best: &study.Best{
			Values: []float64{c.best}, Within: [][2]float64{{c.low, c.high}}, AtEdge: []bool{c.edge}, AtBound: []bool{c.bound},
		}}
		require.InDelta(t, c.want, curve.bestFill(), 1e-12)
	}
}

// Curves are flights of the rocket's own model, so that today's flight is on its curve. One
// that flies as a point mass though its shape is known says so.
func TestOfARigidRocket(t *testing.T) {
	f := start(t, viewtest.Shaped(t), viewtest.Medium)
	require.True(t, f.Scene.Now.Flight.Rocket.Rigid())
	require.NotContains(t, f.Shown(), "point mass")
	now := f.Scene.Now.Flight
	require.InDelta(t, now.Results.Apogee.Height, f.V.today().at(now.Rocket.Water.Fill), 0.01)
	f = start(t, viewtest.Pointed(t), viewtest.Medium)
	require.Contains(t, f.Shown(), "flown as a point mass, though its shape is known")
	require.NotEqual(t, now.Results.Apogee, f.Scene.Now.Flight.Results.Apogee)
}

// Families are three rockets around today's, told apart by letter and line; the
// pressures come with their caution.
func TestFamilies(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Press("z")
	require.Equal(t, []string{"7 bar", "9 bar", "11 bar"}, memberNames(f.V))
	require.Contains(t, f.Shown(), "no proof of the chamber is on record")
	drawn := f.V.drawn()
	for i, d := range drawn {
		require.Equal(t, 'A'+rune(i), d.sign)
		require.Equal(t, d.today, d.style == plot.Solid)
		for _, other := range drawn[:i] {
			require.NotEqual(t, other.style, d.style)
		}
	}
	require.Greater(t, drawn[2].best.Apogee, drawn[1].best.Apogee)
	f.Press("z")
	require.Equal(t, []string{"11 mm", "13 mm", "15 mm"}, memberNames(f.V))
	f.Scene.Units = quantity.US
	f.Show()
	require.Equal(t, []string{"0.4118 in", "0.5118 in", "0.6118 in"}, memberNames(f.V))
}

// A pressure that the chamber is not proved for has no best fill, and says so.
func TestBeyondTheProof(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Large)
	f.Press("z")
	require.Equal(t, []string{"8 bar", "10 bar", "12 bar"}, memberNames(f.V))
	require.Contains(t, f.Shown(), "12 bar: more pressure than the chamber is proved for")
	require.NotContains(t, f.Shown(), "lands with liquid aboard")
}

func memberNames(v *View) []string {
	var names []string
	for _, c := range v.curves.Result {
		names = append(names, c.name)
	}
	return names
}

// A member that is no valid rocket is told of, and the others are drawn.
func TestFamilyWithAnImpossibleMember(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Edit(f.File().AddTube())
	f.Press("z", "z")
	require.Contains(t, f.Shown(), "fatter than")
	require.Nil(t, f.V.curves.Result[0].best)
	require.NotNil(t, f.V.today().best)
}

// BenchmarkCurves flies the curves of 101 fills with their best, of a point mass and of a rigid
// body: half of that is what two idle cores take.
func BenchmarkCurves(b *testing.B) {
	for name, f := range map[string]*rocketfile.File{"point": viewtest.Plover(b), "rigid": viewtest.Shaped(b)} {
		for _, of := range []family{alone, byPressure, byThroat} {
			b.Run(name+"/"+[...]string{"one", "pressures", "throats"}[of], func(b *testing.B) {
				for b.Loop() {
					if curves, err := fillCurves(context.Background(), of.members(f, 0), view.Wish{}.For(f.Rocket())); err != nil || curves[0].best == nil {
						b.Fatal(curves, err)
					}
				}
			})
		}
	}
}
