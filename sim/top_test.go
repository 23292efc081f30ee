package sim

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"
)

// A flight that ends at its top is the whole one up to there, to the bit.
func TestTop(t *testing.T) {
	for _, r := range rigidWithWind(t) {
		whole, err := Fly(context.Background(), r, Options{Keep: true})
		require.NoError(t, err)
		up, err := Fly(context.Background(), r, Options{Keep: true, Top: true})
		require.NoError(t, err)
		require.True(t, whole.Landing.Happened)
		require.False(t, up.Landing.Happened)
		require.Equal(t, whole.Apogee, up.Apogee)
		require.Equal(t, whole.Stability, up.Stability)
		require.Equal(t, whole.RailExit, up.RailExit)
		require.Equal(t, whole.At(0.7*whole.Apogee.Time).Speed, up.At(0.7*whole.Apogee.Time).Speed)
		require.InDelta(t, up.Apogee.Time, up.Duration(), 1e-9)
		require.Less(t, up.Steps, whole.Steps)
	}
}
