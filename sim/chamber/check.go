package chamber

import (
	"time"

	"ullage/sim/fault"
)

// The ranges of what the equations are for. Common sense, no source.
const (
	narrowest, widest   = 5e-3, 1.0    // inside diameter, m
	shortest, longest   = 5e-3, 20.0   // of the tube, m
	thinnest, thickest  = 1e-5, 0.1    // of a wall, m
	softest, strongest  = 1e5, 1e10    // strengths, Pa
	yielding, stiffest  = 1e7, 1e12    // moduli, Pa
	lightest, heaviest  = 50.0, 2e4    // densities, kg/m³
	coldest, hottest    = 200.0, 600.0 // K
	mostPressure        = 1e9          // Pa
	mostCycles          = 1_000_000_000
	leastLeft           = 0.01        // share of a strength that may be given
	leanest, richest    = 0.1, 0.75   // share of fibre: no packing holds more
	finest, heaviestPly = 0.005, 5.0  // cloth, kg/m²
	mostLayers          = 200         // of one ply
	widestThread        = 1.25        // over the inside diameter
	sharpest, bluntest  = 0.087, 1.22 // half-angle of a cone, rad: 5 and 70 deg
)

// Check tells everything that is wrong with a chamber, or nil, by the dotted names of the
// inputs: "chamber.diameter", "chamber.ply.1.cloth". Of what passes, At gives
// figures: what is not known is NaN, and nothing else.
func (c *Chamber) Check() fault.List {
	var k checker
	bore := k.within("chamber.diameter", c.Diameter, narrowest, widest, "give the inside diameter, 5 mm to 1 m")
	long := k.within("chamber.length", c.Length, shortest, longest, "give the tube's length between its closures, 5 mm to 20 m")
	c.checkFigures(&k)
	wall := c.checkWall(&k)
	if bore && wall && c.WallThickness() >= c.Diameter/2 {
		k.add("chamber.wall", "is thicker than the inside radius, "+mm(c.Diameter/2),
			"check the units of diameter and wall, and of each ply's cloth and count")
		wall = false
	}
	c.checkLife(&k)
	c.checkRecord(&k)
	radius, length := widest/2, longest // one fault is not two
	if bore {
		radius = c.Diameter / 2
	}
	if long {
		length = c.Length
	}
	c.Forward.check(&k, "chamber.forward", radius, length)
	c.Aft.check(&k, "chamber.aft", radius, length)
	c.Thread.check(&k)
	if t := c.Thread; bore && t != nil {
		for _, x := range [...]struct {
			name string
			v    float64
		}{{"chamber.thread.diameter", t.Diameter}, {"chamber.thread.seal", t.Seal}} {
			if x.v > widestThread*c.Diameter && x.v <= widest {
				k.add(x.name, "is much wider than the chamber inside, "+mm(c.Diameter), "check its unit; the pressure acts on it")
			}
		}
	}
	c.Heating.check(&k)
	return k.faults
}

// checkFigures looks at what may stand in place of the material's.
func (c *Chamber) checkFigures(k *checker) {
	const leave = ", or leave it out for the material's"
	k.optional("chamber.hoop_strength", c.Around, softest, strongest, "give the wall's tensile strength around the tube, 0.1 MPa to 10 GPa"+leave)
	k.optional("chamber.axial_strength", c.Along, softest, strongest, "give the wall's tensile strength along the tube, 0.1 MPa to 10 GPa"+leave)
	k.optional("chamber.density", c.Density, lightest, heaviest, "give 50 to 20 000 kg/m³"+leave)
	k.optional("chamber.modulus", c.Modulus, yielding, stiffest, "give 10 MPa to 1000 GPa"+leave)
	k.within("chamber.waste", c.Waste, 0, 5, "give what is bought beyond the need as a share, 0.15 for 15 %")
	if c.Material != Own {
		return
	}
	for _, f := range [...]struct {
		name, what string
		value      float64
	}{
		{"chamber.hoop_strength", "tensile strength around the tube", c.Around},
		{"chamber.axial_strength", "tensile strength along the tube", c.Along},
		{"chamber.density", "density", c.Density},
	} {
		if f.value == 0 {
			k.add(f.name, "is not known for a material of your own", "give its "+f.what+", or choose a material that is listed")
		}
	}
}

// checkLife looks at heat and cycles.
func (c *Chamber) checkLife(k *checker) {
	k.optional("chamber.temperature", c.Temperature, coldest, hottest, "give the wall's greatest temperature under pressure, -73 to 326 °C, or leave it out")
	k.optional("chamber.heat_factor", c.HeatFactor, leastLeft, 1, "give the share of the strength left when warm, 0.01 to 1, or leave it out")
	k.optional("chamber.cycle_factor", c.CycleFactor, leastLeft, 1, "give the share of the strength left after the cycles, 0.01 to 1, or leave it out")
	if c.Cycles < 0 || c.Cycles > mostCycles {
		k.add("chamber.cycles", "out of range", "give how often it was under pressure, 0 for a new one")
	}
}

// checkRecord looks at what was measured.
func (c *Chamber) checkRecord(k *checker) {
	burst := k.within("chamber.burst", c.Burst, 0, mostPressure, "give the pressure at which one made alike burst, or leave it out")
	proof := k.within("chamber.proof", c.Proof, 0, mostPressure, "give the pressure it was proved at with water, or leave it out")
	if burst && proof && c.Burst > 0 && c.Burst < c.Proof {
		k.add("chamber.burst", "is below the proof on record, "+bar(c.Proof)+", which this chamber held",
			"correct one of them; a burst of another make says nothing of this one: leave it out")
	}
	if c.ProofDate == "" {
		return
	}
	if _, err := time.Parse(time.DateOnly, c.ProofDate); err != nil {
		k.add("chamber.proof_date", "is no date", "write year, month and day as 2026-05-01")
	} else if c.Proof == 0 {
		k.add("chamber.proof_date", "has no proof beside it", "give chamber.proof, the pressure it was proved at, or leave the date out")
	}
}
