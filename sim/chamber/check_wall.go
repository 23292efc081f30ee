package chamber

import "math"

// checkWall looks at material and lay-up; it tells whether the wall's thickness is known.
func (c *Chamber) checkWall(k *checker) bool {
	if !c.Material.known() {
		k.add("chamber.material", "is not a material known here",
			"write E-glass/epoxy, carbon/epoxy, PET bottle, aluminium, or own with strengths and density")
		return false
	}
	wall := k.optional("chamber.wall", c.Wall, thinnest, thickest, "give the wall as measured, 0.01 to 100 mm, or leave it out for the plies'")
	fibres := c.Material.stuff().fibre != nil
	fraction := true
	switch {
	case c.FibreFraction != 0 && !fibres:
		k.add("chamber.fibre_fraction", "does not go with "+string(c.Material), "leave it out, or choose E-glass/epoxy or carbon/epoxy")
	case c.FibreFraction != 0:
		fraction = checkFraction(k, "chamber.fibre_fraction", c.FibreFraction, c.FibreFraction, "give 0.3 to 0.4 for hand lay-up, up to 0.6 under vacuum")
	}
	if len(c.Plies) > 0 && !fibres {
		k.add("chamber.material", string(c.Material)+" is not laid up from plies",
			"choose E-glass/epoxy or carbon/epoxy, whose strengths chamber.hoop_strength and chamber.axial_strength may replace, or give chamber.wall and no plies")
		return false
	}
	plies := true
	for i := range c.Plies {
		plies = c.Plies[i].check(k, "chamber.ply."+label(c.Plies[i].Name, i)+".") && plies
	}
	if len(c.Plies) == 0 && c.Wall == 0 {
		k.add("chamber.wall", "there is no wall", "give chamber.wall as measured, or the plies it is laid up from")
		return false
	}
	if !wall || !fraction || !plies {
		return false
	}
	if c.Wall != 0 && len(c.Plies) > 0 && !(c.Wall >= c.Diameter/2) { // of such a wall something else is wrong
		return checkFraction(k, "chamber.wall", c.Wall, c.FibreFractionInForce(), "correct the wall or the cloth of the plies: at the usual fraction they make "+
			mm(c.dryCloth()/(c.Material.stuff().fibre.density*c.Material.FibreFraction())))
	}
	return true
}

// checkFraction looks at a share of fibre by volume; name and value are what made it.
func checkFraction(k *checker, name string, value, v float64, remedy string) bool {
	switch {
	case v >= leanest && v <= richest:
		return true
	case v > richest:
		k.add(name, "makes a fibre fraction of "+rounded(v)+", more than any packing holds, "+rounded(richest), remedy)
	default:
		k.add(name, "makes a fibre fraction of "+rounded(v)+", less than a laminate has, "+rounded(leanest), remedy)
	}
	return false
}

// check looks at a ply; it tells whether its cloth is known.
func (p *Ply) check(k *checker, name string) bool {
	cloth := k.within(name+"cloth", p.Cloth, finest, heaviestPly, "give the dry cloth's mass for an area, 5 to 5000 g/m²")
	if p.Count < 1 || p.Count > mostLayers {
		k.add(name+"count", "out of range", "give 1 to 200 layers")
		cloth = false
	}
	k.within(name+"direction", p.Direction, 0, math.Pi/2, "give the angle from the tube's axis, 0 to 90 deg")
	switch p.Weave {
	case Woven, Braided, Unidirectional:
	default:
		k.add(name+"weave", "is not a weave known here", "write woven, braided or unidirectional")
	}
	return cloth
}
