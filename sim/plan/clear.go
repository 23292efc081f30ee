package plan

import (
	"ullage/sim"
	"ullage/sim/ground"
	"ullage/sim/rocket"
)

// Clear is how far people are kept from the pad of a flight, by its total impulse, the field's own
// rule and, on water, the blast of the gas on the pad. Without a flight the impulse of water is 0.
func Clear(r *rocket.Rocket, fl *sim.Flight) ground.Kept {
	if r.Power == rocket.MotorPower {
		return ground.Keep(r.Motor.Impulse(), r.Field.Clear, 0)
	}
	impulse := 0.0
	if fl != nil {
		impulse = fl.Drive.Impulse
	}
	return ground.Keep(impulse, r.Field.Clear, OnThePad(r).Gas.StandoffFloor)
}
