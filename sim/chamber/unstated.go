package chamber

import (
	"math"
	"strconv"

	"ullage/sim/fault"
)

// Up to where what is built in on heat and cycles is let count: common practice, no source. A chamber is proved about
// as warm, and fewer cycles cost little. Beyond them nobody knows but who measured it.
const (
	warmest    = 303.15 // of a wall, K
	mostCycles = 10
)

// need is a key of a rocket file, and whether what it says is missing.
type need struct {
	key     string
	missing bool
}

// missing are the keys of what is.
func missing(all ...need) []string {
	var keys []string
	for _, n := range all {
		if n.missing {
			keys = append(keys, n.key)
		}
	}
	return keys
}

// Unstated lists what the estimate of a chamber's burst takes that nobody has stated, as a rocket file has it: what is
// built in is typical, and says nothing of this one. It is asked of the chamber as described, before anything is filled
// in; temperature is the greatest of its wall that is in force, K, which the day may raise.
func (c *Chamber) Unstated(temperature float64) []string {
	keys := append(c.UnstatedAge(), missing(
		need{"chamber.hoop_strength", c.Around == 0},
		need{"chamber.axial_strength", c.Along == 0},
		need{"chamber.temperature", c.Temperature == 0},
		need{"chamber.heat_factor", c.HeatUnstated(temperature)},
		need{"chamber.fibre_fraction", len(c.Plies) > 0 && c.FibreFraction == 0}, // the thickness hangs on it; of a measured wall what counts of its coupons
	)...)
	keys = append(keys, c.Forward.unstated("chamber.forward")...)
	keys = append(keys, c.Aft.unstated("chamber.aft")...)
	if c.Forward != nil || c.Aft != nil || c.Adhesive != nil {
		keys = append(keys, c.Adhesive.unstated()...)
		keys = append(keys, missing(need{"chamber.modulus", c.ModulusUnstated()})...) // what the ends of a lap carry hangs on it
	}
	keys = append(keys, c.Thread.unstated()...)
	return append(keys, c.Boss.unstated(!c.Material.isotropic())...)
}

// BurstStated tells whether anybody said what counts for the burst: what one made alike burst at, or that the estimate
// does. Without a word nobody can tell that one was measured below it.
func (c *Chamber) BurstStated() bool { return c.Burst != 0 || c.BurstWord == Estimated }

// ModulusUnstated tells that nobody stated how stiff a wall is, nor the plies that make it: what is built in for its
// material is typical.
func (c *Chamber) ModulusUnstated() bool { return c.Modulus == 0 && len(c.Plies) == 0 }

// By what share a measured wall may be thinner than its plies make it, which is what measuring takes; and softer, which is how far
// lamination theory with typical fibres may be off a hand lay-up (common practice, no source). What is farther apart is a slip.
const (
	thinner = 0.02
	softer  = 0.2
)

// CheckStated looks at what is stated of heat, cycles, modulus and wall where, without it, what is built in or follows from the
// plies would count: it may be no worse than that. Else the chamber would get stronger by a line taken out of its file, and of a line that is gone
// nobody can tell that it was there. A wall that is worse so early is stated by its strengths, which are asked for
// where they are missing, or as a warmer one or one of more cycles, of which the share is; one that is softer, as a material of its
// own. It is asked of the chamber as described.
func (c *Chamber) CheckStated() fault.List {
	var k checker
	heat, cycles := *c, *c
	heat.HeatFactor, cycles.CycleFactor = 0, 0
	if c.HeatFactor != 0 && c.Temperature != 0 && !heat.HeatUnstated(c.Temperature) && c.HeatFactor < heat.HeatLeft() {
		k.add("chamber.heat_factor", "is less than "+rounded(heat.HeatLeft())+", which counts for a wall at no more than "+rounded(warmest-celsius)+" degC where none is given",
			"give the strengths that coupons as warm as chamber.temperature have; or a higher chamber.temperature, for which this share is")
	}
	if c.CycleFactor != 0 && len(cycles.UnstatedAge()) == 0 && c.CycleFactor < math.Max(cycles.CycleFactorInForce(), cycles.bondCycles()) {
		k.add("chamber.cycle_factor", "is less than "+rounded(math.Max(cycles.CycleFactorInForce(), cycles.bondCycles()))+", which counts for "+strconv.Itoa(c.Cycles)+" cycles where none is given",
			"give the strengths that coupons of that age have; this share counts from more than "+strconv.Itoa(mostCycles)+" cycles on")
	}
	if len(c.Plies) == 0 || c.Material.stuff().fibre == nil {
		return k.faults
	}
	if made := c.dryCloth() / (c.Material.stuff().fibre.density * c.FibreFraction); c.Wall != 0 && c.FibreFraction != 0 && c.Wall < made*(1-thinner) {
		k.odds("chamber.wall", "chamber.fibre_fraction", "is thinner than its plies make it at a fibre fraction of "+rounded(c.FibreFraction)+", "+mm(made),
			"correct what is wrong of wall, plies and fraction: so thin a wall makes "+rounded(c.FibreFractionInForce()))
	}
	if least := c.leastModulus(); c.Modulus != 0 && c.Modulus < least*(1-softer) {
		k.odds("chamber.modulus", "chamber.ply", "is far less than "+rounded(least/1e9)+" GPa, which its plies make where none is given",
			"correct the plies or their fibre fraction; a wall that was measured to be softer is described by chamber.material = \"own\", with its thickness, strengths, modulus and density")
	}
	return k.faults
}

