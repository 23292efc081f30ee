package tui

import (
	"context"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// heron is a rocket with everything described.
func heron(t testing.TB) *rocketfile.File {
	t.Helper()
	f, err := rocketfile.Open("../testdata/heron.toml")
	require.NoError(t, err)
	return f
}

func (s *screen) check() *checkView {
	s.t.Helper()
	v, ok := s.m.view().(*checkView)
	require.True(s.t, ok, "the check view is not in sight")
	return v
}

// entry is the check chosen.
func (v *checkView) entry() checkEntry {
	list := v.list()
	return list[v.at(list)]
}

// windy is heron on a day of so many m/s.
func windy(t testing.TB, speed string) *rocketfile.File {
	t.Helper()
	f, err := heron(t).Set("wind.speed", speed)
	require.NoError(t, err)
	return f
}

func TestCheckGoldens(t *testing.T) {
	for _, c := range []struct {
		name    string
		file    *rocketfile.File
		w, h    int
		charset plot.Charset
		keys    []string
	}{
		{"check-80x24", heron(t), 80, 24, plot.Braille, []string{"j"}},
		{"check-120x40", heron(t), 120, 40, plot.Braille, []string{"j"}},
		{"check-200x60", heron(t), 200, 60, plot.Braille, []string{"j"}},
		{"check-starter-80x24", rocketfile.Starter(), 80, 24, plot.Braille, []string{"j"}},
		{"check-starter-120x40", rocketfile.Starter(), 120, 40, plot.Braille, []string{"j"}},
		{"check-starter-200x60", rocketfile.Starter(), 200, 60, plot.Braille, []string{"j"}},
		{"check-windy-80x24", windy(t, "8 m/s"), 80, 24, plot.Braille, []string{"j", "]"}},
		{"check-windy-120x40", windy(t, "8 m/s"), 120, 40, plot.Braille, []string{"j", "}"}},
		{"check-ascii-80x24", windy(t, "8 m/s"), 80, 24, plot.ASCII, []string{"j"}},
		{"check-us-120x40", heron(t), 120, 40, plot.Block, []string{"j", "x"}},
		{"check-motor-120x40", heron(t), 120, 40, plot.Braille, []string{"j", "d"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, c.file, c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			s.golden(c.name)
		})
	}
}

// What each key of the view does. Of the checks of the rocket of these trials two fail.
var checkTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) { require.False(t, s.check().entry().Pass) },
	"Prev": func(t *testing.T, s *screen) {
		s.press("]", "]", "[")
		require.Equal(t, s.check().list()[1].Key, s.check().entry().Key)
	},
	"Next": func(t *testing.T, s *screen) {
		s.press("]")
		require.Equal(t, s.check().list()[1].Key, s.check().entry().Key)
	},
	"PrevMend": func(t *testing.T, s *screen) { s.lofty(t); s.press("}", "{", "k"); s.tookMend(t, 0) },
	"NextMend": func(t *testing.T, s *screen) { s.lofty(t); s.press("}", "k"); s.tookMend(t, 1) },
	"Take":     func(t *testing.T, s *screen) { s.lofty(t); s.press("k"); s.tookMend(t, 0) },
}

// lofty starts a screen on a rocket that flies above its ceiling, with that check chosen:
// several inputs mend it.
func (s *screen) lofty(t *testing.T) {
	t.Helper()
	f, err := heron(t).Set("field.ceiling", "100 m")
	require.NoError(t, err)
	*s = *newScreen(t, f, 120, 40)
	s.press("j")
	s.chooseCheck("ceiling")
}

// chooseCheck goes to a check by its key.
func (s *screen) chooseCheck(key string) {
	s.t.Helper()
	for range s.check().list() {
		s.press("[")
	}
	for range s.check().list() {
		if s.check().entry().Key == key {
			return
		}
		s.press("]")
	}
	require.Equal(s.t, key, s.check().entry().Key)
}

// tookMend holds that the mend of that place among those that set inputs was made, in one
// step that undo takes back.
func (s *screen) tookMend(t *testing.T, place int) {
	t.Helper()
	is := s.m.file().Rocket()
	s.press("u")
	e := s.check().entry()
	mend := e.Remedies[e.settable()[place]]
	v, _ := mend.Input.Get(is)
	require.InDelta(t, mend.To, v, 1e-9)
	was, _ := mend.Input.Get(s.m.file().Rocket())
	require.InDelta(t, mend.From, was, 1e-12)
}

func TestCheckKeys(t *testing.T) {
	tryViewKeys(t, newCheckKeys(view.DefaultKeys()), newCheckView(view.DefaultKeys()), "j", checkTrials)
}

