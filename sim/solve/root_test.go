package solve

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// cliff rises up to an edge, past which there is nothing.
func cliff(x, edge float64) float64 {
	if x > edge {
		return math.Inf(-1)
	}
	return 2 * x
}

func TestRoot(t *testing.T) {
	for name, c := range map[string]struct {
		f     func(x float64) float64
		a, b  float64
		at    float64
		looks int
	}{
		"straight":        {func(x float64) float64 { return 0.4 - x }, 0, 1, 0.4, 4},
		"rising":          {func(x float64) float64 { return x - 0.4 }, 0, 1, 0.4, 4},
		"ends reversed":   {func(x float64) float64 { return x - 0.4 }, 1, 0, 0.4, 4},
		"curved":          {func(x float64) float64 { return math.Exp(-4*x) - 0.1 }, 0, 1, math.Log(10) / 4, 10},
		"steep":           {func(x float64) float64 { return 1 - math.Pow(x/0.9, 20) }, 0, 1, 0.9, 16},
		"cliff":           {func(x float64) float64 { return cliff(x, 0.37) + 1 }, 0, 1, 0.37, 16},
		"jump":            {func(x float64) float64 { return math.Copysign(1, 0.25-x) }, 0, 1, 0.25, 25},
		"at the start":    {func(x float64) float64 { return 1e-9 - x }, 0, 1, 0, 20},
		"zero at the end": {func(x float64) float64 { return 1 - x }, 0, 1, 1, 1},
		"zero half-way":   {func(x float64) float64 { return math.Max(0, 0.5-x) }, 0, 1, 0.5, 25},
		"no number":       {func(x float64) float64 { return math.Sqrt(0.25 - x) }, 0, 1, 0.25, 25},
		"infinite":        {func(x float64) float64 { return 1 / (0.7 - x) }, 0, 1, 0.7, 25},
		"huge":            {func(x float64) float64 { return math.MaxFloat64 * (0.3 - x) * 2 }, 0, 1, 0.3, 20},
		"tiny":            {func(x float64) float64 { return math.SmallestNonzeroFloat64 * math.Floor(4*(0.3-x)) }, 0, 1, 0.05, 25},
		"below zero":      {func(x float64) float64 { return x*x*x + 8 }, -5, -1, -2, 14},
	} {
		t.Run(name, func(t *testing.T) {
			const tol = 1e-4
			looks := counter{f: c.f, low: math.Min(c.a, c.b), high: math.Max(c.a, c.b)}
			b, err := Root(looks.at(t), looks.bracket(c.a, c.b), Tolerance{X: tol})
			require.NoError(t, err)
			looks.closed(t, b, tol)
			assert.InDelta(t, c.at, b.In.X, tol)
			assert.LessOrEqual(t, looks.n, c.looks)
		})
	}
}

// A value near enough to zero ends the search, at the start too.
func TestRootByValue(t *testing.T) {
	looks := counter{f: func(x float64) float64 { return 2 - x*x }, low: 0, high: 2}
	b, err := Root(looks.at(t), looks.bracket(0, 2), Tolerance{Y: 1e-3})
	require.NoError(t, err)
	assert.InDelta(t, 0, b.Nearest().Y, 1e-3)
	assert.InDelta(t, math.Sqrt2, b.Nearest().X, 1e-3/2)
	assert.LessOrEqual(t, looks.n, 6)
	again, err := Root(never(t), b, Tolerance{Y: 1e-3})
	require.NoError(t, err)
	assert.Equal(t, b, again)
}

// Without a tolerance, or with one that no numbers are as close as, a root is known to
// the last few of them.
func TestRootAsCloseAsNumbersGo(t *testing.T) {
	for _, tol := range []float64{0, -1, math.NaN(), 1e-320} {
		for _, scale := range []float64{1e-300, 1, 1e300} {
			looks := counter{f: func(x float64) float64 { return 2 - x/scale }, low: 0, high: 3 * scale}
			b, err := Root(looks.at(t), looks.bracket(0, 3*scale), Tolerance{X: tol})
			require.NoError(t, err)
			assert.InEpsilon(t, 2*scale, b.In.X, 4e-15)
			assert.InEpsilon(t, 2*scale, b.Out.X, 4e-15)
			assert.LessOrEqual(t, looks.n, 62)
		}
	}
}

