package study

import (
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/rocket"
)

// OpeningValues are the values worth a look for a canopy's rule on the drive that
// flies: for a motor's charge the whole seconds around the top and the delays that
// can be had, for a timer half seconds around the top, for a height round steps up to
// the top. None when the rocket does not get off its rail.
func OpeningValues(ctx context.Context, r *rocket.Rocket, canopy int, o Options) ([]float64, error) {
	in, err := openingInput(r, canopy)
	if err != nil {
		return nil, err
	}
	fl, err := unopened(ctx, r, o)
	if err != nil || !fl.RailExit.Happened || !fl.Apogee.Happened {
		return nil, err
	}
	// Early enough to see it hurt, late enough to see it fall.
	const before, after = 3.0, 5.0 // s
	trigger := r.Canopies[canopy].Rule(r.Power).Trigger
	if trigger.Falls() {
		step := roundStep(fl.Apogee.Height / 10)
		return slices.DeleteFunc(steps(step, fl.Apogee.Height, step), func(v float64) bool { return !(v >= in.Min && v <= in.Max) }), nil
	}
	from, step := momentOf(fl, trigger.Row().From), 0.5 // s
	if trigger.ByCharge() {
		step = 1
	}
	top := math.Round((fl.Apogee.Time-from)/step) * step
	values := steps(top-before, top+after, step)
	values = slices.DeleteFunc(values, func(v float64) bool {
		return !(v >= in.Min && v <= in.Max) || from+v < 0 || from+v >= fl.Landing.Time
	})
	if trigger.ByCharge() && r.Motor != nil {
		values = append(append(values, r.Motor.Delays...), r.Motor.Delay)
	}
	slices.Sort(values)
	return slices.CompactFunc(values, sameDelay), nil
}

// momentOf is when a flight comes to what rules count from, s.
func momentOf(fl *sim.Flight, m rocket.Moment) float64 {
	switch m {
	case rocket.Burnout:
		return fl.Burnout.Time
	case rocket.Apogee:
		return fl.Apogee.Time
	}
	return 0
}

// unopened flies a rocket whose canopies stay shut: its top is the one they aim at, and its way up, kept where flights are
// to go on from it, that of all which open after it.
func unopened(ctx context.Context, r *rocket.Rocket, o Options) (*sim.Flight, error) {
	shut := r.Clone()
	for i := range shut.Canopies {
		shut.Canopies[i].Water, shut.Canopies[i].Motor = rocket.Rule{}, rocket.Rule{}
	}
	flight := o.unkept()
	flight.Keeps = o.from
	return sim.Fly(ctx, shut, flight)
}

// steps are evenly spaced values from one to another.
func steps(from, to, step float64) []float64 {
	var values []float64
	for i := 0; from+float64(i)*step <= to+1e-9; i++ {
		values = append(values, from+float64(i)*step)
	}
	return values
}

// roundStep is the nearest of 1, 2 and 5 times a power of ten, at least 1.
func roundStep(v float64) float64 {
	if !(v > 1) {
		return 1
	}
	decade := math.Pow(10, math.Floor(math.Log10(v)))
	switch m := v / decade; {
	case m < 1.5:
		return decade
	case m < 3.5:
		return 2 * decade
	case m < 7.5:
		return 5 * decade
	}
	return 10 * decade
}
