package solve

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/optimize/functions"
	"pgregory.net/rapid"
)

// The test functions of Moré, Garbow and Hillstrom, ACM Transactions on Mathematical
// Software 7 (1981) 17, as gonum has them, with their standard starts and lowest values.
// One is added, so that a share of the value is something.
var several = map[string]struct {
	f     func(x []float64) float64
	from  []float64
	least float64
	tol   float64 // of the value
}{
	"Rosenbrock":        {functions.ExtendedRosenbrock{}.Func, []float64{-1.2, 1}, 0, 1e-10},
	"Beale":             {functions.Beale{}.Func, []float64{1, 0.8}, 0, 1e-10}, // not from 1, 1, where corners are equally high
	"helical valley":    {functions.HelicalValley{}.Func, []float64{-1, 0, 0}, 0, 1e-10},
	"Box":               {functions.Box3D{}.Func, []float64{0, 10, 20}, 0, 1e-10},
	"Brown and Dennis":  {functions.BrownAndDennis{}.Func, []float64{25, 5, -5, -1}, 85822.20162635, 1e-3},
	"Wood":              {functions.Wood{}.Func, []float64{-3, -1, -3, -1}, 0, 1e-10},
	"Powell's singular": {functions.ExtendedPowellSingular{}.Func, []float64{3, -1, 0, 1}, 0, 1e-8},
	"one number":        {func(x []float64) float64 { return math.Cosh(x[0] - 3) }, []float64{0}, 1, 1e-12},
}

func TestSimplex(t *testing.T) {
	for name, c := range several {
		t.Run(name, func(t *testing.T) {
			looks := 0
			x, y, err := Simplex(func(x []float64) (float64, error) { looks++; return 1 + c.f(x), nil }, c.from,
				Descent{Size: 0.5, Gain: 1e-13, Most: 2000})
			require.NoError(t, err)
			assert.InDelta(t, c.least, y-1, c.tol)
			assert.Equal(t, 1+c.f(x), y)
			assert.Less(t, looks, 2000)
		})
	}
}

// Step by step it goes where gonum's does.
func TestSimplexAgainstGonum(t *testing.T) {
	for name, c := range several {
		for _, most := range []int{len(c.from) + 3, 30, 400} {
			const size, gain = 0.3, 1e-6
			var theirs, ours []float64
			result, err := optimize.Minimize(optimize.Problem{Func: func(x []float64) float64 {
				theirs = append(theirs, 1+c.f(x))
				return theirs[len(theirs)-1]
			}}, c.from, &optimize.Settings{FuncEvaluations: most,
				Converger: &optimize.FunctionConverge{Relative: gain, Iterations: 3 * (len(c.from) + 1)}}, &optimize.NelderMead{SimplexSize: size})
			require.NoError(t, err)
			_, y, err := Simplex(func(x []float64) (float64, error) {
				ours = append(ours, 1+c.f(x))
				return ours[len(ours)-1], nil
			}, c.from, Descent{Size: size, Gain: gain, Most: most})
			require.NoError(t, err)
			require.Len(t, ours, len(theirs), name)
			require.InDeltaSlice(t, theirs, ours, 1e-9*theirs[0], name)
			assert.Equal(t, slices.Min(ours), y, name)
			assert.LessOrEqual(t, y, result.F*(1+1e-12), "%s: at its limit it hands back the last round, not the least seen", name)
		}
	}
}

func TestSimplexStops(t *testing.T) {
	bowl := func(x []float64) float64 { return (x[0]-1.1)*(x[0]-1.1) + 3*(x[1]+2.3)*(x[1]+2.3) }
	last := math.Inf(1)
	for n := range 40 {
		left := n
		x, y, err := Simplex(func(x []float64) (float64, error) {
			if left--; left < 0 {
				return math.NaN(), errStop
			}
			return bowl(x), nil
		}, []float64{0, 0}, Descent{Size: 0.5, Gain: 1e-12, Most: 1000})
		require.ErrorIs(t, err, errStop)
		if n > 0 {
			assert.Equal(t, bowl(x), y)
		}
		assert.LessOrEqual(t, y, last)
		last = y

		looks := 0
		_, same, err := Simplex(func(x []float64) (float64, error) { looks++; return bowl(x), nil }, []float64{0, 0},
			Descent{Size: 0.5, Gain: 1e-12, Most: n})
		require.NoError(t, err)
		assert.Equal(t, n, looks)
		assert.Equal(t, y, same, "the least seen, whatever ends it")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, _, err := Simplex(func([]float64) (float64, error) { return 0, ctx.Err() }, []float64{0}, Descent{Size: 1, Most: 9})
	assert.ErrorIs(t, err, context.Canceled)
}

// Where nothing is defined it gives up; from there it finds its way to where something is.
func TestSimplexUndefined(t *testing.T) {
	for _, none := range []float64{math.NaN(), math.Inf(1)} {
		looks := 0
		x, y, err := Simplex(func([]float64) (float64, error) { looks++; return none, nil }, []float64{1, 2}, Descent{Size: 0.1, Gain: 1e-6, Most: 500})
		require.NoError(t, err)
		assert.Equal(t, []float64{1, 2}, x)
		assert.True(t, math.IsInf(y, 1))
		assert.Less(t, looks, 60)

		x, y, err = Simplex(func(x []float64) (float64, error) {
			if x[0] < 1.05 {
				return none, nil
			}
			return (x[0]-2)*(x[0]-2) + x[1]*x[1], nil
		}, []float64{1, 0.5}, Descent{Size: 0.1, Gain: 1e-9, Most: 500})
		require.NoError(t, err)
		assert.InDelta(t, 0, y, 1e-6)
		assert.InDelta(t, 2, x[0], 1e-3)
	}
	x, y, err := Simplex(func([]float64) (float64, error) { return 7, nil }, nil, Descent{Most: 5})
	require.NoError(t, err)
	assert.Empty(t, x)
	assert.Equal(t, 7.0, y)
}

// Down any bowl it ends lower than it began, with the least seen, after no more looks than
// allowed.
func TestSimplexOfAnyBowl(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "numbers")
		at := rapid.SliceOfN(rapid.Float64Range(-1, 1), n, n).Draw(t, "at")
		from := rapid.SliceOfN(rapid.Float64Range(-1, 1), n, n).Draw(t, "from")
		steep := rapid.SliceOfN(rapid.Float64Range(0.3, 3), n, n).Draw(t, "steep")
		most := rapid.IntRange(1, 4000).Draw(t, "most")
		bowl := func(x []float64) float64 {
			sum := 0.0
			for k := range x {
				d := steep[k] * (x[k] - at[k])
				sum += d * d
			}
			return sum
		}
		looks, least := 0, math.Inf(1)
		x, y, err := Simplex(func(x []float64) (float64, error) {
			looks++
			least = math.Min(least, bowl(x))
			return bowl(x), nil
		}, from, Descent{Size: 0.2, Gain: 1e-9, Most: most})
		require.NoError(t, err)
		require.LessOrEqual(t, looks, most)
		require.Equal(t, bowl(x), y)
		require.LessOrEqual(t, y, bowl(from))
		require.Equal(t, least, y)
	})
}
