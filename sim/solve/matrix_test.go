package solve

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// The triangle is that of gonum, but for signs, and so is the inverse.
func TestMatrixAsGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{1, 2, 5, 9} {
		m := NewMatrix(40, n+1)
		for i := range m.V {
			m.V[i] = rng.NormFloat64() * []float64{1, 1e5, 1e-4}[i%3]
		}
		dense := mat.NewDense(m.Rows, m.Columns, append([]float64(nil), m.V...))
		var qr mat.QR
		qr.Factorize(dense)
		var want mat.Dense
		qr.RTo(&want)
		r, b := m.top(n)
		for i := range n {
			sign := 1.0
			if want.At(i, i)*r.At(i, i) < 0 {
				sign = -1
			}
			for j := i; j < n; j++ {
				assert.InDelta(t, want.At(i, j), sign*r.At(i, j), 1e-9*(1+mat.Norm(&want, 1)))
			}
			assert.InDelta(t, want.At(i, n), sign*b[i], 1e-9*(1+mat.Norm(&want, 1)))
		}
		a := NewMatrix(n, n)
		for i := range n {
			for j := range n {
				for k := range dense.RawMatrix().Rows {
					a.V[i*n+j] += dense.At(k, i) * dense.At(k, j)
				}
			}
		}
		got, ok := a.Inverse()
		require.True(t, ok)
		var product mat.Dense
		product.Mul(mat.NewDense(n, n, a.V), mat.NewDense(n, n, got.V))
		for i := range n {
			for j := range n {
				size := 1.0
				if i != j {
					size = a.At(i, i) / a.At(j, j)
				}
				want := 0.0
				if i == j {
					want = 1
				}
				assert.InDelta(t, want, product.At(i, j), 1e-8*(1+size))
			}
		}
	}
	_, ok := (&Matrix{2, 2, []float64{1, 2, 2, 1}}).Inverse()
	assert.False(t, ok, "not positive definite")
}
