package tui

import (
	"context"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// fill is the fill view, in sight.
func (s *screen) fill() *fillView {
	s.t.Helper()
	v, ok := s.m.view().(*fillView)
	require.True(s.t, ok, "the fill view is not in sight")
	return v
}

// said is what the view in sight says, on one line.
func (s *screen) said() string {
	return strings.Join(strings.Fields(strings.Join(s.m.view().Lines(), " ")), " ")
}

// with is the rocket of the tests with some values changed.
func with(t testing.TB, changes ...rocketfile.Change) *rocketfile.File {
	t.Helper()
	f, err := plover(t).SetAll(changes...)
	require.NoError(t, err)
	return f
}

// waterless is a rocket that flies on its motor alone.
func waterless(t testing.TB) *rocketfile.File {
	t.Helper()
	f := plover(t)
	before, rest, _ := strings.Cut(string(f.Text()), "[water]")
	_, after, _ := strings.Cut(rest, "[motor]")
	text := strings.Replace(before, `"water"`, `"motor"`, 1) + "[motor]" + after
	f, err := f.WithText([]byte(strings.Replace(text, `water = "apogee + 1 s", `, "", 1)))
	require.NoError(t, err)
	return f
}

func TestFillGoldens(t *testing.T) {
	low := rocketfile.Change{Input: "water.pressure", Value: "2.5 bar"}
	for _, c := range []struct {
		name    string
		w, h    int
		charset plot.Charset
		changes []rocketfile.Change
		keys    []string
	}{
		{"fill-80x24", 80, 24, plot.Braille, nil, []string{"w"}},
		{"fill-120x40", 120, 40, plot.Braille, nil, []string{"w"}},
		{"fill-200x60", 200, 60, plot.Braille, nil, []string{"w"}},
		{"fill-block-120x40", 120, 40, plot.Block, nil, []string{"w"}},
		{"fill-ascii-80x24", 80, 24, plot.ASCII, nil, []string{"w"}},
		{"fill-best-80x24", 80, 24, plot.Braille, nil, []string{"w", "b"}},
		{"fill-kept-120x40", 120, 40, plot.Braille, nil, []string{"p", "w", "b"}},
		{"fill-us-120x40", 120, 40, plot.Braille, nil, []string{"w", "x"}},
		{"fill-pressures-80x24", 80, 24, plot.Braille, nil, []string{"w", "z"}},
		{"fill-pressures-120x40", 120, 40, plot.Braille, nil, []string{"w", "z"}},
		{"fill-throats-120x40", 120, 40, plot.Braille, nil, []string{"w", "z", "z"}},
		{"fill-throats-ascii-120x40", 120, 40, plot.ASCII, nil, []string{"w", "z", "z"}},
		{"fill-low-120x40", 120, 40, plot.Braille, []rocketfile.Change{low}, []string{"w"}},
		{"fill-motor-80x24", 80, 24, plot.Braille, nil, []string{"w", "d"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, with(t, c.changes...), c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			s.golden(c.name)
		})
	}
}

// What each key of the view does. A key without a row fails TestFillKeys.
var fillTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) {
		s.fill()
		require.Equal(t, fillInput, s.m.inputs.chosen().Name)
		s.press("right", "right", "left")
		require.Equal(t, "31 %", s.value())
		s.press("u", "u", "u")
		require.Equal(t, "30 %", s.value())
	},
	"Best": func(t *testing.T, s *screen) {
		best := *s.fill().today().best
		s.press("b")
		require.InDelta(t, best.Values[0], s.m.now.Flight.Rocket.Water.Fill, fillStep/2)
		require.InDelta(t, best.Apogee, s.m.now.Flight.Results.Apogee.Height, 1e-4*best.Apogee)
		require.Contains(t, s.view(), "same", "nothing is left to gain")
		s.press("u")
		require.Equal(t, "30 %", s.value())
	},
	"Family": func(t *testing.T, s *screen) {
		for _, want := range []family{byPressure, byThroat, alone} {
			s.press("z")
			require.Equal(t, want, s.fill().family)
		}
	},
	"FamilyBack": func(t *testing.T, s *screen) {
		s.press("Z")
		require.Equal(t, byThroat, s.fill().family)
	},
	"Less":    func(t *testing.T, s *screen) { require.InDelta(t, 0.29, s.walked("["), 1e-9) },
	"More":    func(t *testing.T, s *screen) { require.InDelta(t, 0.31, s.walked("]"), 1e-9) },
	"FarLess": func(t *testing.T, s *screen) { require.InDelta(t, 0.25, s.walked("{"), 1e-9) },
	"FarMore": func(t *testing.T, s *screen) { require.InDelta(t, 0.35, s.walked("}"), 1e-9) },
}

