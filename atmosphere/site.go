package atmosphere

import "math"

// Site is a launch site and its air on the day.
type Site struct {
	Elevation        float64 // geometric, above sea level, m
	Temperature      float64 // of the air, K; 0: the standard atmosphere's at the elevation
	Pressure         float64 // at the station, Pa; 0: the standard atmosphere's at the elevation
	SeaLevelPressure float64 // instead of Pressure, Pa; 0: not given
	Humidity         float64 // relative, 0 to 1
	Latitude         float64 // decimal degrees, north positive; for maps only
	Longitude        float64 // decimal degrees, east positive; for maps only
	Located          bool    // Latitude and Longitude are given
}

// Fault is one value out of range, as plain data.
type Fault struct {
	Field   string  // the file's key, such as "elevation"
	Value   float64 // SI
	Problem string
	Mend    string
}

// Faults lists everything wrong with the site; nil when it is in order.
func (s Site) Faults() []Fault { return nil }

// Column prepares the air above the site.
func (s Site) Column() Column {
	h := Geopotential(s.Elevation)
	c := Column{elevation: s.Elevation, temperature: s.Temperature, pressure: s.Pressure}
	if c.temperature == 0 {
		c.temperature = 288.15 - 0.0065*h
	}
	if c.pressure == 0 {
		c.pressure = 101325 * math.Pow(1-0.0065*h/288.15, 5.25588)
	}
	return c
}

// Column is the prepared air above a site.
type Column struct{ elevation, temperature, pressure float64 }

// At gives the pressure, Pa, and the density, kg/m³, at a height above the site, m.
func (c *Column) At(h float64) (pressure, density float64) {
	a := c.Air(h)
	return a.Pressure, a.Density
}

// Air gives the air at a height above the site, m.
func (c *Column) Air(h float64) Air {
	t := c.temperature - 0.0065*(Geopotential(c.elevation+h)-Geopotential(c.elevation))
	p := c.pressure * math.Pow(t/c.temperature, 5.25588)
	return Air{t, p, p / (GasConstant * t), math.Sqrt(Gamma * GasConstant * t)}
}

// Gravity at a height above the site, m/s².
func (c *Column) Gravity(h float64) float64 { return Gravity(c.elevation + h) }
