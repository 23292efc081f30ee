package chamber

import "math"

// TypicalBond is the shear strength of an epoxy lap prepared by hand, averaged over it,
// Pa. Typical, unverified, from memory.
const TypicalBond = 8e6

// closureParts adds a closure's wall and its bond at one pascal. moulded is the
// weaker way of a wall of its cloth.
func (c *Chamber) closureParts(parts []Part, end string, e *Closure, f factors, moulded Part) []Part {
	if e == nil {
		return parts
	}
	stress, note := e.stress(c.Diameter/2, c.ClosureWall(e), c.Material.stuff().plate())
	strength, typical := e.Strength*f.wall, false
	if e.Strength == 0 {
		strength, typical = moulded.Strength, moulded.Typical // heat and cycles are in it
	}
	if stress < 0 {
		crush := c.Material.stuff().crush
		strength *= crush
		typical = typical || crush != 1 // the share that compression leaves is a built-in one
	}
	parts = append(parts, newPart(end+" closure", stress, strength, typical, note))
	lap, built := c.lap(end, e, f.bond)
	held := Average
	if lap.EndsGovern() {
		held = LapEnds
	}
	return append(parts, newPart(end+" bond", lap.Load/e.Overlap, lap.Holds()/e.Overlap, built, held))
}

// ClosureWall is the thickness of a closure, m: its own, or the tube's.
func (c *Chamber) ClosureWall(e *Closure) float64 {
	if e.Wall != 0 {
		return e.Wall
	}
	return c.WallThickness()
}

// inPlane is Poisson's ratio of a wall, of a composite's one that depends on its cloth.
func (s *stuff) inPlane() float64 {
	if s.fibre != nil {
		return unknownPoisson
	}
	return s.poisson
}

// plate is that of a flat closure, which bends the more the greater it is: Own takes the table's greatest.
func (s *stuff) plate() float64 {
	if s.name == Own {
		return mostPoisson
	}
	return s.inPlane()
}

// stress is the greatest in a closure of radius r (the bore's: that of a dome within it is
// less) and wall t at one pascal: membranes
// (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapter 14), and a
// circular plate simply supported at its edge (the same, chapter 3). A 2:1 ellipsoid
// has p r/t in tension at its crown and as much in compression around its equator, which
// is the worse since no material here is stronger in compression.
func (e *Closure) stress(r, t, poisson float64) (float64, Note) {
	switch e.Shape {
	case Ellipsoid:
		return -r / t, Equator
	case Cone:
		return r / (t * math.Cos(e.HalfAngle)), Edge
	case Flat:
		return 3 * (3 + poisson) / 8 * r * r / (t * t), ""
	}
	return r / (2 * t), ""
}
