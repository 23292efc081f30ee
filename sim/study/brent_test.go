package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// hills are functions with a known maximum inside a bracket.
var hills = map[string]struct {
	f       func(x float64) float64
	a, x, b float64
	at      float64
	tol     float64
	most    int // evaluations
}{
	"parabola":   {func(x float64) float64 { return 3 - (x-0.3)*(x-0.3) }, 0, 0.5, 1, 0.3, 1e-4, 8},
	"sine":       {math.Sin, 0, 1, 3, math.Pi / 2, 1e-4, 12},
	"lopsided":   {func(x float64) float64 { return x * math.Exp(-5*x) }, 0, 0.3, 1, 0.2, 1e-4, 12},
	"kink":       {func(x float64) float64 { return -math.Abs(x - 0.7) }, 0, 0.5, 1, 0.7, 1e-4, 40},
	"quartic":    {func(x float64) float64 { return -math.Pow(x-0.4, 4) }, 0, 0.5, 1, 0.4, 1e-3, 40},
	"cliff":      {func(x float64) float64 { return cliff(x, 0.62) }, 0, 0.5, 1, 0.62, 1e-4, 40},
	"both sides": {func(x float64) float64 { return cliff(x, 0.6) + 0.5*cliff(1-x, 0.45) }, 0.1, 0.58, 0.9, 0.6, 1e-4, 40},
}

// cliff rises up to an edge, past which there is nothing.
func cliff(x, edge float64) float64 {
	if x > edge {
		return math.Inf(-1)
	}
	return 2 * x
}

func TestMaximum(t *testing.T) {
	for name, h := range hills {
		t.Run(name, func(t *testing.T) {
			n := 0
			at := func(x float64) spot { return spot{x, h.f(x)} }
			low, high := at(h.a), at(h.b)
			if low.y < high.y {
				low, high = high, low
			}
			got, err := maximum(func(x float64) (float64, error) {
				require.GreaterOrEqual(t, x, h.a)
				require.LessOrEqual(t, x, h.b)
				n++
				return h.f(x), nil
			}, h.a, h.b, at(h.x), low, high, h.tol)
			require.NoError(t, err)
			require.InDelta(t, h.at, got.x, 3*h.tol)
			require.Equal(t, h.f(got.x), got.y)
			require.LessOrEqual(t, n, h.most)
		})
	}
}

func TestCrossing(t *testing.T) {
	for name, c := range map[string]struct {
		f       func(x float64) float64
		in, out float64
		at      float64
		most    int
	}{
		"straight":     {func(x float64) float64 { return 0.4 - x }, 0, 1, 0.4, 4},
		"other way":    {func(x float64) float64 { return x - 0.4 }, 1, 0, 0.4, 4},
		"curved":       {func(x float64) float64 { return math.Exp(-4*x) - 0.1 }, 0, 1, math.Log(10) / 4, 10},
		"steep":        {func(x float64) float64 { return 1 - math.Pow(x/0.9, 20) }, 0, 1, 0.9, 16},
		"cliff":        {func(x float64) float64 { return cliff(x, 0.37) + 1 }, 0, 1, 0.37, 16},
		"jump":         {func(x float64) float64 { return math.Copysign(1, 0.25-x) }, 0, 1, 0.25, 30},
		"at the start": {func(x float64) float64 { return 1e-9 - x }, 0, 1, 0, 20},
	} {
		t.Run(name, func(t *testing.T) {
			n := 0
			const tol = 1e-4
			in, out, err := crossing(func(x float64) (float64, error) { n++; return c.f(x), nil },
				spot{c.in, c.f(c.in)}, spot{c.out, c.f(c.out)}, tol)
			require.NoError(t, err)
			require.InDelta(t, c.at, in.x, 1.1*tol)
			require.Positive(t, in.y)
			require.LessOrEqual(t, out.y, 0.0)
			require.LessOrEqual(t, math.Abs(in.x-out.x), tol)
			require.LessOrEqual(t, n, c.most)
		})
	}
}

func TestLineErrors(t *testing.T) {
	stop := func(float64) (float64, error) { return 0, errStop }
	_, err := maximum(stop, 0, 1, spot{0.5, 1}, spot{0, 0}, spot{1, 0}, 1e-4)
	require.ErrorIs(t, err, errStop)
	_, _, err = crossing(stop, spot{0, 1}, spot{1, -1}, 1e-4)
	require.ErrorIs(t, err, errStop)
}