// leastModulus is the modulus that strains a wall of plies, and lets it hold at the ends of its laps, as its plies do, Pa.
func (c *Chamber) leastModulus() float64 {
	plies := *c
	plies.Modulus = 0
	return math.Max(c.Modulus*c.strains().greatest/plies.strains().greatest, c.Modulus*plies.stiffnessAlong()/c.stiffnessAlong())
}

// HeatUnstated tells of a wall so warm that what it keeps of its strength has to be stated: temperature is the
// greatest in force, K.
func (c *Chamber) HeatUnstated(temperature float64) bool {
	return c.HeatFactor == 0 && temperature > warmest+1e-6
}

// UnstatedAge lists what nobody has said of the pressurisations that a chamber went through: they tell on a burst that
// was measured as on one that is estimated.
func (c *Chamber) UnstatedAge() []string {
	switch {
	case c.CycleFactor != 0:
		return nil
	case c.Cycles == 0 && !c.Counted && (c.Booked == nil || c.Booked.Missing != ""):
		return []string{"chamber.cycles"}
	case c.Cycles > mostCycles:
		return []string{"chamber.cycle_factor"}
	}
	return nil
}

// unstated is what a closure at a key of the file lacks: all of it where it is not described.
func (e *Closure) unstated(at string) []string {
	if e == nil {
		return []string{at}
	}
	return missing(need{at + ".wall", e.Wall == 0}, need{at + ".strength", e.Strength == 0}, need{at + ".bond_strength", e.BondStrength == 0})
}

func (a *Adhesive) unstated() []string {
	if a == nil {
		return []string{"chamber.adhesive"}
	}
	return missing(need{"chamber.adhesive.glue_line", a.GlueLine == 0}, need{"chamber.adhesive.strength", a.Strength == 0},
		need{"chamber.adhesive.elastic_strain", a.Elastic == 0}, need{"chamber.adhesive.plastic_strain", a.Plastic == 0})
}

func (t *Thread) unstated() []string {
	if t == nil {
		return []string{"chamber.thread"}
	}
	return missing(need{"chamber.thread.strength", t.Strength == 0}, need{"chamber.thread.female_strength", t.Female == 0},
		need{"chamber.thread.seal", t.Seal == 0}, need{"chamber.thread.hole", t.Hole == 0})
}

// unstated is what a boss lacks; one that is not described lacks all where a chamber is laid up, which has one.
func (b *Boss) unstated(laid bool) []string {
	if b == nil {
		return missing(need{"chamber.boss", laid})
	}
	return missing(need{"chamber.boss.bond_strength", b.BondStrength == 0})
}

// Unstated names what nobody said of a mount, as a rocket file has it: neither how strong it
// is nor that there is none. It is all of it for a mount that is nil.
func (m *Mount) Unstated() []string {
	if m == nil {
		m = &Mount{}
	}
	return missing(
		need{"recovery.line", m.Line == 0 && !m.None.Line},
		need{"recovery.pin", m.Pin == 0 && !m.None.Pin},
		need{"recovery.bond_area", m.BondArea == 0 && !m.None.Bond},
		need{"recovery.pin_strength", m.PinStrength == 0 && m.Pin != 0}, // a typical one says nothing of this
		need{"recovery.bond_strength", m.Bond == 0 && m.BondArea != 0},
	)
}

// UnstatedSnatch lists what the snatch of a line takes that nobody has stated.
func (m *Mount) UnstatedSnatch() []string {
	return missing(need{"recovery.line_length", m.LineLength == 0}, need{"recovery.line_stretch", m.LineStretch == 0},
		need{"recovery.canopy_mass", m.CanopyMass == 0})
}
