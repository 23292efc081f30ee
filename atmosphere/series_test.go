package atmosphere

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The series against (1+u)^n summed in 200 bits.
func TestSeries(t *testing.T) {
	exact := func(u float64) float64 {
		n := new(big.Float).SetPrec(200).SetFloat64(StandardGravity)
		n.Quo(n, big.NewFloat(GasConstant*6.5e-3)).Sub(n, big.NewFloat(1))
		x := new(big.Float).SetPrec(200).SetFloat64(u)
		sum := new(big.Float).SetPrec(200).SetInt64(1)
		term := new(big.Float).SetPrec(200).SetInt64(1)
		for k := range 60 {
			factor := new(big.Float).SetPrec(200).Sub(n, big.NewFloat(float64(k)))
			term.Mul(term, factor).Mul(term, x).Quo(term, big.NewFloat(float64(k+1)))
			sum.Add(sum, term)
		}
		v, _ := sum.Float64()
		return v
	}
	for _, u := range []float64{-seriesRange, -0.05, -0.02, -1e-3, -1e-9, 0, 1e-9, 1e-3, 0.02, 0.05, seriesRange} {
		require.InEpsilonf(t, exact(u), series(u), 1e-15, "u = %g", u)
	}
}

// Where the series ends, the logarithm takes over without a step.
func TestSeriesMeetsLogarithm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.Float64Range(-seriesRange, seriesRange).Draw(t, "u")
		require.InEpsilon(t, math.Exp(densityPower*math.Log1p(u)), series(u), 1e-14)
	})
}

func TestPower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0, 1).Draw(t, "exponent")
		var p power
		p.fit(a)
		x := math.Exp(rapid.Float64Range(-30, 30).Draw(t, "log x"))
		require.InEpsilonf(t, math.Pow(x, a), p.of(x), 5e-15, "%g to the %g", x, a)
	})
	// Both sides of every step in its tables.
	var p power
	p.fit(1.0 / 7)
	for i := range 16 {
		x := 1 + float64(i)/16
		require.InEpsilon(t, p.of(math.Nextafter(x, 0)), p.of(x), 2e-15)
	}
}
