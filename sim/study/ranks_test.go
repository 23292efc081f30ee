package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

func TestQuantile(t *testing.T) {
	for _, c := range []struct {
		sorted  []float64
		p, want float64
	}{
		{[]float64{1, 2, 3, 4, 5}, 0.5, 3},
		{[]float64{1, 2, 3, 4}, 0.5, 2.5},
		{[]float64{1, 2, 3, 4}, 0.05, 1.15},
		{[]float64{1, 2, 3, 4}, 1, 4},
		{[]float64{1, 2, 3, 4}, 0, 1},
		{[]float64{7}, 0.95, 7},
	} {
		require.InDelta(t, c.want, quantile(c.sorted, c.p), 1e-12)
	}
	require.True(t, math.IsNaN(quantile(nil, 0.5)))
}

// Without ties Spearman's correlation is 1 − 6 Σd²/(n³ − n), the textbook formula.
func TestRankCorrelation(t *testing.T) {
	x := []float64{106, 100, 86, 101, 99, 103, 97, 113, 112, 110}
	y := []float64{7, 27, 2, 50, 28, 29, 20, 12, 6, 17}
	rx, ry := ranks(x), ranks(y)
	require.Equal(t, []float64{7, 4, 1, 5, 3, 6, 2, 10, 9, 8}, rx)
	sum := 0.0
	for i := range rx {
		sum += (rx[i] - ry[i]) * (rx[i] - ry[i])
	}
	require.InDelta(t, 194, sum, 1e-12)
	require.InDelta(t, 1-6*194.0/990, rankCorrelation(rx, ry), 1e-12)

	require.Equal(t, []float64{4, 1.5, 1.5, 3}, ranks([]float64{9, 2, 2, 3}))
	require.True(t, math.IsNaN(rankCorrelation(ranks([]float64{1, 1, 1}), ranks([]float64{1, 2, 3}))))
	require.True(t, math.IsNaN(rankCorrelation(nil, nil)))
	require.True(t, math.IsNaN(rankCorrelation([]float64{1}, []float64{1})))
}

// With ties it is the correlation of the ranks, as gonum works it out.
func TestRankCorrelationOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 60).Draw(t, "n")
		rows := rapid.SliceOfN(rapid.Float64Range(-3, 3), n, n)
		x, y := rows.Draw(t, "x"), rows.Draw(t, "y")
		for i := range x {
			x[i], y[i] = math.Round(x[i]), math.Round(2*y[i])
		}
		rx, ry := ranks(x), ranks(y)
		want := stat.Correlation(rx, ry, nil)
		if got := rankCorrelation(rx, ry); !math.IsNaN(want) || !math.IsNaN(got) {
			require.InDelta(t, want, got, 1e-14)
		}
	})
}

// Every row seen has the same chance to be kept.
func TestReservoir(t *testing.T) {
	const size, seen, trials = 10, 40, 4000
	kept := make([]int, seen)
	for seed := range uint64(trials) {
		r := newReservoir(size, 2, seed)
		for i := range seen {
			r.add(float64(i), -float64(i))
		}
		require.Equal(t, size, r.kept())
		opposite := r.column(1)
		for i, v := range r.column(0) {
			kept[int(v)]++
			if v != -opposite[i] {
				t.Fatal("a row came apart")
			}
		}
	}
	const share = float64(size) / seen
	for i, n := range kept { // five standard errors of a binomial
		require.InDelta(t, trials*share, n, 5*math.Sqrt(trials*share*(1-share)), i)
	}
}

func TestEllipseOfFew(t *testing.T) {
	var p plane
	require.True(t, math.IsNaN(p.ellipse().East))
	p.add(1, 2)
	require.Equal(t, 1.0, p.ellipse().East)
	require.True(t, math.IsNaN(p.ellipse().Major))
	// On a line towards the north-west the minor axis is nothing.
	p.add(0, 3)
	p.add(2, 1)
	e := p.ellipse()
	require.InDelta(t, 0, e.Minor, 1e-6)
	require.InDelta(t, 3*math.Pi/4, e.Heading, 1e-9)
	require.InDelta(t, math.Sqrt(chiSquare90*2), e.Major, 1e-9)
}
