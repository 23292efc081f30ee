package chamber

import "math"

const (
	wallAround = "wall around"
	wallAlong  = "wall along"
	wallShear  = "wall in shear"
	resinAlone = ", resin alone"
)

// thick is the wall over its mean radius from which the stress is no longer nearly even
// through it.
const thick = 0.1

// noShear is the shear in a ply, over the stress around the wall, that is taken as
// rounding.
const noShear = 1e-6

// wallParts adds the tube's wall at one pascal, of whose strength a share counts.
func (c *Chamber) wallParts(parts []Part, share float64) []Part {
	around, along := c.wallStress()
	s := c.Material.stuff()
	if s.fibre == nil || c.Around != 0 && c.Along != 0 {
		return append(parts, c.plainPart(wallAround, around, c.Around, s.around, share),
			c.plainPart(wallAlong, along, c.Along, s.along, share))
	}
	l := c.laminate()
	e := l.under(c.loadAlong(), c.loadAround())
	if c.Around != 0 {
		parts = append(parts, c.plainPart(wallAround, around, c.Around, 0, share))
	} else {
		parts = append(parts, l.part(wallAround, around, share, e, s, fromCircle))
	}
	if c.Along != 0 {
		parts = append(parts, c.plainPart(wallAlong, along, c.Along, 0, share))
	} else {
		parts = append(parts, l.part(wallAlong, along, share, e, s, fromAxis))
	}
	most := 0.
	for _, f := range l.families {
		most = math.Max(most, math.Abs(l.seenBy(f, e).shear))
	}
	if most > noShear*around {
		parts = append(parts, newPart(wallShear, most, resinShear*share, true, ""))
	}
	return parts
}

// loadAround and loadAlong are the wall's at one pascal, N/m: p r and half of that.
func (c *Chamber) loadAround() float64 { return c.meanRadius() }
func (c *Chamber) loadAlong() float64  { return c.meanRadius() / 2 }

// thick tells whether the wall is thick for its radius.
func (c *Chamber) thick() bool { return c.WallThickness() > thick*c.meanRadius() }

// lame tells whether the stress is Lamé's: his tube is elastic and the same all over.
func (c *Chamber) lame() bool { return c.thick() && c.Material.isotropic() }

// wallStress is the stress around and along the wall at one pascal: the thin wall's mean
// one, or at the inner face of a thick isotropic one (Lamé; Timoshenko, Strength of
// Materials, part II).
func (c *Chamber) wallStress() (around, along float64) {
	t := c.WallThickness()
	if c.lame() {
		return lame(c.Diameter/2, c.Diameter/2+t)
	}
	return c.loadAround() / t, c.loadAlong() / t
}

func lame(inner, outer float64) (around, along float64) {
	i, o := inner*inner, outer*outer
	return (o + i) / (o - i), i / (o - i)
}

// plainPart is the wall one way, against one strength.
func (c *Chamber) plainPart(name string, stress, given, typical, share float64) Part {
	strength, built := orTypical(given, typical)
	p := newPart(name, stress, strength*share, built, "")
	if built && c.Material == Aluminium {
		p.Note = Yields
	}
	return p
}

// fromAxis and fromCircle are how far fibres lie off the tube's axis and off its
// circumference, 0 to π/2.
func fromAxis(angle float64) float64   { return math.Acos(math.Min(1, math.Abs(math.Cos(angle)))) }
func fromCircle(angle float64) float64 { return math.Pi/2 - fromAxis(angle) }

// Fibres up to near off a way carry it. Where there are none, those up to far off do
// together, as in a tube wound at 54.7°; what lies farther off is left to the resin.
const (
	near = 45.001 * math.Pi / 180 // a little over: cloth laid at 45° carries both ways
	far  = 60.001 * math.Pi / 180
)

// part is the wall one way: the fibres that carry it against their strain at failure, or
// the resin pulled across them where none do. The stress shown is the wall's mean one,
// and the strength what makes that the same use.
func (l *laminate) part(name string, stress, share float64, e strains, s *stuff, off func(float64) float64) Part {
	for _, limit := range [...]float64{near, far} {
		use, note, found := 0., Note(""), false
		for _, f := range l.families {
			if off(f.angle) > limit {
				continue
			}
			found = true
			strain := l.seenBy(f, e).fibre
			u, n := strain/s.fibre.failure, Note("")
			if strain < 0 {
				u, n = -u/s.crush, Squeezed
			}
			if !(u <= use) { // a strain that is no number shows
				use, note = u, n
			}
		}
		if found {
			return asStrength(name, stress, use, share, note)
		}
	}
	most := 0.
	for _, f := range l.families {
		most = math.Max(most, l.seenBy(f, e).across)
	}
	return asStrength(name+resinAlone, stress, most/resinTransverse, share, FirstCrack)
}

func asStrength(name string, stress, use, share float64, note Note) Part {
	return newPart(name, stress, stress/use*share, true, note)
}
