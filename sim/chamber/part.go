package chamber

import "math"

// Part is one way in which the chamber can fail.
type Part struct {
	Name     string  // "wall around", "forward bond", "retainer, tension" …
	Stress   float64 // Pa; below zero in compression
	Strength float64 // against that stress, what heat and cycles leave of it, Pa
	Use      float64 // of the strength; 1 fails; +Inf when no strength is left
	Typical  bool    // the strength is a built-in figure, typical, unverified
	Note     Note
}

// Note says what to know of a part's figure.
type Note string

// The notes.
const (
	Average    Note = "average; the edges see more"
	Equator    Note = "compression at the equator; buckling is not counted"
	Edge       Note = "bending where it meets the tube is not counted"
	FirstCrack Note = "no fibres run this way: the resin cracks"
	Squeezed   Note = "fibres in compression"
	Yields     Note = "yield"
)

func newPart(name string, stress, strength float64, typical bool, note Note) Part {
	return Part{Name: name, Stress: stress, Strength: strength, Use: math.Abs(stress) / strength, Typical: typical, Note: note}
}

// at takes a part worked out at one pascal to a pressure.
func (p Part) at(pressure float64) Part {
	p.Stress *= pressure
	p.Use = math.Abs(p.Stress) / p.Strength
	if p.Stress == 0 { // even where no strength is left
		p.Use = 0
	}
	return p
}

// orTypical is a figure that was given, or the typical one and that it is.
func orTypical(given, typical float64) (float64, bool) {
	if given != 0 {
		return given, false
	}
	return typical, true
}

// parts are all parts at one pascal, from the wall to the retainer.
func (c *Chamber) parts() []Part {
	f := c.factors()
	parts := make([]Part, 0, 10)
	parts = c.wallParts(parts, f.wall)
	// A closure is moulded of cloth that lies both ways, whatever is wound on the tube.
	cloth := *c
	if len(c.Plies) > 0 {
		cloth.Plies, cloth.Wall = nil, c.WallThickness()
	}
	moulded := weaker(cloth.wallParts(nil, f.wall))
	parts = c.closureParts(parts, "forward", c.Forward, f, moulded)
	parts = c.closureParts(parts, "aft", c.Aft, f, moulded)
	return c.Thread.parts(parts)
}

// weaker is the part of the tube's wall with the least strength against tension. Shear in
// a lay-up goes with the tube's loads, and is not a closure's.
func weaker(wall []Part) Part {
	least := Part{Strength: math.NaN(), Typical: true}
	for _, p := range wall {
		if p.Name != wallShear && !(p.Strength >= least.Strength) {
			least = p
		}
	}
	return least
}
