package gore

import "math"

// Gore is one of so many pieces of a surface, all alike, laid flat.
type Gore struct {
	Count   int // of them on the surface
	profile Profile
}

// Gores cuts a surface into pieces from its rim to its pole.
func (p Profile) Gores(count int) Gore { return Gore{max(count, 1), p} }

// Length is that of a gore along its middle.
func (g Gore) Length() float64 { return g.profile.Length() }

// Half is half a gore's width at a distance along its middle from the rim: its half share
// of the circumference there, π r/n.
func (g Gore) Half(along float64) float64 {
	return math.Pi * g.profile.Radius(along) / float64(g.Count)
}

// Wide is a gore's greatest width.
func (g Gore) Wide() float64 {
	most := 0.
	for _, x := range g.profile.points {
		most = math.Max(most, x.Y)
	}
	return 2 * math.Pi * most / float64(g.Count)
}

// Area is that of one gore without allowances.
func (g Gore) Area() float64 { return g.profile.Area() / float64(g.Count) }

// Edge is the length of a gore's edge as it is cut.
func (g Gore) Edge() float64 {
	sum := 0.
	p := g.profile
	for i := 1; i < len(p.points); i++ {
		sum += math.Hypot(p.along[i]-p.along[i-1], math.Pi*(p.points[i].Y-p.points[i-1].Y)/float64(g.Count))
	}
	return sum
}

// Excess is by what share the edge as it is cut is longer than the middle, beside which it
// has to lie: what the cloth must give by shearing.
func (g Gore) Excess() float64 { return g.Edge()/g.Length() - 1 }

// Fewest is the least number of gores, at least some, whose edges are longer than their
// middles by no more than a share. It is at most 64.
func (p Profile) Fewest(least int, share float64) int {
	n := max(least, 1)
	for n < 64 && p.Gores(n).Excess() > share {
		n++
	}
	return n
}

// Allowance is what a piece is cut larger than its share: at each of its two sides,
// beyond the rim, and beyond the far end.
type Allowance struct{ Side, Rim, Far float64 }

// Outline is a gore as it is cut, with its allowances, around from the far end down its
// right side: X across from its middle, Y along it from the rim, below 0 for what is
// beyond it. Allowances stand square to the edge; ends are straight.
func (g Gore) Outline(a Allowance) []Point {
	right := g.side(a)
	out := right
	for i := len(right) - 1; i >= 0; i-- {
		if right[i].X > 0 {
			out = append(out, Point{-right[i].X, right[i].Y})
		}
	}
	return out
}

// side is the right edge with its allowances from the far end to the rim.
func (g Gore) side(a Allowance) []Point {
	p := g.profile
	n := len(p.points)
	if n < 2 {
		return nil
	}
	share := math.Pi / float64(g.Count)
	edge := make([]Point, 0, n+2)
	for i := n - 1; i >= 0; i-- {
		j, k := max(i-1, 0), min(i+1, n-1)
		slope := share * (p.points[k].Y - p.points[j].Y) / (p.along[k] - p.along[j])
		edge = append(edge, Point{share*p.points[i].Y + a.Side*math.Hypot(1, slope), p.along[i]})
	}
	if a.Far > 0 {
		edge = append([]Point{{edge[0].X, edge[0].Y + a.Far}}, edge...)
	}
	if last := edge[len(edge)-1]; a.Rim > 0 {
		edge = append(edge, Point{last.X, last.Y - a.Rim})
	}
	return edge
}

// CutArea is that of one gore as it is cut, with its allowances.
func (g Gore) CutArea(a Allowance) float64 {
	sum := 0.
	edge := g.side(a)
	for i := 1; i < len(edge); i++ {
		sum += (edge[i].X + edge[i-1].X) * (edge[i-1].Y - edge[i].Y)
	}
	return sum
}

// Cut is the rectangle out of which one gore is cut, allowances in it.
func (g Gore) Cut(a Allowance) (length, width float64) {
	half := 0.
	for _, x := range g.side(a) {
		half = math.Max(half, x.X)
	}
	return g.Length() + a.Rim + a.Far, 2 * half
}