// walked is the fill after a key that walks whatever input is chosen.
func (s *screen) walked(k string) float64 {
	s.choose("water.throat")
	s.press(k)
	return s.m.now.Flight.Rocket.Water.Fill
}

func TestFillKeys(t *testing.T) {
	tryViewKeys(t, newFillKeys(view.DefaultKeys()), newFillView(view.DefaultKeys()), "w", fillTrials)
}

// tryViewKeys tries every key of a view's key map, a struct of bindings of which
// Open shows the view: each has a help of its own, is no key of the frame but of
// the flight, is listed, and does what its trial says.
func tryViewKeys(t *testing.T, bindings any, v view.View, open string, trials map[string]func(*testing.T, *screen)) {
	frame := DefaultKeys()
	flight := map[string]bool{}
	for _, g := range frame.groups() {
		for _, b := range g.keys {
			for _, k := range b.Keys() {
				flight[k] = g.title == "flight" && !key.Matches(keyNamed(k), frame.Keep, frame.DropKept)
			}
		}
	}
	value := reflect.ValueOf(bindings)
	listed := v.Keys()
	require.Len(t, listed, value.NumField()-1)
	used := map[string]string{}
	for i := range value.NumField() {
		name := value.Type().Field(i).Name
		b := value.Field(i).Interface().(key.Binding)
		require.NotEmpty(t, b.Help().Key, name)
		require.NotEmpty(t, b.Help().Desc, name)
		for _, k := range b.Keys() {
			require.Empty(t, used[k], "%s and %s share %q", used[k], name, k)
			used[k] = name
			free, known := flight[k]
			require.True(t, free || !known || isAnswer(frame, k), "%s: %q is a key of the frame", name, k)
		}
		t.Run(name, func(t *testing.T) {
			require.NotNil(t, trials[name], "no trial of this key")
			s := newScreen(t, copied(t), 80, 24)
			s.press(open)
			trials[name](t, s)
			s.checkSize()
		})
	}
}

// isAnswer tells that a key only answers questions in the frame.
func isAnswer(k KeyMap, name string) bool {
	for _, g := range k.groups() {
		for _, b := range g.keys {
			if g.title != "answers" && slices.Contains(b.Keys(), name) {
				return false
			}
		}
	}
	return true
}

// The curve is made of the very flights that the engine flies at its fills, and
// the best is the one that the study finds and no point of the curve exceeds.
func TestFillCurveIsOfTheEnginesFlights(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("w")
	c := s.fill().today()
	require.Len(t, c.fill, fillPoints)
	require.Zero(t, c.fill[0])
	require.InDelta(t, 0.98, c.fill[fillPoints-1], 1e-12)
	for _, i := range []int{0, 7, 31, 60, 88} {
		r := s.m.file().Rocket()
		r.Water.Fill = c.fill[i]
		fl, err := sim.Fly(context.Background(), r, sim.Options{Point: true})
		require.NoError(t, err)
		require.Equal(t, fl.Results.Apogee.Height, c.apogee[i])
		require.Equal(t, fl.Results.RailExit.Speed, c.rail[i])
	}
	goal, err := study.ParseGoal(s.m.file().Rocket(), fillInput)
	require.NoError(t, err)
	best, err := study.FindBest(context.Background(), s.m.file().Rocket(), []study.Goal{goal}, false, study.Options{})
	require.NoError(t, err)
	require.Equal(t, best.Values, c.best.Values)
	for i, h := range c.apogee {
		require.False(t, h > best.Apogee*(1+1e-6) && !c.left[i], "%g %% flies higher than the best", 100*c.fill[i])
	}
}

