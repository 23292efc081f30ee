package page

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
)

// Levels is a surface over a grid, drawn as lines of equal value with labels.
type Levels struct {
	X, Y []float64   // rising
	Z    [][]float64 // Z[i][j] at X[i], Y[j]; NaN where there is none
	Unit string      // of the labels
}

// levelLine is one line of equal value.
type levelCurve struct {
	value  float64
	label  string
	pieces [][2]vg.Point
}

// contour finds the lines, at about so many round values.
func (l *Levels) contour(about int) (at []tick, pieces func(value float64, to func(x0, y0, x1, y1 float64))) {
	z := nothing()
	for _, column := range l.Z {
		z.take(column...)
	}
	if z.empty() || z.max-z.min <= 1e-9*math.Abs(z.max) {
		return nil, nil
	}
	return z.ticks(about), l.trace
}

// trace finds where the surface has a value: in each triangle of a cell, cut
// along a diagonal, a straight piece at most. A triangle with a corner without
// value has none.
func (l *Levels) trace(value float64, to func(x0, y0, x1, y1 float64)) {
	type corner struct{ x, y, z float64 }
	triangle := func(c [3]corner) {
		var x, y [3]float64
		n := 0
		for i := range c {
			p, q := c[i], c[(i+1)%3]
			if (p.z < value) == (q.z < value) || math.IsNaN(p.z) || math.IsNaN(q.z) {
				continue
			}
			t := (value - p.z) / (q.z - p.z)
			x[n], y[n] = p.x+t*(q.x-p.x), p.y+t*(q.y-p.y)
			n++
		}
		if n == 2 {
			to(x[0], y[0], x[1], y[1])
		}
	}
	for i := 0; i+1 < len(l.X); i++ {
		for j := 0; j+1 < len(l.Y); j++ {
			at := func(i, j int) corner { return corner{l.X[i], l.Y[j], l.Z[i][j]} }
			a, b, c, d := at(i, j), at(i+1, j), at(i+1, j+1), at(i, j+1)
			// The middle of the cell makes four triangles: no direction is preferred.
			m := corner{(a.x + c.x) / 2, (a.y + c.y) / 2, (a.z + b.z + c.z + d.z) / 4}
			triangle([3]corner{a, b, m})
			triangle([3]corner{b, c, m})
			triangle([3]corner{c, d, m})
			triangle([3]corner{d, a, m})
		}
	}
}

// levels draws the lines and gives them for their labels.
func (s sheet) levels(a *area) []levelCurve {
	if a.Levels == nil {
		return nil
	}
	ticks, trace := a.Levels.contour(10)
	var out []levelCurve
	for _, t := range ticks {
		c := levelCurve{value: t.at, label: t.label}
		if a.Levels.Unit != "" {
			c.label += " " + a.Levels.Unit
		}
		trace(t.at, func(x0, y0, x1, y1 float64) {
			c.pieces = append(c.pieces, [2]vg.Point{a.point(x0, y0), a.point(x1, y1)})
		})
		if len(c.pieces) == 0 {
			continue
		}
		var p vg.Path
		for _, k := range c.pieces {
			p.Move(k[0])
			p.Line(k[1])
			a.curves = append(a.curves, []vg.Point{k[0], k[1]})
		}
		s.SetLineStyle(levelLine)
		s.Stroke(p)
		out = append(out, c)
	}
	return out
}

// levelLabels writes each line's value on it, as near to the falling diagonal of
// the frame as there is room.
func (s sheet) levelLabels(a *area, curves []levelCurve) {
	for _, c := range curves {
		w, h := sized(c.label)
		off := func(p vg.Point) float64 {
			u := (p.X - a.frame.Min.X) / a.frame.Size().X
			v := (p.Y - a.frame.Min.Y) / a.frame.Size().Y
			return math.Abs(float64(u + v - 1))
		}
		slices.SortStableFunc(c.pieces, func(p, q [2]vg.Point) int { return cmp.Compare(off(p[0]), off(q[0])) })
		for _, k := range c.pieces {
			box := rectangle(k[0].Add(k[1]).Scale(0.5), w, h)
			// Crossing its own line is what it is for; no other label may be hit.
			if a.cost(box) < 100 {
				a.taken = append(a.taken, box)
				s.label(box, c.label)
				break
			}
		}
	}
}
