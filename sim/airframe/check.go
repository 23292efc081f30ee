package airframe

import (
	"fmt"
	"slices"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// How numbers must go together for the equations. Common sense, no source.
const (
	narrowest   = 0.01 // of any diameter over the body's: a body that ends in a point has no centre of pressure
	slimmest    = 100. // length over diameter
	widestTip   = 2.   // tip over root chord
	widestSpan  = 10.  // exposed semi-span over body diameter
	mostSweep   = 80   // of the leading edge, deg
	thickestFin = 0.5  // of the mean chord
)

// Check tells everything that is wrong with a shape, or nil, by the dotted names of the
// inputs: "body.length", "section.tail.aft", "fins.1.position". What passes has finite
// aerodynamics and drag in any flow. Parts that meet may disagree by a millimetre in
// length and by 1 % in diameter: that is taken as measuring, not as a gap or a step.
func (s *Shape) Check() fault.List {
	var c checker
	body := s.checkBody(&c)
	nose := s.checkNose(&c, body)
	sections := s.checkSections(&c)
	known := body && nose && sections // where the outside is
	if known {
		s.checkDiameters(&c)
		known = s.checkLength(&c)
	}
	for i := range s.Fins {
		f := &s.Fins[i]
		name := "fins." + fault.Entry(f.Name, i) + "."
		if f.check(&c, name, s.Diameter, body) && known {
			s.checkPlace(&c, i, name)
		}
	}
	return c.faults
}

// checkBody tells whether the body's own numbers make sense.
func (s *Shape) checkBody(c *checker) bool {
	sized := quantity.Check(&c.faults, s, shapeFields)
	quantity.Check(&c.faults, s, surfaceFields)
	if !sized {
		return false
	}
	switch ratio := s.Length / s.Diameter; {
	case ratio < 1:
		c.odds("body.length", "body.diameter", "is less than the diameter", "give the length from the tip of the nose to the aft end")
		return false
	case ratio > slimmest:
		c.odds("body.length", "body.diameter", fmt.Sprintf("is more than %g diameters", slimmest), "check the units of length and diameter")
		return false
	}
	return true
}

func (s *Shape) checkNose(c *checker, body bool) bool {
	n := &s.Nose
	if !slices.Contains(NoseShapes(), n.Shape) {
		contours := "write " + fault.OneOf(NoseShapes()...)
		if n.Shape == "" {
			c.faults.Need("nose.shape", contours)
		} else {
			c.add("nose.shape", "is not a contour known here", contours)
		}
	}
	quantity.Check(&c.faults, n, contourFields)
	sized := quantity.Check(&c.faults, n, noseFields)
	if !sized || !body {
		return sized
	}
	if n.Length > s.Length+fit {
		c.odds("nose.length", "body.length", "is longer than the whole rocket, "+mm(s.Length), "shorten the nose or correct body.length")
		return false
	}
	if r := s.noseDiameter() / 2; n.Shape == TangentOgive && n.Length < r {
		c.odds("nose.length", "body.diameter", "is too short for a tangent ogive", "give at least half the base's diameter, "+mm(r)+", or choose elliptical")
	}
	return true
}

func (s *Shape) checkSections(c *checker) bool {
	sound := true
	for i := range s.Sections {
		sec := &s.Sections[i]
		sound = quantity.Check(&c.faults, sec, sectionFields, "section.", fault.Entry(sec.Name, i), ".") && sound
	}
	return sound
}

// checkDiameters holds that the outside is one surface, and as wide as it is said to be.
func (s *Shape) checkDiameters(c *checker) {
	limit := s.Diameter * (1 + step)
	least := s.Diameter * narrowest
	judge := func(name string, v float64) {
		switch {
		case v > limit:
			c.odds(name, "body.diameter", "is wider than the body, "+mm(s.Diameter), "give at most body.diameter, the largest outside diameter")
		case v < least:
			c.odds(name, "body.diameter", "tapers to next to nothing", "give at least 1 % of body.diameter, "+mm(least))
		}
	}
	widest, last := s.noseDiameter(), s.noseDiameter()
	if s.Nose.Diameter != 0 || len(s.Sections) == 0 {
		judge("nose.diameter", widest)
	} else {
		judge("section."+fault.Entry(s.Sections[0].Name, 0)+".forward", widest)
	}
	i, before := 0, "nose.diameter"
	for f := range s.trunk {
		if i == len(s.Sections) {
			break
		}
		if fore := s.Sections[i].Forward; fore != 0 && jumps(last, fore) {
			c.odds(f.name+".forward", before, "does not meet what is before it, "+mm(last)+" wide", "give that diameter, or a section between them that tapers")
		}
		if f.aft != f.fore {
			judge(f.name+".aft", f.aft)
		}
		widest, last, before = max(widest, max(f.fore, f.aft)), f.aft, f.name+".aft"
		i++
	}
	if widest < s.Diameter*(1-step) {
		c.add("body.diameter", "is more than nose and sections have, "+mm(widest), "give the largest outside diameter, or correct the sections")
	}
}

// checkLength holds that nose and sections fit into the length.
func (s *Shape) checkLength(c *checker) bool {
	sum := s.Nose.Length
	for i := range s.Sections {
		sum += s.Sections[i].Length
	}
	if over := sum - s.Length; over > fit {
		c.odds("body.length", "nose.length", "is less than nose and sections add up to, "+mm(sum), "make body.length "+mm(sum)+", or shorten what is in it by "+mm(over))
		return false
	}
	return true
}
