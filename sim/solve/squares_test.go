package solve

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Statistical Reference Datasets of NIST, nonlinear regression (itl.nist.gov/div898/strd):
// data, starts and certified values written down from memory; SciPy finds the same values
// from these data to eight digits.
var nist = []struct {
	name   string
	y, x   []float64
	model  func(b []float64, x float64) float64
	starts [2][2]float64
	b, sd  [2]float64
	sum    float64
}{
	{"Misra1a",
		[]float64{10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78},
		[]float64{77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0},
		func(b []float64, x float64) float64 { return b[0] * (1 - math.Exp(-b[1]*x)) },
		[2][2]float64{{500, 0.0001}, {250, 0.0005}},
		[2]float64{2.3894212918e+02, 5.5015643181e-04}, [2]float64{2.7070075241e+00, 7.2668688436e-06}, 1.2455138894e-01},
	{"DanWood",
		[]float64{2.138, 3.421, 3.597, 4.340, 4.882, 5.660}, []float64{1.309, 1.471, 1.490, 1.565, 1.611, 1.680},
		func(b []float64, x float64) float64 { return b[0] * math.Pow(x, b[1]) },
		[2][2]float64{{1, 5}, {0.7, 4}},
		[2]float64{7.6886226176e-01, 3.8604055871e+00}, [2]float64{1.8281973860e-02, 5.1726610913e-02}, 4.3173084083e-03},
	{"BoxBOD",
		[]float64{109, 149, 149, 191, 213, 224}, []float64{1, 2, 3, 5, 7, 10},
		func(b []float64, x float64) float64 { return b[0] * (1 - math.Exp(-b[1]*x)) },
		[2][2]float64{{1, 1}, {100, 0.75}},
		[2]float64{2.1380940889e+02, 5.4723748542e-01}, [2]float64{1.2354515176e+01, 1.0455993237e-01}, 1.1680088766e+03},
}

// productAt is that of the slopes with themselves.
func productAt(t *testing.T, f Residuals, x []float64) *Matrix {
	t.Helper()
	s := newSquares(f, x, Stop{})
	require.NoError(t, s.findSlopes())
	p := NewMatrix(len(x), len(x))
	for j := range x {
		for k := range x {
			for i := range f.Count {
				p.Set(j, k, p.At(j, k)+s.slopes.At(i, j)*s.slopes.At(i, k))
			}
		}
	}
	return p
}

// inverseAt is that of the product: times the residuals' variance the covariance of the numbers.
func inverseAt(t *testing.T, f Residuals, x []float64) *Matrix {
	t.Helper()
	inverse, ok := productAt(t, f, x).Inverse()
	require.True(t, ok)
	return inverse
}

func TestLeastSquaresOfNIST(t *testing.T) {
	for _, x := range nist {
		for _, start := range x.starts {
			f := Residuals{Count: len(x.y), At: func(b, dst []float64) error {
				for i := range dst {
					dst[i] = x.y[i] - x.model(b, x.x[i])
				}
				return nil
			}}
			// A first reach of 100 leaps from BoxBOD's first start to where the data tell nothing.
			got, err := LeastSquares(f, start[:], Stop{Gain: 1e-15, Closer: 1e-13, Reach: 1})
			require.NoError(t, err)
			assert.True(t, got.Converged, x.name)
			assert.InEpsilon(t, x.sum, got.Sum, 1e-10, x.name)
			inverse := inverseAt(t, f, got.X)
			for j := range x.b {
				assert.InEpsilon(t, x.b[j], got.X[j], 1e-7, "%s from %v", x.name, start)
				sd := math.Sqrt(got.Sum / float64(len(x.y)-2) * inverse.At(j, j))
				assert.InEpsilon(t, x.sd[j], sd, 1e-6, x.name)
			}
		}
	}
}

// squaresReference is what SciPy finds: testdata/reference/squares.py.
type squaresReference struct {
	T    []float64
	Fits []struct {
		Name                        string
		Start, Y, X, Spiked, Robust []float64
		SD, Sum                     float64
		Inverse                     [][]float64
	}
	Smooth []struct {
		Width           int
		Y, Value, Slope []float64
	}
}

