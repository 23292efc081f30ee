package sim

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
)

// A rocket known by its mass list flies as one that was weighed.
func TestMassListFlies(t *testing.T) {
	r := rigidRocket(t)
	weighed := mustFly(r, 1e-8)
	r.Parts = []airframe.Part{{Name: "tube", Mass: 0.3, Position: 0.4, Length: 0.7}, {Name: "2", Mass: 0.2, Position: 0.5}}
	r.Body.Mass, r.Body.Balance = 0, 0
	require.Equal(t, 0.5, r.BodyMass())
	listed := mustFly(r, 1e-8)
	require.InDelta(t, weighed.LiftOffMass, listed.LiftOffMass, 1e-12)
	require.InDelta(t, weighed.Stability.Dry.Balance, listed.Stability.Dry.Balance, 1e-12) // 0.44 m both times
	require.InEpsilon(t, weighed.Apogee.Height, listed.Apogee.Height, 1e-9)

	r.Shape = nil
	point, err := Fly(context.Background(), r, Options{})
	require.NoError(t, err)
	require.InDelta(t, weighed.LiftOffMass, point.LiftOffMass, 1e-12)
}
