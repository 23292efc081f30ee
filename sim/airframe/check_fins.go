package airframe

import (
	"fmt"
	"math"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// check tells whether a fin set's own numbers make sense, on a body of a known diameter.
func (f *Fins) check(c *checker, name string, diameter float64, known bool) bool {
	before := len(c.faults)
	sound := quantity.Check(&c.faults, f, finsFields, name)
	if _, known := edges[f.Section]; !known {
		c.add(name+"section", "is not a profile known here", "write flat, rounded, wedge or airfoil")
	}
	if !sound {
		return false
	}
	if f.Tip > widestTip*f.Root {
		c.odds(name+"tip", name+"root", "is more than twice the root chord", "give at most "+mm(widestTip*f.Root)+"; check that root and tip are not exchanged")
	}
	if most := widestSpan * diameter; known && f.Span > most {
		c.odds(name+"span", "body.diameter", "is more than ten diameters", "give at most "+mm(most))
	}
	if most := f.Span * math.Tan(mostSweep*math.Pi/180); math.Abs(f.Sweep) > most {
		c.odds(name+"sweep", name+"span", fmt.Sprintf("sweeps the leading edge by more than %d deg", mostSweep), "give how far the tip's leading edge lies aft of the root's, at most "+mm(most))
	}
	if most := thickestFin * f.chord(); f.Thickness > most {
		c.odds(name+"thickness", name+"root", "is too much", "give at most half the mean chord, "+mm(most))
	}
	return len(c.faults) == before
}

// checkPlace holds that a fin set stands on the body with its whole root, and on no
// other's. The rest of the shape is sound.
func (s *Shape) checkPlace(c *checker, i int, name string) {
	f := &s.Fins[i]
	last := s.Length - f.Root
	switch {
	case f.Position > s.Length+fit:
		c.odds(name+"position", "body.length", "floats: it is off the body, "+mm(s.Length)+" long", "give where the root's leading edge lies from the tip of the nose")
	case last < s.Nose.Length-fit:
		c.odds(name+"root", "body.length", "is longer than the body behind the nose, "+mm(s.Length-s.Nose.Length), "shorten the root chord")
	case f.Position > last+fit:
		c.odds(name+"position", "body.length", "floats: the root ends "+mm(f.Position-last)+" behind the body", "give at most "+mm(last)+" for this root and body.length")
	case f.Position < s.Nose.Length-fit:
		c.odds(name+"position", "nose.length", "stands on the nose, which ends at "+mm(s.Nose.Length), "move the fins aft onto the body")
	default:
		s.checkOverlap(c, i, name)
	}
}

func (s *Shape) checkOverlap(c *checker, i int, name string) {
	f := &s.Fins[i]
	for j := range i {
		g := &s.Fins[j]
		if f.Position < g.Position+g.Root-fit && g.Position < f.Position+f.Root-fit {
			c.odds(name+"position", "fins."+fault.Entry(g.Name, j)+".position", fmt.Sprintf("overlaps fins.%s, whose root goes from %s to %s", fault.Entry(g.Name, j), mm(g.Position), mm(g.Position+g.Root)), "move one of the two, or make them one set")
			return // one is enough to say so
		}
	}
}
