package study

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/fault"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

const tenDegrees = 10 * math.Pi / 180

func TestTiltsIntoTheWindBringItHome(t *testing.T) {
	r := bottle()
	r.Wind.From, r.Wind.Height = 2, 10
	winds := []float64{0, 0.4, 0.8}
	tilts, err := WindTilts(background, r, winds, tenDegrees, Options{})
	require.NoError(t, err)
	require.Len(t, tilts, len(winds))
	for i, l := range tilts {
		assert.Equal(t, winds[i], l.Wind)
		assert.Equal(t, 2.0, l.Heading)
		assert.Equal(t, l.Tilt, l.Flight.Rocket.Rail.Tilt)
		assert.Equal(t, l.Drift, math.Hypot(l.Flight.Landing.East, l.Flight.Landing.North))
	}
	assert.Zero(t, tilts[0].Tilt, "calm wants no tilt")
	assert.InDelta(t, 0, tilts[0].Drift, 1e-6)
	for i, l := range tilts[1:] {
		assert.Greater(t, l.Tilt, tilts[i].Tilt, "more wind, more tilt")
		assert.Less(t, l.Drift, l.Upright)
	}
	assert.Equal(t, rocket.Rail{Length: 1}, r.Rail, "the rocket given stays as it is")
}

// Where the layers of the wind come from elsewhere aloft, the rail tilts against the drift, which lands
// no farther than any heading of a scan at that tilt, and nearer than into the wind of the ground.
func TestTiltsIntoLayers(t *testing.T) {
	r := bottle()
	r.Wind.Layers = []atmosphere.Layer{{Height: 10, Speed: 1, From: 0}, {Height: 40, Speed: 2, From: math.Pi / 2}}
	r.Wind.Speed = 0
	tilts, err := WindTilts(background, r, []float64{1}, tenDegrees, Options{})
	require.NoError(t, err)
	l := tilts[0]
	require.Equal(t, l.Heading, l.Flight.Rocket.Rail.Heading)
	s := tiltSearch{ctx: background, base: r, wind: 1, options: Options{}.flight(), headed: true}
	for i := range 36 {
		s.heading = float64(i) * math.Pi / 18
		x, err := s.try(l.Tilt)
		require.NoError(t, err)
		require.Less(t, l.Drift, x.Drift+0.1, "towards %.0f°, not %.0f°", s.heading*180/math.Pi, l.Heading*180/math.Pi)
		if i == 0 {
			require.Less(t, l.Drift, x.Drift-1)
		}
	}
}

// No tilt of a dense scan lands nearer the pad, whatever the wind: with a rigid body
// that turns into the wind, too.
func TestTiltsAgainstADenseScan(t *testing.T) {
	long.Unraced(t)
	heron := rocketfile.Starter().Rocket()
	for name, r := range map[string]*rocket.Rocket{"bottle": bottle(), "heron on water": heron, "heron on a motor": motored()} {
		winds := []float64{0, 1, 3, 8}
		tilts, err := WindTilts(background, r, winds, tenDegrees, Options{})
		require.NoError(t, err)
		for _, l := range tilts {
			s := tiltSearch{ctx: background, base: r, wind: l.Wind, options: Options{}.flight()}
			points := long.Of(41, 201)
			for i := range points {
				x, err := s.try(between(0, tenDegrees, i, points))
				require.NoError(t, err)
				require.False(t, x.Drift < l.Drift-0.05, "%s in %g m/s: %.4f rad lands at %.2f m, the best %.4f at %.2f",
					name, l.Wind, x.Tilt, x.Drift, l.Tilt, l.Drift)
			}
			assert.LessOrEqual(t, l.Drift, l.Upright)

			again := tiltSearch{ctx: background, base: r, wind: l.Wind, options: s.options}
			same, err := again.best(tenDegrees)
			require.NoError(t, err)
			assert.Equal(t, l.Tilt, same.Tilt)
			assert.LessOrEqual(t, again.flights, tiltScan+9, "golden sections alone take 14 beyond the scan")
		}
	}
}

func TestTiltsDoNotDependOnTheWorkers(t *testing.T) {
	winds := []float64{1, 3, 5, 7}
	one, err := WindTilts(background, bottle(), winds, tenDegrees, Options{Workers: 1})
	require.NoError(t, err)
	four, err := WindTilts(background, bottle(), winds, tenDegrees, Options{Workers: 4})
	require.NoError(t, err)
	for i := range one {
		assert.Equal(t, one[i].Tilt, four[i].Tilt)
		assert.Equal(t, one[i].Drift, four[i].Drift)
	}
}

func TestTiltsOfWhatDoesNotFly(t *testing.T) {
	tilts, err := WindTilts(background, dud(), []float64{3}, tenDegrees, Options{})
	require.NoError(t, err)
	assert.Zero(t, tilts[0].Tilt)
	assert.True(t, math.IsNaN(tilts[0].Drift))
	require.NotNil(t, tilts[0].Flight)
	assert.False(t, tilts[0].Flight.RailExit.Happened)

	var faults fault.List
	_, err = WindTilts(background, bottle(), []float64{-1, math.NaN()}, -1, Options{})
	require.ErrorAs(t, err, &faults)
	assert.Len(t, faults, 3)
	_, err = WindTilts(background, &rocket.Rocket{Power: rocket.WaterPower}, nil, 0, Options{})
	assert.ErrorAs(t, err, &faults)

	ctx, cancel := context.WithCancel(background)
	cancel()
	_, err = WindTilts(ctx, bottle(), []float64{1}, tenDegrees, Options{})
	assert.ErrorIs(t, err, context.Canceled)
}
