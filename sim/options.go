package sim

import "ullage/thrust"

// DefaultTolerance keeps the apogee within 0.01 % of the converged value.
const DefaultTolerance = 5e-5

// Options choose how a flight is integrated.
type Options struct {
	// Tolerance is the local error a step may make, relative to the scale of each
	// component; 0 takes DefaultTolerance. 1e-12 is the least that makes sense.
	Tolerance float64
	// Keep keeps the dense record that At, Samples and Trace read.
	Keep bool
}

// stopRatio ends the gas's push.
const stopRatio = thrust.StopRatio

// timeLimit ends a flight that does not come down, s.
const timeLimit = 24 * 3600.0

// scales are what each component's error is measured against, besides its own
// size: a flight's ordinary magnitudes. Path and impulse are integrals of the
// others and steer nothing on their own.
func scales(liquid, gas float64, p push) state {
	s := state{
		east: 10, north: 10, up: 10,
		vEast: 10, vNorth: 10, vUp: 10,
		airPath: 100, impulse: 10,
		store: 1, jet: 10,
	}
	switch {
	case p.liquid() && liquid > 0:
		s[store] = liquid
	case p == chokedGas && gas > 0:
		s[store] = gas
	case p == subsonicGas && gas > 0:
		// The tail of the push: its mass flow ends like the root of the pressure
		// left, which no step likes, and carries next to no impulse.
		s[store] = 10 * gas
	}
	return s
}
