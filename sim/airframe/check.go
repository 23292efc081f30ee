package airframe

import (
	"fmt"
	"math"

	"ullage/sim/fault"
)

// The ranges of what the equations are for. Common sense, no source.
const (
	longest     = 1000. // of anything, m
	shortest    = 1e-5  // of anything, m
	smallest    = 1e-3  // body diameter, m
	narrowest   = 0.01  // of any diameter over the body's: a body that ends in a point has no centre of pressure
	slimmest    = 100.  // length over diameter
	roughest    = 5e-3  // m
	widestTip   = 2.    // tip over root chord
	widestSpan  = 10.   // exposed semi-span over body diameter
	mostSweep   = 80    // of the leading edge, deg
	thickestFin = 0.5   // of the mean chord
	mostCant    = 15    // deg
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
	reach := longest
	if body {
		reach = widestSpan * s.Diameter
	}
	for i := range s.Fins {
		f := &s.Fins[i]
		name := func(key string) string { return "fins." + label(f.Name, i) + "." + key }
		if f.check(&c, name, reach) && known {
			s.checkPlace(&c, i, name)
		}
	}
	return c.faults
}

// checkBody tells whether the body's own numbers make sense.
func (s *Shape) checkBody(c *checker) bool {
	long := c.positive("body.length", s.Length, longest, "")
	wide := c.positive("body.diameter", s.Diameter, longest, "")
	if wide && s.Diameter < smallest {
		c.add("body.diameter", "is less than "+mm(smallest), "check its unit")
		wide = false
	}
	c.within("body.roughness", s.Roughness, 0, roughest, "give 0 to 5 mm; paint has about 0.02 mm")
	c.within("body.rail_buttons", s.RailButtons, 0, longest, "give the frontal area of all rail buttons, 0 for none")
	if !long || !wide {
		return false
	}
	switch ratio := s.Length / s.Diameter; {
	case ratio < 1:
		c.add("body.length", "is less than the diameter", "give the length from the tip of the nose to the aft end")
		return false
	case ratio > slimmest:
		c.add("body.length", fmt.Sprintf("is more than %g diameters", slimmest), "check the units of length and diameter")
		return false
	}
	return true
}

func (s *Shape) checkNose(c *checker, body bool) bool {
	n := &s.Nose
	switch n.Shape {
	case Conical, TangentOgive, Elliptical, Parabolic, VonKarman:
	case PowerSeries:
		if !(n.Exponent > 0 && n.Exponent <= 1) {
			c.add("nose.exponent", "out of range", "give above 0 up to 1: 1 is a cone, 0.5 a paraboloid")
		}
	default:
		c.add("nose.shape", "is not a contour known here", "write conical, tangent ogive, elliptical, parabolic, von Karman or power series")
	}
	long := c.positive("nose.length", n.Length, longest, "")
	wide := c.within("nose.diameter", n.Diameter, 0, longest, "give the diameter of the nose's base, or leave it out for that of what follows")
	if !long || !wide {
		return false
	}
	if !body {
		return true
	}
	if n.Length > s.Length+fit {
		c.add("nose.length", "is longer than the whole rocket, "+mm(s.Length), "shorten the nose or correct body.length")
		return false
	}
	if r := s.noseDiameter() / 2; n.Shape == TangentOgive && n.Length < r {
		c.add("nose.length", "is too short for a tangent ogive", "give at least half the base's diameter, "+mm(r)+", or choose elliptical")
	}
	return true
}

func (s *Shape) checkSections(c *checker) bool {
	sound := true
	for i := range s.Sections {
		sec := &s.Sections[i]
		name := "section." + label(sec.Name, i)
		sound = c.positive(name+".length", sec.Length, longest, "") && sound
		sound = c.within(name+".forward", sec.Forward, 0, longest, "give a diameter, or leave it out for the one before") && sound
		sound = c.within(name+".aft", sec.Aft, 0, longest, "give a diameter, or leave it out for the forward one") && sound
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
			c.add(name, "is wider than the body, "+mm(s.Diameter), "give at most body.diameter, the largest outside diameter")
		case v < least:
			c.add(name, "tapers to next to nothing", "give at least 1 % of body.diameter, "+mm(least))
		}
	}
	widest, last := s.noseDiameter(), s.noseDiameter()
	if s.Nose.Diameter != 0 || len(s.Sections) == 0 {
		judge("nose.diameter", widest)
	} else {
		judge("section."+label(s.Sections[0].Name, 0)+".forward", widest)
	}
	i := 0
	for f := range s.trunk {
		if i == len(s.Sections) {
			break
		}
		if fore := s.Sections[i].Forward; fore != 0 && jumps(last, fore) {
			c.add(f.name+".forward", "does not meet what is before it, "+mm(last)+" wide", "give that diameter, or a section between them that tapers")
		}
		if f.aft != f.fore {
			judge(f.name+".aft", f.aft)
		}
		widest, last = math.Max(widest, math.Max(f.fore, f.aft)), f.aft
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
		c.add("body.length", "is less than nose and sections add up to, "+mm(sum), "make body.length "+mm(sum)+", or shorten what is in it by "+mm(over))
		return false
	}
	return true
}
