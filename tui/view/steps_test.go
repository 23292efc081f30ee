package view

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

func TestAround(t *testing.T) {
	in, err := rocketfile.Find(rocketfile.Starter().Rocket(), "water.throat")
	require.NoError(t, err)
	mm, inch := draw.Unit("mm"), draw.Unit("in")
	require.InDeltaSlice(t, []float64{0.011, 0.013, 0.015}, Around(0.013, in, mm), 1e-12)
	require.InDeltaSlice(t, []float64{0.017, 0.022, 0.027}, Around(0.022, in, mm), 1e-12)
	require.InDeltaSlice(t, []float64{0.4 * 0.0254, 0.5 * 0.0254, 0.6 * 0.0254}, Around(0.5*0.0254, in, inch), 1e-12)
	require.InDeltaSlice(t, []float64{0.0005, 0.0006}, Around(0.0005, in, mm), 1e-12, "none below the range")
	require.Equal(t, []float64{0}, Around(0, in, mm))
	require.Len(t, Around(math.NaN(), in, mm), 1)
}
