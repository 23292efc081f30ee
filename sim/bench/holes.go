package bench

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim/chamber"
)

// Bay is the compartment of an altimeter.
type Bay struct {
	Volume float64 // of air in it, m³; 0: not described
	Ports  int     // static ports, evenly around; 0 takes UsualPorts
}

// UsualPorts are static ports enough that wind from one side evens out: common practice, no source.
const UsualPorts = 3

// portArea is the area of static ports per volume of the bay, 1/m: a hole of 1/4 in for 100 in³ (common
// practice, no source).
const portArea = math.Pi / 4 * 0.25 * 0.25 / 100 / 0.0254

// Number is how many ports there are.
func (b *Bay) Number() int {
	if b.Ports == 0 {
		return UsualPorts
	}
	return b.Ports
}

// Port is the diameter of each of the static ports, m: the area of the rule shared among them.
func (b *Bay) Port() float64 { return HoleOf(portArea*b.Volume, b.Number()) }

// Lag is by how much the pressure in the bay stays behind that outside, as a height, m, while the rocket climbs at a speed,
// m/s, in air of an absolute pressure, Pa, and a density, kg/m³. Air leaves at V ρ/p · dp/dt, which a sharp hole lets
// out under Δp = ρ/2 (V ρ g v/(p C_d A))², incompressible; a height is Δp/(ρ g).
func (b *Bay) Lag(speed, pressure, density float64) float64 {
	area := portArea * b.Volume
	through := b.Volume * density * atmosphere.StandardGravity * speed / (pressure * chamber.Orifice * area) // m/s in the hole
	return through * through / (2 * atmosphere.StandardGravity)
}

// HoleOf is the diameter, m, of each of so many round holes that have an area together, m².
func HoleOf(area float64, count int) float64 { return math.Sqrt(4 * area / (math.Pi * float64(count))) }

// drillStep is from one drill to the next.
const drillStep = 0.1e-3

// DrillFor is the least drill in steps of 0.1 mm that is as wide as a hole, m.
func DrillFor(hole float64) float64 {
	const noise = 1e-6
	return math.Ceil(hole/drillStep-noise) * drillStep
}

// GapAt is how far the end of a straight rod of a length, m, is off the axis when its foot is tilted by an angle.
func GapAt(length, angle float64) float64 { return length * math.Tan(angle) }
