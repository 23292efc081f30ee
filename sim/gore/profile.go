package gore

import (
	"math"
	"sort"
)

// Point is a place on a profile or on a flat piece, m.
type Point struct{ X, Y float64 }

// Profile is a meridian of a surface of revolution from its rim on: X along the axis away
// from the rim, Y the radius. Its pieces are taken as straight.
type Profile struct {
	points []Point
	along  []float64 // arc length from the rim to each point
}

// pieces is how finely a curve is followed: lengths and areas are then right to 1e-5.
const pieces = 256

// Of is a profile through points from the rim on.
func Of(points ...Point) Profile {
	p := Profile{points: append([]Point(nil), points...), along: make([]float64, len(points))}
	for i := 1; i < len(points); i++ {
		p.along[i] = p.along[i-1] + math.Hypot(points[i].X-points[i-1].X, points[i].Y-points[i-1].Y)
	}
	return p
}

// Along is the profile of a body whose radius at a place along its axis is known, over a
// length from its rim: of a nose, with the rim at its base. Places crowd towards the far
// end, where noses are blunt.
func Along(length float64, radius func(x float64) float64) Profile {
	points := make([]Point, pieces+1)
	for i := range points {
		x := length * math.Sin(math.Pi/2*float64(i)/pieces)
		points[i] = Point{x, radius(x)}
	}
	return Of(points...)
}

// Ellipsoid is half of one: a rim of a radius, and a pole a depth beyond it. A depth
// equal to the radius makes a hemisphere.
func Ellipsoid(radius, depth float64) Profile {
	points := make([]Point, pieces+1)
	for i := range points {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / pieces)
		points[i] = Point{depth * sin, radius * cos}
	}
	points[pieces].Y = 0
	return Of(points...)
}

// Cone is a cone from a rim of a radius to an apex, or a frustum to another radius, a
// height beyond it. A height of 0 makes a disc or a ring.
func Cone(radius, top, height float64) Profile {
	return Of(Point{0, radius}, Point{height, top})
}

// Points are those of the profile.
func (p Profile) Points() []Point { return append([]Point(nil), p.points...) }

// Length is the profile's from the rim to the far end, along it.
func (p Profile) Length() float64 {
	if len(p.along) == 0 {
		return 0
	}
	return p.along[len(p.along)-1]
}

// Depth is its length along the axis.
func (p Profile) Depth() float64 {
	if len(p.points) == 0 {
		return 0
	}
	return p.points[len(p.points)-1].X - p.points[0].X
}

// Area is that of the whole surface, the sum of its frustums'.
func (p Profile) Area() float64 {
	sum := 0.
	for i := 1; i < len(p.points); i++ {
		sum += math.Pi * (p.points[i].Y + p.points[i-1].Y) * (p.along[i] - p.along[i-1])
	}
	return sum
}

// Radius is that at a distance from the rim along the profile, that of the nearest end
// beyond it.
func (p Profile) Radius(along float64) float64 {
	if len(p.points) == 0 {
		return 0
	}
	i := sort.SearchFloat64s(p.along, along)
	switch {
	case i == 0:
		return p.points[0].Y
	case i == len(p.along):
		return p.points[i-1].Y
	}
	share := (along - p.along[i-1]) / (p.along[i] - p.along[i-1])
	return p.points[i-1].Y + share*(p.points[i].Y-p.points[i-1].Y)
}

// Offset is the profile of a surface that lies outside by a thickness, measured square to
// it: that of the next layer on a plug. At a rim or a pole the middle of a layer stays
// in the plane of the rim and on the axis.
func (p Profile) Offset(by float64) Profile {
	n := len(p.points)
	moved := make([]Point, n)
	for i := range p.points {
		a, b := p.points[max(i-1, 0)], p.points[min(i+1, n-1)]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		if !(long > 0) {
			moved[i] = p.points[i]
			continue
		}
		dx, dy := (b.X-a.X)/long, (b.Y-a.Y)/long // along the profile; outside is at its right hand
		moved[i] = Point{p.points[i].X - by*dy, p.points[i].Y + by*dx}
		if p.points[i].Y == 0 {
			moved[i] = Point{p.points[i].X + by, 0}
		}
	}
	if n > 2 { // a curve starts square to its rim; a cone does not
		moved[0].X = p.points[0].X
	}
	return Of(moved...)
}
