package check

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// verdicts are those of the tests' rockets.
var verdicts = viewtest.Verdicts{}

// start shows a rocket in the view, its corners looked at.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	frame := &frame{T: t, V: New(view.DefaultKeys(), Options{Clock: viewtest.Day, Winds: quickWind})}
	frame.Judges = verdicts.Of(frame.Source)
	frame.Begin(f, size)
	return frame
}

// quickWind stands for the search of the wind limit, which costs most.
func quickWind(context.Context, *rocket.Rocket, plan.Options) (plan.WindLimit, error) {
	return plan.WindLimit{Passes: true, Most: 4.2, Above: []string{"wind"}}, nil
}

// lofty is a rocket that flies above its ceiling, with that check chosen: several inputs
// mend it.
func lofty(t testing.TB) *frame {
	t.Helper()
	low, err := viewtest.Heron(t).Set("field.ceiling", "100 m")
	require.NoError(t, err)
	f := start(t, low, viewtest.Medium)
	choose(f, "ceiling")
	return f
}

// entry is the check chosen.
func entry(f *frame) checkEntry {
	list := f.V.list()
	return list[f.V.at(list)]
}

// choose goes to a check by its key.
func choose(f *frame, key string) {
	f.T.Helper()
	for range f.V.list() {
		f.Press("[")
	}
	for range f.V.list() {
		if entry(f).Key == key {
			return
		}
		f.Press("]")
	}
	require.Equal(f.T, key, entry(f).Key)
}

// tookMend holds that the mend of that place among those that set inputs was made, in one
// step that undo takes back.
func tookMend(f *frame, place int) {
	f.T.Helper()
	is := f.File().Rocket()
	f.Press("u")
	e := entry(f)
	mend := e.Remedies[e.settable()[place]]
	v, _ := mend.Input.Get(is)
	require.InDelta(f.T, mend.To, v, 1e-9)
	was, _ := mend.Input.Get(f.File().Rocket())
	require.InDelta(f.T, mend.From, was, 1e-12)
}

// failed is how many checks fail.
func failed(f *frame) int { return f.Scene.Corners.Result.Verdict.Failed() }

// What each key of the view does.
var trials = map[string]func(t *testing.T, f *frame){
	"Prev": func(t *testing.T, f *frame) {
		f.Press("[", "[", "[", "]", "]", "[")
		require.Equal(t, f.V.list()[1].Key, entry(f).Key)
	},
	"Next": func(t *testing.T, f *frame) {
		before := f.V.at(f.V.list())
		f.Press("]")
		require.Equal(t, before+1, f.V.at(f.V.list()))
	},
	"PrevMend": func(t *testing.T, f *frame) { f.Press("}", "{", "k"); tookMend(f, 0) },
	"NextMend": func(t *testing.T, f *frame) { f.Press("}", "k"); tookMend(f, 1) },
	"Take":     func(t *testing.T, f *frame) { f.Press("k"); tookMend(f, 0) },
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return lofty(t) }, trials)
}

// The list is what package gates finds, corners and mends included, those that fail first.
func TestIsTheVerdict(t *testing.T) {
	file := viewtest.Windy(t, "8 m/s")
	f := start(t, file, viewtest.Large)
	want, err := gates.Judge(context.Background(), file.Rocket(), gates.Options{Today: viewtest.Day(), Spreads: study.Spreads(file), Respread: study.Respread(file), Remedies: true})
	require.NoError(t, err)
	require.False(t, want.Pass())
	require.Contains(t, f.Shown(), words.Verdict(&want))
	require.False(t, entry(f).Pass, "what fails is in sight")
	list := f.V.list()
	require.Len(t, list, len(want.Checks))
	for i, e := range list {
		require.True(t, i == 0 || list[i-1].rank() <= e.rank())
		require.False(t, e.old)
		for _, c := range want.Checks {
			if c.Key == e.Key {
				require.Equal(t, c.Values, e.Values)
				require.Len(t, e.Remedies, len(c.Remedies))
			}
		}
	}
}

