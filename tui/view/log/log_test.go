package log

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/measured"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows Wagtail with some of its logs.
func start(t testing.TB, size [2]int, logs ...string) *frame {
	t.Helper()
	o := Options{Clock: viewtest.Day}
	for _, name := range logs {
		o.Logs = append(o.Logs, flown.Asked{Path: viewtest.Log(t, name), Release: math.NaN()})
	}
	v := New(view.DefaultKeys(), o)
	v.draws = 10
	return viewtest.New(t, v, viewtest.Wagtail(t), size)
}

// rms is how far the log is off in the coast.
func rms(f *frame) float64 { return f.V.held().courses[0].stages[1].RMS }

// Every key does what it says.
func TestKeys(t *testing.T) {
	at := func(f *frame) float64 { return f.V.entry().window - f.V.held().compared.Release }
	release := func(f *frame) float64 { return f.V.held().compared.Release }
	shifts := func(key string, by float64) func(*testing.T, *frame) {
		return func(t *testing.T, f *frame) {
			f.Press(key, key)
			require.InDelta(t, math.Round(12.36*100)/100+2*by, release(f), 1e-9)
			require.Contains(t, f.Shown(), "by hand")
		}
	}
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Medium, "one.csv") }, map[string]func(*testing.T, *frame){
		"Add": func(t *testing.T, f *frame) {
			f.Press("a")
			require.True(t, f.Asked.Path)
			f.Type("none.csv")
			require.Contains(t, f.Wrong, "none.csv: there is no such file")
			f.Type(viewtest.Log(t, "two.txt"))
			require.Contains(t, f.Shown(), "two.txt (2 of 2)")
			f.Press("a")
			f.Type(viewtest.Log(t, "one.csv"))
			require.Contains(t, f.Shown(), "one.csv (1 of 2)", "it is there already")
		},
		"Tell": func(t *testing.T, f *frame) {
			f.Press("T")
			f.Type("--column 'height=2 yards'")
			require.Contains(t, f.Wrong, "is no unit")
			f.Type("--column 'height=2 m'")
			require.Contains(t, f.Shown(), "about 3.28 times")
			f.Press("T")
			require.Equal(t, "--column 'height=2 m'", f.Text)
			f.Type("")
			require.NotContains(t, f.Shown(), "about 3.28 times")
		},
		"Remove": func(t *testing.T, f *frame) {
			f.Press("r")
			require.Contains(t, f.Shown(), "No log yet.")
			f.Press("r", "b", "l", "y", "T", "s", "A")
			require.Contains(t, f.Said, "There is no log yet")
		},
		"Next": func(t *testing.T, f *frame) {
			f.Press("l")
			require.Contains(t, f.Said, "no other log")
			f.V.add(flown.Asked{Path: viewtest.Log(t, "two.txt"), Release: math.NaN()})
			f.Press("l", "l")
			require.Contains(t, f.Shown(), "two.txt (2 of 2)")
		},
		"Quantity": func(t *testing.T, f *frame) {
			f.Press("y")
			require.Contains(t, f.Said, "height alone")
			f.V.add(flown.Asked{Path: viewtest.Log(t, "three.tsv"), Release: math.NaN()})
			f.Show()
			require.Contains(t, f.Shown(), "height m")
			f.Press("y")
			require.Contains(t, f.Shown(), "acceleration m/s2")
		},
		"Sheet": func(t *testing.T, f *frame) {
			require.Contains(t, f.Shown(), "measured predicted")
			f.Press("I", "I")
			require.Contains(t, f.Shown(), "read as 857 rows")
			f.Press("I")
			require.Contains(t, f.Shown(), "No fit yet.")
		},
		"Span":     func(t *testing.T, f *frame) { f.Press("z"); require.Equal(t, view.WholeSpan, f.V.span) },
		"SpanBack": func(t *testing.T, f *frame) { f.Press("Z"); require.Equal(t, view.ThrustSpan, f.V.span) },
		"Earlier":  func(t *testing.T, f *frame) { f.Press("["); require.InDelta(t, 4.6, at(f), 0.03) },
		"Later":    func(t *testing.T, f *frame) { f.Press("]"); require.InDelta(t, 4.72, at(f), 0.03) },
		"NextEvent": func(t *testing.T, f *frame) {
			f.Press("e")
			require.InDelta(t, f.V.held().compared.Flight.Canopies[0].Time, at(f), 1e-9)
			require.Equal(t, view.WholeSpan, f.V.span, "the span that has it")
		},
		"PrevEvent": func(t *testing.T, f *frame) {
			f.Press("E")
			require.InDelta(t, f.V.held().compared.Flight.Burnout.Time, at(f), 1e-9)
		},
		"Wider": func(t *testing.T, f *frame) {
			f.Press("W")
			require.InDelta(t, 1, f.V.window().To-f.V.window().From, 1e-9)
		},
		"Narrower": func(t *testing.T, f *frame) {
			f.Press("N")
			require.InDelta(t, 0.2, f.V.window().To-f.V.window().From, 1e-9)
		},
		"LeaveOut": func(t *testing.T, f *frame) {
			f.Press("s")
			require.Contains(t, f.Said, "Left out: 10 samples")
			require.Contains(t, f.Shown(), "x left out")
			f.Press("W", "s")
			require.Contains(t, f.Said, "Left out: 10 samples")
			require.Len(t, f.V.entry().LeftOut, 1)
			f.Press("N", "s")
			require.Contains(t, f.Said, "Taken back: 10 samples")
			require.Len(t, f.V.entry().LeftOut, 2)
		},
		"TakeAll": func(t *testing.T, f *frame) {
			before := rms(f)
			f.Press("s", "E", "s")
			require.NotEqual(t, before, rms(f))
			f.Press("A")
			require.Equal(t, before, rms(f))
			f.Press("A")
			require.Contains(t, f.Said, "No sample is left out")
		},
		"SoonerFine": shifts(",", -fineShift), "LaterFine": shifts(";", fineShift),
		"Sooner": shifts("{", -coarseShift), "LaterOn": shifts("}", coarseShift),
		"Found": func(t *testing.T, f *frame) {
			before := release(f)
			f.Press("}", "=")
			require.Equal(t, before, release(f))
		},
		"Fit": func(t *testing.T, f *frame) {
			f.Press("b")
			require.Contains(t, f.Shown(), "Fit to one.csv. k takes it.")
			require.Contains(t, f.Shown(), "act alike")
			f.Press("right")
			require.Contains(t, f.Shown(), "of another state")
			f.Press("k")
			require.Contains(t, f.Said, "another state")
		},
		"FitOne": func(t *testing.T, f *frame) {
			f.Press("F")
			require.Len(t, f.V.fit.Result.found.Fitted.Inputs, 1)
			require.Contains(t, f.Shown(), "body.drag_factor 1.00 ± 0.15")
			f.Choose("body.diameter")
			f.Press("F")
			require.Contains(t, f.Shown(), "has no spread")
		},
		"Take": func(t *testing.T, f *frame) {
			f.Press("k")
			require.Contains(t, f.Said, "no fit to take")
			before := rms(f)
			f.Press("b", "k")
			require.Less(t, rms(f), before/2)
			require.InDelta(t, 1.1, f.Value("body.drag_factor"), 0.05)
			require.Contains(t, f.Source(), "body.drag_factor fitted on 2026-10-01 to one.csv")
			f.Press("k")
			require.Contains(t, f.Said, "has it already")
			f.Press("b")
			require.Contains(t, f.Shown(), "it would count twice")
			f.Press("u")
			require.NotContains(t, f.Source(), "fitted on", "one step takes all of it back")
		},
	})
}

