package tui

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

func (s *screen) chamber() *chamberView {
	s.t.Helper()
	v, ok := s.m.view().(*chamberView)
	require.True(s.t, ok, "the chamber view is not in sight")
	return v
}

func TestChamberGoldens(t *testing.T) {
	for _, c := range []struct {
		name    string
		file    *rocketfile.File
		w, h    int
		charset plot.Charset
		keys    []string
	}{
		{"chamber-80x24", heron(t), 80, 24, plot.Braille, []string{"h"}},
		{"chamber-figures-80x24", heron(t), 80, 24, plot.Braille, []string{"h", "z"}},
		{"chamber-120x40", heron(t), 120, 40, plot.Braille, []string{"h"}},
		{"chamber-figures-120x40", heron(t), 120, 40, plot.Braille, []string{"h", "z"}},
		{"chamber-200x60", heron(t), 200, 60, plot.Braille, []string{"h"}},
		{"chamber-starter-80x24", rocketfile.Starter(), 80, 24, plot.Braille, []string{"h"}},
		{"chamber-starter-120x40", rocketfile.Starter(), 120, 40, plot.Braille, []string{"h", "z"}},
		{"chamber-starter-200x60", rocketfile.Starter(), 200, 60, plot.Braille, []string{"h"}},
		{"chamber-block-120x40", heron(t), 120, 40, plot.Block, []string{"h"}},
		{"chamber-ascii-80x24", heron(t), 80, 24, plot.ASCII, []string{"h"}},
		{"chamber-ascii-200x60", heron(t), 200, 60, plot.ASCII, []string{"h"}},
		{"chamber-motor-120x40", heron(t), 120, 40, plot.Braille, []string{"h", "d"}},
		{"chamber-us-120x40", heron(t), 120, 40, plot.Braille, []string{"h", "x"}},
		{"chamber-none-80x24", plover(t), 80, 24, plot.Braille, []string{"h"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, c.file, c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			require.NotContains(t, strings.ToLower(s.view()), "safe")
			s.golden(c.name)
		})
	}
}

// What each key of the view does. The rocket of these trials has no chamber at first.
var chamberTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) { require.Contains(t, s.said(), "Press a to add one") },
	"Add": func(t *testing.T, s *screen) {
		s.press("a")
		require.Equal(t, chamber.GlassEpoxy, s.chamber().vessel.Material)
		require.Equal(t, "chamber.ply.cloth.count", s.m.inputs.chosen().Name)
		s.press("a")
		require.Len(t, s.chamber().vessel.Plies, 2)
		require.Equal(t, "chamber.ply.hoop.count", s.m.inputs.chosen().Name)
		s.press("u", "u")
		require.Nil(t, s.chamber().vessel)
	},
	"Remove": func(t *testing.T, s *screen) {
		s.press("r")
		require.Contains(t, s.view(), "no ply to remove")
		s.press("a", "a", "r")
		require.Len(t, s.chamber().vessel.Plies, 1)
		s.press("u")
		require.Len(t, s.chamber().vessel.Plies, 2)
		s.choose("water.fill")
		s.press("r")
		require.Contains(t, s.view(), "Which ply?")
	},
	"Sheet": func(t *testing.T, s *screen) {
		s.press("a", "z")
		require.Contains(t, s.said(), "stand-off")
		s.press("z")
		require.Contains(t, s.said(), "wall around")
	},
}

func TestChamberKeys(t *testing.T) {
	tryViewKeys(t, newChamberKeys(view.DefaultKeys()), newChamberView(view.DefaultKeys()), "h", chamberTrials)
}

