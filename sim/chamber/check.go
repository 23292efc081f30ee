package chamber

import (
	"math"
	"time"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// How numbers must go together for the equations. Common sense, no source.
const (
	leanest, richest = 0.1, 0.75 // share of fibre: no packing holds more
	widestThread     = 1.25      // over the inside diameter
)

// Check tells everything that is wrong with a chamber, or nil, by the dotted names of the
// inputs: "chamber.diameter", "chamber.ply.1.cloth". Of what passes, At gives
// figures: what is not known is NaN, and nothing else.
func (c *Chamber) Check() fault.List {
	var k checker
	bore, long := c.checkSize(&k)
	c.checkFigures(&k)
	wall := c.checkWall(&k)
	if bore && wall && c.WallThickness() >= c.Diameter/2 {
		k.odds("chamber.wall", "chamber.diameter", "is thicker than the inside radius, "+mm(c.Diameter/2),
			"check the units of diameter and wall, and of each ply's cloth and count")
	}
	c.checkRecord(&k)
	radius, length := math.Inf(1), math.Inf(1) // one fault is not two
	if bore {
		radius = c.Diameter / 2
	}
	if long {
		length = c.Length
	}
	c.Forward.check(&k, "chamber.forward.", radius, length)
	c.Aft.check(&k, "chamber.aft.", radius, length)
	c.Thread.check(&k)
	if c.Adhesive != nil {
		quantity.Check(&k.faults, c.Adhesive, adhesiveFields)
	}
	if c.Boss != nil {
		quantity.Check(&k.faults, c.Boss, bossFields)
	}
	if c.Liner != "" && c.Liner != Unlined && c.Liner != Lined {
		k.add("chamber.liner", "is neither none nor lined", `write "none" or "lined"`)
	}
	if c.BesideMotor != "" && c.BesideMotor != Sealed && c.BesideMotor != Open {
		k.add("chamber.beside_motor", "is neither sealed nor open", `write "sealed" or "open"`)
	}
	if t := c.Thread; bore && t != nil {
		for _, x := range [...]struct {
			name string
			v    float64
		}{{"chamber.thread.diameter", t.Diameter}, {"chamber.thread.seal", t.Seal}} {
			if x.v > widestThread*c.Diameter && !k.has(x.name) {
				k.add(x.name, "is much wider than the chamber inside, "+mm(c.Diameter), "check its unit; the pressure acts on it")
			}
		}
	}
	c.Heating.check(&k)
	return k.faults
}

// checkSize tells whether diameter and length are known: both have to be.
func (c *Chamber) checkSize(k *checker) (bore, long bool) {
	bore = quantity.Check(&k.faults, c, sizeFields[:1])
	long = quantity.Check(&k.faults, c, sizeFields[1:])
	if c.Diameter == 0 {
		k.faults.Need("chamber.diameter", "give the inside diameter")
		bore = false
	}
	if c.Length == 0 {
		k.faults.Need("chamber.length", "give the tube's length between its closures")
		long = false
	}
	return bore, long
}

// checkFigures looks at what may stand in place of the material's, and at its life.
func (c *Chamber) checkFigures(k *checker) {
	quantity.Check(&k.faults, c, figureFields)
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
			k.faults = append(k.faults, fault.Fault{Key: f.name, Problem: "is not known for a material of your own",
				Remedy: "give its " + f.what + ", or choose a material that is listed", Missing: true})
		}
	}
}

// checkRecord looks at what was measured.
func (c *Chamber) checkRecord(k *checker) {
	if quantity.Check(&k.faults, c, recordFields) && c.Burst > 0 && c.Burst < c.Proof {
		k.odds("chamber.burst", "chamber.proof", "is below the proof on record, "+bar(c.Proof)+", which this chamber held",
			"correct one of them; a burst of another make says nothing of this one: leave it out")
	}
	if c.ProofDate == "" {
		return
	}
	if _, err := time.Parse(time.DateOnly, c.ProofDate); err != nil {
		k.add("chamber.proof_date", "is no date", "write year, month and day as 2026-05-01")
	} else if c.Proof == 0 {
		k.odds("chamber.proof_date", "chamber.proof", "has no proof beside it", "give chamber.proof, the pressure it was proved at, or leave the date out")
	}
}
