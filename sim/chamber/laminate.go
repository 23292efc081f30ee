package chamber

import "math"

// family is a layer of parallel fibres in a wall.
type family struct {
	angle     float64 // from the tube's axis, rad
	thickness float64 // m
}

// laminate is a wall of families of one lamina, which act in its plane only: classical
// lamination theory without bending (Jones, 1975, chapter 4). A tube under pressure does
// not bend its wall, and it is free to twist.
type laminate struct {
	of       lamina
	families []family
}

// strains are those of the wall: along the axis, around it, and the angle between them.
type strains struct{ along, around, twist float64 }

// under gives the strains under loads along and around a tube, N/m, and no shear. They
// are not numbers when nothing resists.
func (l *laminate) under(along, around float64) strains {
	var a11, a12, a22, a16, a26, a66 float64
	q11, q12, q22, q66 := l.of.stiffness()
	for _, f := range l.families {
		s, c := math.Sincos(f.angle)
		c2, s2, cs := c*c, s*s, c*s
		m := q12 + 2*q66
		a11 += f.thickness * (q11*c2*c2 + 2*m*c2*s2 + q22*s2*s2)
		a22 += f.thickness * (q11*s2*s2 + 2*m*c2*s2 + q22*c2*c2)
		a12 += f.thickness * ((q11+q22-4*q66)*c2*s2 + q12*(c2*c2+s2*s2))
		a66 += f.thickness * ((q11+q22-2*q12-2*q66)*c2*s2 + q66*(c2*c2+s2*s2))
		a16 += f.thickness * cs * ((q11-q12-2*q66)*c2 + (q12-q22+2*q66)*s2)
		a26 += f.thickness * cs * ((q11-q12-2*q66)*s2 + (q12-q22+2*q66)*c2)
	}
	// The twist adjusts itself until no shear is left: what remains is two by two.
	b11, b12, b22 := a11-a16*a16/a66, a12-a16*a26/a66, a22-a26*a26/a66
	det := b11*b22 - b12*b12
	e := strains{along: (b22*along - b12*around) / det, around: (b11*around - b12*along) / det}
	e.twist = -(a16*e.along + a26*e.around) / a66
	return e
}

// seen is a strain of the wall as a family has it: along its fibres, and the stresses
// across them and in shear, Pa.
type seen struct{ fibre, across, shear float64 }

func (l *laminate) seenBy(f family, e strains) seen {
	s, c := math.Sincos(f.angle)
	along := c*c*e.along + s*s*e.around + c*s*e.twist
	across := s*s*e.along + c*c*e.around - c*s*e.twist
	shear := 2*c*s*(e.around-e.along) + (c*c-s*s)*e.twist
	_, q12, q22, q66 := l.of.stiffness()
	return seen{fibre: along, across: q12*along + q22*across, shear: q66 * shear}
}

// laminate is the wall as families of fibres; a composite wall of which no plies are
// told is taken as cloth with its fibres along and around. It is meant for composites.
func (c *Chamber) laminate() laminate {
	return c.laminateIn(make([]family, 0, max(2, 2*len(c.Plies)))) // a woven or braided ply is two
}

// laminateIn is the same in the room of the caller.
func (c *Chamber) laminateIn(room []family) laminate {
	l := laminate{of: mix(c.Material.stuff(), c.FibreFractionInForce()), families: room}
	wall := c.WallThickness()
	if len(c.Plies) == 0 {
		l.families = append(l.families, family{0, wall / 2}, family{math.Pi / 2, wall / 2})
		return l
	}
	all := c.dryCloth()
	for i := range c.Plies {
		p := &c.Plies[i]
		t := wall * p.dry() / all
		switch p.Weave {
		case Unidirectional:
			l.families = append(l.families, family{p.Direction, t})
		case Braided:
			l.families = append(l.families, family{p.Direction, t / 2}, family{-p.Direction, t / 2})
		default:
			l.families = append(l.families, family{p.Direction, t / 2}, family{p.Direction + math.Pi/2, t / 2})
		}
	}
	return l
}
