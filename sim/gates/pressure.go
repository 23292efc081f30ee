package gates

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// Pressure is what a chamber is filled to beside what is known of it, gauge, Pa: the one
// home of what every face says of a pressure that no proof is for.
type Pressure struct {
	Working   float64
	ProvedFor float64 // NaN without a proof on record
	Burst     float64 // NaN where nothing is known of it
	Basis     chamber.Basis
	Stated    bool // somebody said that it counts
}

// PressureOf is the pressure of a rocket on water; not ok on a motor.
func PressureOf(r *rocket.Rocket) (p Pressure, ok bool) {
	if r.Power != rocket.WaterPower || r.Water == nil {
		return p, false
	}
	p = Pressure{Working: r.Water.Pressure, ProvedFor: r.ProvedFor(), Burst: math.NaN()}
	if r.Chamber != nil {
		at := r.ChamberAt()
		p.Burst, p.Basis, p.Stated = at.Burst, at.Basis, at.Stated
	}
	return p, true
}

// Beyond tells that no proof on record is for the pressure: a no-go by [LimitProof].
func (p Pressure) Beyond() bool {
	return p.Working > 0 && !(p.Working <= p.ProvedFor+slack(p.ProvedFor))
}
