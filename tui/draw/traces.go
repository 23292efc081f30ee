package draw

import (
	"math"
	"sort"

	"ullage/tui/plot"
)

// BestSign marks the best of several.
const BestSign = '*'

// OtherTrace is how the i-th trace beside the one that matters most is drawn, so that
// each is told apart with and without colour. That one is solid, in [plot.TraceA].
func OtherTrace(i int) (plot.Style, plot.Ink) {
	styles := [...]plot.Style{plot.Dashed, plot.Dotted}
	inks := [...]plot.Ink{plot.TraceC, plot.TraceD, plot.TraceB}
	return styles[i%len(styles)], inks[i%len(inks)]
}

// Lettered are two signs, 'A' and on, on the i-th trace of so many: each trace's in
// places of its own, so that traces that run together keep their letters apart.
func Lettered(line plot.Series, until float64, i, of int) []plot.PointMark {
	var out []plot.PointMark
	for _, half := range []float64{0, 0.5} {
		at := until * (half + 0.1 + 0.35*float64(i)/float64(of))
		if j := sort.SearchFloat64s(line.X, at); j < len(line.X) {
			out = append(out, plot.PointMark{X: line.X[j], Y: line.Y[j], Sign: 'A' + rune(i)})
		}
	}
	return out
}

// Thinned are the samples of a series between two places, x rising: all of them where there are
// few, else of each half of a column the least and the greatest, so that no peak is lost and
// drawing takes no longer than a screen needs.
func Thinned(x, y []float64, from, to float64, columns int) (tx, ty []float64) {
	i, j := sort.SearchFloat64s(x, from), sort.SearchFloat64s(x, to)
	i, j = max(i-1, 0), min(j+1, len(x)) // the line runs on over the edge
	x, y = x[i:j], y[i:j]
	bins := 2 * columns
	if len(x) <= 2*bins || bins == 0 || !(to > from) {
		return x, y
	}
	put := func(k int) { tx, ty = append(tx, x[k]), append(ty, y[k]) }
	for a := 0; a < len(x); {
		end := from + (math.Floor((x[a]-from)/(to-from)*float64(bins))+1)*(to-from)/float64(bins)
		least, most := a, a
		b := a + 1
		for ; b < len(x) && x[b] < end; b++ {
			if math.IsNaN(y[b]) {
				continue
			}
			if !(y[b] >= y[least]) {
				least = b
			}
			if !(y[b] <= y[most]) {
				most = b
			}
		}
		put(min(least, most))
		if least != most {
			put(max(least, most))
		}
		a = b
	}
	return tx, ty
}