// What the view tells is what ullage compare tells.
func TestSameAsCompare(t *testing.T) {
	for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
		f := start(t, viewtest.Large, "two.txt")
		f.V.draws = flown.UsualDraws
		f.Scene.Units = sys
		f.Set("body.drag_factor", "1.1")
		file := f.File()
		days, err := flown.OpenDays(file)
		require.NoError(t, err)
		l, err := days.Open(viewtest.Log(t, "two.txt"), file, flown.Told{}, func(f *rocketfile.File) (*rocketfile.File, error) { return f, nil })
		require.NoError(t, err)
		c, err := flown.Compare(context.Background(), l, study.Spreads(file), flown.UsualDraws, study.Options{})
		require.NoError(t, err)
		var text strings.Builder
		require.NoError(t, measured.WriteCompareText(&text, []*flown.Compared{c}, nil, sys))
		p := words.In(sys)
		require.Len(t, c.Stages, 3)
		for _, s := range c.Stages {
			require.Contains(t, f.Shown(), s.Name+" "+p.Height(s.Mean)+" "+p.Height(s.RMS), sys)
			require.Contains(t, strings.Join(strings.Fields(text.String()), " "), s.Name+" "+p.Height(s.Mean)+" "+p.Height(s.RMS))
		}
		require.GreaterOrEqual(t, len(c.Differences), 6)
		for _, d := range c.Differences {
			require.Contains(t, f.Shown(), d.Row.Label+" "+p.Row(&d.Row, d.Measured)+" "+p.Row(&d.Row, d.Predicted)+" "+measured.Off(p, &d))
			require.Contains(t, f.Shown(), p.BareRow(&d.Row, d.Low)+" to "+p.BareRow(&d.Row, d.High)+" "+measured.Word(&d))
		}
	}
}

