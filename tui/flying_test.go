package tui

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Of several flights asked for only the last counts, in whatever order they
// come; the ones before are called off.
func TestStaleFlights(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	var contexts []context.Context
	s.m.flies = func(ctx context.Context, r *rocket.Rocket, o sim.Options) (*sim.Flight, error) {
		contexts = append(contexts, ctx)
		return sim.Fly(context.WithoutCancel(ctx), r, o)
	}
	before := s.m.now
	s.hold = true
	s.press("right", "right", "right")
	require.Same(t, before, s.m.now, "the old flight stays until the new one is there")
	cmds := s.held
	s.hold, s.held = false, nil
	for _, i := range []int{1, 2, 0} {
		s.run(cmds[i])
	}
	require.Len(t, contexts, 3)
	require.Error(t, contexts[0].Err())
	require.InDelta(t, 0.33, s.m.now.Flight.Rocket.Water.Fill, 1e-12)
}

// A flight that fails leaves the last good one, and is told of.
func TestFailedFlight(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	before := s.m.now
	s.m.flies = func(context.Context, *rocket.Rocket, sim.Options) (*sim.Flight, error) {
		return nil, errors.New("the sky is closed")
	}
	s.press("right")
	require.Same(t, before, s.m.now)
	require.Contains(t, s.words(), "No flight: the sky")
	s.m.flies = sim.Fly
	s.press("right")
	require.NotContains(t, s.view(), "No flight")
}

// A flight comes out the same on the screen and by itself.
func TestSameFlightAsTheEngine(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	fl, err := sim.Fly(context.Background(), s.m.file().Rocket(), sim.Options{})
	require.NoError(t, err)
	require.Equal(t, fl.Results.Apogee, s.m.now.Flight.Results.Apogee)
}
