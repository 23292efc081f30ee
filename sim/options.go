package sim

// DefaultTolerance keeps the apogee within 0.01 % of the converged value.
const DefaultTolerance = 4e-5

// Options choose how a flight is integrated.
type Options struct {
	// Tolerance is the local error a step may make, relative to the scale of each
	// component; 0 takes DefaultTolerance. 1e-12 is the least that makes sense.
	Tolerance float64
	// Keep keeps the dense output that At, Samples and Trace read.
	Keep bool
	// Guide ends the flight with the guide: rail exit and what comes before it are all that is
	// asked for.
	Guide bool
	// Push ends the flight once it is off its guide and nothing pushes it any more.
	Push bool
	// Top ends the flight at its top: the way up is all that is asked for.
	Top bool
	// NoseFirst has a rigid body fall as a point mass from the apogee on, nose first: without
	// a canopy it may find a gentle glide on its side that nobody should count on.
	NoseFirst bool
	// Held keeps the rocket on its stand while it pushes: liquid and gas, or the motor, without
	// motion. A launch tube, which would let nothing out, is left away. The flight ends with the push.
	Held bool
	// Keeps, if not nil, keeps the way up, for flights that go on from it, if nothing opens before its top.
	Keeps *WayUp
	// From, if not nil, is a way up to go on from, if it is that of the rocket, at the same tolerance, and nothing opens before
	// its top; else the flight begins with its release. One that is kept, held, or ended with its guide or its push always does.
	From *WayUp
}
