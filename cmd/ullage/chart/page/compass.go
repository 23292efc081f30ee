package page

import (
	"math"

	"gonum.org/v1/plot/vg"
)

// Sizes of the compass.
const (
	compassRadius = vg.Length(17)
	arrowHead     = vg.Length(6)
)

// compass draws an arrow to the north in the upper right corner, and beside it
// one along which the wind blows.
func (s sheet) compass(a *area) {
	c := a.Compass
	if c == nil {
		return
	}
	north := vg.Point{X: a.frame.Max.X - compassRadius - gap*2, Y: a.frame.Max.Y - compassRadius - gap*4}
	wind := north.Sub(vg.Point{X: compassRadius*2 + gap*3})
	text := fit(plain(labelSize), a.frame.Size().X/2, c.Label)
	w, h := sized(text)
	box := vg.Rectangle{
		Min: vg.Point{X: north.X - compassRadius, Y: north.Y - compassRadius - gap},
		Max: vg.Point{X: north.X + compassRadius, Y: north.Y + compassRadius + labelSize},
	}
	if c.Wind {
		box.Min.X = wind.X - compassRadius
	}
	if text != "" {
		box.Min.X = min(box.Min.X, box.Max.X-w)
		box.Min.Y -= h
	}
	s.fill(white, box)
	a.taken = append(a.taken, box)
	s.arrow(north, 0)
	s.write(bold(axisSize), black, vg.Point{X: north.X, Y: north.Y + compassRadius + 2}, atCentre, "N")
	if c.Wind {
		s.arrow(wind, c.WindFrom+math.Pi)
		s.write(plain(labelSize), black, vg.Point{X: wind.X, Y: wind.Y + compassRadius + 2}, atCentre, "wind")
	}
	s.write(plain(labelSize), black, vg.Point{X: box.Max.X, Y: box.Min.Y + h*0.25}, atRight, text)
}

// arrow draws one through a middle, towards a compass direction.
func (s sheet) arrow(middle vg.Point, heading float64) {
	sin, cos := math.Sincos(heading)
	along := vg.Point{X: vg.Length(sin), Y: vg.Length(cos)}
	across := vg.Point{X: along.Y, Y: -along.X}
	tip, tail := middle.Add(along.Scale(compassRadius)), middle.Sub(along.Scale(compassRadius))
	neck := tip.Sub(along.Scale(arrowHead))
	s.StrokeLine2(frameLine, tail.X, tail.Y, neck.X, neck.Y)
	s.FillPolygon(black, []vg.Point{tip, neck.Add(across.Scale(arrowHead * 0.45)), neck.Sub(across.Scale(arrowHead * 0.45))})
}

// rings draws circles around the origin of a map.
func (s sheet) rings(a *area) {
	inner := *s.Canvas
	inner.Rectangle = a.frame
	for _, r := range a.Rings {
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
				s.label(box, r.Label)
				break
			}
		}
	}
}
