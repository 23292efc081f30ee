package gore

import "math"

// Sector is the flat piece that wraps a cone or a frustum without a wrinkle: part of a
// ring, or of a disc.
type Sector struct {
	Inner, Outer float64 // radii, from the apex along the slant
	Angle        float64 // 2π sin α of the whole, α being the half angle of the cone
}

// Wrap lays a frustum between two radii, a height apart, flat. Radii that are alike make a
// tube, which is no sector: its radii are infinite and its angle is 0.
func Wrap(radius, top, height float64) Sector {
	slant := math.Hypot(height, radius-top)
	sin := math.Abs(radius-top) / slant
	return Sector{Inner: math.Min(radius, top) / sin, Outer: math.Max(radius, top) / sin, Angle: 2 * math.Pi * sin}
}

// Area is the sector's.
func (s Sector) Area() float64 { return s.Angle / 2 * (s.Outer*s.Outer - s.Inner*s.Inner) }

// Slant is how long it is along a line through the apex.
func (s Sector) Slant() float64 { return s.Outer - s.Inner }

// Chord is the straight distance between the ends of its outer arc: what a rule shows.
func (s Sector) Chord() float64 {
	if s.Angle >= math.Pi {
		return 2 * s.Outer
	}
	return 2 * s.Outer * math.Sin(s.Angle/2)
}

// Cut is the smallest rectangle, one side along the middle of the sector, that it is cut
// from.
func (s Sector) Cut() (length, width float64) {
	half := s.Angle / 2
	low := s.Inner * math.Cos(half) // the ends of the inner arc lie lowest, or those of the outer one
	if half > math.Pi/2 {
		low = s.Outer * math.Cos(half)
	}
	return s.Outer - low, s.Chord()
}

// Outline is the sector around from its middle line, an end of an arc at a time: X across,
// Y from the apex. Each arc has so many pieces. An allowance beyond one straight edge, for
// the lap, is added square to it.
func (s Sector) Outline(pieces int, lap float64) []Point {
	pieces = max(pieces, 1)
	at := func(r, angle float64) Point { sin, cos := math.Sincos(angle); return Point{r * sin, r * cos} }
	var out []Point
	for i := 0; i <= pieces; i++ {
		out = append(out, at(s.Outer, s.Angle*(float64(i)/float64(pieces)-0.5)))
	}
	if lap > 0 {
		sin, cos := math.Sincos(s.Angle / 2)
		for _, r := range [...]float64{s.Outer, s.Inner} {
			p := at(r, s.Angle/2)
			out = append(out, Point{p.X + lap*cos, p.Y - lap*sin})
		}
	}
	if s.Inner == 0 {
		return append(out, Point{0, 0})
	}
	for i := pieces; i >= 0; i-- {
		out = append(out, at(s.Inner, s.Angle*(float64(i)/float64(pieces)-0.5)))
	}
	return out
}