// Entering the view chooses the layers of the wall, unless an input of the chamber is
// chosen already; changing them changes what is drawn.
func TestChamberIsLive(t *testing.T) {
	s := newScreen(t, heron(t), 200, 60)
	s.press("h")
	require.Equal(t, "chamber.ply.cloth.count", s.m.inputs.chosen().Name)
	v := s.chamber()
	r := s.m.file().Rocket()
	require.Equal(t, r.ChamberAt().Burst, v.result.Burst)
	before := v.result.Burst
	s.press("right")
	require.Greater(t, v.result.Burst, before)
	s.press("esc")
	s.choose("chamber.aft.overlap")
	s.press("h")
	require.Equal(t, "chamber.aft.overlap", s.m.inputs.chosen().Name)
	bond := v.result.Parts[5].Use
	s.press("<")
	require.Greater(t, v.result.Parts[5].Use, bond)
}

// A part that keeps the chamber from being proved for its pressure has the word and not
// only the colour; where a burst was measured that outranks the estimate.
func TestChamberOvertaxed(t *testing.T) {
	f, err := heron(t).Set("water.pressure", "18 bar")
	require.NoError(t, err)
	s := newScreen(t, f, 120, 40)
	s.press("h")
	require.Equal(t, 1, strings.Count(s.said(), gates.WordHigh), "the wall around")
	require.Contains(t, s.said(), string(weakSign)+"wall around")
	s.press("z")
	require.Contains(t, s.said(), "less than wanted")
	f, err = f.Set("chamber.burst", "60 bar")
	require.NoError(t, err)
	s = newScreen(t, f, 120, 40)
	s.press("h")
	require.NotContains(t, s.said(), gates.WordHigh)
	s.press("z")
	require.Contains(t, s.said(), "measured on one made alike")
}

// The section keeps what matters to scale: closures and laps, the level where the water
// stands, and nothing beyond its edges.
func TestChamberSection(t *testing.T) {
	for _, shape := range []chamber.ClosureShape{chamber.Hemisphere, chamber.Ellipsoid, chamber.Cone, chamber.Flat} {
		f, err := heron(t).Set("chamber.forward.shape", string(shape))
		require.NoError(t, err)
		r := f.Rocket()
		for _, size := range [][2]int{{47, 5}, {84, 11}, {159, 15}, {300, 9}} {
			s := newChamberSection(r.Vessel(), r, size[0], size[1], plot.Braille)
			level := s.level(r.Water)
			require.InDelta(t, 0.3*r.Water.Volume, math.Pi/4*(0.068*0.068*(s.c.Length-level)+0.0648*0.0648*0.03)+math.Pi/24*math.Pow(0.068, 3), 1e-6)
			drawing := s.draw("wall around")
			for _, line := range drawing.Charts[0].Series {
				for i := range line.X {
					require.GreaterOrEqual(t, line.X[i], drawing.X.Min-1e-9)
					require.LessOrEqual(t, line.X[i], drawing.X.Max+1e-9)
					require.LessOrEqual(t, math.Abs(line.Y[i]), drawing.Charts[0].Y.Max+1e-9)
				}
			}
			last := math.Inf(-1)
			for x := 0.0; x <= s.c.Length; x += s.c.Length / 50 {
				require.Greater(t, s.at(x), last)
				last = s.at(x)
			}
		}
	}
}

// Every size shows what it can and no more, on rockets with much, little and nothing of a
// chamber; the caution is always there with the figures.
func TestChamberSizes(t *testing.T) {
	bare, err := plover(t).WithText([]byte(string(plover(t).Text()) + "\n[chamber]\nmaterial = \"own\"\ndensity = \"1800 kg/m3\"\nwall = \"1 mm\"\nhoop_strength = \"200 MPa\"\naxial_strength = \"200 MPa\"\n"))
	require.NoError(t, err)
	dry, err := heron(t).Set("power", "motor")
	require.NoError(t, err)
	for _, f := range []*rocketfile.File{heron(t), bare, dry, plover(t)} {
		for _, size := range [][2]int{{80, 24}, {81, 25}, {97, 31}, {120, 36}, {150, 45}, {240, 80}} {
			s := newScreen(t, f, size[0], size[1])
			for _, k := range []string{"h", "z", "x", "d"} {
				s.press(k)
				s.checkSize()
				require.True(t, s.chamber().vessel == nil || strings.Contains(s.said(), "ever stand by"), s.said())
			}
		}
	}
}