// Curves follow every input but the fill itself, which only walks along them.
func TestFillCurveIsLive(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("w")
	before := s.fill().today()
	s.press("right", "{", "]")
	require.Same(t, before, s.fill().today(), "walking flies no curve anew")
	for _, input := range []string{"water.pressure", "body.mass", "rail.length", "wind.speed"} {
		before := slices.Clone(s.fill().today().apogee)
		s.choose(input)
		s.press("right")
		require.NotEqual(t, before, s.fill().today().apogee, input)
	}
}

// Of several curves asked for only the last counts, in whatever order they come;
// till then the old one stays, and says that it is old.
func TestStaleFillCurves(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("w")
	v := s.fill()
	old := v.curves.Result
	s.choose("water.pressure")
	var late []tea.Cmd
	for _, bar := range []float64{5, 6, 7} {
		f, err := s.m.file().SetValue("water.pressure", bar*1e5)
		require.NoError(t, err)
		s.m.take(f, nil, view.Edit{})
		late = append(late, v.Show(view.Scene{Ctx: context.Background(), File: f, Now: s.m.now, Theme: s.m.theme}))
	}
	require.True(t, v.curves.Busy)
	require.Equal(t, old, v.curves.Result)
	s.send(tea.WindowSizeMsg{Width: 120, Height: 41})
	require.Contains(t, s.view(), "computing")
	for _, i := range []int{2, 0, 1} {
		s.run(late[i])
	}
	require.False(t, v.curves.Busy)
	require.InDelta(t, 7e5, v.curves.Result[0].rocket.Water.Pressure, 1e-6)
	require.InDelta(t, 7e5, v.own.Result.Rocket.Water.Pressure, 1e-6)
	require.NotContains(t, s.view(), "computing")
}

// Where liquid stays aboard there is a sign, where the rocket stays on its rail a
// gap, and both are said in words; the best is neither.
func TestNoFlightsAreShown(t *testing.T) {
	s := newScreen(t, with(t, rocketfile.Change{Input: "water.pressure", Value: "2.5 bar"}), 120, 40)
	s.press("w")
	c := s.fill().today()
	left, stuck := slices.Index(c.left, true), slices.Index(c.stuck, true)
	require.GreaterOrEqual(t, stuck, 0)
	require.True(t, math.IsNaN(c.apogee[stuck]))
	require.Contains(t, s.said(), "gap, it never leaves the rail: ")
	if left >= 0 {
		require.Contains(t, s.said(), "x liquid stays aboard")
	}
	require.True(t, c.best.Flight.Results.RailExit.Happened)
	require.Zero(t, c.best.Flight.Results.LiquidLeft)
}

