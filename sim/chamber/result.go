package chamber

// Service is what a chamber is looked at in.
type Service struct {
	Working        float64 // gauge pressure at release, Pa; 0 leaves stresses and gas at nothing
	Ambient        float64 // absolute, Pa
	Fill           float64 // share of the volume that is liquid at release, 0 to 1
	Volume         float64 // m³; 0 takes Chamber.Volume
	Gamma          float64 // ratio of the gas's specific heats, above 1; 0 takes air's 1.4
	AirTemperature float64 // at which the chamber is sealed, K
	ProofFactor    float64 // proof over working pressure that is asked for; 0 takes ProofFactor
}

// Basis is what a burst pressure rests on.
type Basis string

// The bases, from the strongest.
const (
	FromBurst    Basis = "measured burst" // of a chamber made alike
	FromProof    Basis = "proof"          // this chamber held it, and the estimate is lower
	FromEstimate Basis = "estimate"
)

// Result is a chamber at a working pressure. Pressures are gauge, Pa. Every pressure in
// it carries the cautions of the package: a model's figure is no test.
type Result struct {
	Tube Tube

	HeatFactor  float64 // share of the wall's strength that counts
	CycleFactor float64 // likewise
	BondFactor  float64 // both together, for the bonds
	Thick       bool    // wall over a tenth of the radius where only the mean stress is known: the inner face has more

	Parts   []Part
	Weakest int // of Parts; -1 when none has a use that is a number

	Laps []Lap // of the closures that are described

	Estimate float64 // of the burst pressure, from the weakest part; NaN when Weakest is -1
	Burst    float64 // what is counted on, with heat and cycles
	Basis    Basis   // of Burst
	Stated   bool    // somebody measured it, or declared that the estimate counts: else it is told, and no pass

	ColdEstimate float64 // of the burst pressure without heat, as in a proof
	ColdBurst    float64 // what is counted on then
	HeatLeft     float64 // share of a cold strength left in service, in wall and bonds

	ProofFactor  float64 // proof over working pressure, asked for
	ProofWanted  float64 // that times working over HeatLeft; infinite where heat leaves nothing
	ProofLimit   float64 // half of an estimated burst, cold, or 0.8 of a measured one
	Proof        float64 // to prove at: the lesser of both
	ProofEnough  bool    // the limit allows ProofWanted
	MostWorking  float64 // that the chamber can be proved for: ProofLimit × HeatLeft/ProofFactor
	MostOnRecord float64 // that the proof on record, made cold, is for with what heat leaves: that/ProofFactor; cycles since then are not in it; 0 without

	Dilation      Dilation // at Proof
	Strain        float64  // the wall's greatest at working, along fibres, around or along; NaN when not known
	ProofStrain   float64  // likewise at Proof
	Cracks        bool     // Strain is where resin cracks and an unlined wall weeps
	CracksAtProof bool     // likewise at Proof
	Gas           Stored   // at working pressure, the gas above the liquid
	Pneumatic     Stored   // at Proof, the whole volume of gas: why not to prove with it
	Hydraulic     Stored   // at Proof, water and wall
	Heated        *Heated  // nil when Heating is not described
}
