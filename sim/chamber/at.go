package chamber

import "math"

// At works out everything at a working pressure, for a chamber that passed Check. What
// did not may give figures that are no numbers; it never panics.
func (c *Chamber) At(s Service) Result {
	f := c.factors()
	r := Result{
		Tube:       c.tube(),
		HeatFactor: c.HeatFactorInForce(), CycleFactor: c.CycleFactorInForce(), BondFactor: f.bond,
		Thick: c.thick() && !c.lame(),
		Parts: c.parts(),
	}
	r.Weakest, r.Estimate = weakest(r.Parts)
	for i := range r.Parts {
		r.Parts[i] = r.Parts[i].at(s.Working)
	}
	share := f.wall
	if c.Forward != nil || c.Aft != nil {
		share = math.Min(share, f.bond) // no telling what gave way
	}
	r.rest(c.Burst, c.Proof, share)
	r.prove(s.Working, c.Proof)

	volume := s.Volume
	if volume == 0 {
		volume = c.Volume()
	}
	e := c.strains()
	r.Dilation = c.dilation(e, r.Proof, volume)
	r.Strain, r.ProofStrain = e.greatest*s.Working, e.greatest*r.Proof
	weeps := !c.Material.isotropic()
	r.Cracks, r.CracksAtProof = weeps && r.Strain >= CrackStrain, weeps && r.ProofStrain >= CrackStrain
	r.store(s, volume)
	if c.Heating != nil {
		r.Heated = c.Heating.heated(s, volume, r.MostWorking)
	}
	return r
}

// weakest is the part with the greatest use at one pascal, and the pressure at which
// that reaches 1.
func weakest(parts []Part) (which int, burst float64) {
	which, burst = -1, math.NaN()
	most := math.Inf(-1)
	for i, p := range parts {
		if p.Use > most {
			which, most, burst = i, p.Use, 1/p.Use
		}
	}
	return which, burst
}
