package thrust

import "math"

// GasFlow is one moment of the gas's flow after the liquid.
type GasFlow struct {
	Mass     float64 // in the chamber, kg
	Pressure float64 // in the chamber, absolute, Pa
	MassRate float64 // leaving, kg/s
	Thrust   float64 // N
}

// GasState is the pressure and temperature in the chamber while a mass of gas is
// left: p = p₁·(m/m₁)ⁿ, T = T₁·(m/m₁)^(n−1) from the state as the liquid is out.
func (e *Expulsion) GasState(mass float64) (pressure, temperature float64) {
	left := mass / e.carried
	root := e.cooling.of(left) // √(T/T₁); the rest are products
	return e.gasPressure * left * root * root, e.gasTemp * root * root
}

// Choked is the flow of an ideal gas through a convergent nozzle at or below the critical
// ratio of pressures, NACA Report 1135. As with Subsonic, mass rate and thrust carry the
// discharge coefficient. The two meet smoothly in value but not in slope.
func (e *Expulsion) Choked(mass, ambient float64) GasFlow {
	p, t := e.GasState(mass)
	rate := e.chokedFlow * p / math.Sqrt(t)
	return GasFlow{mass, p, rate, rate*math.Sqrt(e.chokedSpeed2*t) +
		e.discharge*(e.choking*p-ambient)*e.throatArea}
}

// Subsonic is the flow above the critical ratio, told by the speed ratio w: that of the
// gas as it leaves over the greatest it could reach, into nothing (V/V_m of NACA Report
// 1135), w² = 1 − T_exit/T = 1 − (p_a/p)^((γ−1)/γ). The mass left meets its end like a
// parabola its vertex, which no step can follow to the end; w falls to it in a nearly straight line. Slope
// is dw/dt while the air's pressure changes at the relative rate airChange, 1/s:
//
//	dw/dt = −(1 − w²)/(2w) · (γ−1)/γ · (n·ṁ/m + ṗ_a/p_a),   ṁ ∝ w
//
// Below 0 the flow would come back; only trial stages look there.
func (e *Expulsion) Subsonic(w, ambient, airChange float64) (flow GasFlow, slope float64) {
	cooling := 1 - w*w // T_exit/T
	p := ambient * e.unexpanded.of(cooling)
	mass := e.thinMass * e.rarefied.of(p/thin)
	t := p / mass * e.perDensity // pV = mRT
	speed := w * math.Sqrt(e.limitSpeed2*t)
	rate := e.discharge * e.throatArea * speed * ambient / (e.gasConstant * t * cooling)
	slope = -cooling / 2 * e.nozzleExponent * (e.exponent*rate/mass + airChange) / w
	return GasFlow{mass, p, rate, rate * speed}, slope
}

// SpeedRatio is w of Subsonic for a mass of gas left.
func (e *Expulsion) SpeedRatio(mass, ambient float64) float64 {
	p, _ := e.GasState(mass)
	return e.speedRatio(ambient / p)
}

func (e *Expulsion) speedRatio(pressures float64) float64 {
	return math.Sqrt(1 - math.Pow(pressures, e.nozzleExponent))
}

// LastSpeedRatio is w as the flow ends: at StopRatio.
func (e *Expulsion) LastSpeedRatio() float64 { return e.lastSpeedRatio }

// Chokes tells whether the nozzle is choked at these pressures.
func (e *Expulsion) Chokes(pressure, ambient float64) bool { return ambient <= e.choking*pressure }

// ChokingMargin falls through zero as the flow changes from choked to subsonic.
func (e *Expulsion) ChokingMargin(pressure, ambient float64) float64 {
	return e.choking*pressure/ambient - 1
}
