package thrust

import "math"

// Chamber is a pressurised chamber at the moment of release. SI units;
// pressures are absolute.
type Chamber struct {
	Volume         float64 // m³
	Bore           float64 // inside diameter, m
	Throat         float64 // nozzle throat diameter, m; below Bore
	Discharge      float64 // C_d, 0 < C_d ≤ 1
	LiquidVolume   float64 // m³; 0 ≤ LiquidVolume < Volume
	LiquidDensity  float64 // kg/m³
	Pressure       float64 // absolute, Pa
	Temperature    float64 // of the gas, K
	GasConstant    float64 // specific, J/(kg·K)
	Gamma          float64 // ratio of specific heats of the gas
	Exponent       float64 // n of the expansion p·Vⁿ = const; 0 takes Gamma, or what Saturated says
	Saturated      bool    // the gas stands over water: an exponent of 0 takes SaturatedExponent
	InertialLength float64 // of the nozzle passage, ℓ_n, m; 0 takes 0.8 throat diameters
	Tube           Tube    // without a length there is none
}

// Tube is a launch tube that fills the throat and reaches Length into the chamber.
type Tube struct {
	Length      float64 // m
	Outer       float64 // outside diameter, m
	InnerVolume float64 // gas inside tube, hoses and valve, open to the chamber, m³
}

// StopRatio ends the gas flow: chamber over ambient pressure at which the push
// has become nothing (impulse short by 3e-6 of the whole).
const StopRatio = 1.0005

// thin is a pressure of the size of those of the subsonic flow, which counts from it, Pa.
const thin = 1.4e5

// Expulsion is a Chamber made ready: every constant of the flow worked out once,
// so that a moment of it costs one power and a root. It is a value and holds
// no state; the caller integrates the liquid volume, the jet speed and the gas mass.
type Expulsion struct {
	volume, boreArea, throatArea, beta float64
	discharge, density, exponent       float64
	loss                               float64 // 1/C_d² − β²
	passage                            float64 // ℓ_n
	stored                             float64 // gas mass at release, kg
	carried                            float64 // gas mass the rocket carries (after the tube), kg
	gasConstant, gamma                 float64

	tubeLength, tubeArea float64
	tubePressure         float64 // at release, with the tube in place
	tubeVolume           float64 // gas volume at release, tube in place

	startPressure, startVolume, startTemperature float64 // as the liquid begins to flow

	tables

	choking      float64 // critical pressure ratio
	chokedFlow   float64 // C_d A_n √(γ/R) (2/(γ+1))^((γ+1)/(2(γ−1)))
	chokedSpeed2 float64 // 2γR/(γ+1)
	gasPressure  float64 // as the liquid is out
	gasTemp      float64

	nozzleExponent float64 // (γ−1)/γ
	thinMass       float64 // of gas left at the pressure thin
	perDensity     float64 // V/R: temperature over p/m
	limitSpeed2    float64 // 2γR/(γ−1)
	lastSpeedRatio float64
}

// tables are the powers of the flow.
type tables struct {
	expansion  power // xⁿ
	cooling    power // x^((n−1)/2): √(T/T₁) against the mass left
	unexpanded power // x^(−γ/(γ−1)): p/p_exit against T_exit/T
	rarefied   power // x^(1/n): mass against pressure
}

// Prepare works out the constants of the flow. The caller has checked the
// ranges; outside them results are meaningless but finite or NaN, never a panic.
func (c Chamber) Prepare() Expulsion {
	var e Expulsion
	e.Refit(c)
	return e
}

