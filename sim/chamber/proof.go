package chamber

import "math"

// How to prove a chamber, common practice, no source.
const (
	ProofFactor    = 1.5 // proof over working pressure, where a service says nothing else
	EstimatedShare = 0.5 // of an estimated burst pressure that a proof may reach
	MeasuredShare  = 0.8 // of a measured one
	ProofStages    = 4   // even steps up to the proof pressure
	StageHold      = 60  // at each of them, s
	ProofHold      = 300 // at the proof pressure, s
)

// SetShare is the permanent part of the dilation beyond which a chamber is rejected: 49
// CFR 180.205, from memory.
const SetShare = 0.1

// crackStrain is where the resin between fibres begins to crack and an unlined glass
// wall weeps: common practice, no source.
const crackStrain = 0.004

// waterStiffness is the bulk modulus of water at 20 °C, Pa: handbooks, from memory.
const waterStiffness = 2.18e9

// Dilation is what proving with water does to a chamber.
type Dilation struct {
	Around   float64 // strain of the wall; NaN, like what follows from it, when its modulus is not known
	Along    float64
	Diameter float64 // growth of the outside diameter, m
	Length   float64 // growth of the tube between its closures, m
	Volume   float64 // growth of the volume, as if it were all tube, m³
	Water    float64 // by which the water is compressed, m³
	Pump     float64 // to pump in beyond a full chamber, m³
	Set      float64 // of Volume, that may remain, m³
}

// rest settles what the burst pressure rests on, hot and cold. What was measured was
// measured cold and new: the share that heat and cycles leave, or cycles alone, counts for
// it as for the estimate.
func (r *Result) rest(measured, proof, share, coldShare float64) {
	switch {
	case measured > 0:
		r.Burst, r.ColdBurst, r.Basis = measured*share, measured*coldShare, FromBurst
	case proof > 0 && !(proof*coldShare <= r.ColdEstimate):
		r.Burst, r.ColdBurst, r.Basis = proof*share, proof*coldShare, FromProof
	default:
		r.Burst, r.ColdBurst, r.Basis = r.Estimate, r.ColdEstimate, FromEstimate
	}
}

// prove settles the pressures of the proof test, which is made cold: left is the share of
// a cold strength that heat leaves in service.
func (r *Result) prove(s Service, onRecord, left float64) {
	if r.ProofFactor = s.ProofFactor; r.ProofFactor == 0 {
		r.ProofFactor = ProofFactor
	}
	share := EstimatedShare
	if r.Basis == FromBurst {
		share = MeasuredShare
	}
	r.HeatLeft = left
	if s.Working > 0 { // nothing asked for stays nothing, whatever the heat
		r.ProofWanted = r.ProofFactor * s.Working / left
	}
	r.ProofLimit = share * r.ColdBurst
	if r.Proof = math.Min(r.ProofWanted, r.ProofLimit); left == 0 {
		r.Proof = 0 // there is nothing to prove it for
	}
	r.ProofEnough = r.ProofLimit >= r.ProofWanted
	r.MostWorking = r.ProofLimit * left / r.ProofFactor
	r.MostOnRecord = onRecord * left / r.ProofFactor
}

// stretch is the wall's strain at one pascal.
type stretch struct{ around, along, greatest float64 }

// strains are from a modulus that was given, from the lay-up, or from the material's
// modulus, in this order; NaN when there is none.
func (c *Chamber) strains() stretch {
	s := c.Material.stuff()
	var e stretch
	var room [16]family
	switch {
	case c.Modulus == 0 && s.fibre != nil:
		l := c.laminateIn(room[:0])
		w := l.under(c.loadAlong(), c.loadAround())
		e = stretch{around: w.around, along: w.along}
		for _, f := range l.families {
			e.greatest = math.Max(e.greatest, l.seenBy(f, w).fibre)
		}
	default:
		modulus := s.modulus
		if c.Modulus != 0 {
			modulus = c.Modulus * c.counted()
		}
		around, along := c.wallStress()
		radial := 0. // stress, a thin wall's being small beside the others
		if c.lame() {
			radial = -1
		}
		nu := s.inPlane()
		e.around = (around - nu*(along+radial)) / modulus
		e.along = (along - nu*(around+radial)) / modulus
	}
	e.greatest = math.Max(e.greatest, math.Max(e.around, e.along))
	return e
}

// Growth is by what share of itself the volume of a chamber of an inside diameter, which
// counts where the chamber has none of its own, grows under a pressure: 2·ε around + ε along, as if it
// were all tube. 0 where the wall's modulus is not known.
func (c *Chamber) Growth(bore, pressure float64) float64 {
	v := *c
	if v.Diameter == 0 {
		v.Diameter = bore
	}
	e := v.strains()
	grown := (2*e.around + e.along) * pressure
	if !(grown >= 0) {
		return 0
	}
	return math.Min(grown, mostGrowth)
}

// mostGrowth is that of a wall that has yielded long before: no figure to fly with.
const mostGrowth = 0.5

func (c *Chamber) dilation(e stretch, pressure, volume float64) Dilation {
	d := Dilation{Around: e.around * pressure, Along: e.along * pressure}
	d.Diameter = d.Around * (c.Diameter + 2*c.WallThickness())
	d.Length = d.Along * c.Length
	d.Volume = (2*d.Around + d.Along) * volume
	d.Water = pressure * volume / waterStiffness
	d.Pump = d.Volume + d.Water
	d.Set = SetShare * d.Volume
	return d
}