func readSquares(t *testing.T) squaresReference {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", "squares.json"))
	require.NoError(t, err)
	var ref squaresReference
	require.NoError(t, json.Unmarshal(text, &ref))
	require.Len(t, ref.Fits, 2)
	require.Len(t, ref.Smooth, 3)
	return ref
}

var squaresModels = map[string]func(x []float64, t float64) float64{
	"decay": func(x []float64, t float64) float64 { return x[0]*math.Exp(-x[1]*t) + x[2] },
	"gauss": func(x []float64, t float64) float64 {
		u := (t - x[1]) / x[2]
		return x[0]*math.Exp(-u*u) + x[3]*t
	},
}

func TestLeastSquaresAsSciPy(t *testing.T) {
	ref := readSquares(t)
	for _, x := range ref.Fits {
		model := squaresModels[x.Name]
		residuals := func(y []float64, weigh func(r float64) float64) Residuals {
			return Residuals{Count: len(y), At: func(b, dst []float64) error {
				for i := range dst {
					dst[i] = weigh((model(b, ref.T[i]) - y[i]) / x.SD)
				}
				return nil
			}}
		}
		plain := residuals(x.Y, func(r float64) float64 { return r })
		got, err := LeastSquares(plain, x.Start, Stop{Gain: 1e-15, Closer: 1e-13})
		require.NoError(t, err)
		require.True(t, got.Converged, x.Name)
		assert.InEpsilon(t, x.Sum, got.Sum, 1e-12)
		inverse := inverseAt(t, plain, got.X)
		for j := range x.X {
			assert.InEpsilon(t, x.X[j], got.X[j], 1e-7, x.Name)
			for k := range x.X {
				assert.InDelta(t, x.Inverse[j][k], inverse.At(j, k), 1e-6*math.Sqrt(x.Inverse[j][j]*x.Inverse[k][k]), x.Name)
			}
		}
		got, err = LeastSquares(residuals(x.Spiked, Bounded), x.Start, Stop{Gain: 1e-15, Closer: 1e-13})
		require.NoError(t, err)
		for j := range x.Robust {
			assert.InEpsilon(t, x.Robust[j], got.X[j], 2e-5, "%s by Huber's rule", x.Name)
		}
	}
}

func TestSmoothAsSciPy(t *testing.T) {
	ref := readSquares(t)
	for _, x := range ref.Smooth {
		got := Smooth(ref.T, x.Y, x.Width)
		for i := range got {
			assert.InDelta(t, x.Value[i], got[i].Value, 1e-10, "width %d at %d", x.Width, i)
			assert.InDelta(t, x.Slope[i], got[i].Slope, 1e-9, "width %d at %d", x.Width, i)
		}
	}
}

// A parabola is read as it is whatever the times, with gaps too.
func TestSmoothOfUnevenTimes(t *testing.T) {
	at := []float64{0, 0.1, 0.35, 0.4, 0.8, 0.81, 1.2, 1.7, 1.9}
	y := make([]float64, len(at))
	for i, u := range at {
		y[i] = 3 - 2*u + 5*u*u
	}
	y[4] = math.NaN()
	for i, s := range Smooth(at, y, 5) {
		assert.InDelta(t, 3-2*at[i]+5*at[i]*at[i], s.Value, 1e-10)
		assert.InDelta(t, -2+10*at[i], s.Slope, 1e-9)
	}
	for _, s := range Smooth([]float64{1, 2}, []float64{1, 2}, 3) {
		assert.True(t, math.IsNaN(s.Value) && math.IsNaN(s.Slope))
	}
	for _, s := range Smooth([]float64{1, 1, 1}, []float64{1, 2, 3}, 3) {
		assert.True(t, math.IsNaN(s.Value))
	}
}

