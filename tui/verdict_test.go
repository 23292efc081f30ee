package tui

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/tui/plot"
	"ullage/tui/view/viewtest"
)

// A corner that fails alone is told in every view.
func TestCornersInTheFindings(t *testing.T) {
	s := newScreenIn(t, viewtest.Heron(t), plot.Braille, 120, 40, gates.Judge)
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
}

// Until the corners are there the finding claims no more than it knows.
func TestFindingWhileCornersAreLookedAt(t *testing.T) {
	s := newScreenIn(t, windy(t), plot.Braille, 120, 40, gates.Judge)
	s.choose("wind.speed")
	s.hold = true
	s.press("right")
	held := s.held
	s.held = nil
	s.runNow(held) // the flight
	require.NotSame(t, s.m.now, s.m.corners.Result.Of)
	s.press("f")
	require.Contains(t, s.words(), "the worst corners follow")
	s.press("esc")
	held, s.held, s.hold = s.held, nil, false
	s.runNow(held) // the corners
	require.Same(t, s.m.now, s.m.corners.Result.Of)
	s.press("f")
	require.NotContains(t, s.words(), "the worst corners follow")
}

// Corners that cannot be looked at leave calm and day.
func TestNoCorners(t *testing.T) {
	s := newScreenIn(t, viewtest.Heron(t), plot.Braille, 120, 40, gates.Judge)
	s.m.judges = func(context.Context, *rocket.Rocket, gates.Options) (gates.Verdict, error) {
		return gates.Verdict{}, context.DeadlineExceeded
	}
	s.press("right")
	require.Contains(t, s.words(), "calm and day go")
	s.checkSize()
}
