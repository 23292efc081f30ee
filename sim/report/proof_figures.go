package report

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/quantity"
)

func (p printer) pressure(v float64) string { return p.text(v, "bar") }
func (p printer) stress(v float64) string   { return p.text(v, "MPa") }
func (p printer) percent(v float64) string  { return p.text(v, "%") }

// liquid is a volume small enough for a measuring cylinder.
func (p printer) liquid(v float64) string { return p.text(v, "mL") }

// warmth is a temperature, whole degrees being all that is known of it.
func (p printer) warmth(v float64) string {
	u := p.sys.Unit(unitNamed("degC"))
	return strconv.FormatFloat(u.FromSI(v), 'f', 0, 64) + strings.Replace(" "+u.Name, "deg", "°", 1)
}

// atMost is a pressure that must not be gone beyond: rounded down, never up.
func (p printer) atMost(v float64) string { return p.pressure(p.cut(v, math.Floor)) }

// farther is a distance to keep, rounded up.
func (p printer) farther(v float64) string {
	u := p.sys.Unit(unitNamed("m"))
	return p.given(u.ToSI(math.Ceil(u.FromSI(v)-1e-9)), "m")
}

// atLeast is a pressure that must be reached: rounded up.
func (p printer) atLeast(v float64) string { return p.pressure(p.cut(v, math.Ceil)) }

// cut rounds a pressure to the digits that are shown, one way. What arithmetic adds to a
// round figure does not count.
func (p printer) cut(v float64, way func(float64) float64) float64 {
	const noise = 1e-9
	u := p.sys.Unit(unitNamed("bar"))
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

// AtMost writes a gauge pressure that must not be gone beyond, Pa: rounded down, never up.
func AtMost(v float64, sys quantity.System) string { return printer{sys}.atMost(v) }

// AtLeast writes a gauge pressure that must be reached, Pa: rounded up.
func AtLeast(v float64, sys quantity.System) string { return printer{sys}.atLeast(v) }

// ProofFigure writes the pressure to prove a chamber at: all that is wanted where the limit
// allows it, and never over the limit.
func ProofFigure(r *chamber.Result, sys quantity.System) string {
	p := printer{sys}
	return p.pressure(p.proofPressure(r))
}

func (p printer) proofPressure(r *chamber.Result) float64 {
	if up := p.cut(r.Proof, math.Ceil); r.ProofEnough && up <= r.ProofLimit {
		return up
	}
	return p.cut(r.Proof, math.Floor)
}
