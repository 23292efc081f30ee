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

// damp is a stretch of tropospheric air of constant relative humidity. With the
// vapour pressure e, moist air weighs as much as dry air of the pressure
// p - lightness·e, which is to say that it has the virtual temperature
// T/(1 - lightness·e/p). So the hydrostatic law
//
//	dp/dH = -g0/(R T) (p - lightness·e)
//
// is linear. Against the dry air that shares its temperatures and its pressure at
// the foot, p = p_d·f with f = 1 there, and it is solved by a mere integral:
//
//	df/dH = g0/(R T) · lightness·y,  y = e/p_d
//	ρ = ρ_d (f - lightness·y)
type damp struct {
	temperature float64 // at the foot, K
	pressure    float64 // at the foot, Pa
	humidity    float64 // relative
}

const mostShare = 0.5

// at gives the dry air's temperature and pressure at a geopotential height above
// the foot, and the share y of vapour. No weather brings it near mostShare; far
// below a hot, humid and high site the formula alone would go on to air that
// weighs nothing.
func (a *damp) at(d float64) (temperature, pressure, share float64) {
	u := troposphericLapse * d / a.temperature
	temperature = a.temperature * (1 + u)
	pressure = a.pressure * math.Exp((densityPower+1)*math.Log1p(u))
	share = min(a.humidity*SaturationPressure(temperature)/pressure, mostShare)
	return temperature, pressure, share
}

// slope is df/dH.
func (a *damp) slope(d float64) float64 {
	temperature, _, share := a.at(d)
	return StandardGravity / (GasConstant * temperature) * lightness * share
}

// rise is the integral of the slope from one height to another (Simpson's rule).
func (a *damp) rise(from, to float64) float64 {
	return (to - from) / 6 * (a.slope(from) + 4*a.slope((from+to)/2) + a.slope(to))
}

// above gives the pressure at a height above the foot.
func (a *damp) above(height float64) float64 {
	_, pressure, _ := a.at(height)
	if a.humidity == 0 {
		return pressure
	}
	const steps = 32
	f := 1.0
	for i := range steps {
		f += a.rise(height*float64(i)/steps, height*float64(i+1)/steps)
	}
	return pressure * f
}

// moisture is what a column's humidity does to it in the troposphere: factors on
// the dry column's pressure and density, tabulated by geopotential height.
type moisture struct {
	knots []knot
	foot  float64 // height of the first knot above the site, m of geopotential
	step  float64 // m of geopotential
	gas   float64 // gas constant of the air at the last knot, the tropopause, J/(kg·K)
}

// knot is one entry: two factors and their slopes times the step.
type knot struct{ pressure, pressureRise, density, densityRise float64 }

// moisten tabulates the moist air of a site from the lowest altitude to the
// tropopause. Above that the air keeps the share of vapour it has there: with the
// relative humidity kept, the stratosphere would be more vapour than air.
func moisten(site, temperature, pressure, humidity float64) *moisture {
	const spacing = 200 // m; cubics through the knots are then good to 1e-8
	a := damp{temperature, pressure, humidity}
	up := int(math.Ceil((tropopause - site) / spacing))
	step := (tropopause - site) / float64(up)
	down := int(math.Ceil((site - Geopotential(lowest)) / step))

	m := &moisture{
		knots: make([]knot, down+1+up),
		foot:  -step * float64(down),
		step:  step,
	}
	height := func(i int) float64 { return step * float64(i-down) }
	m.knots[down].pressure = 1
	for i := down; i < down+up; i++ {
		m.knots[i+1].pressure = m.knots[i].pressure + a.rise(height(i), height(i+1))
	}
	for i := down; i > 0; i-- {
		m.knots[i-1].pressure = m.knots[i].pressure + a.rise(height(i), height(i-1))
	}
	for i := range m.knots {
		a.complete(&m.knots[i], height(i), step)
	}
	last := m.top()
	m.gas = GasConstant * last.pressure / last.density
	return m
}

// complete fills in a knot whose pressure factor f is known. By the Magnus form
// d(ln e)/dT = 17.625·243.04/(243.04 + t)², and d(ln p_d)/dH = -g0/(R T).
func (a *damp) complete(k *knot, d, step float64) {
	temperature, _, share := a.at(d)
	weight := StandardGravity / (GasConstant * temperature)
	slope := weight * lightness * share
	bend := 0.0 // dy/dH
	if share < mostShare {
		t := temperature - 273.15 + 243.04
		bend = share * (17.625*243.04/(t*t)*troposphericLapse + weight)
	}
	k.pressureRise = step * slope
	k.density = k.pressure - lightness*share
	k.densityRise = step * (slope - lightness*bend)
}

// top is the knot at the tropopause.
func (m *moisture) top() knot { return m.knots[len(m.knots)-1] }

// at gives the factors at a height above the site by cubic Hermite polynomials.
func (m *moisture) at(d float64) (pressure, density float64) {
	t := (d - m.foot) / m.step
	i := 0
	if t > 0 { // NaN is not
		i = min(int(t), len(m.knots)-2)
	}
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
