package chart

import (
	"math"
	"strconv"
	"strings"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// Look is how values are shown, and on what paper.
type Look struct {
	System quantity.System
	Paper  page.Paper
}

// digits is how many significant digits people are shown, as in report.
const digits = 3

// unit is the unit shown instead of one that this package names.
func (l Look) unit(name string) quantity.Unit {
	u, ok := quantity.Lookup(name)
	if !ok {
		panic("chart: no unit of this name")
	}
	return l.System.Unit(u)
}

// text writes a computed value. What is smaller than a reader can use is 0.
func (l Look) text(v float64, unit string) string { return written(v, l.unit(unit)) }

// in is text with a unit itself in place of its name.
func (l Look) in(v float64, unit quantity.Unit) string { return written(v, l.System.Unit(unit)) }

func written(v float64, u quantity.Unit) string {
	if math.Abs(u.FromSI(v)) < 0.005 {
		v = u.ToSI(0)
	}
	return spelled(quantity.Format(v, u, digits))
}

// given writes a value that was set, without zeros at its end.
func (l Look) given(v float64, unit string) string { return given(v, l.unit(unit), digits) }

// given writes a value that was set, in a unit.
func given(v float64, u quantity.Unit, digits int) string {
	figure, name, _ := strings.Cut(quantity.Format(v, u, digits), " ")
	if strings.Contains(figure, ".") && !strings.Contains(figure, "e") {
		figure = strings.TrimRight(strings.TrimRight(figure, "0"), ".")
	}
	return spelled(strings.TrimSpace(figure + " " + name))
}

// spelled writes units as print does.
func spelled(s string) string {
	return strings.NewReplacer("*", "·", "/s2", "/s²", " in3", " in³", " degC", " °C", " degF", " °F", " deg", "°").Replace(s)
}

// unitName is a unit on an axis.
func unitName(u quantity.Unit) string { return strings.TrimSpace(spelled(" " + u.Name)) }

// inUnit are SI values in a unit.
func inUnit(v []float64, u quantity.Unit) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i] = u.FromSI(v[i])
	}
	return out
}

// title names a rocket, its drive and what is shown of it.
func title(r *rocket.Rocket, what string) string {
	name := strings.TrimSpace(r.Name)
	if name == "" {
		name = "A rocket without a name"
	}
	return name + " on " + string(r.Power) + " power: " + what
}

// drive says what pushes, in a line.
func (l Look) drive(r *rocket.Rocket) string {
	switch {
	case r.Power == rocket.WaterPower && r.Water != nil:
		w := r.Water
		return "Chamber of " + l.given(w.Volume, "L") + ", " + l.given(w.Fill, "%") + " full, at " +
			l.given(w.Pressure, "bar") + "; throat " + l.given(w.Throat, "mm")
	case r.Power == rocket.MotorPower && r.Motor != nil:
		m := r.Motor
		text := "Motor with " + l.given(m.Propellant, "g") + " of propellant in a case of " + l.given(m.Case, "g")
		if m.Curve != nil {
			i := m.Impulse()
			text += "; " + number(i) + " N·s"
			if class := thrust.Class(i); class != "" {
				text += ", class " + class
			}
		}
		return text
	}
	return ""
}

// number writes a plain number.
func number(v float64) string { return strconv.FormatFloat(v, 'g', digits, 64) }

// day says where, from what rail and in what wind, in a line.
func (l Look) day(r *rocket.Rocket) string {
	text := "Site " + l.given(r.Site.Elevation, "m") + " above the sea"
	if r.Site.Temperature > 0 {
		text += ", " + l.given(r.Site.Temperature, "degC")
	}
	switch {
	case r.Site.Pressure > 0:
		text += ", " + given(r.Site.Pressure, l.unit("hPa"), 4)
	case r.Site.SeaLevelPressure > 0:
		text += ", " + given(r.Site.SeaLevelPressure, l.unit("hPa"), 4) + " at sea level"
	}
	if r.Rail.Length > 0 {
		text += "; rail " + l.given(r.Rail.Length, "m")
	} else {
		text += "; no rail"
	}
	text += ", " + l.given(r.Rail.Tilt, "deg") + " from vertical"
	if r.Rail.Tilt != 0 {
		text += " towards " + l.given(r.Rail.Heading, "deg")
	}
	return text + "; " + l.wind(r)
}

// wind says what wind there is.
func (l Look) wind(r *rocket.Rocket) string {
	return spelled(words.In(l.System).DayWind(r))
}

// nearGround is the wind that a map's arrow shows.
func (l Look) nearGround(r *rocket.Rocket) string {
	speed, from := r.Wind.Surface()
	switch {
	case !r.Wind.Known():
		return "no wind stated"
	case speed == 0:
		return "calm near the ground"
	}
	return spelled("wind " + words.In(l.System).WindSpeed(speed) + " from " + l.given(from, "deg"))
}

// closing are the notes that end every page: what flew, and the cautions.
func (l Look) closing(r *rocket.Rocket) string {
	return strings.TrimSpace(words.In(l.System).Beyond(r) + " Flown as " + words.Model(r) + ". " + strings.Join(words.Cautions(r.Power), " "))
}
