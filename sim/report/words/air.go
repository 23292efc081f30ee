package words

import (
	"ullage/atmosphere"
	"ullage/sim/rocket"
)

// Air is the air in force at a site, with what of it nobody stated.
func (p Printer) Air(s atmosphere.Site) string {
	column := s.Column()
	air := column.Air(0)
	text := p.Given(air.Temperature, "degC")
	switch {
	case s.Temperature == 0 && s.Pressure == 0 && s.SeaLevelPressure == 0:
		return text + " and " + p.Text(air.Pressure, "hPa") + " by the standard atmosphere"
	case s.Temperature == 0:
		text += " by the standard atmosphere"
	}
	return text + ", " + p.Text(air.Pressure, "hPa")
}

// StandardDay says that a day is taken for what nobody stated of it, and which way the real one may be worse; empty where the
// temperature is stated.
func (p Printer) StandardDay(r *rocket.Rocket) string {
	if r.Site.Temperature != 0 {
		return ""
	}
	worse := "the rocket lands faster."
	if r.Water != nil {
		worse = "a closed chamber rises in pressure and its wall loses strength, and " + worse
	}
	column := r.Site.Column()
	return "site.temperature is not stated: all of it is for the standard atmosphere's " + p.Given(column.Air(0).Temperature, "degC") +
		". In warmer air " + worse
}
