package sim

import (
	"context"
	"math"

	"ullage/sim/rocket"
)

// Flight is one flown flight: its results, what to warn of, and, if it was kept,
// the dense output behind At, Samples and Trace.
type Flight struct {
	Rocket *rocket.Rocket
	Results
	Warnings []Warning
	Events   []Event
	Steps    int // accepted
	Rejected int // steps tried again shorter

	effort [legs]effort
	dense  denseOutput
}

// Fly flies a rocket from release to landing. The result depends on nothing but
// its arguments: the same ones give the same bits. It returns what is wrong with the
// rocket, a fault.List, or the context's error when that ends first; a rocket that does
// not leave the ground is a flight with a warning, not an error.
func Fly(ctx context.Context, r *rocket.Rocket, o Options) (*Flight, error) {
	if err := r.Check(rocket.ForFlight).Err(); err != nil {
		return nil, err
	}
	if o.Tolerance <= 0 {
		o.Tolerance = DefaultTolerance
	}
	early := math.NaN()
	if opensBeforeTop(r) {
		// "apogee − 1 s" needs to know the top before it comes: fly up once
		// without those canopies.
		scout := newRun(r, Options{Tolerance: o.Tolerance, Point: o.Point})
		scout.scout = true
		if err := scout.fly(ctx); err != nil {
			return nil, err
		}
		if scout.flight.Apogee.Happened {
			early = scout.flight.Apogee.Time
		}
	}
	flying := newRun(r, o)
	flying.knownTop = early
	if err := flying.fly(ctx); err != nil {
		return nil, err
	}
	return flying.flight, nil
}

// opensBeforeTop tells whether a rule counts back from the apogee.
func opensBeforeTop(r *rocket.Rocket) bool {
	for i := range r.Canopies {
		if _, wait, ok := r.Waits(i); ok && wait < 0 {
			return true
		}
	}
	return false
}