// Liquid that stays aboard is marked on the curve.
func TestLeftLiquidIsMarked(t *testing.T) {
	c := fillCurve{
		fill: []float64{0, 0.2, 0.4, 0.6, 0.8}, apogee: []float64{1, 2, 3, 2, math.NaN()}, rail: []float64{5, 5, 5, 5, math.NaN()},
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
func TestNoBestFill(t *testing.T) {
	s := newScreen(t, with(t, rocketfile.Change{Input: "water.pressure", Value: "0.05 bar"}), 80, 24)
	text := s.text()
	s.press("w")
	require.Contains(t, s.said(), "no best fill: at no fill does it leave the rail")
	s.press("b")
	require.Contains(t, s.words(), "There is no best fill")
	require.Equal(t, text, s.text())
	s.checkSize()
}

// On a motor the view says what it is for and which key brings it.
func TestFillIsForWater(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("w", "d")
	require.Contains(t, s.said(), "Fill is for water")
	require.Contains(t, s.said(), "Press d to fly on water")
	before := s.text()
	s.press("b", "z", "]", "{")
	require.Equal(t, before, s.text())
	s.press("d")
	require.NotNil(t, s.fill().today())
	require.Contains(t, s.view(), "rail exit speed")

	s = newScreen(t, waterless(t), 80, 24)
	s.press("w")
	require.Contains(t, s.said(), "has no [water]")
	s.checkSize()
}

// A best fill that leaves the rail too slowly says so.
func TestBestFillMayBeSlowOnTheRail(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("w")
	require.Less(t, s.fill().today().best.Flight.Results.RailExit.Speed, 16.0)
	require.Contains(t, s.said(), "rail exit low at the best: 16 m/s asked for")
	require.Contains(t, s.said(), "m/s low", "beside the figure too")
	s.choose("rail.length")
	s.write("2.5")
	s.press("enter")
	require.NotContains(t, s.said(), "low")
}

// The best fill is taken as a short number: on the side of the flights to have
// where there is an edge.
func TestBestFillIsAShortNumber(t *testing.T) {
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

// Curves are flights of a point mass. Where the rocket's own flight is a rigid
// body's that is said, and today's figures are on the curve nevertheless.
func TestFillOfARigidRocket(t *testing.T) {
	s := newScreen(t, shaped(t), 120, 40)
	require.True(t, s.m.now.Flight.Rocket.Rigid())
	for _, open := range []string{"w", "n"} {
		s.press(open)
		require.Contains(t, s.said(), "flights of a point mass")
	}
	s.press("w")
	r := s.m.file().Rocket()
	fl, err := sim.Fly(context.Background(), r, sim.Options{Point: true})
	require.NoError(t, err)
	require.Equal(t, fl.Results.Apogee, s.fill().own.Result.Results.Apogee)
	require.InDelta(t, fl.Results.Apogee.Height, s.fill().today().at(r.Water.Fill), 0.01)
}

// Families are three rockets around today's, told apart by letter and line; the
// pressures come with their caution.
func TestFillFamilies(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("w", "z")
	require.Equal(t, []string{"7 bar", "9 bar", "11 bar"}, memberNames(s.fill()))
	require.Contains(t, s.said(), "more pressure only in a chamber proved for it")
	drawn := s.fill().drawn()
	for i, d := range drawn {
		require.Equal(t, 'A'+rune(i), d.sign)
		require.Equal(t, d.today, d.style == plot.Solid)
		for _, other := range drawn[:i] {
			require.NotEqual(t, other.style, d.style)
		}
	}
	require.Greater(t, drawn[2].best.Apogee, drawn[1].best.Apogee)
	s.press("z")
	require.Equal(t, []string{"11 mm", "13 mm", "15 mm"}, memberNames(s.fill()))
	s.press("x")
	require.Equal(t, []string{"0.4118 in", "0.5118 in", "0.6118 in"}, memberNames(s.fill()))
}

func memberNames(v *fillView) []string {
	var names []string
	for _, c := range v.curves.Result {
		names = append(names, c.name)
	}
	return names
}

// A member that is no valid rocket is told of, and the others are drawn.
func TestFillFamilyWithAnImpossibleMember(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("t", "w", "z", "z")
	require.Contains(t, s.said(), "fatter than")
	require.Nil(t, s.fill().curves.Result[0].best)
	require.NotNil(t, s.fill().today().best)
}

func BenchmarkFillCurves(b *testing.B) {
	f := plover(b)
	for _, c := range []struct {
		name string
		of   family
	}{{"one", alone}, {"pressures", byPressure}, {"throats", byThroat}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if curves, err := fillCurves(context.Background(), c.of.members(f, 0)); err != nil || curves[0].best == nil {
					b.Fatal(curves, err)
				}
			}
		})
	}
}

// From a key to the new curves drawn: the key, the flight, the curves, the screen.
func BenchmarkKeyToFillCurves(b *testing.B) {
	for _, keys := range [][]string{{"w"}, {"w", "z"}, {"w", "z", "z"}} {
		b.Run(strings.Join(keys, ""), func(b *testing.B) {
			s := newScreen(b, plover(b), 200, 60)
			inColour(&s.m)
			s.m.judges = noCorners
			s.press(keys...)
			s.choose("body.mass")
			for i := 0; b.Loop(); i++ {
				s.press([]string{"right", "left"}[i%2])
				_ = s.view()
				s.m.hist = newHistory(s.m.file())
			}
		})
	}
}
