package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
)

// dryden is the form of MIL-F-8785C at low altitude (from memory): standard deviation over that
// of the vertical gusts, and the length, m.
func dryden(h float64) (ratio, length float64) {
	feet := h / 0.3048
	return math.Pow(0.177+0.000823*feet, -0.4), h / math.Pow(0.177+0.000823*feet, 1.2)
}

// turbulent draws gusts along and across a wind at some heights, less their mean.
func turbulent(t *testing.T, draws int, heights ...float64) (along, across [][]float64) {
	t.Helper()
	w := atmosphere.Wind{Speed: 5, Height: 20 * 0.3048, Exponent: 0.15, From: 200 * degree, Turbulence: 0.1}
	mean := w.Profile()
	var p atmosphere.Profile
	sin, cos := math.Sincos(20 * degree)
	for i := range draws {
		w.Eddies = uint64(i + 1)
		p.Turn(&w, &atmosphere.Gust{})
		var u, v []float64
		for _, h := range heights {
			e0, n0 := mean.At(h)
			e1, n1 := p.At(h)
			e, n := e1-e0, n1-n0
			u, v = append(u, e*sin+n*cos), append(v, e*cos-n*sin)
		}
		along, across = append(along, u), append(across, v)
	}
	return along, across
}

func meanProduct(rows [][]float64, i, j int) float64 {
	sum := 0.0
	for _, row := range rows {
		sum += row[i] * row[j]
	}
	return sum / float64(len(rows))
}

// The variance is Dryden's at every height, along and across. Of 4000 draws a variance is known
// to 1/sqrt(2000), a fiftieth.
func TestTurbulenceHasDrydensVariance(t *testing.T) {
	heights := []float64{4, 10, 30, 100, 250}
	along, across := turbulent(t, 4000, heights...)
	for i, h := range heights {
		ratio, _ := dryden(h)
		want := math.Pow(0.1*5*ratio, 2)
		require.InEpsilon(t, want, meanProduct(along, i, i), 0.08, "along, at %g m", h)
		require.InEpsilon(t, want, meanProduct(across, i, i), 0.08, "across, at %g m", h)
	}
}

// The spectra are Dryden's: their transforms are the correlations exp(−ξ) along and (1 − ξ/2)exp(−ξ)
// across, of a way of ξ lengths, here between 100 m and the heights above it, by the trapezoidal
// rule over the length.
func TestTurbulenceHasDrydensSpectrum(t *testing.T) {
	heights := []float64{100, 110, 140, 180, 240, 304}
	along, across := turbulent(t, 4000, heights...)
	xi, last := 0.0, 100.0
	for i, h := range heights {
		for last < h {
			_, l0 := dryden(last)
			_, l1 := dryden(last + 0.5)
			xi += 0.25 * (1/l0 + 1/l1)
			last += 0.5
		}
		norm := func(rows [][]float64) float64 {
			return meanProduct(rows, 0, i) / math.Sqrt(meanProduct(rows, 0, 0)*meanProduct(rows, i, i))
		}
		require.InDelta(t, math.Exp(-xi), norm(along), 0.05, "along, over %.2f lengths", xi)
		require.InDelta(t, (1-xi/2)*math.Exp(-xi), norm(across), 0.05, "across, over %.2f lengths", xi)
	}
}

// One seed is one wind; without one, without turbulence or in calm air there is none. Gusts fade
// towards the ground and are smooth: no height has a jump.
func TestTurbulenceIsFrozen(t *testing.T) {
	w := atmosphere.Wind{Speed: 5, Exponent: 0.15, Turbulence: 0.2, Eddies: 3}
	require.Equal(t, w.Profile(), w.Profile())
	other := w
	other.Eddies = 4
	require.NotEqual(t, w.Profile(), other.Profile())
	p := w.Profile()
	mean := atmosphere.Wind{Speed: 5, Exponent: 0.15}.Profile()
	e, n := p.At(0.01)
	e0, n0 := mean.At(0.01)
	require.Less(t, math.Hypot(e-e0, n-n0), 1e-3)
	for h := 0.5; h < 400; h += 0.05 {
		e0, n0 := p.At(h)
		e1, n1 := p.At(h + 1e-6)
		require.Less(t, math.Hypot(e1-e0, n1-n0), 1e-5, "at %g m", h)
	}
	for _, still := range []atmosphere.Wind{{Turbulence: 0.1, Eddies: 1}, {Speed: 5, Exponent: 0.15, Eddies: 3}, {Speed: 5, Exponent: 0.15, Turbulence: 0.2}} {
		p := still.Profile()
		mean := atmosphere.Wind{Speed: still.Speed, Exponent: still.Exponent}.Profile()
		require.Equal(t, mean, p)
	}
}
