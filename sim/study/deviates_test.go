package study

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
)

// The deviates are standard normal, independent between inputs and between draws.
// Quantiles of the normal distribution: 1.6449 at 0.95, 0.6745 at 0.75 (any table).
func TestDeviates(t *testing.T) {
	const n = 20_000
	r := bottle()
	d := newDrawer(r, []Spread{spread(t, r, "body.mass", 1e-3), spread(t, r, "water.fill", 1e-3)}, 7)
	var x, y []float64
	for i := range n {
		deviates := make([]float64, 2)
		_, err := d.draw(i, deviates)
		require.NoError(t, err)
		x, y = append(x, deviates[0]), append(y, deviates[1])
	}
	loose := 4 / math.Sqrt(n) // four deviations of a mean or a correlation
	for _, v := range [][]float64{x, y} {
		mean, sd := stat.MeanStdDev(v, nil)
		require.InDelta(t, 0, mean, loose)
		require.InDelta(t, 1, sd, loose)
		require.InDelta(t, 0, stat.Correlation(v[:n-1], v[1:], nil), loose, "neighbouring draws")
		require.InDelta(t, 0, stat.Skew(v, nil), 4*math.Sqrt(6.0/n))
		sorted := slices.Sorted(slices.Values(v))
		for p, want := range map[float64]float64{0.05: -1.6449, 0.25: -0.6745, 0.5: 0, 0.75: 0.6745, 0.95: 1.6449} {
			require.InDelta(t, want, quantile(sorted, p), 0.06)
		}
	}
	require.InDelta(t, 0, stat.Correlation(x, y, nil), loose)
}

// The gas follows the site's temperature where it has none of its own.
func TestDrawFollows(t *testing.T) {
	r := bottle()
	d := newDrawer(r, []Spread{spread(t, r, "site.temperature", 3), spread(t, r, "water.temperature", 0.5)}, 3)
	deviates := make([]float64, 2)
	got, err := d.draw(0, deviates)
	require.NoError(t, err)
	require.InDelta(t, 288.15+3*deviates[0], got.Site.Temperature, 1e-9)
	require.InDelta(t, got.Site.Temperature+0.5*deviates[1], got.Water.Temperature, 1e-9)
}

// A rail that stands upright tilts to both sides.
func TestDrawTurnsRail(t *testing.T) {
	r := bottle()
	r.Rail.Heading = 0.3
	d := newDrawer(r, []Spread{spread(t, r, "rail.tilt", 0.02)}, 3)
	for i := range 50 {
		deviates := make([]float64, 1)
		got, err := d.draw(i, deviates)
		require.NoError(t, err)
		require.InDelta(t, 0.02*math.Abs(deviates[0]), got.Rail.Tilt, 1e-12)
		if deviates[0] < 0 {
			require.InDelta(t, 0.3+math.Pi, got.Rail.Heading, 1e-12)
		} else {
			require.Equal(t, 0.3, got.Rail.Heading)
		}
	}
}

// Nine of ten flown landings are inside the ellipse, too, though they are no exact
// normal distribution.
func TestScatterLandings(t *testing.T) {
	long.Unraced(t)
	r := rocketfile.Starter().Rocket()
	got, points := scattered(t, r, DefaultSpread(r), 2000, 2, Options{})
	require.Len(t, points, got.Landed+BallisticFlights)
	points = slices.DeleteFunc(points, func(p LandingPoint) bool { return p.Kind == Falling })
	require.Len(t, points, got.Landed)
	inside := 0
	for _, p := range points {
		if got.Landing.holds(p.East, p.North) {
			inside++
		}
	}
	require.InDelta(t, 0.9, float64(inside)/float64(len(points)), 0.025)
}

// An interrupted scatter is what a shorter one is.
func TestScatterPartialIsShorter(t *testing.T) {
	r := bottle()
	spreads := DefaultSpread(r)
	seen := 0
	part, err := Disperse(background, r, Draws{Spreads: spreads, Flights: 1000, Seed: 1}, Options{}, func(LandingPoint) error {
		if seen++; seen == 120 {
			return errStop
		}
		return nil
	})
	require.ErrorIs(t, err, errStop)
	whole, _ := scattered(t, r, spreads, part.Drawn, 1, Options{})
	require.Equal(t, whole.Apogee, part.Apogee)
	require.Equal(t, whole.Landing, part.Landing)
}

// Flights leave nothing behind.
func TestScatterFlightsFlatMemory(t *testing.T) {
	long.Unraced(t)
	r := dud()
	before, most := heap(), uint64(0)
	_, err := Disperse(background, r, Draws{Spreads: []Spread{spread(t, r, "body.mass", 0.1)}, Flights: long.Of(5_000, 20_000), Seed: 1},
		Options{Progress: func(int, int) { most = max(most, heap()) }}, nil)
	require.NoError(t, err)
	require.Positive(t, most)
	require.Less(t, int64(most)-int64(before), int64(4<<20))
}