func TestRootOfNoBracket(t *testing.T) {
	for name, b := range map[string]Bracket{
		"both in":       {Point{0, 1}, Point{1, 1}},
		"both out":      {Point{0, -1}, Point{1, -1}},
		"swapped":       {Point{0, -1}, Point{1, 1}},
		"zero in":       {Point{0, 0}, Point{1, -1}},
		"no number in":  {Point{0, math.NaN()}, Point{1, -1}},
		"no place":      {Point{math.NaN(), 1}, Point{1, -1}},
		"no end":        {Point{0, 1}, Point{math.Inf(1), -1}},
		"both without":  {Point{math.Inf(1), 1}, Point{math.Inf(1), -1}},
		"too far apart": {Point{-math.MaxFloat64, 1}, Point{math.MaxFloat64, -1}},
	} {
		same, err := Root(never(t), b, Tolerance{X: 1e-3})
		require.ErrorIs(t, err, ErrBracket, name)
		if !math.IsNaN(b.In.X) && !math.IsNaN(b.In.Y) {
			assert.Equal(t, b, same, name)
		}
	}
}

// An error ends the search and comes back as it is, with the bracket so far.
func TestRootStops(t *testing.T) {
	f := func(x float64) float64 { return math.Exp(-9*x) - 1e-3 }
	whole := Bracket{Point{0, f(0)}, Point{1, f(1)}}
	last := whole
	for n := range 4 {
		b, err := Root(failsAfter(n, f), whole, Tolerance{X: 1e-9})
		require.ErrorIs(t, err, errStop)
		assert.Positive(t, b.In.Y)
		assert.LessOrEqual(t, b.Out.Y, 0.0)
		if n > 0 {
			assert.Less(t, b.width(), last.width())
		}
		last = b
	}

	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Root(func(float64) (float64, error) { return 0, ctx.Err() }, whole, Tolerance{})
	assert.ErrorIs(t, err, context.Canceled)
}

// Whatever the values on either side of a change of sign, the change is found within the
// tolerance and the stated number of looks, and no look is outside.
func TestRootOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scale := math.Pow(10, float64(rapid.IntRange(-12, 12).Draw(t, "scale")))
		low := scale * rapid.Float64Range(-1, 1).Draw(t, "low")
		high := low + scale*rapid.Float64Range(1e-6, 2).Draw(t, "width")
		edge := low + (high-low)*rapid.Float64Range(0, 1).Draw(t, "edge")
		tol := (high - low) * math.Pow(10, -rapid.Float64Range(0, 14).Draw(t, "digits"))
		seed := rapid.Uint64().Draw(t, "seed")
		falling := rapid.Bool().Draw(t, "falling")
		looks := counter{low: low, high: high, f: func(x float64) float64 {
			return spite(x, edge, seed, falling)
		}}
		a, b := low, high
		if rapid.Bool().Draw(t, "reversed") {
			a, b = b, a
		}
		if !(looks.f(low) > 0) == !(looks.f(high) > 0) {
			t.Skip("the edge is at an end")
		}
		tol = math.Max(tol, 8*spacing(math.Max(math.Abs(low), math.Abs(high))))
		most := int(math.Ceil(math.Log2((high-low)/tol))) + 11
		got, err := Root(looks.at(t), looks.bracket(a, b), Tolerance{X: tol})
		require.NoError(t, err)
		looks.closed(t, got, tol)
		require.LessOrEqual(t, looks.n, most)
	})
}

// spite is above zero on one side of an edge and not on the other, with values that follow
// no rule: of any size, infinite, or none.
func spite(x, edge float64, seed uint64, falling bool) float64 {
	h := (math.Float64bits(x) ^ seed) * 0x9e3779b97f4a7c15
	h ^= h >> 29
	h *= 0xbf58476d1ce4e5b9
	h ^= h >> 32
	size := math.Ldexp(1, int(h%2090)-1070)
	in := (x < edge) == falling
	switch h >> 60 {
	case 0:
		size = math.Inf(1)
	case 1:
		if !in {
			return math.NaN()
		}
	case 2:
		if !in {
			return 0
		}
	}
	if in {
		return size
	}
	return -size
}