// What cannot be compared is one message, and the next log is a key away.
func TestBadLogs(t *testing.T) {
	dir := t.TempDir()
	path := func(name, text string) string {
		p := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(p, []byte(text), 0o600))
		return p
	}
	still := "time_s,height_m\n" + strings.Repeat("1,0.1\n", 3)
	for i := range 200 {
		still += strings.Join([]string{quantity.Exact(float64(i)/10, quantity.Usual(quantity.Number)), "0.2"}, ",") + "\n"
	}
	for name, c := range map[string]struct{ text, says string }{
		"empty.csv":  {"", "is empty"},
		"binary.csv": {"\x00\x01\x02PK\x03\x04\xff\xfe\x00\x10", "binary.csv"},
		"still.csv":  {still, "shows no lift-off"},
	} {
		f := start(t, viewtest.Small, "one.csv")
		f.Press("a")
		f.Type(path(name, c.text))
		require.Contains(t, f.Shown(), c.says, name)
		f.Press("l")
		require.Contains(t, f.Shown(), "one.csv")
	}
	f := start(t, viewtest.Small, "one.csv")
	f.Press("a")
	f.Type(dir)
	require.Contains(t, f.Wrong, "it is a folder")
	f = start(t, viewtest.Small)
	f.V.add(flown.Asked{Path: filepath.Join(dir, "gone.csv"), Release: math.NaN()})
	f.Show()
	require.Contains(t, f.Shown(), "no such file")
}

// A log of another day flies with what the logbook says of that day, whatever the inputs.
func TestDayFromTheLogbook(t *testing.T) {
	dir := t.TempDir()
	text, err := os.ReadFile(viewtest.Log(t, "two.txt"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "two.txt"), text, 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "wagtail.toml"), viewtest.Wagtail(t).Text(), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "wagtail.logbook.toml"), []byte("[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\npressure = \"8 bar\"\nlog = \"two.txt\"\n"), 0o600))
	file, err := rocketfile.Open(filepath.Join(dir, "wagtail.toml"))
	require.NoError(t, err)
	f := viewtest.New(t, New(view.DefaultKeys(), Options{Logs: []flown.Asked{{Path: filepath.Join(dir, "two.txt"), Release: math.NaN()}}}), file, viewtest.Large)
	require.InDelta(t, 8e5, f.V.held().compared.Rocket.Water.Pressure, 1)
	require.Contains(t, f.Shown(), "day of 2026-05-17")
	f.Set("water.pressure", "10 bar")
	require.InDelta(t, 8e5, f.V.held().compared.Rocket.Water.Pressure, 1)
	f.Press("b", "k")
	require.InDelta(t, 1e6, f.Value("water.pressure"), 1, "the day stays the log's own")
}

// Edits call a fit off.
func TestFitIsCalledOff(t *testing.T) {
	f := start(t, viewtest.Medium, "one.csv")
	f.Hold = true
	f.Press("b")
	require.Contains(t, f.Shown(), "under way")
	f.Hold = false
	f.Set("body.drag_factor", "1.05")
	require.False(t, f.V.fit.Busy)
	f.Release()
	require.False(t, f.V.fit.Ready)
}

// Keys that come while a log is read do no harm.
func TestKeysWhileReading(t *testing.T) {
	f := start(t, viewtest.Medium, "one.csv")
	f.Press("T")
	f.Hold = true
	f.Type("--height measured")
	require.Contains(t, f.Shown(), "one.csv is being read")
	f.Press("s", "A", "[", "]", "e", "E", ",", ";", "{", "}", "=", "y", "z", "I", "k", "W", "N")
	f.Release()
	f.Press("I")
	require.Contains(t, f.Shown(), "no pressure behind them")
	f.Press("F", "k")
	require.NotContains(t, f.Said, "under way")
}
