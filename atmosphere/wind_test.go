package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/atmosphere"
)

// Open grass, from 10 to 100 m: the logarithmic law with a roughness length of
// 0.03 m (computed) gives 1.396, the one-seventh power law 1.389.
func TestWindAgainstLogLaw(t *testing.T) {
	p := atmosphere.Wind{Speed: 6, Height: 10, Exponent: 1.0 / 7, From: math.Pi}.Profile()
	_, low := p.At(10)
	_, high := p.At(100)
	near(t, 6, low, 1e-14, "at the reference height")
	near(t, 1.389, high/low, 5e-4, "power law")
	near(t, math.Log(100/0.03)/math.Log(10/0.03), high/low, 0.01, "logarithmic law")
}

func TestWindDirection(t *testing.T) {
	for _, row := range []struct{ from, east, north float64 }{
		{0, 0, -1}, {45, -math.Sqrt2 / 2, -math.Sqrt2 / 2}, {90, -1, 0}, {180, 0, 1}, {270, 1, 0}, {-90, 1, 0}, {360, 0, -1},
	} {
		p := atmosphere.Wind{Speed: 5, Height: 10, From: row.from * math.Pi / 180}.Profile()
		east, north := p.At(10)
		require.InDelta(t, 5*row.east, east, 1e-14, "from %g°", row.from)
		require.InDelta(t, 5*row.north, north, 1e-14, "from %g°", row.from)
	}
}

func TestWindAtTheGround(t *testing.T) {
	p := atmosphere.Wind{Speed: 5, Height: 10, Exponent: 1.0 / 7, From: 1}.Profile()
	require.False(t, p.Calm())
	for _, h := range []float64{0, -1, math.Inf(-1), math.NaN()} {
		east, north := p.At(h)
		require.Zero(t, east, "at %g m", h)
		require.Zero(t, north, "at %g m", h)
	}
	for _, w := range []atmosphere.Wind{{}, {Height: 10, Exponent: 0.2, From: 2}} {
		p := w.Profile()
		require.True(t, p.Calm())
		east, north := p.At(50)
		require.Zero(t, east)
		require.Zero(t, north)
	}
}

// Without a reference height it is the usual 10 m; without an exponent the wind
// is the same at all heights.
func TestWindDefaults(t *testing.T) {
	with := atmosphere.Wind{Speed: 5, Height: 10, Exponent: 0.25, From: 4}.Profile()
	without := atmosphere.Wind{Speed: 5, Exponent: 0.25, From: 4}.Profile()
	require.Equal(t, with, without)
	even := atmosphere.Wind{Speed: 5, From: math.Pi}.Profile()
	for _, h := range []float64{0.01, 1, 10, 1000} {
		_, north := even.At(h)
		near(t, 5, north, 1e-14, "at %g m", h)
	}
}

// A sound wind is the power law; any wind is finite and doesn't fall with height.
func TestAnyWind(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := atmosphere.Wind{
			Speed:    rapid.OneOf(anyFloat(), rapid.Float64Range(0, 40)).Draw(t, "speed"),
			Height:   rapid.OneOf(anyFloat(), rapid.Float64Range(1, 100)).Draw(t, "height"),
			Exponent: anyFloat().Draw(t, "exponent"),
			From:     anyFloat().Draw(t, "from"),
		}
		p := w.Profile()
		h := rapid.OneOf(rapid.Float64Range(-10, 5000), rapid.SampledFrom([]float64{1e-300, 1e-9, 1e9, 1e308, math.Inf(1)})).Draw(t, "height")
		speed := math.Hypot(p.At(h))
		require.Truef(t, speed >= 0 && speed <= 1e8*(1+1e-12), "%g m/s", speed) // the ceiling over the least height, at the top speed
		require.GreaterOrEqual(t, math.Hypot(p.At(h+1))*(1+1e-14), speed)
		if len(w.Faults()) == 0 && w.Height != 0 && h > 1e-6 && h < 5000 {
			require.InEpsilon(t, 1+max(w.Speed, 0)*math.Pow(h/w.Height, w.Exponent), 1+speed, 1e-10)
		}
	})
}

func FuzzWind(f *testing.F) {
	f.Add(4.0, 10.0, 0.142857, 4.7, 100.0)
	f.Add(math.NaN(), math.Inf(1), -3.0, 1e300, math.Inf(1))
	f.Fuzz(func(t *testing.T, speed, height, exponent, from, h float64) {
		w := atmosphere.Wind{Speed: speed, Height: height, Exponent: exponent, From: from}
		p := w.Profile()
		east, north := p.At(h)
		require.Less(t, math.Hypot(east, north), 1e8)
		w.Faults()
	})
}

func TestWindAllocatesNothing(t *testing.T) {
	w := atmosphere.Wind{Speed: 4, Height: 10, Exponent: 1.0 / 7, From: 4}
	p := w.Profile()
	require.Zero(t, testing.AllocsPerRun(100, func() {
		p = w.Profile()
		p.At(33)
	}))
}
