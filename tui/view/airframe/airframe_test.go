package airframe

import (
	"context"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows a rocket in the view.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), f, size)
}

// What each key of the view does. The rocket of these trials has no shape: the keys must
// be harmless there.
var trials = map[string]func(t *testing.T, f *frame){
	"Lower":  func(t *testing.T, f *frame) { f.Press("["); require.InDelta(t, 1.4, f.V.wanted, 1e-9) },
	"Higher": func(t *testing.T, f *frame) { f.Press("]"); require.InDelta(t, 1.6, f.V.wanted, 1e-9) },
	"Sheet":  func(t *testing.T, f *frame) { f.Press("z"); require.True(t, f.V.figures) },
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Plover(t), viewtest.Small) }, trials)
}

// The margin wanted stays within its bounds and sizes the nose weight anew.
func TestMargin(t *testing.T) {
	f := start(t, viewtest.Shaped(t), viewtest.Medium)
	f.Press("z")
	before := f.V.study.Result[0].Sizing.Weight
	f.Hold = true // of twenty studies the last counts
	for range 20 {
		f.Press("]")
	}
	f.Release()
	require.InDelta(t, 3.5, f.V.wanted, 1e-9)
	require.Greater(t, f.V.study.Result[0].Sizing.Weight, before)
	require.Contains(t, f.Shown(), "For a least margin of 3.5 calibres on water")
	f.Hold = true
	for range 36 {
		f.Press("[")
	}
	f.Release()
	require.InDelta(t, 0.1, f.V.wanted, 1e-9)
	require.Contains(t, f.Shown(), "For a least margin of 0.10 calibres on water")
}

// The figures are those of the study, live with every input; till the new ones are
// there the old stay and say so, and stale ones are dropped.
func TestIsLive(t *testing.T) {
	f := start(t, viewtest.Shaped(t), viewtest.Medium)
	f.Press("z")
	v, s := f.V, f.Scene
	frames, err := study.Airframes(context.Background(), f.File().Rocket(), study.UsualMargin, study.Options{})
	require.NoError(t, err)
	require.Len(t, frames, 2)
	require.Equal(t, frames[0].Flight.Stability, v.study.Result[0].Flight.Stability)
	require.Equal(t, f.Scene.Now.Flight.Stability, frames[0].Flight.Stability, "the drawing is of the same flight")
	at := frames[0].Flight.Stability.AtAngle
	require.Regexp(t, `at angle +`+quantity.Format(at, quantity.Usual(quantity.Number), 3)+` +good`, f.Shown())

	old := v.study.Result[0].Flight.Stability.Least
	var late []tea.Cmd
	for _, span := range []float64{0.09, 0.1, 0.11} {
		file, err := f.File().SetValue("fins.1.span", span)
		require.NoError(t, err)
		s.File = file
		late = append(late, v.Show(s))
	}
	require.True(t, v.study.Busy)
	require.Contains(t, f.Shown(), "before the last edit")
	for _, i := range []int{2, 0, 1} {
		f.Run(late[i])
	}
	require.False(t, v.study.Busy)
	require.Greater(t, v.study.Result[0].Flight.Stability.Least, old)
	require.InDelta(t, 0.11, v.study.Result[0].Flight.Rocket.Shape.Fins[0].Span, 1e-12)
}

// A file without a shape, or without a balance point, is told what to write.
func TestWithoutShape(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	require.Contains(t, f.Shown(), "gives no shape")
	require.Contains(t, f.Shown(), "[[fins]]")
	f = start(t, viewtest.Rewritten(t, viewtest.Shaped(t), func(text string) string {
		return strings.Replace(text, `balance = "760 mm"`, "", 1)
	}), viewtest.Small)
	require.Contains(t, f.Shown(), "no balance point")
}

// Every size shows what it can and no more.
func TestSizes(t *testing.T) {
	f := start(t, viewtest.Shaped(t), viewtest.Small)
	for _, size := range [][2]int{{47, 17}, {48, 18}, {63, 24}, {112, 36}, {199, 69}} {
		f.V.Resize(size[0], size[1])
		for range 2 {
			f.Press("z")
			require.Len(t, f.V.Lines(), size[1])
		}
	}
}