// Refit makes it that of another chamber. Tables of powers whose exponents are the same are kept:
// they take most of the time.
func (e *Expulsion) Refit(c Chamber) {
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	tables := e.tables
	*e = Expulsion{
		tables: tables,
		volume: c.Volume, boreArea: area(c.Bore), throatArea: area(c.Throat),
		discharge: c.Discharge, density: c.LiquidDensity, exponent: c.Exponent,
		passage: c.InertialLength, gasConstant: c.GasConstant, gamma: c.Gamma,
	}
	if e.exponent == 0 {
		e.exponent = c.Gamma
		if c.Saturated {
			e.exponent = c.SaturatedExponent()
		}
	}
	if e.passage == 0 {
		e.passage = 0.8 * c.Throat
	}
	e.beta = e.throatArea / e.boreArea
	e.loss = 1/(c.Discharge*c.Discharge) - e.beta*e.beta

	ullage := c.Volume - c.LiquidVolume
	e.tubeVolume, e.tubePressure = ullage, c.Pressure
	if c.Tube.Length > 0 {
		e.tubeLength, e.tubeArea = c.Tube.Length, area(c.Tube.Outer)
		e.tubeVolume += c.Tube.InnerVolume - e.tubeArea*e.tubeLength
	}
	e.stored = c.Pressure * e.tubeVolume / (c.GasConstant * c.Temperature)

	// At the tube's end the gas in the tube is lost; what is in the chamber stays.
	end := e.tubeVolume + e.tubeArea*e.tubeLength
	e.startVolume = ullage
	e.startPressure = c.Pressure * math.Pow(e.tubeVolume/end, e.exponent)
	e.startTemperature = c.Temperature * math.Pow(e.tubeVolume/end, e.exponent-1)
	e.carried = e.stored * ullage / end

	g := c.Gamma
	e.choking = ChokingRatio(g)
	e.chokedFlow = c.Discharge * e.throatArea * math.Sqrt(g/c.GasConstant) * math.Pow(2/(g+1), (g+1)/(2*(g-1)))
	e.chokedSpeed2 = 2 * g * c.GasConstant / (g + 1)
	e.gasPressure = e.startPressure * math.Pow(ullage/c.Volume, e.exponent)
	e.gasTemp = e.startTemperature * math.Pow(ullage/c.Volume, e.exponent-1)
	e.expansion.fit(e.exponent)
	e.cooling.fit((e.exponent - 1) / 2)
	e.unexpanded.fit(-g / (g - 1))
	e.rarefied.fit(1 / e.exponent)

	e.nozzleExponent = (g - 1) / g
	e.thinMass = e.carried * math.Pow(thin/e.gasPressure, 1/e.exponent)
	e.perDensity = c.Volume / c.GasConstant
	e.limitSpeed2 = 2 * g / (g - 1) * c.GasConstant
	e.lastSpeedRatio = e.speedRatio(1 / StopRatio)
}

// StoredGas is the mass of gas at release, in chamber and tube, kg.
func (e *Expulsion) StoredGas() float64 { return e.stored }

// CarriedGas is the mass of gas the rocket carries until the gas flows, kg. During
// the tube run it is already counted so: what fills the tube stays behind.
func (e *Expulsion) CarriedGas() float64 { return e.carried }

// Depth is the depth of a liquid volume over the nozzle, V_w/A_b, m.
func (e *Expulsion) Depth(liquid float64) float64 { return liquid / e.boreArea }

// Density is the liquid's, kg/m³.
func (e *Expulsion) Density() float64 { return e.density }

// Exponent is n of the expansion.
func (e *Expulsion) Exponent() float64 { return e.exponent }

// Ahead is 1 − β: what the liquid's approach leaves of its thrust.
func (e *Expulsion) Ahead() float64 { return 1 - e.beta }

// ThroatArea is the nozzle's, m².
func (e *Expulsion) ThroatArea() float64 { return e.throatArea }

// Fastest is about the greatest speed of the jet, m/s.
func (e *Expulsion) Fastest() float64 {
	return math.Sqrt(2 * e.startPressure / (e.density * e.loss))
}

// Promise is about the speed that all of the liquid and the gas would give a rocket of a
// mass, m/s: the rocket equation with the liquid's mean speed, and the gas at that of sound.
func (e *Expulsion) Promise(mass, ambient float64) float64 {
	speed := math.Sqrt(max(e.startPressure+e.gasPressure-2*ambient, 0) / (e.density * e.loss))
	liquid := (e.volume - e.startVolume) * e.density
	gas := e.carried * (1 - ambient/e.gasPressure) * math.Sqrt(e.chokedSpeed2*e.gasTemp) / mass
	return speed*math.Log1p(liquid/(mass+e.carried)) + max(gas, 0)
}
