package solve

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drop falls down to an edge, past which there is nothing.
func drop(x, edge float64) float64 {
	if x > edge {
		return math.Inf(1)
	}
	return -2 * x
}

func TestMinimum(t *testing.T) {
	for name, c := range map[string]struct {
		f       func(x float64) float64
		a, x, b float64
		at      float64
		tol     float64
		looks   int
	}{
		"parabola":   {func(x float64) float64 { return (x-0.3)*(x-0.3) - 3 }, 0, 0.5, 1, 0.3, 1e-4, 8},
		"reversed":   {func(x float64) float64 { return (x-0.3)*(x-0.3) - 3 }, 1, 0.5, 0, 0.3, 1e-4, 8},
		"sine":       {func(x float64) float64 { return -math.Sin(x) }, 0, 1, 3, math.Pi / 2, 1e-4, 12},
		"lopsided":   {func(x float64) float64 { return -x * math.Exp(-5*x) }, 0, 0.3, 1, 0.2, 1e-4, 12},
		"kink":       {func(x float64) float64 { return math.Abs(x - 0.7) }, 0, 0.5, 1, 0.7, 1e-4, 40},
		"quartic":    {func(x float64) float64 { return math.Pow(x-0.4, 4) }, 0, 0.5, 1, 0.4, 1e-3, 40},
		"cliff":      {func(x float64) float64 { return drop(x, 0.62) }, 0, 0.5, 1, 0.62, 1e-4, 40},
		"both sides": {func(x float64) float64 { return drop(x, 0.6) + 0.5*drop(1-x, 0.45) }, 0.1, 0.58, 0.9, 0.6, 1e-4, 40},
		"no number":  {func(x float64) float64 { return -math.Sqrt(0.7 - x) }, 0, 0.5, 1, 0, 1e-4, 40},
		"huge":       {func(x float64) float64 { return math.MaxFloat64 * math.Abs(x-0.3) }, 0, 0.5, 1, 0.3, 1e-4, 40},
		"a slope":    {func(x float64) float64 { return x }, 0, 0.5, 1, 0, 1e-4, 40},
		"at an end":  {func(x float64) float64 { return x }, 0, 0, 1, 0, 1e-4, 40},
	} {
		t.Run(name, func(t *testing.T) {
			looks := counter{f: c.f, low: math.Min(c.a, c.b), high: math.Max(c.a, c.b)}
			got, err := Minimum(looks.at(t), looks.point(c.a), looks.point(c.x), looks.point(c.b), c.tol)
			require.NoError(t, err)
			assert.InDelta(t, c.at, got.X, 3*c.tol)
			assert.Equal(t, looks.point(got.X), got)
			assert.LessOrEqual(t, looks.n, c.looks)
		})
	}
}

// Without a tolerance a lowest place is known as closely as values tell it.
func TestMinimumAsCloseAsValuesGo(t *testing.T) {
	for _, tol := range []float64{0, -1, math.NaN(), 1e-300} {
		looks := counter{f: func(x float64) float64 { return 1 - math.Cos(x-2) }, low: 0, high: 4}
		got, err := Minimum(looks.at(t), looks.point(0), looks.point(1), looks.point(4), tol)
		require.NoError(t, err)
		assert.InDelta(t, 2, got.X, 1e-7)
		assert.LessOrEqual(t, looks.n, 20)
	}
}

func TestMinimumOfNoEnds(t *testing.T) {
	for _, ends := range [][2]float64{{math.NaN(), 1}, {0, math.NaN()}, {0, math.Inf(1)}, {math.Inf(-1), math.Inf(1)}, {-math.MaxFloat64, math.MaxFloat64}} {
		_, err := Minimum(never(t), Point{ends[0], 1}, Point{0.5, 0}, Point{ends[1], 1}, 1e-3)
		require.ErrorIs(t, err, ErrBracket)
	}
	// A middle that is outside is left out, and one that is too high.
	looks := counter{f: func(x float64) float64 { return (x - 0.2) * (x - 0.2) }, low: 0, high: 1}
	for _, x := range []float64{-3, 9, math.NaN(), 1} {
		got, err := Minimum(looks.at(t), looks.point(0), Point{x, -5}, looks.point(1), 1e-4)
		require.NoError(t, err)
		if x != 1 {
			assert.InDelta(t, 0.2, got.X, 3e-4)
		}
	}
	got, err := Minimum(never(t), Point{2, 7}, Point{2, 7}, Point{2, 7}, 1e-4)
	require.NoError(t, err)
	assert.Equal(t, Point{2, 7}, got)
}

