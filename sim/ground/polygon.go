package ground

import "math"

// Point is a place in the plane around the pad, m.
type Point struct{ East, North float64 }

// Polygon is a boundary by its corners in turn, the first not repeated.
type Polygon []Point

// Area is what it encloses, m². One that crosses itself has none worth the name.
func (p Polygon) Area() float64 { return math.Abs(p.signed()) }

// Counterclockwise tells which way its corners go round.
func (p Polygon) Counterclockwise() bool { return p.signed() > 0 }

// signed is the shoelace formula.
func (p Polygon) signed() float64 {
	sum := 0.0
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += a.East*b.North - b.East*a.North
	}
	return sum / 2
}

// Holds tells whether a point lies in it: a ray to the east crosses its sides an odd number of times.
func (p Polygon) Holds(q Point) bool {
	in := false
	for i, a := range p {
		b := p[(i+1)%len(p)]
		if (a.North > q.North) != (b.North > q.North) && q.East < a.East+(q.North-a.North)/(b.North-a.North)*(b.East-a.East) {
			in = !in
		}
	}
	return in
}

// Inside is how far a point is from the nearest side, m: negative outside.
func (p Polygon) Inside(q Point) float64 {
	near := math.Inf(1)
	for i, a := range p {
		b := p[(i+1)%len(p)]
		e, n := b.East-a.East, b.North-a.North
		along := 0.0
		if d := e*e + n*n; d > 0 {
			along = min(max(((q.East-a.East)*e+(q.North-a.North)*n)/d, 0), 1)
		}
		near = min(near, math.Hypot(q.East-a.East-along*e, q.North-a.North-along*n))
	}
	if p.Holds(q) {
		return near
	}
	return -near
}

// back tells that the way from a by b to c turns round in b and runs back on itself.
func back(a, b, c Point) bool {
	return side(a, b, c) == 0 && (b.East-a.East)*(c.East-b.East)+(b.North-a.North)*(c.North-b.North) < 0
}

// Crosses finds two sides that meet elsewhere than in the corner they share, by the places of their
// first corners.
func (p Polygon) Crosses() (i, j int, crosses bool) {
	n := len(p)
	for i := range n {
		for j := i + 1; j < n; j++ {
			switch {
			case j == i+1:
				if back(p[i], p[j], p[(j+1)%n]) {
					return i, j, true
				}
			case i == 0 && j == n-1:
				if back(p[j], p[0], p[1]) {
					return i, j, true
				}
			case meet(p[i], p[(i+1)%n], p[j], p[(j+1)%n]):
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// meet tells whether two sides have a point in common.
func meet(a, b, c, d Point) bool {
	s1, s2, s3, s4 := side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
	if s1 == 0 && s2 == 0 { // on one line
		return max(min(a.East, b.East), min(c.East, d.East)) <= min(max(a.East, b.East), max(c.East, d.East)) &&
			max(min(a.North, b.North), min(c.North, d.North)) <= min(max(a.North, b.North), max(c.North, d.North))
	}
	return s1*s2 <= 0 && s3*s4 <= 0
}

// side is positive of a point left of a line, negative right of it.
func side(a, b, p Point) float64 {
	return (b.East-a.East)*(p.North-a.North) - (b.North-a.North)*(p.East-a.East)
}
