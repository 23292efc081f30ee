package flown

import (
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// Setting is what a day set, by the name of its input; SI, angles in degrees.
type Setting struct {
	Name  string
	Value float64
}

// settingsOf are what the day sets: each log has its own.
func settingsOf() []string {
	return []string{"water.fill", "water.pressure", "water.temperature", "motor.delay", "wind.speed", "wind.from", "wind.factor", "wind.veer", "rail.tilt", "site.temperature", "site.pressure"}
}

// Dated gives a log its day: the settings of its rocket.
func (l Logged) Dated(from string) Logged {
	l.Day = from
	l.Settings = nil
	for _, name := range settingsOf() {
		in, err := rocketfile.Find(l.Rocket, name)
		if err != nil || in.Drive != "" && in.Drive != l.Rocket.Power {
			continue
		}
		v, given := in.Get(l.Rocket)
		if !given {
			continue
		}
		if in.Dimension == quantity.Angle || in.Dimension == quantity.Bearing {
			u, _ := quantity.LookupIn("deg", in.Dimension)
			v = u.FromSI(v)
		}
		l.Settings = append(l.Settings, Setting{name, v})
	}
	return l
}
