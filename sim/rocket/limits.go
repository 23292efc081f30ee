package rocket

import (
	"fmt"
	"math"

	"ullage/sim/chamber"
	"ullage/sim/ground"
	"ullage/sim/quantity"
)

// Limits are what a flight is judged by. What is 0 takes the default.
type Limits struct {
	RailExit       float64 // least rail exit speed, m/s
	RailExitWind   float64 // least rail exit speed over the wind
	ThrustToWeight float64 // least, at rail exit
	MarginLeast    float64 // stability margin at rail exit, liquid-out and burnout, calibres
	MarginMost     float64 // the same
	MarginAtAngle  float64 // least at the angle of attack as the guide ends, calibres
	Attack         float64 // greatest angle of attack at rail exit, rad
	AttackMost     float64 // greatest angle of attack of the flight up to the top while it is fast, rad
	Flutter        float64 // greatest speed over the fins' flutter speed
	Tilt           float64 // greatest of the rail, rad
	Wind           float64 // greatest, m/s
	Impulse        float64 // greatest of a motor, N·s
	Opening        float64 // greatest airspeed as a canopy opens, m/s
	MountFactor    float64 // least strength of the recovery mount over the opening load
	Landing        float64 // greatest vertical landing speed, m/s
	Energy         float64 // greatest landing energy, J
	ProofFactor    float64 // least proof pressure on record over the working pressure
	ProofDays      float64 // for which a proof holds
	ProofCycles    float64 // pressurisations for which a proof holds, where a logbook counts them
}

// Exact by definition of the international foot, pound and mile.
const (
	footPound    = 1.3558179483314004 // J
	milePerHour  = 0.44704            // m/s
	radPerDegree = math.Pi / 180
)

// DefaultLimits are those that hold when nobody says: common practice without a
// source, but for tilt and wind (US codes, NFPA 1127), the impulse of a first
// high-power certification (US practice: class H or I) and the landing energy (US
// student practice, 75 ft·lbf), all of them from memory.
func DefaultLimits() Limits {
	return Limits{
		RailExit:       15,
		RailExitWind:   4,
		ThrustToWeight: 5,
		MarginLeast:    1,
		MarginMost:     3,
		MarginAtAngle:  0,
		Attack:         15 * radPerDegree,
		AttackMost:     30 * radPerDegree,
		Flutter:        0.8,
		Tilt:           20 * radPerDegree,
		Wind:           20 * milePerHour,
		Impulse:        640,
		Opening:        20,
		MountFactor:    2,
		Landing:        6,
		Energy:         75 * footPound,
		ProofFactor:    chamber.ProofFactor,
		ProofDays:      365,
		ProofCycles:    50,
	}
}

// InForce are the limits with the defaults for what is not given.
func (l Limits) InForce() Limits {
	d := DefaultLimits()
	for i := range limitFields {
		if at := limitFields[i].At; *at(&l) != 0 {
			*at(&d) = *at(&l)
		}
	}
	return d
}

// Field is where the rocket may fly and come down. What is 0 is not given.
type Field struct {
	Ceiling float64 // greatest height above the pad, m
	Radius  float64 // greatest distance of a landing from the pad, m
	Clear   float64 // least distance of people from the pad by the field's own rule, m
	// Boundary is its outline around the pad; none where only a radius is given, or neither. It is
	// read from the file that Outline names.
	Boundary ground.Polygon
	Outline  string
}

// Bounded tells that it is said how far the field reaches.
func (f *Field) Bounded() bool { return f.Radius > 0 || len(f.Boundary) > 0 }

// Holds tells whether a place, m from the pad, is on the field.
func (f *Field) Holds(east, north float64) bool {
	return (f.Radius == 0 || math.Hypot(east, north) <= f.Radius) &&
		(len(f.Boundary) == 0 || f.Boundary.Holds(ground.Point{East: east, North: north}))
}

// checkLimits holds that limits make sense and leave something between them.
func (r *Rocket) checkLimits(c *checker) {
	quantity.Check(&c.faults, &r.Limits, limitFields)
	quantity.Check(&c.faults, &r.Field, fieldFields)
	if l := r.Limits.InForce(); l.MarginLeast > l.MarginMost {
		c.odds("limits.margin_least", "limits.margin_most", fmt.Sprintf("is more than limits.margin_most, %.3g", l.MarginMost), "give a least margin below the greatest")
	}
}
