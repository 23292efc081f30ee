package chamber

import "math"

// At works out everything at a working pressure, for a chamber that passed Check. What
// did not may give figures that are no numbers; it never panics.
func (c *Chamber) At(s Service) Result {
	f := c.factors()
	r := Result{
		Tube:       c.tube(),
		HeatFactor: c.HeatFactorInForce(), CycleFactor: c.CycleFactorInForce(), BondFactor: f.bond,
		Thick:  c.thick() && !c.lame(),
		Stated: c.BurstStated(),
		Parts:  c.parts(),
	}
	r.Weakest, r.Estimate = weakest(r.Parts)
	for i := range r.Parts {
		r.Parts[i] = r.Parts[i].at(s.Working)
	}
	for _, end := range [...]struct {
		name string
		of   *Closure
	}{{"forward", c.Forward}, {"aft", c.Aft}} {
		if end.of != nil {
			l, _ := c.lap(end.name, end.of, f.bond)
			r.Laps = append(r.Laps, l.at(s.Working))
		}
	}
	cold := *c
	cold.HeatFactor = 1
	_, r.ColdEstimate = weakest(cold.parts())
	// No telling what gave way, or whether closures that are not described are bonded.
	g := cold.factors()
	r.rest(c.Burst, c.Proof, math.Min(f.wall, f.bond), math.Min(g.wall, g.bond))
	r.prove(s, c.Proof, c.HeatLeft())

	volume := s.Volume
	if volume == 0 {
		volume = c.Volume()
	}
	e := c.strains()
	r.Dilation = c.dilation(e, r.Proof, volume)
	r.Strain, r.ProofStrain = e.greatest*s.Working, e.greatest*r.Proof
	weeps := c.Weeps()
	r.Cracks, r.CracksAtProof = weeps && r.Strain >= crackStrain, weeps && r.ProofStrain >= crackStrain
	r.store(s, volume)
	if c.Heating != nil {
		r.Heated = c.Heating.heated(s, volume, r.MostWorking*c.hotShare(s.AirTemperature))
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
