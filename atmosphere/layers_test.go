package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/atmosphere"
)

const degree = math.Pi / 180

func forecast() atmosphere.Wind {
	return atmosphere.Wind{Exponent: 1.0 / 7, Factor: 1, Layers: []atmosphere.Layer{
		{Height: 10, Speed: 4, From: 270 * degree}, {Height: 110, Speed: 8, From: 0}, {Height: 300, Speed: 6, From: 90 * degree},
	}}
}

// By hand: 4 m/s to the east at 10 m, 8 m/s to the south at 110 m, 6 m/s to the west at 300 m.
func TestLayersByHand(t *testing.T) {
	w := forecast()
	p := w.Profile()
	for _, row := range []struct{ height, east, north float64 }{
		{5, 4 * math.Pow(0.5, 1.0/7), 0}, {10, 4, 0}, {35, 3, -2}, {60, 2, -4}, {110, 0, -8}, {205, -3, -4}, {300, -6, 0}, {5000, -6, 0},
	} {
		east, north := p.At(row.height)
		require.InDelta(t, row.east, east, 1e-12, "east at %g m", row.height)
		require.InDelta(t, row.north, north, 1e-12, "north at %g m", row.height)
	}
	w.Factor, w.Veer = 1.5, 90*degree
	p = w.Profile()
	east, north := p.At(60)
	require.InDelta(t, -6, east, 1e-12, "half as much again, turned clockwise")
	require.InDelta(t, -3, north, 1e-12, "the same, north")
}

// The wind near the ground is that at the reference height, also between and below layers, and
// blowing it up scales the whole of it.
func TestSurfaceOfLayers(t *testing.T) {
	w := forecast()
	speed, from := w.Surface()
	require.InDelta(t, 4, speed, 1e-12, "at 10 m")
	require.InDelta(t, 270*degree, from, 1e-12, "from the west")
	rapid.Check(t, func(t *rapid.T) {
		w := forecast()
		w.Height = rapid.Float64Range(1, 400).Draw(t, "reference")
		w.Veer = rapid.Float64Range(-6, 6).Draw(t, "veer")
		p := w.Profile()
		east, north := p.At(w.Height)
		speed, from := w.Surface()
		require.InDelta(t, math.Hypot(east, north), speed, 1e-9)
		require.InDelta(t, 0, math.Remainder(math.Atan2(-east, -north)-from, 2*math.Pi), 1e-9)
		h := rapid.Float64Range(0.1, 1000).Draw(t, "height")
		e0, n0 := p.At(h)
		w.Blow(3 * speed)
		now, _ := w.Surface()
		require.InDelta(t, 3*speed, now, 1e-9)
		p = w.Profile()
		e1, n1 := p.At(h)
		require.InDelta(t, 3*e0, e1, 1e-9)
		require.InDelta(t, 3*n0, n1, 1e-9)
	})
	w.Blow(0)
	p := w.Profile()
	require.True(t, p.Calm())
	require.True(t, w.Known(), "nobody speaks of layers for nothing")
}

// MIL-F-8785C's discrete gust by hand: nothing, half at half its length, all of it from there on.
func TestGustRisesAsOneMinusCosine(t *testing.T) {
	var p atmosphere.Profile
	p.Turn(&atmosphere.Wind{}, &atmosphere.Gust{Speed: 6, From: 270 * degree, Height: 50, Length: 40})
	for _, row := range []struct{ height, east float64 }{
		{10, 0}, {50, 0}, {60, 3 * (1 - math.Sqrt2/2)}, {70, 3}, {80, 3 * (1 + math.Sqrt2/2)}, {90, 6}, {900, 6},
	} {
		east, _ := p.At(row.height)
		require.InDelta(t, row.east, east, 1e-12, "at %g m", row.height)
	}
	p.Turn(&atmosphere.Wind{}, &atmosphere.Gust{Speed: 6, From: 270 * degree, Height: 50})
	below, _ := p.At(50 - 1e-9)
	above, _ := p.At(50)
	require.Equal(t, [2]float64{0, 6}, [2]float64{below, above}, "a step")
	require.True(t, p.Jumps(1))
}

// Stretches lie one on another; where one ends the next begins with the same wind, unless a gust
// steps in there.
func TestStretchesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := atmosphere.Wind{Exponent: 0.2, Factor: rapid.Float64Range(0.1, 3).Draw(t, "factor")}
		h := 0.0
		for range rapid.IntRange(0, 5).Draw(t, "layers") {
			h += rapid.Float64Range(1, 200).Draw(t, "up")
			w.Layers = append(w.Layers, atmosphere.Layer{Height: h, Speed: rapid.Float64Range(0, 20).Draw(t, "speed"), From: rapid.Float64Range(-6, 6).Draw(t, "from")})
		}
		if len(w.Layers) == 0 {
			w.Speed = 5
		}
		require.Empty(t, w.Faults())
		g := atmosphere.Gust{Speed: rapid.Float64Range(0, 9).Draw(t, "gust"), Height: rapid.Float64Range(0, 500).Draw(t, "begins"),
			Length: rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1, 300)).Draw(t, "rises"), From: 1}
		var p atmosphere.Profile
		p.Turn(&w, &g)
		for i := 0; ; i++ {
			low, high := p.Ends(i)
			require.Less(t, low, high)
			if math.IsInf(high, 1) {
				break
			}
			require.Equal(t, i+1, p.Stretch(high))
			e0, n0 := p.In(i, high)
			e1, n1 := p.In(i+1, high)
			if p.Jumps(i + 1) {
				require.InDelta(t, g.Speed, math.Hypot(e1-e0, n1-n0), 1e-9)
			} else {
				require.InDelta(t, e0, e1, 1e-9)
				require.InDelta(t, n0, n1, 1e-9)
			}
		}
	})
}

func TestFaultsOfLayers(t *testing.T) {
	w := forecast()
	require.Empty(t, w.Faults())
	w.Speed, w.From = 3, 1
	w.Layers[1].Height = 10
	w.Layers[2].Speed = -1
	faults := w.Faults()
	for _, key := range []string{"wind.speed", "wind.from", "wind.layer.2.height", "wind.layer.3.speed"} {
		require.True(t, faults.Has(key), key)
	}
	require.Len(t, faults, 4)
}

func TestTurningAllocatesNothing(t *testing.T) {
	w, g := forecast(), atmosphere.Gust{Speed: 2, Height: 150, Length: 30}
	w.Turbulence, w.Eddies = 0.1, 7
	var p atmosphere.Profile
	p.Turn(&w, &g)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		p.Turn(&w, &g)
		p.At(33)
	}))
}
