package chamber

import (
	"math"

	"ullage/sim/fault"
)

// Tube is what the tube is made of and what to buy for it. It is as long as the chamber
// and its bonded laps.
type Tube struct {
	Wall          float64 // m
	FibreFraction float64 // by volume; 0 without fibres known here
	Density       float64 // kg/m³; NaN when not known
	Mass          float64 // kg; NaN when not known
	Cloth         []Cloth // one for each ply
	Resin         float64 // to mix, waste in it, kg; 0 without plies
}

// Cloth is what to buy for a ply, waste in it.
type Cloth struct {
	Ply       string  // its name, or its number from 1
	Thickness float64 // of all its layers in the wall, m
	Area      float64 // m²
	Mass      float64 // kg
}

// FibreFractionInForce is the share of fibre by volume: where the wall was measured over
// a lay-up, what the cloth's mass fills of it; else as given; else the material's usual
// one. 0 without fibres known here.
func (c *Chamber) FibreFractionInForce() float64 {
	f := c.Material.stuff().fibre
	switch {
	case f == nil:
		return 0
	case c.Wall != 0 && len(c.Plies) > 0:
		return c.dryCloth() / (f.density * c.Wall)
	case c.FibreFraction != 0:
		return c.FibreFraction
	}
	return f.fraction
}

// FibreFractionPlanned is the share of fibre by volume that a lay-up is meant to have: as given,
// else the material's usual one, whatever a measured wall says. 0 without fibres known here.
func (c *Chamber) FibreFractionPlanned() float64 {
	if c.FibreFraction != 0 && c.Material.stuff().fibre != nil {
		return c.FibreFraction
	}
	return c.Material.FibreFraction()
}

// counted is the share of a strength or a modulus of one's own that counts in a measured wall: coupons
// had the planned share of fibre, and a wall that is thicker by resin alone holds no more than
// the plies in it. A thinner wall is taken as it is.
func (c *Chamber) counted() float64 {
	planned := c.FibreFractionPlanned()
	if c.Wall == 0 || len(c.Plies) == 0 || planned == 0 {
		return 1
	}
	return math.Min(1, c.FibreFractionInForce()/planned)
}

// plied is the chamber without the resin by which its measured wall is thicker than its plies as
// planned.
func (c *Chamber) plied() Chamber {
	p := *c
	if c.counted() < 1 {
		p.Wall = 0
	}
	return p
}

// dryCloth is the areal mass of all plies, kg/m².
func (c *Chamber) dryCloth() float64 {
	sum := 0.
	for i := range c.Plies {
		sum += c.Plies[i].dry()
	}
	return sum
}

func (p *Ply) dry() float64 { return p.Cloth * float64(p.Count) }

// WallThickness is the wall's, m: as measured, else the sum of the plies, each
// g/(ρ_f V_f) a layer. 0 when there is neither.
func (c *Chamber) WallThickness() float64 {
	if c.Wall != 0 {
		return c.Wall
	}
	f := c.Material.stuff().fibre
	if f == nil {
		return 0
	}
	return c.dryCloth() / (f.density * c.FibreFractionInForce())
}

// WallDensity is the wall's, kg/m³: as given, else the material's with its share of
// fibre; NaN when neither is known.
func (c *Chamber) WallDensity() float64 {
	if c.Density != 0 {
		return c.Density
	}
	return c.Material.Density(c.FibreFractionInForce())
}

// meanRadius is that of the wall's middle, m.
func (c *Chamber) meanRadius() float64 { return (c.Diameter + c.WallThickness()) / 2 }

// TubeLength is that of the tube with what laps over the closures, m.
func (c *Chamber) TubeLength() float64 {
	length := c.Length
	for _, e := range []*Closure{c.Forward, c.Aft} {
		if e != nil {
			length += e.Overlap
		}
	}
	return length
}

// TubeMass is what the tube weighs with its laps, without closures, kg.
func (c *Chamber) TubeMass() float64 { return c.WallDensity() * c.tubeVolume() }

// tubeVolume is that of its wall, m³.
func (c *Chamber) tubeVolume() float64 {
	return 2 * math.Pi * c.meanRadius() * c.WallThickness() * c.TubeLength()
}

// tube works out the wall and what to buy. Each layer is cut for its own radius: the
// outer ones take more cloth.
func (c *Chamber) tube() Tube {
	t := Tube{Wall: c.WallThickness(), FibreFraction: c.FibreFractionInForce(), Density: c.WallDensity()}
	length := c.TubeLength()
	volume := c.tubeVolume()
	t.Mass = t.Density * volume
	s := c.Material.stuff()
	if s.fibre == nil || len(c.Plies) == 0 {
		return t
	}
	buy := 1 + c.Waste
	t.Resin = s.density * (1 - t.FibreFraction) * volume * buy
	t.Cloth = make([]Cloth, len(c.Plies))
	inner := c.Diameter / 2
	for i := range c.Plies {
		p := &c.Plies[i]
		thick := p.dry() / (s.fibre.density * t.FibreFraction)
		// The layers' mean radius is the ply's, so their areas add up to this.
		area := float64(p.Count) * 2 * math.Pi * (inner + thick/2) * length * buy
		t.Cloth[i] = Cloth{Ply: fault.Entry(p.Name, i), Thickness: thick, Area: area, Mass: area * p.Cloth}
		inner += thick
	}
	return t
}
