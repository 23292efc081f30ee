package solve

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The roots and lowest places of published functions as SciPy finds them:
// testdata/reference/solve.py, which names its sources, and its versions in the file.
type reference struct {
	Roots []struct {
		Name          string
		N, A, B, Root float64
		Looks         int
	}
	Lowest []struct {
		A, B, X, Y float64
		Looks      int
	}
}

func readReference(t *testing.T) reference {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", "solve.json"))
	require.NoError(t, err)
	var ref reference
	require.NoError(t, json.Unmarshal(text, &ref))
	require.Len(t, ref.Roots, 48)
	require.Len(t, ref.Lowest, 19)
	return ref
}

// published are the functions of solve.py by the same names.
var published = map[string]func(n, x float64) float64{
	"sine less half": func(_, x float64) float64 { return math.Sin(x) - x/2 },
	"poles": func(_, x float64) float64 {
		sum := 0.0
		for i := 1.0; i <= 20; i++ {
			sum += (2*i - 5) * (2*i - 5) / math.Pow(x-i*i, 3)
		}
		return -2 * sum
	},
	"exponential":      func(n, x float64) float64 { return -20 * n * x * math.Exp(-n*x) },
	"power":            func(n, x float64) float64 { return math.Pow(x, n) - 0.2 },
	"power of one":     func(n, x float64) float64 { return math.Pow(x, n) - 1 },
	"sine":             func(_, x float64) float64 { return math.Sin(x) - 0.5 },
	"two exponentials": func(n, x float64) float64 { return 2*x*math.Exp(-n) - 2*math.Exp(-n*x) + 1 },
	"squares":          func(n, x float64) float64 { return (1+(1-n)*(1-n))*x - (1-n*x)*(1-n*x) },
	"square and power": func(n, x float64) float64 { return x*x - math.Pow(1-x, n) },
	"fourths":          func(n, x float64) float64 { return (1+math.Pow(1-n, 4))*x - math.Pow(1-n*x, 4) },
	"exponential and power": func(n, x float64) float64 {
		return math.Exp(-n*x)*(x-1) + math.Pow(x, n)
	},
	"hyperbola": func(n, x float64) float64 { return (n*x - 1) / ((n - 1) * x) },
	"roots":     func(n, x float64) float64 { return math.Pow(x, 1/n) - math.Pow(n, 1/n) },
	"flat": func(n, x float64) float64 {
		if x >= 0 {
			return n / 20 * (x/1.5 + math.Sin(x) - 1)
		}
		return -n / 20
	},
	"steep": func(n, x float64) float64 {
		switch {
		case x > 2e-3/(1+n):
			return math.E - 1.859
		case x >= 0:
			return math.Exp((n+1)*x/2*1e3) - 1.859
		}
		return -0.859
	},
}

func TestRootAgainstSciPy(t *testing.T) {
	ours, theirs := 0, 0
	for _, r := range readReference(t).Roots {
		f := published[r.Name]
		require.NotNil(t, f, r.Name)
		looks := counter{f: func(x float64) float64 { return f(r.N, x) }, low: r.A, high: r.B}
		tol := 1e-6 * (r.B - r.A)
		b, err := Root(looks.at(t), looks.bracket(r.A, r.B), Tolerance{X: tol})
		require.NoError(t, err, r.Name)
		looks.closed(t, b, tol)
		assert.InDelta(t, r.Root, b.In.X, tol, "%s %g", r.Name, r.N)
		ours, theirs = ours+looks.n, theirs+r.Looks

		b, err = Root(looks.at(t), looks.bracket(r.A, r.B), Tolerance{})
		require.NoError(t, err, r.Name)
		assert.InDelta(t, r.Root, b.Nearest().X, 1e-13*(r.B-r.A), "%s %g", r.Name, r.N)
	}
	t.Logf("%d looks, SciPy's brentq %d with one end left where it was", ours, theirs)
	assert.LessOrEqual(t, ours, 2*theirs)
}

func TestMinimumAgainstSciPy(t *testing.T) {
	ours, theirs := 0, 0
	for _, r := range readReference(t).Lowest {
		looks := counter{f: poles, low: r.A, high: r.B}
		at := looks.point
		p, err := Minimum(looks.at(t), at(r.A), at((r.A+r.B)/2), at(r.B), 1e-6)
		require.NoError(t, err)
		assert.InDelta(t, r.X, p.X, 2e-6)
		assert.InEpsilon(t, r.Y, p.Y, 1e-10)
		ours, theirs = ours+looks.n, theirs+r.Looks
	}
	t.Logf("%d looks, SciPy's bounded method %d", ours, theirs)
	assert.LessOrEqual(t, ours, theirs+theirs/4)
}

// poles is Brent's function with a valley between each two of its poles.
func poles(x float64) float64 {
	sum := 0.0
	for i := 1.0; i <= 20; i++ {
		sum += math.Pow((2*i-5)/(x-i*i), 2)
	}
	return sum
}
