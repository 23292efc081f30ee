package atmosphere

import "math"

// Column is the prepared air above one site, made by Site.Column. Its layers
// reach to any height: above the standard's last, 84.852 km of geopotential, the
// air stays as warm as there and thins out to nothing; more than 5 km below sea
// level it stays what it is there. So pressure and density are finite, never
// rise with height, and never quite reach 0, which keeps their ratio good for the
// speed of sound. A Column is not changed by its use.
type Column struct {
	elevation   float64 // of the site, m
	radius      float64 // from the centre of the earth to the site, m
	stretch     float64 // r0²/radius, m: ΔH = stretch·h/(radius + h)
	temperature float64 // of the air at the site, K
	slope       float64 // of temperature with geopotential height, over temperature, 1/m
	bend        float64 // slope·stretch, m
	density     float64 // of dry air at the site's temperature and pressure, kg/m³
	specific    float64 // R·temperature: pressure over density of dry air at the site, J/kg
	seriesFrom  float64 // least u that the series may take: its range, or the tropopause
	layers      [len(layers)]stratum
	moist       *moisture // nil when the air is dry
}

// stratum is one layer of a column.
type stratum struct {
	from        float64 // its foot above the site, m of geopotential
	temperature float64 // at its foot, K
	lapse       float64 // K/m of geopotential
	density     float64 // at its foot, kg/m³
	power       float64 // density goes with temperature to this power; without a lapse, with exp(power·ΔH)
	gas         float64 // the air's gas constant, J/(kg·K)
}

// newColumn stacks the standard's layers on a site in the troposphere: geometric
// elevation m, temperature K, station pressure Pa, relative humidity.
//
// Layer boundaries stay at the standard's geopotential heights above sea level
// and lapse rates are the standard's, so temperatures differ from the standard's
// by the same amount all the way up.
func newColumn(elevation, temperature, pressure, humidity float64) Column {
	radius := EarthRadius + elevation
	site := Geopotential(elevation)
	c := Column{
		elevation:   elevation,
		radius:      radius,
		stretch:     EarthRadius / radius * EarthRadius,
		temperature: temperature,
		slope:       troposphericLapse / temperature,
		density:     pressure / (GasConstant * temperature),
		specific:    GasConstant * temperature,
	}
	c.bend = c.slope * c.stretch
	c.seriesFrom = max(-seriesRange, c.slope*(tropopause-site))

	gas := GasConstant
	if humidity > 0 {
		c.moist = moisten(site, temperature, pressure, humidity)
	}
	for i, l := range layers {
		s := &c.layers[i]
		if i == 0 {
			*s = newStratum(0, temperature, l.lapse, pressure, gas)
			continue
		}
		below := &c.layers[i-1]
		from := l.foot - site
		temperature, density := below.at(from - below.from)
		pressure := density * below.gas * temperature
		if i == 1 && c.moist != nil {
			pressure *= c.moist.top().pressure
			gas = c.moist.gas
		}
		*s = newStratum(from, temperature, l.lapse, pressure, gas)
	}
	return c
}

func newStratum(from, temperature, lapse, pressure, gas float64) stratum {
	s := stratum{from: from, temperature: temperature, lapse: lapse, gas: gas}
	s.density = pressure / (gas * temperature)
	if lapse == 0 {
		s.power = -StandardGravity / (gas * temperature)
	} else {
		s.power = -StandardGravity/(gas*lapse) - 1
	}
	return s
}

// at gives temperature and density at a geopotential height above the foot: the
// hydrostatic law, p = p_b (T/T_b)^(-g0/(R L)) or p_b exp(-g0 ΔH/(R T_b)),
// written for the density (U.S. Standard Atmosphere, 1976, eqs. 33).
func (s *stratum) at(d float64) (temperature, density float64) {
	if s.lapse == 0 {
		// Held where no air is left to speak of and before it turns to 0.
		return s.temperature, s.density * math.Exp(max(s.power*d, -600))
	}
	u := s.lapse * d / s.temperature
	return s.temperature * (1 + u), s.density * math.Exp(s.power*math.Log1p(u))
}

// At gives the pressure, Pa, and the density, kg/m³, at a height above the site,
// m of geometric altitude. The speed of sound there is √(Gamma·pressure/density).
// A NaN gives NaN.
func (c *Column) At(h float64) (pressure, density float64) {
	inverse := 1 / (c.radius + h)
	u := c.bend * h * inverse
	if !(u >= c.seriesFrom && u <= seriesRange) {
		return c.far(h)
	}
	density = c.density * series(u)
	pressure = density * c.specific * (1 + u)
	if c.moist != nil {
		p, r := c.moist.at(c.stretch * h * inverse)
		return pressure * p, density * r
	}
	return pressure, density
}

// Around is At and Gravity together: one who flies asks for all three at every moment.
func (c *Column) Around(h float64) (pressure, density, gravity float64) {
	inverse := 1 / (c.radius + h)
	u := c.bend * h * inverse
	if !(u >= c.seriesFrom && u <= seriesRange) {
		pressure, density = c.far(h)
		return pressure, density, c.Gravity(h)
	}
	density = c.density * series(u)
	pressure = density * c.specific * (1 + u)
	if c.moist != nil {
		p, r := c.moist.at(c.stretch * h * inverse)
		pressure, density = pressure*p, density*r
	}
	r := EarthRadius * inverse
	return pressure, density, StandardGravity * r * r
}

// far is At for any height, without the series.
func (c *Column) far(h float64) (pressure, density float64) {
	s, d := c.find(h)
	temperature, density := s.at(d - s.from)
	pressure = density * s.gas * temperature
	if s == &c.layers[0] && c.moist != nil {
		p, r := c.moist.at(d)
		return pressure * p, density * r
	}
	return pressure, density
}

// find gives the layer at a height above the site, and the height in geopotential
// metres. The first layer reaches down below the site too.
func (c *Column) find(h float64) (*stratum, float64) {
	h = hold(h, lowest-c.elevation, highest)
	d := c.stretch * h / (c.radius + h)
	i := len(c.layers) - 1
	for i > 0 && !(d >= c.layers[i].from) {
		i--
	}
	return &c.layers[i], d
}

// Air gives the air at a height above the site, m of geometric altitude. The
// density and the speed of sound are those of moist air if the site's is moist.
func (c *Column) Air(h float64) Air {
	s, d := c.find(h)
	temperature, _ := s.at(d - s.from)
	pressure, density := c.At(h)
	return Air{
		Temperature: temperature,
		Pressure:    pressure,
		Density:     density,
		SoundSpeed:  math.Sqrt(Gamma * pressure / density),
	}
}

// Gravity is the acceleration of gravity at a height above the site, m/s².
func (c *Column) Gravity(h float64) float64 { return Gravity(c.elevation + h) }
