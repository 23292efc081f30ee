package words

import (
	"math"
	"strconv"
	"strings"

	"ullage/atmosphere"
	"ullage/sim/chamber"
	"ullage/sim/quantity"
)

// Time writes a time of a flight, s.
func (p Printer) Time(v float64) string { return p.Text(v, "s") }

// Height writes a height or a distance of a flight, m.
func (p Printer) Height(v float64) string { return p.Text(v, "m") }

// Speed writes a speed, m/s.
func (p Printer) Speed(v float64) string { return p.Text(v, "m/s") }

// Force writes a force, N.
func (p Printer) Force(v float64) string { return p.Text(v, "N") }

// Angle writes an angle, rad.
func (p Printer) Angle(v float64) string { return p.Text(v, "deg") }

// Energy writes an energy, J.
func (p Printer) Energy(v float64) string { return p.Text(v, "J") }

// Size writes a length of the rocket rather than of its flight.
func (p Printer) Size(v float64) string { return p.Given(v, "mm") }

// Mass turns to grams below a kilogram, or to ounces below a pound, as a field scale does.
func (p Printer) Mass(v float64) string {
	large := 1.0
	if p.System == quantity.US {
		large = unitNamed("lb").Scale
	}
	if math.Abs(v) < large {
		return p.Text(v, "g")
	}
	return p.Text(v, "kg")
}

// Impulse stays in N·s whatever the system: motors are sold and classed by it.
func (p Printer) Impulse(v float64) string { return p.Number(v) + " N·s" }

// Acceleration writes an acceleration, m/s².
func (p Printer) Acceleration(v float64) string { return p.Text(v, "m/s2") }

// Gravities is an acceleration as a multiple of standard gravity.
func (p Printer) Gravities(v float64) string {
	return p.Number(v/atmosphere.StandardGravity) + " g"
}

// Pressure writes a gauge pressure, Pa.
func (p Printer) Pressure(v float64) string { return p.Text(v, "bar") }

// Stress writes a stress, Pa.
func (p Printer) Stress(v float64) string { return p.Text(v, "MPa") }

// ClothArea is in the unit that cloth is bought by, m².
func (p Printer) ClothArea(v float64) string {
	const yard = 0.9144 // m, exact by definition
	if p.System == quantity.US {
		return p.Number(v/(yard*yard)) + " yd²"
	}
	return p.Number(v) + " m²"
}

// Percent writes a share.
func (p Printer) Percent(v float64) string { return p.Text(v, "%") }

// Liquid is a volume small enough for a measuring cylinder.
func (p Printer) Liquid(v float64) string { return p.Text(v, "mL") }

// Warmth is a temperature, whole degrees being all that is known of it.
func (p Printer) Warmth(v float64) string { return wholeDegrees(v, p.shown("degC")) }

// Warmer is a difference of temperatures, K, in whole degrees.
func (p Printer) Warmer(v float64) string {
	u := p.shown("degC")
	u.Offset = 0
	return wholeDegrees(v, u)
}

func wholeDegrees(v float64, u quantity.Unit) string {
	return strconv.FormatFloat(u.FromSI(v), 'f', 0, 64) + strings.Replace(" "+u.Name, "deg", "°", 1)
}

// AtMost is a pressure that must not be gone beyond: rounded down, never up.
func (p Printer) AtMost(v float64) string { return p.Pressure(p.Floor(v)) }

// AtLeast is a pressure that must be reached: rounded up.
func (p Printer) AtLeast(v float64) string { return p.Pressure(p.cut(v, math.Ceil)) }

// Farther is a distance to keep, rounded up.
func (p Printer) Farther(v float64) string {
	u := p.shown("m")
	return p.Given(u.ToSI(math.Ceil(u.FromSI(v)-1e-9)), "m")
}

// Floor is a pressure rounded down to the digits that are shown, Pa.
func (p Printer) Floor(v float64) float64 { return p.cut(v, math.Floor) }

// FillTo is a pressure that a chamber is filled to, never rounded up.
func (p Printer) FillTo(v float64) string { return p.Given(p.Floor(v), "bar") }

// cut rounds a pressure to the digits that are shown, one way. What arithmetic adds to a
// round figure does not count.
func (p Printer) cut(v float64, way func(float64) float64) float64 {
	const noise = 1e-9
	u := p.shown("bar")
	x := u.FromSI(v)
	if !(x > 0) || math.IsInf(x, 0) {
		return v
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-(digits-1))
	if near := math.Round(x / step); math.Abs(near-x/step) < noise*near {
		return u.ToSI(near * step)
	}
	return u.ToSI(way(x/step) * step)
}

// ProofFigure is the pressure to prove a chamber at: all that is wanted where the limit
// allows it, and never over the limit.
func (p Printer) ProofFigure(r *chamber.Result) string { return p.Pressure(p.ProofPressure(r)) }

// ProofPressure is that figure as a number, Pa.
func (p Printer) ProofPressure(r *chamber.Result) float64 {
	if up := p.cut(r.Proof, math.Ceil); r.ProofEnough && up <= r.ProofLimit {
		return up
	}
	return p.Floor(r.Proof)
}
