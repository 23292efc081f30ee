package study

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestRoundStep(t *testing.T) {
	for _, c := range [][2]float64{
		{-3, 1}, {0, 1}, {0.4, 1}, {1.2, 1}, {1.6, 2}, {3.4, 2}, {3.6, 5}, {7.4, 5}, {7.6, 10}, {16, 20}, {480, 500}, {960, 1000},
	} {
		require.Equal(t, c[1], roundStep(c[0]), c[0])
	}
}

// The values come round, both ends included.
func TestSteps(t *testing.T) {
	require.Equal(t, []float64{-1, -0.5, 0, 0.5, 1}, steps(-1, 1, 0.5))
	require.Equal(t, []float64{2, 4}, steps(2, 5.9, 2))
	require.Empty(t, steps(3, 2, 1))
}

// A variant with no fill that may be a best one is set beside the others without.
func TestCompareWithoutBestFill(t *testing.T) {
	heavy := dud()
	got, err := Compare(background, []Variant{{Name: "bottle", Rocket: bottle()}, {Name: "heavy", Rocket: heavy}}, CompareOptions{Fill: true})
	require.NoError(t, err)
	require.NotNil(t, got[0].Best)
	require.Nil(t, got[1].Best)
	require.NotNil(t, got[1].Flight)
	require.False(t, got[1].Flight.RailExit.Happened)
}
