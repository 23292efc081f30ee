package page

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/plot/vg"
)

// Levels is a surface over a grid, drawn as lines of equal value with labels.
type Levels struct {
	X, Y  []float64   // rising
	Z     [][]float64 // Z[i][j] at X[i], Y[j]; NaN where there is none
	Limit float64     // a value whose line is broken and heavier; 0 for none
}

// levelCurve is one line of equal value on paper.
type levelCurve struct {
	tick
	pieces [][2]vg.Point
}

// values are about so many round values, and the limit, of those the surface has.
func (l *Levels) values(about int) []tick {
	z := nothing()
	for _, column := range l.Z {
		z.take(column...)
	}
	if z.empty() || z.max-z.min <= 1e-9*math.Abs(z.max) {
		return nil
	}
	out := z.ticks(about)
	if l.Limit == 0 || l.Limit < z.min || l.Limit > z.max {
		return out
	}
	out = slices.DeleteFunc(out, func(t tick) bool { return math.Abs(t.at-l.Limit) < 1e-9*math.Abs(l.Limit) })
	return append(out, tick{l.Limit, strconv.FormatFloat(l.Limit, 'g', 3, 64)})
}

// trace finds where the surface has a value: in each triangle of a cell, cut
// along its diagonals, a straight piece at most. A triangle with a corner without
// value has none.
func (l *Levels) trace(value float64, to func(x0, y0, x1, y1 float64)) {
	type corner struct{ x, y, z float64 }
	triangle := func(c [3]corner) {
		if !drawable(c[0].z) || !drawable(c[1].z) || !drawable(c[2].z) {
			return
		}
		var x, y [3]float64
		n := 0
		for i := range c {
			p, q := c[i], c[(i+1)%3]
			if (p.z < value) == (q.z < value) {
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
	inner := *s.Canvas
	inner.Rectangle = a.frame
	var out []levelCurve
	for _, t := range a.Levels.values(10) {
		c := levelCurve{tick: t}
		a.Levels.trace(t.at, func(x0, y0, x1, y1 float64) {
			c.pieces = append(c.pieces, [2]vg.Point{a.point(x0, y0), a.point(x1, y1)})
		})
		if len(c.pieces) == 0 {
			continue
		}
		lines := inner.ClipLinesXY(joined(c.pieces)...)
		a.curves = append(a.curves, lines...)
		style := levelLine
		if t.at == a.Levels.Limit {
			style = heavyLine
		}
		s.StrokeLines(style, lines...)
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

// joined makes lines of pieces that meet end to end, so that dashes run along them.
func joined(pieces [][2]vg.Point) [][]vg.Point {
	type key [2]int64
	at := func(p vg.Point) key { // the same corner comes with different rounding
		return key{int64(math.Round(float64(p.X) * 1e4)), int64(math.Round(float64(p.Y) * 1e4))}
	}
	ends := map[key][]int{}
	for i, p := range pieces {
		ends[at(p[0])] = append(ends[at(p[0])], i)
		ends[at(p[1])] = append(ends[at(p[1])], i)
	}
	used := make([]bool, len(pieces))
	follow := func(line []vg.Point) []vg.Point {
		for {
			last := at(line[len(line)-1])
			next := slices.IndexFunc(ends[last], func(i int) bool { return !used[i] })
			if next < 0 {
				return line
			}
			i := ends[last][next]
			used[i] = true
			p := pieces[i][1]
			if at(p) == last {
				p = pieces[i][0]
			}
			line = append(line, p)
		}
	}
	var out [][]vg.Point
	for i, p := range pieces {
		if used[i] {
			continue
		}
		used[i] = true
		line := follow([]vg.Point{p[0], p[1]})
		slices.Reverse(line)
		out = append(out, follow(line))
	}
	return out
}