// The root of any smooth function that rises or falls is found in far fewer looks.
func TestRootOfSmoothFunctions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bend := rapid.Float64Range(-4, 4).Draw(t, "bend")
		at := rapid.Float64Range(0.05, 0.95).Draw(t, "root")
		sign := rapid.SampledFrom([]float64{-1, 1}).Draw(t, "sign")
		f := func(x float64) float64 { return sign * (x - at) * math.Exp(bend*x) * (1 + x*x) }
		looks := counter{f: f, low: 0, high: 1}
		b, err := Root(looks.at(t), looks.bracket(0, 1), Tolerance{X: 1e-10})
		require.NoError(t, err)
		require.InDelta(t, at, b.In.X, 1e-10)
		require.LessOrEqual(t, looks.n, 20, "halving takes 34")
	})
}

func TestOutward(t *testing.T) {
	f := func(x float64) float64 { return 3 - x }
	for name, c := range map[string]struct {
		from, end, step, growth float64
		in, out                 float64
		ok                      bool
		looks                   int
	}{
		"first step":    {0, 10, 5, 2, 0, 5, true, 1},
		"doubling":      {0, 10, 0.5, 2, 1.5, 3.5, true, 3},
		"onto the zero": {0, 10, 1, 2, 1, 3, true, 2},
		"downward":      {10, 0, 1, 2, 0, 3, true, 4}, // 9, 7, 3 and 0, for zero is out
		"cut at an end": {2, 3.5, 4, 2, 2, 3.5, true, 1},
		"never":         {0, 2, 0.5, 2, 0, 0, false, 3},
		"no way":        {2, 2, 1, 2, 0, 0, false, 0},
		"no step":       {0, 10, 0, 2, 0, 10, true, 1},
		"no growth":     {0, 10, 1, 1, 0, 10, true, 1},
		"no number":     {0, 10, math.NaN(), math.NaN(), 0, 10, true, 1},
	} {
		t.Run(name, func(t *testing.T) {
			looks := counter{f: f, low: math.Min(c.from, c.end), high: math.Max(c.from, c.end)}
			b, ok, err := Outward(looks.at(t), looks.point(c.from), c.end, c.step, c.growth)
			require.NoError(t, err)
			require.Equal(t, c.ok, ok)
			assert.Equal(t, c.looks, looks.n)
			if ok {
				assert.Equal(t, Bracket{looks.point(c.in), looks.point(c.out)}, b)
			}
		})
	}
	_, ok, err := Outward(failsAfter(2, f), Point{0, 3}, 10, 0.5, 2)
	require.ErrorIs(t, err, errStop)
	assert.False(t, ok)
}

// A walk brackets what Root then finds, within the stated number of looks.
func TestOutwardOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from, end := rapid.Float64Range(-1e3, 1e3).Draw(t, "from"), rapid.Float64Range(-1e3, 1e3).Draw(t, "end")
		edge := rapid.Float64Range(-1e3, 1e3).Draw(t, "edge")
		step := math.Pow(10, rapid.Float64Range(-6, 3).Draw(t, "step"))
		growth := rapid.Float64Range(1.1, 4).Draw(t, "growth")
		looks := counter{low: math.Min(from, end), high: math.Max(from, end), f: func(x float64) float64 { return edge - x }}
		b, ok, err := Outward(looks.at(t), looks.point(from), end, step, growth)
		require.NoError(t, err)
		most := math.Ceil(math.Log1p(math.Abs(end-from)*(growth-1)/step) / math.Log(growth))
		require.LessOrEqual(t, float64(looks.n), most+1)
		require.Equal(t, (from < edge) != (end < edge), ok)
		if ok {
			require.True(t, b.In.X < edge && b.Out.X >= edge)
		}
	})
}
