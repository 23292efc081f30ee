package page

import (
	"math"

	"gonum.org/v1/plot/vg"
)

// rings draws circles around the origin of a map, each labelled where that hides
// nothing.
func (s sheet) rings(a *area) {
	inner := *s.Canvas
	inner.Rectangle = a.frame
	for _, r := range a.Rings {
		if !drawable(r.Radius) {
			continue
		}
		const corners = 180
		var round []vg.Point
		for i := range corners + 1 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
			round = append(round, a.point(r.Radius*cos, r.Radius*sin))
		}
		inner.StrokeLines(ringLine, inner.ClipLinesXY(round)...)
		w, h := sized(r.Label)
		for _, turn := range []float64{-0.25, 0.75, -0.75, 0.25, 0.5, 0, 1, -0.5} {
			sin, cos := math.Sincos(turn * math.Pi)
			box := rectangle(a.point(r.Radius*cos, r.Radius*sin), w, h)
			if a.cost(box) < 1 {
				a.taken = append(a.taken, box)
				s.label(box, clean(r.Label))
				break
			}
		}
	}
}
