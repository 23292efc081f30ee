package atmosphere

import (
	"fmt"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Site is a launch site and its air on the day. It is plain data: Faults tells
// what is out of range.
type Site struct {
	Elevation        float64 // geometric, above sea level, m
	Temperature      float64 // of the air, K; 0: the standard atmosphere's at the elevation
	Pressure         float64 // at the station, Pa; 0: the standard atmosphere's at the elevation
	SeaLevelPressure float64 // instead of Pressure, Pa; 0: not given
	Humidity         float64 // relative, 0 to 1, constant with height
	Latitude         float64 // decimal degrees, north positive; for maps only
	Longitude        float64 // decimal degrees, east positive; for maps only
	Located          bool    // Latitude and Longitude are given
}

// Column prepares the air above the site. It allocates only when the air is
// moist. Values out of range are held at its ends, so the column is always
// sound; that it is the right one, Faults must have said.
//
// In dry air every layer of the standard keeps its lapse rate and its height
// above sea level, starting from the site's temperature and pressure, and the
// hydrostatic law is solved in closed form. In moist air both the density and
// the hydrostatic law take the virtual temperature T/(1 - 0.378 e/p); relative
// humidity is constant up to the tropopause, the share of vapour above.
//
// A SeaLevelPressure is reduced to the station by the same law, through a layer
// of air between sea level and the site that has the site's humidity, the
// standard's tropospheric lapse rate and the site's temperature at its top. At
// the standard temperature, in dry air, a SeaLevelPressure is the altimeter
// setting (QNH), which goes by the standard atmosphere.
func (s Site) Column() Column {
	elevation := elevationRange.Hold(s.Elevation)
	temperature := heldIfGiven(&temperatureRange, s.Temperature)
	pressure := heldIfGiven(&pressureRange, s.Pressure)
	humidity := humidityRange.Hold(s.Humidity)

	usual := Standard(elevation)
	if temperature == 0 {
		temperature = usual.Temperature
	}
	if pressure == 0 {
		pressure = usual.Pressure
		if sea := heldIfGiven(&seaLevelRange, s.SeaLevelPressure); sea != 0 {
			height := Geopotential(elevation)
			below := damp{temperature - troposphericLapse*height, sea, humidity}
			pressure = below.above(height)
		}
	}
	return newColumn(elevation, temperature, pressure, humidity)
}

// Faults lists everything that is wrong with the site; nil when nothing is.
func (s Site) Faults() fault.List {
	var faults fault.List
	s.Check(&faults)
	return faults
}

// Check adds them to a list; it allocates nothing where there is nothing wrong.
func (s *Site) Check(to *fault.List) {
	before := len(*to)
	quantity.Check(to, s, siteFields)
	if s.Pressure != 0 && s.SeaLevelPressure != 0 {
		to.Add("site.sea_level_pressure", "is given beside the pressure at the station", "give one of the two")
	}
	if len(*to) == before && s.Pressure != 0 {
		s.checkStation(to)
	}
}

// checkStation refuses a pressure at the station that no weather brings about at
// this elevation: most likely it is the pressure at sea level, or the elevation
// is missing. Sea-level pressures on record lie between 870 and 1085 hPa (World
// Meteorological Organization, archive of extremes; from memory); the reduction
// of a cold, high site is allowed to go some way beyond.
func (s Site) checkStation(faults *fault.List) {
	const least, most = 80000, 115000
	column := s.Column()
	sea, _ := column.At(-s.Elevation)
	if !(least <= sea && sea <= most) {
		faults.Add("site.pressure", fmt.Sprintf("at %.0f m would be %.0f hPa at sea level", s.Elevation, sea/100),
			fmt.Sprintf("give the pressure at the station, about %.0f hPa at that elevation, or sea_level_pressure instead",
				Standard(s.Elevation).Pressure/100))
	}
}
