package airframe

import (
	"math"

	"ullage/sim/fault"
)

// fit is how far measured lengths may disagree before it is called a fault, m; step is
// the same for two diameters that meet, as a share of the wider.
const (
	fit  = 1e-3
	step = 0.01
)

// frustum is a tube or a conical transition as it stands on the airframe.
type frustum struct {
	name      string
	start     float64 // from the tip of the nose, m
	length    float64 // m
	fore, aft float64 // diameters, m
}

// end is where it ends, from the tip of the nose, m.
func (f frustum) end() float64 { return f.start + f.length }

// diameter is the one at x from the tip of the nose, m.
func (f frustum) diameter(x float64) float64 {
	if !(f.length > 0) {
		return f.aft
	}
	share := min(1, max(0, (x-f.start)/f.length))
	return f.fore + share*(f.aft-f.fore)
}

// plan is the area of its side view, m², and that area's centroid from the tip, m.
func (f frustum) plan() (area, centroid float64) {
	both := f.fore + f.aft
	area = both / 2 * f.length
	if !(both > 0) {
		return 0, f.start
	}
	return area, f.start + f.length/3*(f.fore+2*f.aft)/both
}

// wetted is the area of its curved surface, m².
func (f frustum) wetted() float64 {
	return math.Pi / 2 * (f.fore + f.aft) * math.Hypot(f.length, (f.aft-f.fore)/2)
}

// trunk goes through what stands between the nose and the aft end, every diameter
// filled in: a section takes the diameter before it, also when its own differs by no
// more than a step, and what the sections leave of the length is a tube, "body".
func (s *Shape) trunk(yield func(frustum) bool) {
	at, last := s.Nose.Length, s.noseDiameter()
	for i := range s.Sections {
		sec := &s.Sections[i]
		f := frustum{name: "section." + fault.Entry(sec.Name, i), start: at, length: sec.Length, fore: last}
		if sec.Forward != 0 && jumps(last, sec.Forward) {
			f.fore = sec.Forward
		}
		f.aft = f.fore
		if sec.Aft != 0 && sec.Aft != sec.Forward { // a tube stays one
			f.aft = sec.Aft
		}
		if !yield(f) {
			return
		}
		at, last = f.end(), f.aft
	}
	if rest := s.Length - at; rest > fit {
		yield(frustum{name: "body", start: at, length: rest, fore: last, aft: last})
	}
}

// jumps tells whether two diameters that meet differ by more than a step.
func jumps(a, b float64) bool {
	return math.Abs(a-b) > step*max(a, b)
}

// noseDiameter is the diameter of the nose's base, filled in.
func (s *Shape) noseDiameter() float64 {
	switch {
	case s.Nose.Diameter != 0:
		return s.Nose.Diameter
	case len(s.Sections) > 0 && s.Sections[0].Forward != 0:
		return s.Sections[0].Forward
	}
	return s.Diameter
}

// Forebody is the nose with the diameter of its base filled in.
func (s *Shape) Forebody() Nose {
	n := s.Nose
	n.Diameter = s.noseDiameter()
	return n
}

// Radius is the body's outside radius at x from the tip of the nose, m; 0 before the
// tip and behind the aft end.
func (s *Shape) Radius(x float64) float64 {
	if x < 0 || x > s.Length {
		return 0
	}
	if x <= s.Nose.Length {
		return s.Forebody().Radius(x)
	}
	var last float64
	for f := range s.trunk {
		last = f.aft
		if x <= f.end() {
			return f.diameter(x) / 2
		}
	}
	return last / 2
}
