package chamber

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
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

// What each key of the view does. The rocket of these trials has no chamber at first.
var trials = map[string]func(t *testing.T, f *frame){
	"Add": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "Press a to add one")
		f.Press("a")
		require.Equal(t, chamber.GlassEpoxy, f.V.vessel.Material)
		require.Equal(t, "chamber.ply.cloth.count", f.Chosen())
		f.Press("a")
		require.Len(t, f.V.vessel.Plies, 2)
		require.Equal(t, "chamber.ply.hoop.count", f.Chosen())
		f.Press("u", "u")
		require.Nil(t, f.V.vessel)
	},
	"Remove": func(t *testing.T, f *frame) {
		f.Press("r")
		require.Contains(t, f.Said, "no ply to remove")
		f.Press("a", "a", "r")
		require.Len(t, f.V.vessel.Plies, 1)
		f.Press("u")
		require.Len(t, f.V.vessel.Plies, 2)
		f.Choose("water.fill")
		f.Press("r")
		require.Contains(t, f.Said, "Which ply?")
	},
	"Sheet": func(t *testing.T, f *frame) {
		f.Press("a", "z")
		require.Contains(t, f.Shown(), "stand-off")
		f.Press("z")
		require.Contains(t, f.Shown(), "wall around")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Plover(t), viewtest.Small) }, trials)
}

// Entering the view chooses the layers of the wall, unless an input of the chamber is
// chosen already; changing them changes what is drawn.
func TestIsLive(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Large)
	require.Equal(t, "chamber.ply.cloth.count", f.Chosen())
	v := f.V
	r := f.File().Rocket()
	require.Equal(t, r.ChamberAt().Burst, v.result.Burst)
	before := v.result.Burst
	f.Press("right")
	require.Greater(t, v.result.Burst, before)
	f.Choose("chamber.adhesive.glue_line") // the ends of its lap govern
	f.Enter()
	require.Equal(t, "chamber.adhesive.glue_line", f.Chosen())
	bond := v.result.Parts[5].Use
	f.Nudge(-1, true)
	f.Fly()
	require.Greater(t, v.result.Parts[5].Use, bond)
}

// A part that keeps the chamber from being proved for its pressure has the word and not
// only the colour; where a burst was measured that outranks the estimate.
func TestOvertaxed(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Medium)
	f.Set("water.pressure", "15.5 bar")
	require.Equal(t, 1, strings.Count(f.Shown(), gates.WordHigh), "the wall around")
	require.Contains(t, f.Shown(), string(weakSign)+"wall around")
	f.Press("z")
	require.Contains(t, f.Shown(), "less than wanted")
	f.Press("z")
	f.Set("chamber.burst", "60 bar")
	require.NotContains(t, f.Shown(), gates.WordHigh)
	f.Press("z")
	require.Contains(t, f.Shown(), "measured on one made alike")
}

// The section keeps what matters to scale: closures and laps, the level where the water
// stands, and nothing beyond its edges.
func TestSection(t *testing.T) {
	for _, shape := range []chamber.ClosureShape{chamber.Hemisphere, chamber.Ellipsoid, chamber.Cone, chamber.Flat} {
		f, err := viewtest.Heron(t).Set("chamber.forward.shape", string(shape))
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
// The distance of people is never rounded down, and nothing is cut where there is least room.
func TestStandoffInFeet(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Small)
	f.Scene.Units = quantity.US
	f.Press("z")
	f.Show()
	require.Regexp(t, `stand-off +99 ft`, f.Shown())
	require.Contains(t, f.Shown(), " fl oz may stay")
	require.Contains(t, f.Shown(), " yd²,")
}

func TestSizes(t *testing.T) {
	bare := viewtest.Rewritten(t, viewtest.Plover(t), func(text string) string {
		return text + "\n[chamber]\nmaterial = \"own\"\ndensity = \"1800 kg/m3\"\nwall = \"1 mm\"\nhoop_strength = \"200 MPa\"\naxial_strength = \"200 MPa\"\n"
	})
	dry, err := viewtest.Heron(t).Set("power", "motor")
	require.NoError(t, err)
	for _, file := range []*rocketfile.File{viewtest.Heron(t), bare, dry, viewtest.Plover(t)} {
		f := start(t, file, viewtest.Small)
		for _, size := range [][2]int{viewtest.Small, {48, 18}, {63, 24}, {84, 28}, {112, 36}, {199, 69}} {
			f.V.Resize(size[0], size[1])
			for _, units := range []quantity.System{quantity.Metric, quantity.US} {
				f.Scene.Units = units
				f.Show()
				for range 2 {
					f.Press("z")
					require.Len(t, f.V.Lines(), size[1])
					require.True(t, f.V.vessel == nil || strings.Contains(f.Shown(), "ever stand by"), f.Shown())
				}
			}
		}
	}
}