// The list is what package gates finds, corners and mends included, those that fail first.
func TestCheckIsTheVerdict(t *testing.T) {
	f := windy(t, "8 m/s")
	s := newScreen(t, f, 200, 60)
	s.press("j")
	want, err := gates.Judge(context.Background(), f.Rocket(), gates.Options{Today: testDay(), Spreads: study.Spreads(f), Remedies: true})
	require.NoError(t, err)
	require.False(t, want.Pass())
	require.Contains(t, s.said(), words.Verdict(&want))
	list := s.check().list()
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
func TestCheckMends(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.lofty(t)
	before, failed := s.text(), s.m.verdict().Failed()
	e := s.check().entry()
	require.NotEmpty(t, e.settable(), e.Name)
	s.press("k")
	require.Contains(t, s.view(), "Done: ")
	require.Less(t, s.m.verdict().Failed(), failed)
	for _, c := range s.check().list() {
		require.True(t, c.Key != e.Key || c.Pass, "%s passes now", e.Name)
	}
	s.press("u")
	require.Equal(t, before, s.text())
	require.Equal(t, failed, s.m.verdict().Failed())

	s = newScreen(t, rocketfile.Starter(), 120, 40)
	s.press("j", "k")
	require.Contains(t, s.view(), "(by hand)")
	require.Contains(t, s.view(), "No number among the inputs does it: ")
	require.False(t, s.m.unsaved())
	s.press("]", "k")
	require.Contains(t, s.view(), "Nothing to mend")
}

// Leaning into the wind turns the rail as well, in one step.
func TestCheckLean(t *testing.T) {
	f := windy(t, "8 m/s")
	s := newScreen(t, f, 120, 40)
	s.press("j")
	v := s.check()
	tilt, err := rocketfile.Find(f.Rocket(), "rail.tilt")
	require.NoError(t, err)
	f, err = f.Set("rail.heading", "10 deg")
	require.NoError(t, err)
	s.m.take(f, nil, view.Edit{})
	v.lean(frame{&s.m}, gates.Remedy{Kind: gates.LeanIntoWind, Input: tilt, To: 0.1}, "lean")
	r := s.m.file().Rocket()
	require.InDelta(t, 0.1, r.Rail.Tilt, 1e-9)
	require.InDelta(t, r.Wind.From, r.Rail.Heading, 1e-9)
	require.Equal(t, "rail.tilt", s.m.inputs.chosen().Name)
	s.press("u")
	require.NotEqual(t, r.Wind.From, s.m.file().Rocket().Rail.Heading)
}

// Calm and day come with the flight; until the corners are there the old corners and
// mends stay and say so, no mend of theirs can be made, and the finding claims no more
// than it knows.
func TestCheckWhileCornersAreLookedAt(t *testing.T) {
	s := newScreen(t, windy(t, "8 m/s"), 120, 40)
	s.press("j")
	s.chooseCheck(gates.LimitAttack)
	require.NotContains(t, s.view(), "before the last edit")
	failed := s.check().entry()
	s.choose("wind.speed")
	s.hold = true
	s.press("right")
	held := s.held
	s.held = nil
	s.runNow(held) // the flight
	require.InDelta(t, 8.5, s.m.now.Flight.Rocket.Wind.Speed, 0.6)
	require.NotSame(t, s.m.now, s.m.corners.Result.Of)
	require.Contains(t, s.said(), "are of the rocket before the last edit")
	s.press("f")
	require.Contains(t, s.words(), "the worst corners follow")
	s.press("esc")
	e := s.check().entry()
	require.True(t, e.old)
	require.Equal(t, failed.Key, e.Key)
	require.Equal(t, failed.Values[results.Corner], e.Values[results.Corner])
	require.NotEqual(t, failed.Values[results.Day], e.Values[results.Day])
	before := s.text()
	s.press("k")
	require.Equal(t, before, s.text())
	require.Contains(t, s.view(), "in a moment there are new ones")
	s.checkSize()
	held, s.held, s.hold = s.held, nil, false
	s.runNow(held) // the corners
	require.Same(t, s.m.now, s.m.corners.Result.Of)
	require.NotContains(t, s.said(), "before the last edit")
	s.press("f")
	require.NotContains(t, s.words(), "the worst corners follow")
}

// runNow runs commands that were held back; what those ask for is held still.
func (s *screen) runNow(cmds []tea.Cmd) {
	for _, c := range cmds {
		if c == nil {
			continue
		}
		switch msg := c().(type) {
		case nil, keepMsg:
		case tea.BatchMsg:
			s.runNow(msg)
		default:
			s.send(msg)
		}
	}
}

// A corner that fails alone is told in every view, not only in this one.
func TestCornersInTheFindings(t *testing.T) {
	s := newScreen(t, heron(t), 120, 40)
	require.Contains(t, s.words(), "within go")
	s.m.judges = func(ctx context.Context, r *rocket.Rocket, o gates.Options) (gates.Verdict, error) {
		v, err := gates.Judge(ctx, r, o)
		c := &v.Checks[0]
		c.Case, c.Word, c.Level, c.Pass = results.Corner, gates.WordLow, gates.Bad, false
		return v, err
	}
	s.press("right")
	require.Contains(t, s.words(), "1 outside no-go")
	s.press("f")
	require.Contains(t, s.words(), "low in the worst corner")
	s.press("esc", "j")
	require.Equal(t, "!", s.check().list()[0].sign())
}

// Corners that cannot be looked at leave calm and day, and say why.
func TestNoCorners(t *testing.T) {
	s := newScreen(t, heron(t), 120, 40)
	s.m.judges = func(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error) {
		return gates.Verdict{}, context.DeadlineExceeded
	}
	s.press("j", "right")
	require.Contains(t, s.words(), "No corners: ")
	require.Contains(t, s.words(), "calm and day go")
	s.checkSize()
}

// The list scrolls with the check chosen, at every size.
func TestCheckScrolls(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {97, 31}, {150, 45}, {240, 80}} {
		s := newScreen(t, windy(t, "8 m/s"), size[0], size[1])
		s.press("j")
		for range 30 {
			e := s.check().entry()
			name := e.Name
			if size[0] == 80 {
				name = strings.Fields(name)[0]
			}
			require.Contains(t, s.view(), name)
			require.Contains(t, s.view(), "▸")
			s.checkSize()
			s.press("]")
		}
		last := s.check().list()
		require.Equal(t, last[len(last)-1].Key, s.check().entry().Key)
		for row := range s.m.layout.body {
			s.check().Point(3, row)
		}
		s.checkSize()
	}
}
