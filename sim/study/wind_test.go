package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/rocket"
)

// layered is the bottle in a wind of layers with turbulence and a gust that rises.
func layered() *rocket.Rocket {
	r := bottle()
	r.Wind = atmosphere.Wind{Exponent: 1.0 / 7, Turbulence: 0.1, Layers: []atmosphere.Layer{
		{Height: 10, Speed: 4, From: 1}, {Height: 40, Speed: 7, From: 2}, {Height: 80, Speed: 9, From: 2.5}}}
	r.Gust = rocket.Gust{Speed: 2, Height: 20, Length: 30, From: 1}
	return r
}

// What is uncertain of layers is all of them together, by a share of their speed and a turn.
func TestLayersAreUncertainTogether(t *testing.T) {
	sd := map[string]float64{}
	r := layered()
	for _, s := range DefaultSpread(r) {
		sd[s.Input.Name] = s.SD
	}
	assert.Equal(t, windShare, sd["wind.factor"])
	assert.Equal(t, 15*degree, sd["wind.veer"])
	assert.NotContains(t, sd, "wind.speed")
	r.Wind.Factor = 0.25 // 1 m/s at 10 m
	for _, s := range DefaultSpread(r) {
		if s.Input.Name == "wind.factor" {
			assert.InDelta(t, 0.5*0.25, s.SD, 1e-12, "half a metre a second of one")
		}
	}
}

// Turbulent winds are those of the seed, whoever flies them; they are other ones for every
// draw, and nothing else that is drawn changes with them.
func TestTurbulenceOfAScatter(t *testing.T) {
	r := layered()
	want, points := scattered(t, r, nil, 200, 5, Options{Workers: 1})
	got, same := scattered(t, r, nil, 200, 5, Options{Workers: 2})
	require.Equal(t, want.Landing, got.Landing)
	require.Equal(t, points, same)
	assert.Greater(t, want.Landing.Minor, 1.0, "nothing else is uncertain")
	spreads := DefaultSpread(r)
	gusty, _ := scattered(t, r, spreads, 200, 5, Options{})
	r.Wind.Turbulence = 0
	still, alike := scattered(t, r, nil, 3, 5, Options{})
	assert.Zero(t, still.Landing.Major)
	assert.Equal(t, alike[0].East, alike[2].East)
	even, _ := scattered(t, r, spreads, 200, 5, Options{})
	assert.InEpsilon(t, even.Apogee.Mean, gusty.Apogee.Mean, 0.02)
	assert.Greater(t, gusty.Landing.Major*gusty.Landing.Minor, even.Landing.Major*even.Landing.Minor)
}

// A tilt into another wind takes the layers with it; in calm air they are gone.
func TestTiltsThroughLayers(t *testing.T) {
	r := layered()
	tilts, err := WindTilts(background, r, []float64{0, 4, 8}, 10*degree, Options{})
	require.NoError(t, err)
	assert.Less(t, tilts[0].Drift, 1e-6)
	day := r.Clone()
	day.Rail.Heading = 1
	assert.InDelta(t, math.Hypot(flown(t, day).Landing.East, flown(t, day).Landing.North), tilts[1].Upright, 1e-6, "4 m/s is the file's own")
	assert.Greater(t, tilts[2].Upright, 1.5*tilts[1].Upright)
	landed := flown(t, day).Landing
	assert.InDelta(t, 0, math.Remainder(tilts[1].Heading-math.Atan2(-landed.East, -landed.North), 2*math.Pi), 1e-6, "against the drift, not the wind of the ground")
}
