package chamber

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
	p := c.plied()
	w := newLayup(p.laminate(), c.loadAlong(), c.loadAround(), share, s)
	if c.Around != 0 {
		parts = append(parts, c.plainPart(wallAround, around, c.Around, 0, share))
	} else {
		parts = append(parts, w.part(wallAround, around, fromCircle))
	}
	if c.Along != 0 {
		parts = append(parts, c.plainPart(wallAlong, along, c.Along, 0, share))
	} else {
		parts = append(parts, w.part(wallAlong, along, fromAxis))
	}
	if w.shear > noShear*around {
		parts = append(parts, newPart(wallShear, w.shear, resinShear*share, true, ""))
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
// Materials, part II). Of Own, which may be isotropic or not, the greater of both.
func (c *Chamber) wallStress() (around, along float64) {
	t := c.WallThickness()
	around, along = c.loadAround()/t, c.loadAlong()/t
	if !c.thick() || !c.lame() && c.Material != Own {
		return around, along
	}
	a, l := lame(c.Diameter/2, c.Diameter/2+t)
	if c.Material == Own {
		l = along
	}
	return a, l
}

func lame(inner, outer float64) (around, along float64) {
	i, o := inner*inner, outer*outer
	return (o + i) / (o - i), i / (o - i)
}

// plainPart is the wall one way, against one strength; of one that was given, what counts in
// the wall as measured.
func (c *Chamber) plainPart(name string, stress, given, typical, share float64) Part {
	strength, built := orTypical(given*c.counted(), typical)
	p := newPart(name, stress, strength*share, built, "")
	if built && c.Material == Aluminium {
		p.Note = Yields
	}
	return p
}
