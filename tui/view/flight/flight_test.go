package flight

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows a rocket in the view.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), f, size)
}

// The cursor that stands at an event follows it from flight to flight; one that
// was moved stays at its time.
func TestCursorFollowsItsEvent(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Set("water.fill", "31 %")
	require.InDelta(t, f.Scene.Now.Flight.Results.Apogee.Time, f.V.cursor.time, 1e-9)
	f.Press("[")
	at := f.V.cursor.time
	f.Set("water.fill", "32 %")
	require.Equal(t, at, f.V.cursor.time)
}

func TestCursorStaysInTheFlight(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	for range 30 {
		f.Press("{")
	}
	require.Zero(t, f.V.cursor.time)
	for range 10 {
		f.Press("e")
	}
	require.InDelta(t, f.Scene.Now.Flight.Duration(), f.V.cursor.time, 1e-9)
}

// The mouse moves the cursor, no farther than the span shown.
func TestPoint(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	before := f.V.cursor.time
	f.V.Point(30, 12)
	require.Less(t, f.V.cursor.time, before)
	f.V.Point(500, 12)
	require.InDelta(t, f.V.last, f.V.cursor.time, f.V.columnWidth)
}

// Spans go round in both directions.
func TestSpans(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	for _, want := range []view.Span{view.WholeSpan, view.ThrustSpan, view.AscentSpan} {
		f.Press("z")
		require.Equal(t, want, f.V.span)
		require.Contains(t, f.Shown(), want.String())
	}
	f.Press("Z")
	require.Equal(t, view.ThrustSpan, f.V.span)
}

// A flight that was kept is drawn beneath, and the pressure gives way to the thrust where
// there is no chamber.
func TestKeptAndDrive(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	require.Len(t, f.V.charts[0].Series, 1)
	require.Contains(t, f.Shown(), "chamber gauge pressure")
	f.Scene.Kept = f.Scene.Now
	f.Drive()
	require.Len(t, f.V.charts[0].Series, 2)
	require.Contains(t, f.Shown(), "thrust N")
}
