package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Course is a whole flight, kept, of one way to come down.
type Course struct {
	Kind   LandingKind
	Flight *sim.Flight
}

// Courses are the flights of a rocket as its rules have it, without its main where there are several
// canopies, and without any, as far as there are canopies to stay shut: nose first from the top then, but where another opens before the main anyway.
// A rocket that is not valid is a fault.List.
func Courses(ctx context.Context, r *rocket.Rocket) ([]Course, error) {
	var out []Course
	main := mainOf(r)
	for _, x := range []struct {
		kind LandingKind
		shut func(*rocket.Rocket) bool
	}{{Planned, nil}, {DrogueOnly, shutMain}, {Falling, shutAll}} {
		c := r.Clone()
		if x.shut != nil && !x.shut(c) {
			continue
		}
		fl, err := sim.Fly(ctx, c, sim.Options{Keep: true, NoseFirst: x.kind == Falling || x.kind == DrogueOnly && nothingBefore(out[0].Flight, main)})
		if err != nil {
			return nil, err
		}
		out = append(out, Course{x.kind, fl})
	}
	return out, nil
}