// A mend that is taken makes its check pass; one that no input makes says so.
func TestMends(t *testing.T) {
	f := lofty(t)
	before, outside := f.Source(), failed(f)
	e := entry(f)
	require.NotEmpty(t, e.settable(), e.Name)
	f.Press("k")
	require.Contains(t, f.Said, "Done: ")
	require.Less(t, failed(f), outside)
	for _, c := range f.V.list() {
		require.True(t, c.Key != e.Key || c.Pass, "%s passes now", e.Name)
	}
	f.Press("u")
	require.Equal(t, before, f.Source())
	require.Equal(t, outside, failed(f))

	f = start(t, rocketfile.Starter(), viewtest.Medium)
	before = f.Source()
	f.Press("k")
	require.Contains(t, f.Shown(), "(by hand)")
	require.Contains(t, f.Said, "No number among the inputs does it: ")
	require.Equal(t, before, f.Source())
	f.Press("]", "k") // what is not judged says what to give
	require.Contains(t, f.Said, "give chamber.burst")
	require.Equal(t, before, f.Source())
}

// A mend of two inputs sets both in one step.
func TestTwoInputs(t *testing.T) {
	f := start(t, viewtest.Windy(t, "8 m/s"), viewtest.Medium)
	fill, err := rocketfile.Find(f.File().Rocket(), "water.fill")
	require.NoError(t, err)
	rail, err := rocketfile.Find(f.File().Rocket(), "rail.length")
	require.NoError(t, err)
	before := f.File().Rocket().Water.Fill
	f.V.make(f, gates.Remedy{Input: fill, To: 0.25, And: &gates.Remedy{Input: rail, To: 3}}, "both")
	require.InDelta(t, 0.25, f.File().Rocket().Water.Fill, 1e-9)
	require.InDelta(t, 3, f.File().Rocket().Rail.Length, 1e-9)
	f.Press("u")
	require.Equal(t, before, f.File().Rocket().Water.Fill)
	require.NotEqual(t, 3.0, f.File().Rocket().Rail.Length)
}

// Tilting into the wind turns the rail as well, in one step.
func TestTiltIntoWind(t *testing.T) {
	f := start(t, viewtest.Windy(t, "8 m/s"), viewtest.Medium)
	f.Set("rail.heading", "10 deg")
	tilt, err := rocketfile.Find(f.File().Rocket(), "rail.tilt")
	require.NoError(t, err)
	f.V.make(f, gates.Remedy{Kind: gates.TiltIntoWind, Input: tilt, To: 0.1}, "tilt")
	r := f.File().Rocket()
	require.InDelta(t, 0.1, r.Rail.Tilt, 1e-9)
	require.InDelta(t, r.Wind.From, r.Rail.Heading, 1e-9)
	require.Equal(t, "rail.tilt", f.Chosen())
	f.Press("u")
	require.NotEqual(t, r.Wind.From, f.File().Rocket().Rail.Heading)
}

// Calm and day come with the flight; until the corners are there the old corners and
// mends stay and say so, and no mend of theirs can be made.
func TestWhileCornersAreLookedAt(t *testing.T) {
	f := start(t, viewtest.Windy(t, "8 m/s"), viewtest.Medium)
	choose(f, gates.LimitAttack)
	require.NotContains(t, f.Shown(), "before the last edit")
	before := entry(f)
	f.Hold = true
	f.Set("wind.speed", "8.5 m/s")
	require.NotSame(t, f.Scene.Now, f.Scene.Corners.Result.Of)
	require.Contains(t, f.Shown(), "are of the rocket before the last edit")
	e := entry(f)
	require.True(t, e.old)
	require.Equal(t, before.Key, e.Key)
	require.Equal(t, before.Values[results.Corner], e.Values[results.Corner])
	require.NotEqual(t, before.Values[results.Day], e.Values[results.Day])
	text := f.Source()
	f.Press("k")
	require.Equal(t, text, f.Source())
	require.Contains(t, f.Said, "in a moment there are new ones")
	f.Release()
	require.Same(t, f.Scene.Now, f.Scene.Corners.Result.Of)
	require.NotContains(t, f.Shown(), "before the last edit")
}

