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
	LapEnds    Note = "its ends carry the load: more overlap does nothing"
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
	parts = c.closureParts(parts, "forward", c.Forward, f, c.moulded(c.Forward, f))
	parts = c.closureParts(parts, "aft", c.Aft, f, c.moulded(c.Aft, f))
	seal := 0.
	if c.Thread != nil {
		seal = c.Thread.sealDiameter()
	}
	parts = c.Boss.parts(parts, seal, f.bond)
	return c.Thread.parts(parts)
}

// moulded is the weaker way of a closure's wall of the tube's cloth, which lies both ways whatever is
// wound on the tube. Without a wall of its own a closure takes the tube's plies, at the fraction that a
// measured wall makes of them: more resin is never stronger. One with its own takes the usual fraction, or as
// given: the tube's wall says nothing of it.
func (c *Chamber) moulded(e *Closure, f factors) Part {
	cloth := *c
	if len(c.Plies) > 0 {
		if e != nil && e.Wall == 0 {
			p := c.plied()
			cloth.FibreFraction = p.FibreFractionInForce()
			cloth.Plies, cloth.Wall = nil, p.WallThickness()
			part := weaker(cloth.wallParts(nil, f.wall))
			part.Strength *= c.counted() // over the wall as measured
			return part
		}
		cloth.Plies, cloth.Wall = nil, c.WallThickness()
	}
	return weaker(cloth.wallParts(nil, f.wall))
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