func TestMinimumStops(t *testing.T) {
	f := func(x float64) float64 { return (x - 0.3) * (x - 0.3) * (1 + x) }
	best := math.Inf(1)
	for n := range 4 {
		got, err := Minimum(failsAfter(n, f), Point{0, f(0)}, Point{0.5, f(0.5)}, Point{1, f(1)}, 1e-6)
		require.ErrorIs(t, err, errStop)
		assert.Equal(t, f(got.X), got.Y)
		assert.LessOrEqual(t, got.Y, best)
		best = got.Y
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Minimum(func(float64) (float64, error) { return 0, ctx.Err() }, Point{0, 1}, Point{1, 0}, Point{2, 1}, 1e-6)
	assert.ErrorIs(t, err, context.Canceled)
}

// The lowest place of any valley, however its sides fall and wherever it is undefined, is
// found within twice the tolerance and the stated number of looks, and no look is outside.
func TestMinimumOfAnyValley(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-10, 10).Draw(t, "low")
		width := math.Pow(10, rapid.Float64Range(-3, 3).Draw(t, "width"))
		high := low + width
		at := low + width*rapid.Float64Range(0, 1).Draw(t, "at")
		middle := low + width*rapid.Float64Range(0, 1).Draw(t, "middle")
		tol := width * math.Pow(10, -rapid.Float64Range(0, 6).Draw(t, "digits"))
		left, right := anySide(t, "left"), anySide(t, "right")
		looks := counter{low: low, high: high, f: func(x float64) float64 {
			if x < at {
				return left((at - x) / width)
			}
			return right((x - at) / width)
		}}
		got, err := Minimum(looks.at(t), looks.point(low), looks.point(middle), looks.point(high), tol)
		require.NoError(t, err)
		most := 2*int(math.Ceil(math.Log(math.Max(1, width/tol))/math.Log(math.Phi))) + 8
		require.LessOrEqual(t, looks.n, most)
		if !math.IsNaN(got.Y) {
			require.Equal(t, looks.f(got.X), got.Y)
		}
		if got.Y < math.Inf(1) {
			tol = math.Max(tol, 1e-8*math.Max(math.Abs(low), math.Abs(high)))
			require.InDelta(t, at, got.X, 2.01*tol)
		}
	})
}

// anySide rises from 0, smoothly or not, to where it may end in nothing.
func anySide(t *rapid.T, name string) func(d float64) float64 {
	power := rapid.Float64Range(0.3, 3).Draw(t, name+" power")
	size := math.Pow(10, rapid.Float64Range(-6, 6).Draw(t, name+" size"))
	edge := rapid.Float64Range(0, 4).Draw(t, name+" edge")
	beyond := rapid.SampledFrom([]float64{math.Inf(1), math.NaN()}).Draw(t, name+" beyond")
	return func(d float64) float64 {
		if d > edge {
			return beyond
		}
		return size * math.Pow(d, power)
	}
}

func TestLeast(t *testing.T) {
	known := func(c *counter, xs ...float64) []Point {
		points := make([]Point, len(xs))
		for i, x := range xs {
			points[i] = c.point(x)
		}
		return points
	}
	for name, c := range map[string]struct {
		f     func(x float64) float64
		known []float64
		at    float64
		looks int
	}{
		"between":          {func(x float64) float64 { return (x - 0.4) * (x - 0.4) }, []float64{0, 0.3, 0.6, 1}, 0.4, 4},
		"at the beginning": {func(x float64) float64 { return x }, []float64{0, 0.5, 1}, 0, 1},
		"at the end":       {func(x float64) float64 { return -x }, []float64{0, 0.5, 1}, 1, 1},
		"near the end":     {func(x float64) float64 { return math.Abs(x - 0.9) }, []float64{0, 0.5, 1}, 0.9, 30},
		"first of two":     {func(x float64) float64 { return -math.Abs(math.Sin(x)) }, []float64{0, math.Pi / 2, math.Pi, 3 * math.Pi / 2, 2 * math.Pi}, math.Pi / 2, 8},
		"one place":        {func(x float64) float64 { return x }, []float64{0.5}, 0.5, 0},
		"close places":     {func(x float64) float64 { return x }, []float64{0.5, 0.5001}, 0.5, 0},
		"nothing known":    {func(x float64) float64 { return math.Inf(1) }, []float64{0, 0.5, 1}, 0, 0},
		"no numbers":       {func(x float64) float64 { return math.NaN() }, []float64{0, 0.5, 1}, 0, 0},
		"a number at last": {func(x float64) float64 { return math.Sqrt(x - 0.75) }, []float64{0, 0.5, 1}, 0.75, 40},
	} {
		t.Run(name, func(t *testing.T) {
			looks := counter{f: c.f, low: c.known[0], high: c.known[len(c.known)-1]}
			got, err := Least(looks.at(t), known(&looks, c.known...), 1e-4)
			require.NoError(t, err)
			assert.InDelta(t, c.at, got.X, 2e-4)
			assert.LessOrEqual(t, looks.n, c.looks)
		})
	}
	_, err := Least(never(t), nil, 1e-4)
	require.ErrorIs(t, err, ErrBracket)
	dip := func(x float64) float64 { return x * (x - 1.2) * math.Exp(x) }
	for n := range 2 {
		got, err := Least(failsAfter(n, dip), []Point{{0, dip(0)}, {0.5, dip(0.5)}, {1, dip(1)}}, 1e-4)
		require.ErrorIs(t, err, errStop)
		assert.LessOrEqual(t, got.Y, dip(1))
	}
}
