package study

import (
	"math"
	"slices"
)

// quantile is the p-quantile of rising numbers, linear between order statistics:
// type 7 of Hyndman and Fan, American Statistician 50 (1996) 361. NaN of none.
func quantile(sorted []float64, p float64) float64 {
	n := len(sorted)
	if n == 0 {
		return math.NaN()
	}
	h := p * float64(n-1)
	i := int(h)
	if i >= n-1 {
		return sorted[n-1]
	}
	return sorted[i] + (h-float64(i))*(sorted[i+1]-sorted[i])
}

// ranks are the places of numbers in rising order, from 1; equal ones share the mean
// of theirs. None is NaN.
func ranks(x []float64) []float64 {
	type placed struct {
		v  float64
		at int
	}
	order := make([]placed, len(x))
	for i, v := range x {
		order[i] = placed{v, i}
	}
	slices.SortFunc(order, func(a, b placed) int {
		switch { // faster than cmp.Compare, which looks for NaN too
		case a.v < b.v:
			return -1
		case a.v > b.v:
			return 1
		}
		return 0
	})
	r := make([]float64, len(x))
	for i := 0; i < len(order); {
		j := i + 1
		for j < len(order) && order[j].v == order[i].v {
			j++
		}
		shared := float64(i+1+j) / 2
		for ; i < j; i++ {
			r[order[i].at] = shared
		}
	}
	return r
}

// rankCorrelation is Spearman's: the correlation of the ranks, whose mean is known. NaN
// when either row is all the same, or there are fewer than two.
func rankCorrelation(ranksX, ranksY []float64) float64 {
	middle := float64(len(ranksX)+1) / 2
	xx, yy, xy := 0.0, 0.0, 0.0
	for i := range ranksX {
		x, y := ranksX[i]-middle, ranksY[i]-middle
		xx, yy, xy = xx+x*x, yy+y*y, xy+x*y
	}
	return xy / math.Sqrt(xx*yy)
}
