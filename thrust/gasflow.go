package thrust

import "math"

// GasFlow is one moment of the gas's flow after the liquid.
type GasFlow struct {
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

// Gas is the flow through a convergent nozzle of an ideal gas, NACA Report 1135.
// Both mass rate and thrust carry the discharge coefficient. choked says which side of the critical ratio the
// phase is on: the two meet smoothly in value but not in slope, so the integrator
// treats the change as an event and no step sees both.
func (e *Expulsion) Gas(mass, ambient float64, choked bool) GasFlow {
	p, t := e.GasState(mass)
	if choked {
		rate := e.chokedFlow * p / math.Sqrt(t)
		return GasFlow{p, rate, rate*math.Sqrt(e.chokedSpeed2*t) +
			e.discharge*(e.choking*p-ambient)*e.throatArea}
	}
	// Only trial stages that overshoot the phase look past its ends: below the
	// critical ratio it is held; above 1 there is no answer (NaN), so that no step
	// reaches across the end of the flow, where its error could not be seen.
	ratio := math.Max(ambient/p, e.choking)
	cooling := e.nozzle.of(ratio) // T_exit/T
	speed := math.Sqrt(2 * e.gamma / (e.gamma - 1) * e.gasConstant * t * (1 - cooling))
	rate := e.discharge * e.throatArea * speed * p / (e.gasConstant * t) * ratio / cooling
	return GasFlow{p, rate, rate * speed}
}

// Chokes tells whether the nozzle is choked at these pressures.
func (e *Expulsion) Chokes(pressure, ambient float64) bool { return ambient <= e.choking*pressure }

// ChokingMargin falls through zero as the flow changes from choked to subsonic.
func (e *Expulsion) ChokingMargin(pressure, ambient float64) float64 {
	return e.choking*pressure/ambient - 1
}
