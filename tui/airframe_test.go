package tui

import (
	"context"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// shaped is the rocket of the tests with a shape and a balance point.
func shaped(t testing.TB) *rocketfile.File {
	t.Helper()
	f := plover(t)
	text := strings.Replace(string(f.Text()), "[water]", `length  = "1500 mm"
balance = "760 mm"

[nose]
shape  = "tangent ogive"
length = "220 mm"

[[fins]]
count     = 4
root      = "130 mm"
tip       = "70 mm"
span      = "80 mm"
sweep     = "60 mm"
thickness = "3 mm"
position  = "1365 mm"

[water]`, 1)
	text = strings.Replace(text, "propellant = ", "diameter = \"29 mm\"\nlength = \"230 mm\"\npropellant = ", 1)
	f, err := f.WithText([]byte(text))
	require.NoError(t, err)
	return f
}

func (s *screen) airframe() *airframeView {
	s.t.Helper()
	v, ok := s.m.view().(*airframeView)
	require.True(s.t, ok, "the airframe view is not in sight")
	return v
}

func TestAirframeGoldens(t *testing.T) {
	for _, c := range []struct {
		name    string
		w, h    int
		charset plot.Charset
		keys    []string
	}{
		{"airframe-80x24", 80, 24, plot.Braille, []string{"g"}},
		{"airframe-figures-80x24", 80, 24, plot.Braille, []string{"g", "z"}},
		{"airframe-120x40", 120, 40, plot.Braille, []string{"g"}},
		{"airframe-200x60", 200, 60, plot.Braille, []string{"g"}},
		{"airframe-block-120x40", 120, 40, plot.Block, []string{"g"}},
		{"airframe-ascii-120x40", 120, 40, plot.ASCII, []string{"g", "z"}},
		{"airframe-motor-120x40", 120, 40, plot.Braille, []string{"g", "d"}},
		{"airframe-us-120x40", 120, 40, plot.Braille, []string{"g", "x", "z"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, shaped(t), c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			s.golden(c.name)
		})
	}
}

// What each key of the view does.
var airframeTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) { s.airframe() },
	// The rocket of these trials has no shape: the keys must be harmless there.
	"Lower":  func(t *testing.T, s *screen) { s.press("["); require.InDelta(t, 1.4, s.airframe().wanted, 1e-9) },
	"Higher": func(t *testing.T, s *screen) { s.press("]"); require.InDelta(t, 1.6, s.airframe().wanted, 1e-9) },
	"Sheet":  func(t *testing.T, s *screen) { s.press("z"); require.True(t, s.airframe().figures) },
}

func TestAirframeKeys(t *testing.T) {
	tryViewKeys(t, newAirframeKeys(view.DefaultKeys()), newAirframeView(view.DefaultKeys()), "g", airframeTrials)
}

// The margin wanted stays within its bounds and sizes the nose weight anew.
func TestAirframeMargin(t *testing.T) {
	s := newScreen(t, shaped(t), 120, 40)
	s.press("g", "z")
	before := s.airframe().study.Result[0].Sizing.Weight
	for range 20 {
		s.press("]")
	}
	require.InDelta(t, 3.5, s.airframe().wanted, 1e-9)
	require.Greater(t, s.airframe().study.Result[0].Sizing.Weight, before)
	require.Contains(t, s.said(), "For a least margin of 3.5 calibres on water")
	for range 36 {
		s.press("[")
	}
	require.InDelta(t, 0.1, s.airframe().wanted, 1e-9)
}

// The figures are those of the study, live with every input; till the new ones are
// there the old stay and say so, and stale ones are dropped.
func TestAirframeIsLive(t *testing.T) {
	s := newScreen(t, shaped(t), 120, 40)
	s.press("g", "z")
	v := s.airframe()
	frames, err := study.Airframes(context.Background(), s.m.file().Rocket(), study.UsualMargin, study.Options{})
	require.NoError(t, err)
	require.Len(t, frames, 2)
	require.Equal(t, frames[0].Flight.Stability, v.study.Result[0].Flight.Stability)
	require.Equal(t, s.m.now.Flight.Stability, frames[0].Flight.Stability, "the drawing is of the same flight")

	old := v.study.Result[0].Flight.Stability.Least
	var late []tea.Cmd
	for _, span := range []float64{0.09, 0.1, 0.11} {
		f, err := s.m.file().SetValue("fins.1.span", span)
		require.NoError(t, err)
		s.m.take(f, nil, view.Edit{})
		late = append(late, v.Show(view.Scene{Ctx: context.Background(), File: f, Now: s.m.now, Theme: s.m.theme}))
	}
	require.True(t, v.study.Busy)
	s.send(tea.WindowSizeMsg{Width: 120, Height: 41})
	require.Contains(t, s.view(), "before the last edit")
	for _, i := range []int{2, 0, 1} {
		s.run(late[i])
	}
	require.False(t, v.study.Busy)
	require.Greater(t, v.study.Result[0].Flight.Stability.Least, old)
	require.InDelta(t, 0.11, v.study.Result[0].Flight.Rocket.Shape.Fins[0].Span, 1e-12)
}

// A file without a shape, or without a balance point, is told what to write.
func TestAirframeWithoutShape(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("g")
	require.Contains(t, s.said(), "gives no shape")
	require.Contains(t, s.said(), "[[fins]]")
	f := shaped(t)
	f, err := f.WithText([]byte(strings.Replace(string(f.Text()), `balance = "760 mm"`, "", 1)))
	require.NoError(t, err)
	s = newScreen(t, f, 80, 24)
	s.press("g")
	require.Contains(t, s.said(), "no balance point")
}

// Every size shows what it can and no more.
func TestAirframeSizes(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {81, 25}, {97, 31}, {150, 45}, {240, 80}} {
		s := newScreen(t, shaped(t), size[0], size[1])
		s.press("g")
		s.checkSize()
		s.press("z")
		s.checkSize()
	}
}
