package thrust

import "math"

// Of water, for the moist expansion: the heat of vaporisation at 25 °C, and the pressure of its
// saturated vapour there (as handbooks have them, from memory, unverified).
const (
	vaporisation      = 44020.0 // J/mol
	vapourReference   = 298.15  // K
	vapourAtReference = 3166.4  // Pa
)

const (
	leastDry       = 0.02 // share of the pressure that the dry gas has at least: beyond is steam, which this does not cover
	fewestSteps    = 6    // over the expansion
	stepsPerFold   = 8    // more, for each time that the volume grows e-fold
	faintExpansion = 1e-4 // in ln V: over less, the exponent is that at its beginning
)

// vapour is the pressure of saturated vapour over water at a temperature, Pa: Clausius and
// Clapeyron with a constant heat. Ice is not formed.
func vapour(temperature float64) float64 {
	return vapourAtReference * math.Exp(vaporisation/universalGasConstant*(1/vapourReference-1/temperature))
}

// moist is gas over liquid water, which stays saturated with its vapour while it expands.
type moist struct {
	heat  float64 // c_v of the dry gas over the gas constant: 1/(γ − 1)
	start float64 // pressure of the dry gas at the beginning, Pa
	temp  float64 // at the beginning, K
}

// newMoist is a gas at a pressure (absolute, Pa, the vapour's share in it) and a temperature.
func newMoist(gamma, pressure, temperature float64) moist {
	return moist{1 / (gamma - 1), math.Max(pressure-vapour(temperature), leastDry*pressure), temperature}
}

// at is the state after ln V has risen by grown and ln T by cooled: the vapour over the dry
// gas, and d ln T/d ln V. Reversible, the liquid's heat capacity left out; with w = p_v/p_dry and
// Λ = L/(R·T),
//
//	d ln T/d ln V = −(1 + wΛ)/(c_v/R + 3w + w(Λ − 1)²)
//
// (derived from ds = 0 of gas, vapour and what condenses; the same physics as Gommes, Am. J. Phys. 78
// (2010) 236, from memory).
func (m *moist) at(grown, cooled float64) (wet, latent, slope float64) {
	t := m.temp * math.Exp(cooled)
	wet = vapour(t) / (m.start * math.Exp(cooled-grown))
	latent = vaporisation / (universalGasConstant * t)
	return wet, latent, -(1 + wet*latent) / (m.heat + 3*wet + wet*(latent-1)*(latent-1))
}

// local is −d ln p/d ln V there: the exponent of the expansion at that moment.
func (m *moist) local(grown, cooled float64) float64 {
	wet, latent, slope := m.at(grown, cooled)
	return (1 - slope*(1+wet*latent)) / (1 + wet)
}

// equivalent is the exponent n with which p·Vⁿ = const does the same work while ln V rises by
// grown. What both fall short of an expansion at constant pressure times volume is compared, which
// loses nothing where they expand by little:
//
//	∫(1 − pV/p₀V₀) d ln V = grown − (1 − e^(−(n−1)·grown))/(n − 1)
func (m *moist) equivalent(grown float64) float64 {
	if !(grown > faintExpansion) {
		return m.local(0, 0)
	}
	begin, _, _ := m.at(0, 0)
	steps := fewestSteps + int(stepsPerFold*grown)
	h := grown / float64(steps)
	cooled, sum := 0.0, 0.0
	// look adds a share of what is short, and gives how fast it cools there.
	look := func(share, u, cooled float64) float64 {
		wet, _, slope := m.at(u, cooled)
		sum += share * (1 - math.Exp(cooled)*(1+wet)/(1+begin))
		return slope
	}
	for i := range steps {
		u := float64(i) * h
		k1 := look(h/6, u, cooled)
		k2 := look(h/3, u+h/2, cooled+h/2*k1)
		k3 := look(h/3, u+h/2, cooled+h/2*k2)
		k4 := look(h/6, u+h, cooled+h*k3)
		cooled += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	return 1 + sameWork(sum, grown)
}

// sameWork is k = n − 1 of the work that falls short by so much; Newton's method, from below.
func sameWork(short, grown float64) float64 {
	k := 2 * short / (grown * grown)
	for range 20 {
		left := -math.Expm1(-k*grown) / k
		next := k - (grown-left-short)/((left-math.Exp(-k*grown)*grown)/k)
		if math.Abs(next-k) < 1e-12 {
			break
		}
		k = next
	}
	return k
}

// SaturatedExponent is the exponent of the expansion of gas that stands over water and stays
// saturated with its vapour: that of p·Vⁿ = const with the same work, from release until the liquid is
// out, its whole path through a launch tube included. Heat from the walls, which lowers it further, is
// left to a measured value.
func (c *Chamber) SaturatedExponent() float64 {
	ullage := c.Volume - c.LiquidVolume
	ratio := c.Volume / ullage
	if c.Tube.Length > 0 {
		push := math.Pi / 4 * c.Tube.Outer * c.Tube.Outer * c.Tube.Length
		before := ullage + c.Tube.InnerVolume - push
		ratio *= (before + push) / before
	}
	m := newMoist(c.Gamma, c.Pressure, c.Temperature)
	return m.equivalent(math.Log(ratio))
}
