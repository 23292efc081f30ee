package day

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// known are the outlooks of the tests' rockets by file and forecast, which cost most.
var known = map[string]planned{}

// remembered plans every rocket once.
func remembered(q question, ctx context.Context, today time.Time) (*planned, error) {
	key := string(q.flown.File.Text()) + filepath.Base(q.forecast)
	p, there := known[key]
	if !there {
		made, err := q.plan(ctx, today)
		if err != nil {
			return made, err
		}
		p = *made
		known[key] = p
	}
	p.of = q
	return &p, nil
}

// start shows Heron on a field of few winds in the view.
func start(t testing.TB, size [2]int, changes ...rocketfile.Change) *frame {
	t.Helper()
	f, err := viewtest.Heron(t).SetAll(append([]rocketfile.Change{{Input: "limits.wind", Value: "5 m/s"}}, changes...)...)
	require.NoError(t, err)
	frame := &frame{T: t, V: New(view.DefaultKeys(), Options{Clock: viewtest.Day})}
	frame.V.plans = remembered
	frame.Begin(f, size)
	return frame
}

// saturday writes a forecast with a gap.
func saturday(t testing.TB) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "saturday.csv")
	require.NoError(t, os.WriteFile(path, []byte("time,wind (m/s),gust (m/s),from (deg)\n09:00,2,,250\n10:00,4,5,260\n11:00,,,\n"), 0o600))
	return path
}

// told takes a forecast by its path.
func told(f *frame, path string) {
	f.T.Helper()
	f.Press("a")
	f.Type(path)
}

// What each key of the view does.
var trials = map[string]func(t *testing.T, f *frame){
	"Prev": func(t *testing.T, f *frame) { f.Press("]", "]", "["); require.Equal(t, 1, f.V.at) },
	"Next": func(t *testing.T, f *frame) { f.Press("]", "]", "]", "]"); require.Equal(t, 3, f.V.at) },
	"PrevDrive": func(t *testing.T, f *frame) {
		f.Press("}", "{", "{")
		require.Zero(t, f.V.drive)
	},
	"NextDrive": func(t *testing.T, f *frame) { f.Press("}", "}"); require.Equal(t, 1, f.V.drive) },
	"Take": func(t *testing.T, f *frame) {
		f.Press("k")
		require.Contains(t, f.Said, "passes as it is, in calm air on water")
		f.Press("]", "]")
		o := *f.V.planned().outcome(2, 0)
		require.NotNil(t, o.Change)
		f.Press("k")
		require.Contains(t, f.Said, "Done for in 4 m/s on water: ")
		require.InDelta(t, o.Change.To, f.Value(o.Change.Input.Name), 1e-9)
		require.Equal(t, o.Change.Input.Name, f.Chosen())
		require.True(t, f.V.planned().outcome(2, 0).Passes(), "and then it passes")
		f.Press("u")
		require.InDelta(t, o.Change.From, f.Value(o.Change.Input.Name), 1e-9)
		f.Press("}", "k")
		require.Contains(t, f.Said, "Nothing to take in 4 m/s on motor: no one change does it")
	},
	"Add": func(t *testing.T, f *frame) {
		told(f, saturday(t))
		require.Nil(t, f.Asked, f.Wrong)
		require.Len(t, f.V.planned().slots, 3)
		require.Contains(t, f.Shown(), "saturday.csv")
		require.Contains(t, f.Shown(), "11:00 - -")
	},
	"Remove": func(t *testing.T, f *frame) {
		f.Press("r")
		require.Contains(t, f.Said, "There is no forecast")
		told(f, saturday(t))
		f.Press("r")
		require.Contains(t, f.Said, "saturday.csv is left out")
		require.Contains(t, f.Shown(), "(winds)")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Medium) }, trials)
}

// The rows are the outlook that the command tells, in its words.
func TestIsTheOutlook(t *testing.T) {
	f := start(t, viewtest.Large)
	r := f.File().Rocket()
	require.Equal(t, r.Drives(), f.V.planned().drives)
	want, err := plan.Outlook(context.Background(), r, plan.Winds(5)[2:3], plan.OutlookOptions{Drives: r.Drives()[:1], Spreads: study.Respread(f.File()), Today: viewtest.Day()})
	require.NoError(t, err)
	p := words.In(quantity.Metric)
	require.NotEmpty(t, p.OutcomeChange(&want[0]))
	require.Contains(t, f.Shown(), "in 4 m/s on water: "+p.OutcomeChange(&want[0]))
	require.Contains(t, f.Shown(), "water go in 2 of 4, motor go in 2 of 4 (winds)")
	require.Contains(t, f.Shown(), "in calm air on water: passes as it is")
	f.Scene.Units = quantity.US
	f.Show()
	require.Contains(t, f.Shown(), "wind water apogee drift motor apogee drift mph ft ft ft ft")
	require.Contains(t, f.Shown(), "in 8.95 mph on water")
}

