package atmosphere

import "math"

// SaturationPressure is the vapour pressure over a plane surface of water at a
// temperature, K, in Pa: the Magnus form that O. A. Alduchov and R. E. Eskridge
// fitted ("Improved Magnus form approximation of saturation vapor pressure",
// J. Appl. Meteor. 35 (1996) 601, eq. 21),
//
//	e = 610.94 exp(17.625 t/(243.04 + t)),  t in °C
//
// within 0.4 % from -40 to 50 °C. Relative humidity is reckoned over water below
// freezing too, as meteorology does (WMO-No. 8). It is 0 below 40 K, near where
// the formula has its pole.
func SaturationPressure(temperature float64) float64 {
	if temperature < 40 {
		return 0
	}
	t := temperature - 273.15
	return 610.94 * math.Exp(17.625*t/(243.04+t))
}

// lightness is how much lighter vapour is than air: 1 - M_w/M_a, with the molar
// masses of water (IUPAC) and of air (U.S. Standard Atmosphere, 1976).
const lightness = 1 - 18.01528/28.9644

// vapour is the air's mole fraction of vapour; it can't exceed 1.
func vapour(humidity, temperature, pressure float64) float64 {
	return min(humidity*SaturationPressure(temperature)/pressure, 1)
}

// virtual is the ratio of virtual temperature to temperature, which is also that
// of the gas constant of moist air to dry air's.
func virtual(vapour float64) float64 { return 1 / (1 - lightness*vapour) }

// dampness is a tropospheric column of moist air: the dry column that shares its
// temperatures and its pressure at the foot, and the humidity, constant with
// height.
type dampness struct {
	temperature float64 // at the foot, K
	pressure    float64 // at the foot, Pa
	humidity    float64
}

// dry gives the temperature and the pressure of the dry column at a geopotential
// height above the foot.
func (a *dampness) dry(d float64) (temperature, pressure float64) {
	u := troposphericLapse * d / a.temperature
	return a.temperature * (1 + u), a.pressure * math.Exp((e+1)*math.Log1p(u))
}

// vapour is the mole fraction of vapour where the pressure is exp(gain) times
// the dry column's.
func (a *dampness) vapour(d, gain float64) float64 {
	temperature, pressure := a.dry(d)
	return vapour(a.humidity, temperature, pressure*math.Exp(gain))
}

// slope is d(gain)/dΔH. Both columns are hydrostatic, the moist one with its
// virtual temperature T_v, so it is (g0/R)(1/T - 1/T_v).
func (a *dampness) slope(d, gain float64) float64 {
	temperature, _ := a.dry(d)
	return StandardGravity / (GasConstant * temperature) * lightness * a.vapour(d, gain)
}

// step carries the gain a height further by the classical Runge–Kutta method.
func (a *dampness) step(d, gain, by float64) float64 {
	k1 := a.slope(d, gain)
	k2 := a.slope(d+by/2, gain+by/2*k1)
	k3 := a.slope(d+by/2, gain+by/2*k2)
	k4 := a.slope(d+by, gain+by*k3)
	return gain + by/6*(k1+2*k2+2*k3+k4)
}

// moisture is what a column's humidity does to its pressure and density in the
// troposphere: factors on the dry column's, tabulated by geopotential height.
type moisture struct {
	knots []knot
	foot  float64 // height of the first knot above the site, m of geopotential
	step  float64 // m of geopotential
	top   knot    // the last: the tropopause
	gas   float64 // gas constant of the air at the tropopause, J/(kg·K)
}

// knot is one entry: two factors and their slopes times the step.
type knot struct{ pressure, pressureRise, density, densityRise float64 }

// moisten tabulates the moist air of a site from the lowest altitude to the
// tropopause. Above, the air keeps the share of vapour it has there: to keep the
// relative humidity would make the stratosphere more vapour than air.
func moisten(site, temperature, pressure, humidity float64) *moisture {
	const spacing = 125 // m; cubics through the knots are then good to 1e-9
	a := dampness{temperature, pressure, humidity}
	up := int(math.Ceil((tropopause - site) / spacing))
	step := (tropopause - site) / float64(up)
	down := int(math.Ceil((site - Geopotential(lowest)) / step))

	m := &moisture{
		knots: make([]knot, down+up+1),
		foot:  -step * float64(down),
		step:  step,
	}
	gain := 0.0
	for i := 0; i <= up; i++ {
		d := step * float64(i)
		m.knots[down+i] = a.knot(d, gain, step)
		if i == up {
			m.gas = GasConstant * virtual(a.vapour(d, gain))
		}
		gain = a.step(d, gain, step)
	}
	gain = 0
	for i := 1; i <= down; i++ {
		d := -step * float64(i)
		gain = a.step(d+step, gain, -step)
		m.knots[down-i] = a.knot(d, gain, step)
	}
	m.top = m.knots[down+up]
	return m
}

// knot is the entry for a height and the gain there: the pressure's factor is
// exp(gain), the density's that over T_v/T.
func (a *dampness) knot(d, gain, step float64) knot {
	p := math.Exp(gain)
	slope := a.slope(d, gain)
	x := a.vapour(d, gain)
	rho := p / virtual(x)

	// The vapour's slope: x = φ e_s(T)/p, and by the Magnus form
	// d(ln e_s)/dT = 17.625·243.04/(243.04 + t)².
	var rise float64
	if x > 0 && x < 1 {
		temperature, _ := a.dry(d)
		t := 243.04 + temperature - 273.15
		rise = x * (17.625*243.04/(t*t)*troposphericLapse +
			StandardGravity/(GasConstant*temperature*virtual(x)))
	}
	return knot{
		pressure:     p,
		pressureRise: step * p * slope,
		density:      rho,
		densityRise:  step * (rho*slope - p*lightness*rise),
	}
}

// at gives the factors at a height above the site by cubic Hermite polynomials.
func (m *moisture) at(d float64) (pressure, density float64) {
	t := (d - m.foot) / m.step
	i := int(hold(t, 0, float64(len(m.knots)-2)))
	t -= float64(i)
	a, b := &m.knots[i], &m.knots[i+1]
	return hermite(t, a.pressure, a.pressureRise, b.pressure, b.pressureRise),
		hermite(t, a.density, a.densityRise, b.density, b.densityRise)
}

// hermite is the cubic with the values and slopes given at t = 0 and t = 1.
func hermite(t, y0, s0, y1, s1 float64) float64 {
	rise := y1 - y0
	return y0 + t*(s0+t*((3*rise-2*s0-s1)+t*(s0+s1-2*rise)))
}

// raised gives the pressure at a geopotential height above a place in the
// troposphere, whose temperature, K, pressure, Pa, and humidity are given.
func raised(height, temperature, pressure, humidity float64) float64 {
	a := dampness{temperature, pressure, humidity}
	_, dry := a.dry(height)
	if humidity == 0 {
		return dry
	}
	const steps = 64
	gain, by := 0.0, height/steps
	for i := range steps {
		gain = a.step(by*float64(i), gain, by)
	}
	return dry * math.Exp(gain)
}
