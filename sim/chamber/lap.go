package chamber

import "math"

// Adhesive is what bonds the laps, as it yields. What is 0 is not given: typical, unverified, from memory.
type Adhesive struct {
	GlueLine float64 // thickness of the glue line, m
	Strength float64 // shear strength of the adhesive itself, where it yields, Pa
	Elastic  float64 // shear strain up to there
	Plastic  float64 // and beyond it up to failure: near 0 of a brittle one, 0.1 and more of a toughened one
}

// The figures of a room-cured epoxy: typical, unverified, from memory.
const (
	TypicalGlueLine    = 0.2e-3 // m
	TypicalGlueYield   = 20e6   // Pa
	TypicalGlueElastic = 0.02
	TypicalGluePlastic = 0.05
)

// inForce is an adhesive with the typical figures for what is not given, and whether there are any.
func (a *Adhesive) inForce() (full Adhesive, typical bool) {
	if a != nil {
		full = *a
	}
	for _, x := range [...]struct {
		at    *float64
		usual float64
	}{{&full.GlueLine, TypicalGlueLine}, {&full.Strength, TypicalGlueYield}, {&full.Elastic, TypicalGlueElastic}, {&full.Plastic, TypicalGluePlastic}} {
		if *x.at == 0 {
			*x.at, typical = x.usual, true
		}
	}
	return full, typical
}

// Lap is a bonded lap under pressure.
type Lap struct {
	End     string  // "forward" or "aft"
	Overlap float64 // m
	Load    float64 // per width of the lap, p·r/2, N/m
	Average float64 // that the adhesive's average strength lets it carry, τ·L, N/m; heat and cycles counted, as in what follows
	Ends    float64 // that its ends let it carry however long it is (Hart-Smith), N/m; NaN where the tube's modulus is not known
	Useful  float64 // overlap beyond which more does nothing, m; NaN likewise
	Peak    float64 // elastic shear stress at its ends, Pa (Volkersen): far too high for adhesives that yield; NaN likewise
}

// stiffnessAlong is the tube's along its axis, modulus times thickness, N/m; NaN where it is not known.
func (c *Chamber) stiffnessAlong() float64 {
	s := c.Material.stuff()
	if c.Modulus == 0 && s.fibre != nil {
		var room [16]family
		p := c.plied()
		l := p.laminateIn(room[:0])
		return 1 / l.under(1, 0).along
	}
	modulus := s.modulus
	if c.Modulus != 0 {
		modulus = c.Modulus * c.counted()
	}
	return modulus * c.WallThickness()
}

// lap is that of a closure at one pascal, share being what counts of the adhesive's strength; typical tells that
// built-in figures are in what governs.
//
// What a lap carries does not grow with its overlap without end, for its ends carry the load. Of equal
// adherends, the tube's, they carry
//
//	N = √(4·t_a·τ_p·(γ_e/2 + γ_p)·E·t)
//
// (L. J. Hart-Smith, NASA CR-112236, 1973; from memory). The elastic peak is the average's times (λL/2)·coth(λL/2),
// λ = √(2·G_a/(E·t·t_a)) (O. Volkersen, 1938; from memory), with G_a = τ_p/γ_e.
func (c *Chamber) lap(end string, e *Closure, share float64) (l Lap, typical bool) {
	glue, builtGlue := c.Adhesive.inForce()
	average, builtAverage := orTypical(e.BondStrength, TypicalBond)
	stiff := c.stiffnessAlong()
	l = Lap{End: end, Overlap: e.Overlap, Load: c.Diameter / 4, Average: average * e.Overlap * share,
		Ends: share * math.Sqrt(4*glue.GlueLine*glue.Strength*(glue.Elastic/2+glue.Plastic)*stiff)}
	l.Useful = l.Ends / (average * share)
	half := math.Sqrt(2*glue.Strength/glue.Elastic/(stiff*glue.GlueLine)) * e.Overlap / 2
	l.Peak = l.Load / e.Overlap * half / math.Tanh(half)
	return l, builtGlue || builtAverage || math.IsNaN(l.Ends)
}

// Holds is what the lap carries, N/m.
func (l *Lap) Holds() float64 {
	if l.Ends < l.Average {
		return l.Ends
	}
	return l.Average
}

// EndsGovern tells that its ends limit it, so that more overlap does nothing.
func (l *Lap) EndsGovern() bool { return l.Ends < l.Average }

// at is the lap at a pressure, worked out at one pascal.
func (l Lap) at(pressure float64) Lap {
	l.Load *= pressure
	l.Peak *= pressure
	return l
}

// Boss is what the nozzle's retainer is screwed into, bonded into the aft closure.
type Boss struct {
	Diameter     float64 // of the bonded face, m
	Length       float64 // of it along the axis, m
	BondStrength float64 // shear strength of that bond, averaged over it, Pa; 0 takes a typical one
}

// parts adds the bond of the boss at one pascal, which the pressure pushes out by the area of the seal.
func (b *Boss) parts(parts []Part, seal, share float64) []Part {
	if b == nil {
		return parts
	}
	if seal == 0 {
		seal = b.Diameter
	}
	strength, typical := orTypical(b.BondStrength, TypicalBond)
	stress := math.Pi / 4 * seal * seal / (math.Pi * b.Diameter * b.Length)
	return append(parts, newPart("boss bond", stress, strength*share, typical, Average))
}

// Lining says what keeps water from a wall that weeps.
type Lining string

// The linings; "" is not stated.
const (
	Unlined Lining = "none"
	Lined   Lining = "lined"
)

// Strains at which hand lay-ups begin to weep where they have no liner: common practice, no source. The first
// is a limit at the working pressure, the second at the proof.
const (
	WeepStrain = 0.003
	WeepProof  = crackStrain
)

// Weeps tells whether its material is one that does.
func (c *Chamber) Weeps() bool { return !c.Material.isotropic() && c.Liner != Lined }
