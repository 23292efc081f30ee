package sim

import (
	"context"
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// What a Flyer has flown before changes nothing of a flight: any rocket after any other
// gives what it gives to a new one, kept or not.
func TestFlyerForgets(t *testing.T) {
	var again Flyer
	for i := range 300 {
		r := newLot(uint64(i)).rocket()
		want, err := new(Flyer).Fly(context.Background(), r, Options{Keep: i%2 == 0})
		require.NoError(t, err)
		got, err := again.Fly(context.Background(), r, Options{Keep: i%2 == 0})
		require.NoError(t, err)
		if len(got.Canopies) == 0 {
			got.Canopies = nil // empty is as good as none
		}
		require.Equal(t, want.Results, got.Results, i)
		require.True(t, len(want.Warnings) == len(got.Warnings) && len(want.Events) == len(got.Events))
		require.Equal(t, want.Steps, got.Steps)
		if want.dense.keep {
			for _, s := range []float64{0.01, 0.3, 2, 7, 1e9} {
				require.True(t, reflect.DeepEqual(numbers(want.At(s)), numbers(got.At(s))), i)
			}
		}
	}
}

// numbers are a sample's, for a comparison to which NaN is NaN.
func numbers(s Sample) []uint64 {
	v := reflect.ValueOf(s)
	out := make([]uint64, v.NumField())
	for i := range out {
		out[i] = math.Float64bits(v.Field(i).Float())
	}
	return out
}

// A kept flight is its own: what its flyer flies later does not reach it.
func TestKeptFlightStays(t *testing.T) {
	r := withWind(wetRigid(t))
	kept := mustFly(r, 0)
	before := numbers(kept.At(0.3))
	for i := range 50 {
		_, err := Fly(context.Background(), newLot(uint64(i)).rocket(), Options{})
		require.NoError(t, err)
	}
	require.Equal(t, before, numbers(kept.At(0.3)))
}

// A flight of a study allocates nothing.
func TestFlyerAllocatesNothing(t *testing.T) {
	tube := bottle()
	tube.Water.Tube = &rocket.LaunchTube{Length: 0.15, Outer: 0.0085, Inner: 0.007}
	tube.Canopies = append(tube.Canopies, tube.Canopies[0])
	tube.Canopies[0].Name = "drogue"
	for name, r := range map[string]*rocket.Rocket{
		"calm": bottle(), "wind": withWind(bottle()), "tube and two canopies": tube, "motor": motorRocket(t), "rigid motor": withWind(rigidRocket(t)), "rigid water": withWind(wetRigid(t)),
	} {
		var x Flyer
		fill := 0.2
		assert.Zero(t, testing.AllocsPerRun(20, func() {
			if r.Water != nil {
				fill += 0.01
				r.Water.Fill = fill
			}
			if _, err := x.Fly(context.Background(), r, Options{}); err != nil {
				t.Fatal(err)
			}
		}), name)
	}
}
