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

// compassSize is the room that the compass takes right of the frame.
func (a *area) compassSize() vg.Point {
	size := vg.Point{X: gap*2 + compassRadius*2, Y: compassRadius*2 + axisSize}
	if a.Compass.Wind {
		size.X += compassRadius*2 + gap*3
	}
	if text := a.compassLabel(); text != "" {
		w, h := sized(text)
		size.X, size.Y = max(size.X, gap*2+w), size.Y+h
	}
	return size
}

func (a *area) compassLabel() string {
	return fit(plain(labelSize), mostSide-gap*3, a.Compass.Label)
}

// compass draws an arrow to the north at the lower right of the frame, outside, where
// it hides nothing; beside it one along which the wind blows.
func (s sheet) compass(a *area) {
	c := a.Compass
	if c == nil {
		return
	}
	text := a.compassLabel()
	north := vg.Point{X: a.frame.Max.X + gap*2 + compassRadius, Y: a.frame.Min.Y + compassRadius}
	if text != "" {
		s.write(plain(labelSize), black, vg.Point{X: a.frame.Max.X + gap*2, Y: a.frame.Min.Y + 1}, atLeft, text)
		north.Y += labelSize * 1.15
	}
	s.arrow(north, 0)
	s.write(bold(axisSize), black, vg.Point{X: north.X, Y: north.Y + compassRadius + 2}, atCentre, "N")
	if c.Wind {
		wind := vg.Point{X: north.X + compassRadius*2 + gap*3, Y: north.Y}
		s.arrow(wind, c.WindFrom+math.Pi)
		s.write(plain(labelSize), black, vg.Point{X: wind.X, Y: wind.Y + compassRadius + 2}, atCentre, "wind")
	}
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
