package sim

import "ullage/thrust"

// DefaultTolerance keeps the apogee within 0.01 % of the converged value.
const DefaultTolerance = 4e-5

// Options choose how a flight is integrated.
type Options struct {
	// Tolerance is the local error a step may make, relative to the scale of each
	// component; 0 takes DefaultTolerance. 1e-12 is the least that makes sense.
	Tolerance float64
	// Keep keeps the dense record that At, Samples and Trace read.
	Keep bool
	// Point flies a point mass whatever the rocket says, and looks at no balance: for
	// studies of many flights.
	Point bool
}

// stopRatio ends the gas's push.
const stopRatio = thrust.StopRatio

// timeLimit ends a flight that does not come down, s.
const timeLimit = 24 * 3600.0

// stepLimit ends a flight that will not get on, so that nothing can hang: a hundred
// times what the longest curves need.
const stepLimit = 1_000_000

// scales are what each component's error is measured against, besides its own
// size: a flight's ordinary magnitudes. Path and impulse are integrals of the
// others and steer nothing on their own.
func (m *model) scales() state {
	s := state{
		east: 10, north: 10, up: 10,
		vEast: 10, vNorth: 10, vUp: 10,
		airPath: 100, impulse: 10,
		store: 1, jet: 1,
	}
	switch gas := m.flow.CarriedGas(); {
	case m.push.liquid() && m.liquid0 > 0:
		s[store] = m.liquid0
	case m.push.gas() && gas > 0:
		s[store] = gas
	}
	if m.push == noPush && m.open != 0 && m.open == m.full {
		// The settled descent decides where and how hard it lands, to a part in a
		// thousand; the heights that need more digits lie behind.
		for i := range airPath {
			s[i] *= 5
		}
	}
	if m.push == unsteadyLiquid && m.open == 0 {
		// What speed is lost here is multiplied on the way up, and the rocket may
		// be hardly moving yet.
		s[vEast], s[vNorth], s[vUp] = 0.3, 0.3, 0.3
	}
	for i := range 4 {
		s[attitude+i] = 1
	}
	for i := range 3 {
		s[spin+i] = m.last.laden.pitch // at a rate of 1 rad/s
	}
	return s
}
