package draw

import (
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