// At every size the row chosen, and what it needs, are in sight.
func TestSizes(t *testing.T) {
	for _, size := range [][2]int{viewtest.Small, {63, 24}, viewtest.Medium, viewtest.Large} {
		f := start(t, size)
		told(f, saturday(t))
		for range 4 {
			f.Press("]")
			require.Contains(t, f.Shown(), "▸")
			require.Len(t, f.V.Lines(), size[1])
		}
		require.Contains(t, f.Shown(), "at 11:00 on motor: the forecast tells no wind")
		for row := range size[1] {
			f.V.Point(3, row)
		}
	}
}

// While an outlook is worked out the one before stays and says so, and no change of it can be taken; the next edit calls it off.
func TestWhileItIsWorkedOut(t *testing.T) {
	f := start(t, viewtest.Medium)
	f.Press("]", "]")
	f.Hold = true
	f.Set("body.mass", "0.64 kg")
	require.Contains(t, f.Shown(), "of before the last edit, working")
	text := f.Source()
	f.Press("k")
	require.Equal(t, text, f.Source())
	require.Contains(t, f.Said, "in a moment there are new ones")
	called := 0
	f.V.plans = func(q question, ctx context.Context, today time.Time) (*planned, error) {
		if called++; ctx.Err() != nil {
			return nil, ctx.Err()
		}
		return remembered(q, ctx, today)
	}
	f.Set("body.mass", "0.62 kg")
	held := f.Held
	f.Hold, f.Held = false, nil
	f.Run(held[1])
	require.NotContains(t, f.Shown(), "working")
	require.Equal(t, f.Scene.Now, f.V.planned().of.flown)
	f.Run(held[0])
	require.Equal(t, f.Scene.Now, f.V.planned().of.flown, "what comes late is dropped")
	require.Equal(t, 1, called)
}

// A forecast that cannot be read keeps the line open; one that goes bad later is told in place of the table.
func TestBadForecasts(t *testing.T) {
	f := start(t, viewtest.Medium)
	bad := filepath.Join(t.TempDir(), "bad.csv")
	require.NoError(t, os.WriteFile(bad, []byte("time,wind\n9,5\n10,6\n"), 0o600))
	f.Press("a")
	for path, want := range map[string]string{"": "A path is missing", "gone.csv": "gone.csv: there is no such file", ".": "it is a folder", bad: "bad.csv:2: wind = 5: has no unit"} {
		f.Type(path)
		require.NotNil(t, f.Asked)
		require.Contains(t, f.Wrong, want)
	}
	f.Press("esc")
	path := saturday(t)
	told(f, path)
	require.NoError(t, os.Remove(path))
	f.V.plans = question.plan
	f.V.read++
	f.Show()
	require.Contains(t, f.Shown(), "No day: ")
	f.V.plans = remembered
	f.Press("k")
	require.Contains(t, f.Said, "in a moment there are new ones")
	f.Press("r")
	require.Contains(t, f.Shown(), "(winds)")
}

// A drive that the rocket cannot fly on is told, and the other judged; one drive alone has no second column.
func TestDrives(t *testing.T) {
	f := start(t, viewtest.Medium)
	f.V.plans = func(q question, _ context.Context, _ time.Time) (*planned, error) {
		return &planned{of: q, slots: plan.Winds(0), drives: []rocket.Power{rocket.WaterPower},
			outcomes: []plan.Outcome{{Slot: plan.Winds(0)[0], Drive: rocket.WaterPower, Known: true, Change: &gates.Remedy{Kind: gates.AddNoseWeight, To: 0.02},
				Verdict: gates.Verdict{Checks: []gates.Check{{Name: "drift", Judged: true}}}, Changed: &gates.Verdict{}}},
			left: []leftOut{{rocket.MotorPower, os.ErrNotExist}}}, nil
	}
	f.Set("body.mass", "0.63 kg")
	require.Contains(t, f.Shown(), "not on motor: file does not exist")
	require.Contains(t, f.Shown(), "20.0 g of weight half-way along the nose (by hand)")
	f.Press("}", "k")
	require.Contains(t, f.Said, "Nothing to take in calm air on water")
}