// Weights by hand: 1 up to 1.345, then 1.345/|r|.
func TestHuber(t *testing.T) {
	for r, want := range map[float64]float64{0: 1, 1: 1, -1.345: 1, 2: 0.6725, -2.69: 0.5, 13.45: 0.1} {
		assert.InDelta(t, want, Huber(r, HuberK), 1e-15)
	}
	// The squares of what is bounded are twice Huber's loss, r²/2 or k(|r| − k/2): of 2 that is 2·1.345·(2 − 0.6725).
	assert.InDelta(t, 1.345*1.345, Bounded(1.345)*Bounded(1.345), 1e-12)
	assert.InDelta(t, 2*1.345*(2-0.6725), Bounded(-2)*Bounded(-2), 1e-12)
	assert.Negative(t, Bounded(-2))
}

func TestBoundsHoldTheNumbers(t *testing.T) {
	// The least of (x−3)² + (y−1)² + (x−y)² with x at most 1: y between 1 and 1.
	f := Residuals{Count: 3, At: func(x, dst []float64) error {
		if x[0] > 1 {
			return errors.New("beyond the bound")
		}
		dst[0], dst[1], dst[2] = x[0]-3, x[1]-1, x[0]-x[1]
		return nil
	}, Least: []float64{-5, -5}, Greatest: []float64{1, 5}}
	for _, start := range [][]float64{{0, 0}, {1, 4}, {-5, -5}, {7, 0}} {
		got, err := LeastSquares(f, start, Stop{})
		require.NoError(t, err)
		assert.True(t, got.Converged)
		assert.InDelta(t, 1, got.X[0], 1e-9)
		assert.InDelta(t, 1, got.X[1], 1e-6)
	}
}

// A start next to 0 is none to stay at.
func TestStartNextToNothing(t *testing.T) {
	f := Residuals{Count: 2, At: func(x, dst []float64) error {
		dst[0], dst[1] = 200*(x[0]-0.03), 200*(x[0]-0.05)
		return nil
	}, Slopes: func(_ []float64, dst *Matrix) error {
		dst.Set(0, 0, 200)
		dst.Set(1, 0, 200)
		return nil
	}}
	for _, at := range []float64{0, 1e-15, -1e-15, 1e-300} {
		got, err := LeastSquares(f, []float64{at}, Stop{Gain: 1e-8, Closer: 1e-8, Reach: 1})
		require.NoError(t, err)
		assert.InDelta(t, 0.04, got.X[0], 1e-9, at)
	}
}

func TestNumbersThatAreNotToldApart(t *testing.T) {
	f := Residuals{Count: 3, At: func(x, dst []float64) error {
		for i := range dst {
			dst[i] = x[0] + x[1] - 2
		}
		return nil
	}}
	got, err := LeastSquares(f, []float64{5, 0}, Stop{})
	require.NoError(t, err)
	assert.InDelta(t, 0, got.Sum, 1e-12)
	if inverse, ok := productAt(t, f, got.X).Inverse(); ok {
		assert.Greater(t, inverse.At(0, 0), 1e8)
	}
}

func TestLeastSquaresEndsEarly(t *testing.T) {
	broken := errors.New("broken")
	_, err := LeastSquares(Residuals{Count: 1, At: func(_, _ []float64) error { return broken }}, []float64{1}, Stop{})
	assert.ErrorIs(t, err, broken)
	looks := 0
	f := Residuals{Count: 2, At: func(x, dst []float64) error {
		looks++
		dst[0], dst[1] = 10*(x[1]-x[0]*x[0]), 1-x[0] // Rosenbrock 1960
		return nil
	}}
	got, err := LeastSquares(f, []float64{-1.2, 1}, Stop{Most: 2})
	require.NoError(t, err)
	assert.False(t, got.Converged)
	assert.LessOrEqual(t, got.Steps, 2)
	got, err = LeastSquares(f, []float64{-1.2, 1}, Stop{})
	require.NoError(t, err)
	assert.True(t, got.Converged)
	assert.InDelta(t, 1, got.X[0], 1e-8)
}
