package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// A long series keeps its peaks and gets short; a short one stays as it is.
func TestThinned(t *testing.T) {
	const n, columns = 100_000, 50
	x, y := make([]float64, n), make([]float64, n)
	for i := range x {
		x[i], y[i] = float64(i), math.Sin(float64(i)/9000)
	}
	y[31_234], y[77_000], y[50_000] = 9, -9, math.NaN()
	tx, ty := Thinned(x, y, 20_000, 90_000, columns)
	require.LessOrEqual(t, len(tx), 4*columns+6)
	require.Len(t, ty, len(tx))
	require.Contains(t, ty, 9.0)
	require.Contains(t, ty, -9.0)
	for i := range tx {
		require.False(t, math.IsNaN(ty[i]), tx[i])
		require.True(t, i == 0 || tx[i] > tx[i-1], "in order")
		require.True(t, tx[i] >= 20_000-1 && tx[i] <= 90_000+1, "of the part shown, and one beyond to each side")
	}
	tx, ty = Thinned(x[:30], y[:30], 0, 40, columns)
	require.Equal(t, x[:30], tx)
	require.Equal(t, y[:30], ty)
	tx, _ = Thinned(nil, nil, 0, 1, columns)
	require.Empty(t, tx)
}
