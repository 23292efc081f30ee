package chamber

import (
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// checkWall looks at material and lay-up; it tells whether the wall's thickness is known.
func (c *Chamber) checkWall(k *checker) bool {
	if !c.Material.known() {
		materials := "write " + fault.OneOf(Materials()...) + ", the last with strengths and density"
		if c.Material == "" {
			k.faults.Need("chamber.material", materials)
		} else {
			k.add("chamber.material", "is not a material known here", materials)
		}
		return false
	}
	figures := quantity.Check(&k.faults, c, wallFields)
	fibres := c.Material.stuff().fibre != nil
	if c.FibreFraction != 0 && !fibres {
		k.odds("chamber.fibre_fraction", "chamber.material", "does not go with "+string(c.Material), "leave it out, or choose E-glass/epoxy or carbon/epoxy")
	}
	if len(c.Plies) > 0 && !fibres {
		k.add("chamber.material", string(c.Material)+" is not laid up from plies",
			"choose E-glass/epoxy or carbon/epoxy, whose strengths chamber.hoop_strength and chamber.axial_strength may replace, or give chamber.wall and no plies")
		return false
	}
	plies := true
	for i := range c.Plies {
		plies = c.Plies[i].check(k, "chamber.ply."+fault.Entry(c.Plies[i].Name, i)+".") && plies
	}
	if len(c.Plies) == 0 && c.Wall == 0 {
		k.faults.Need("chamber.wall", "give chamber.wall as measured, or the plies it is laid up from")
		return false
	}
	if !figures || !plies {
		return false
	}
	if c.Wall != 0 && len(c.Plies) > 0 && !(c.Wall >= c.Diameter/2) { // of such a wall something else is wrong
		return checkFraction(k, c.FibreFractionInForce(), "correct the wall or the cloth of the plies: at the usual fraction they make "+
			mm(c.dryCloth()/(c.Material.stuff().fibre.density*c.Material.FibreFraction())))
	}
	return true
}

// checkFraction looks at the share of fibre by volume that a wall and its plies make.
func checkFraction(k *checker, v float64, remedy string) bool {
	switch {
	case v >= leanest && v <= richest:
		return true
	case v > richest:
		k.add("chamber.wall", "makes a fibre fraction of "+rounded(v)+", more than any packing holds, "+rounded(richest), remedy)
	default:
		k.add("chamber.wall", "makes a fibre fraction of "+rounded(v)+", less than a laminate has, "+rounded(leanest), remedy)
	}
	return false
}

// check looks at a ply; it tells whether its cloth is known.
func (p *Ply) check(k *checker, name string) bool {
	cloth := quantity.Check(&k.faults, p, clothFields, name)
	quantity.Check(&k.faults, p, plyFields, name)
	switch p.Weave {
	case Woven, Braided, Unidirectional:
	default:
		k.add(name+"weave", "is not a weave known here", "write woven, braided or unidirectional")
	}
	return cloth
}
