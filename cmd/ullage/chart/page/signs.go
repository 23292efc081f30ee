package page

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Sign is the shape of a point.
type Sign int

// The signs.
const (
	NoSign Sign = iota
	Dot         // small, for thousands
	Disc
	Ringlet
	Square
	Triangle
	Cross
	Plus
	Target // a plus in a ring
)

// radius is half the size of a sign.
func (s Sign) radius() vg.Length {
	switch s {
	case NoSign:
		return 0
	case Dot:
		return 0.9
	case Triangle, Plus:
		return 3.4
	case Target:
		return 5
	}
	return 2.5
}

// outlined tells whether a sign is drawn with a line instead of filled.
func (s Sign) outlined() bool { return s == Ringlet || s == Cross || s == Plus || s == Target }

// signWidth is the width of the lines of outlined signs.
const signWidth = vg.Length(1)

// outline adds the shape of a sign to a path.
func (s Sign) outline(p *vg.Path, at vg.Point) {
	r := s.radius()
	stroke := func(x0, y0, x1, y1 vg.Length) {
		p.Move(at.Add(vg.Point{X: x0 * r, Y: y0 * r}))
		p.Line(at.Add(vg.Point{X: x1 * r, Y: y1 * r}))
	}
	polygon := func(corners ...vg.Point) {
		p.Move(at.Add(corners[0].Scale(r)))
		for _, c := range corners[1:] {
			p.Line(at.Add(c.Scale(r)))
		}
		p.Close()
	}
	switch s {
	case Dot, Disc, Ringlet:
		circle(p, at, r)
	case Square:
		polygon(vg.Point{X: -0.8, Y: -0.8}, vg.Point{X: 0.8, Y: -0.8}, vg.Point{X: 0.8, Y: 0.8}, vg.Point{X: -0.8, Y: 0.8})
	case Triangle:
		polygon(vg.Point{Y: 1}, vg.Point{X: -0.87, Y: -0.5}, vg.Point{X: 0.87, Y: -0.5})
	case Cross:
		stroke(-0.8, -0.8, 0.8, 0.8)
		stroke(-0.8, 0.8, 0.8, -0.8)
	case Plus:
		stroke(-1, 0, 1, 0)
		stroke(0, -1, 0, 1)
	case Target:
		circle(p, at, r*0.75)
		stroke(-1, 0, 1, 0)
		stroke(0, -1, 0, 1)
	}
}

// circle adds a whole circle to a path.
func circle(p *vg.Path, at vg.Point, r vg.Length) {
	p.Move(vg.Point{X: at.X + r, Y: at.Y})
	p.Arc(at, r, 0, 2*math.Pi)
	p.Close()
}

// signs draws one sign at many points, as one path.
func signs(c *draw.Canvas, s Sign, ink color.Color, at []vg.Point) {
	var p vg.Path
	for _, pt := range at {
		s.outline(&p, pt)
	}
	if len(p) == 0 {
		return
	}
	c.SetLineStyle(draw.LineStyle{Color: ink, Width: signWidth})
	if s.outlined() {
		c.Stroke(p)
		return
	}
	c.Fill(p)
}
