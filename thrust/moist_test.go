package thrust

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Local exponents of saturated air at four pressures and two temperatures: computed by
// plain arithmetic from the equation, not from this project.
func TestLocalExponentOfSaturatedAir(t *testing.T) {
	for _, x := range []struct{ temperature, pressure, exponent float64 }{
		{293.15, 301325, 1.26147}, {293.15, 501325, 1.29726}, {293.15, 801325, 1.32596}, {293.15, 1101325, 1.34212},
		{303.15, 301325, 1.22585}, {303.15, 501325, 1.26204}, {303.15, 801325, 1.29483}, {303.15, 1101325, 1.31503},
	} {
		m := newMoist(1.4, x.pressure, x.temperature)
		assert.InDelta(t, x.exponent, m.local(0, 0), 6e-6, "%+v", x)
	}
}

// The exponent of the same work against an integration of the entropy over the volume, by
// SciPy: testdata/reference/moist.py.
func TestSaturatedExponentAgainstSciPy(t *testing.T) {
	var made struct {
		Cases []struct{ Gamma, Pressure, Temperature, Ratio, Local, Exponent float64 }
	}
	text, err := os.ReadFile("../testdata/reference/moist.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &made))
	require.Greater(t, len(made.Cases), 70)
	for _, x := range made.Cases {
		c := Chamber{Volume: 1, LiquidVolume: 1 - 1/x.Ratio, Pressure: x.Pressure, Temperature: x.Temperature, Gamma: x.Gamma}
		want := x.Exponent
		if x.Ratio == 1 { // no liquid: nothing but the gas's own flow
			want = x.Local
		}
		assert.InDelta(t, want, c.SaturatedExponent(), 2e-6, fmt.Sprintf("%+v", x))
	}
}

// A colder or denser gas has less vapour to condense, and one that is dry for all that matters has the exponent of its kind.
func TestSaturatedExponentTendsToDry(t *testing.T) {
	at := func(pressure, temperature float64) float64 {
		c := Chamber{Volume: 1, LiquidVolume: 0.3, Pressure: pressure, Temperature: temperature, Gamma: 1.4}
		return c.SaturatedExponent()
	}
	assert.InDelta(t, 1.4, at(1e7, 213.15), 1e-4)
	for p := 2e5; p < 1e7; p *= 1.3 {
		assert.Less(t, at(p, 293.15), at(1.3*p, 293.15), p)
		assert.Less(t, at(p, 303.15), at(p, 293.15), p)
	}
}

// The launch tube's push is part of the expansion.
func TestSaturatedExponentCountsTheTube(t *testing.T) {
	with := Chamber{Volume: 2e-3, LiquidVolume: 0.6e-3, Pressure: 801325, Temperature: 293.15, Gamma: 1.4,
		Tube: Tube{Length: 0.25, Outer: 0.021}}
	push := math.Pi / 4 * 0.021 * 0.021 * 0.25
	alike := Chamber{Volume: 2e-3, LiquidVolume: 0.6e-3 + push, Pressure: 801325, Temperature: 293.15, Gamma: 1.4}
	assert.Greater(t, with.SaturatedExponent(), 1.2)
	assert.InDelta(t, alike.SaturatedExponent(), with.SaturatedExponent(), 1e-12)
}

// Steam, cold and nothing at all: no number that is none.
func TestSaturatedExponentIsAlwaysOne(t *testing.T) {
	for _, p := range []float64{500, 1e3, 2e4, 101325, 1e6, 1e7} {
		for _, temperature := range []float64{213.15, 250, 293.15, 373.15} {
			for _, fill := range []float64{0, 1e-9, 1e-5, 0.01, 0.5, 0.98} {
				for _, gamma := range []float64{1.289, 1.4, 5. / 3} {
					c := Chamber{Volume: 1, LiquidVolume: fill, Pressure: p, Temperature: temperature, Gamma: gamma}
					n := c.SaturatedExponent()
					assert.True(t, n > 1 && n <= gamma+1e-9, "%v at %v %v %v %v", n, p, temperature, fill, gamma)
				}
			}
		}
	}
}

func BenchmarkSaturatedExponent(b *testing.B) {
	c := Chamber{Volume: 1, LiquidVolume: 0.3, Pressure: 1e6, Temperature: 293.15, Gamma: 1.4}
	for b.Loop() {
		c.SaturatedExponent()
	}
}
