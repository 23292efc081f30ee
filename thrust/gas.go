package thrust

import "math"

// Gas names a driving gas.
type Gas string

// The gases a chamber may be filled with.
const (
	Air           Gas = "air"
	Nitrogen      Gas = "nitrogen"
	Argon         Gas = "argon"
	Helium        Gas = "helium"
	CarbonDioxide Gas = "carbon dioxide"
)

// gasProperties are the ideal-gas constants of one gas.
type gasProperties struct {
	molarMass float64 // kg/mol
	gamma     float64 // ratio of specific heats
}

// universalGasConstant is the CODATA 2018 value, J/(mol·K), exact.
const universalGasConstant = 8.314462618

// Molar masses: IUPAC standard atomic weights (2021); air after ISO 2533, whose
// R is kept exactly below. The ratios of specific heats are the ideal-gas values
// of the trade near 300 K: 1.4 and 5/3 follow from two and three
// translational-rotational degrees of freedom; 1.289 for carbon dioxide is a
// handbook value at 300 K, from memory.
var gases = map[Gas]gasProperties{
	Air:           {0.028964420, 1.4},
	Nitrogen:      {0.0280134, 1.4},
	Argon:         {0.039948, 5.0 / 3},
	Helium:        {0.0040026, 5.0 / 3},
	CarbonDioxide: {0.0440095, 1.289},
}

// Gases lists the names in a fixed order.
func Gases() []Gas { return []Gas{Air, Nitrogen, Argon, Helium, CarbonDioxide} }

// Known tells whether the gas is one of Gases.
func (g Gas) Known() bool { _, ok := gases[g]; return ok }

// Constant is the specific gas constant, J/(kg·K); 0 for an unknown gas.
func (g Gas) Constant() float64 {
	if g == Air {
		return 287.05287 // ISO 2533, so that chamber and atmosphere agree to the last digit
	}
	p, ok := gases[g]
	if !ok {
		return 0
	}
	return universalGasConstant / p.molarMass
}

// Gamma is the ratio of specific heats; 0 for an unknown gas.
func (g Gas) Gamma() float64 { return gases[g].gamma }

// ChokingRatio is the ambient over the chamber pressure at and below which a
// convergent nozzle is choked, (2/(γ+1))^(γ/(γ−1)). NACA Report 1135,
// with M = 1: 0.5282818 at γ = 1.4.
func ChokingRatio(gamma float64) float64 {
	return math.Pow(2/(gamma+1), gamma/(gamma-1))
}

// The critical point of carbon dioxide (Span and Wagner 1996, from memory).
const (
	carbonDioxideCritical         = 304.1282 // K
	carbonDioxideCriticalPressure = 7.3773e6 // Pa
)

// Saturation is the pressure from which a gas is no gas at a temperature, K, but turns liquid, Pa absolute: of carbon
// dioxide up to its critical point after Span and Wagner (J. Phys. Chem. Ref. Data 25 (1996) 1509, from memory), and its
// critical pressure beyond; endless for the others, which none of these pressures and temperatures make liquid.
func (g Gas) Saturation(temperature float64) float64 {
	if g != CarbonDioxide {
		return math.Inf(1)
	}
	tau := max(1-temperature/carbonDioxideCritical, 0)
	sum := -7.0602087*tau + 1.9391218*math.Pow(tau, 1.5) - 1.6463597*tau*tau - 3.2995634*math.Pow(tau, 4)
	return carbonDioxideCriticalPressure * math.Exp(sum*carbonDioxideCritical/temperature)
}
