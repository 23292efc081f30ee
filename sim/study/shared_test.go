package study

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
)

// sharedOf is the dual airframe of the examples sized for a margin on both drives.
func sharedOf(t testing.TB, margin float64) ([]Airframe, *Shared) {
	t.Helper()
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	frames, err := Airframes(context.Background(), f.Rocket(), margin, Options{})
	require.NoError(t, err)
	s, err := Share(context.Background(), frames, Options{})
	require.NoError(t, err)
	return frames, s
}

// Every way that is in reach gives every drive the margin that was asked for, and none more to all of
// them than it takes: one of them has just that.
func TestSharedServesEveryDrive(t *testing.T) {
	for _, margin := range []float64{2, 2.6} {
		frames, s := sharedOf(t, margin)
		require.NotNil(t, s)
		require.Len(t, s.Ways, 4)
		for _, w := range s.Ways[1:] {
			require.False(t, w.Out, w.Name)
			require.Len(t, w.On, 2)
			least := math.Inf(1)
			for i, fl := range w.On {
				assert.Equal(t, frames[i].Power, fl.Rocket.Power)
				assert.GreaterOrEqual(t, fl.Stability.Least, margin-1e-6, "%s on %s", w.Name, fl.Rocket.Power)
				least = math.Min(least, fl.Stability.Least)
			}
			assert.InDelta(t, margin, least, 1e-3, "%s: no more than it takes", w.Name)
		}
		weight, span, half := s.Ways[1], s.Ways[2], s.Ways[3]
		for i := range frames {
			assert.GreaterOrEqual(t, weight.Weight, frames[i].Sizing.Weight)
			assert.GreaterOrEqual(t, span.Span, frames[i].Sizing.Span)
			assert.GreaterOrEqual(t, frames[i].Tolerance, s.Tolerance)
		}
		assert.Less(t, half.Weight, weight.Weight)
		assert.Less(t, half.Span, span.Span)
		assert.InDelta(t, frames[0].Flight.Stability.Least, s.Ways[0].On[0].Stability.Least, 1e-9, "as it is")
	}
}

func TestSharedOfOneDrive(t *testing.T) {
	frames, s := sharedOf(t, 1.2) // has it already: no weight, and smaller fins would do
	assert.Zero(t, s.Ways[1].Weight)
	assert.Len(t, s.Ways, 3)
	assert.Less(t, s.Ways[2].Span, s.Ways[0].Span)
	one, err := Share(context.Background(), frames[:1], Options{})
	require.NoError(t, err)
	assert.Nil(t, one)
}