// Corners come before mends: the verdict is then the one that the findings tell, and mends of the rocket before say so.
func TestMendsFollowCorners(t *testing.T) {
	f := start(t, viewtest.Windy(t, "8 m/s"), viewtest.Medium)
	choose(f, gates.LimitAttack)
	f.Hold = true
	f.Set("wind.speed", "8.5 m/s")
	held := f.Held
	f.Hold, f.Held = false, nil
	f.Run(held[0]) // nothing but the corners
	f.V.mends.Ready = false
	f.Hold = true
	f.V.wanted = nil
	f.Show()
	require.Contains(t, f.Shown(), words.Verdict(&f.Scene.Corners.Result.Verdict))
	require.True(t, entry(f).awaits)
	require.Contains(t, f.Shown(), "What would mend it follows")
	f.Press("k")
	require.Contains(t, f.Said, "being looked for")
	f.Release()
	e := entry(f)
	require.False(t, e.awaits)
	require.NotEmpty(t, e.Remedies)

	f.Hold = true
	f.Set("wind.speed", "8 m/s")
	held, f.Held = f.Held, nil
	f.Hold = false
	f.Scene.Mends = nil
	f.Run(held[0])
	e = entry(f)
	require.False(t, e.old)
	require.True(t, e.oldMends)
	require.Contains(t, f.Shown(), "before the last edit")
	text := f.Source()
	f.Press("k")
	require.Equal(t, text, f.Source())
	require.Contains(t, f.Said, "in a moment there are new ones")
}

// Mends that cannot be looked for are not said to follow, nor is the check said to be within its limit.
func TestNoMends(t *testing.T) {
	f := start(t, viewtest.Windy(t, "8 m/s"), viewtest.Medium)
	f.V.mends.Ready, f.V.wanted = false, nil
	f.Scene.Mends = func(context.Context) (view.Cornered, error) { return view.Cornered{}, context.DeadlineExceeded }
	f.Show()
	require.Contains(t, f.Shown(), "What would mend it cannot be told")
	require.NotContains(t, f.Shown(), "mend it follows")
	choose(f, gates.LimitAttack)
	e := entry(f)
	require.True(t, e.Fails())
	f.Press("k")
	require.NotContains(t, f.Said, "within its limit")
}

// A check that a corner alone fails comes into sight when that is known.
func TestCornerThatFailsAlone(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Medium)
	f.Press("]", "]")
	require.NotEqual(t, "!", f.V.list()[0].sign())
	f.Judges = func(ctx context.Context, r *rocket.Rocket, o gates.Options) (gates.Verdict, error) {
		v, err := gates.Judge(ctx, r, o)
		c := &v.Checks[0]
		c.Case, c.Word, c.Level, c.Pass = results.Corner, gates.WordLow, gates.Bad, false
		return v, err
	}
	f.Fly()
	require.Equal(t, "!", f.V.list()[0].sign())
	require.Zero(t, f.V.at(f.V.list()))
}

// Corners that cannot be looked at leave calm and day, and say why.
func TestNoCorners(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Medium)
	f.Judges = func(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error) {
		return gates.Verdict{}, context.DeadlineExceeded
	}
	f.Fly()
	require.Contains(t, f.Shown(), "No corners: ")
}

// The list scrolls with the check chosen, at every size.
func TestScrolls(t *testing.T) {
	f := start(t, viewtest.Windy(t, "8 m/s"), viewtest.Small)
	for _, size := range [][2]int{viewtest.Small, {63, 24}, {112, 36}, {199, 69}} {
		f.V.chosen = ""
		f.V.Resize(size[0], size[1])
		f.Show()
		for range 40 { // more checks than there are
			name := entry(f).Name
			if size == viewtest.Small {
				name = strings.Fields(name)[0]
			}
			require.Contains(t, f.Shown(), name)
			require.Contains(t, f.Shown(), "▸")
			require.Len(t, f.V.Lines(), size[1])
			f.Press("]")
		}
		last := f.V.list()
		require.Equal(t, last[len(last)-1].Key, entry(f).Key)
		for row := range size[1] {
			f.V.Point(3, row)
			require.Len(t, f.V.Lines(), size[1])
		}
	}
}
