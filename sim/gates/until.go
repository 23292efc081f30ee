package gates

import (
	"context"
	"runtime"

	"ullage/sim"
	"ullage/sim/rocket"
)

// until is how far a flight has to go for what is asked of it: of two the one that goes farther answers for both.
type until uint8

const (
	untilDown   until = iota // the landing: all of it
	untilTop                 // the top: the way up, to the end of thrust
	untilPushed              // the end of thrust, off the guide
	untilFree                // the end of the guide
	untilReady               // the rocket as it stands there: nothing flies
)

// into flies a rocket so far, into a flight. What thrust ends beyond the top goes on to the ground.
func (u until) into(ctx context.Context, r *rocket.Rocket, o sim.Options, fl *sim.Flight) error {
	if u == untilReady {
		*fl = sim.Flight{Rocket: r}
		return r.Validate()
	}
	// Searches fly for a third of a second on all processors. What a key of the screen asks for
	// goes before their next flight, and need not wait till the scheduler takes a turn from them.
	runtime.Gosched()
	o.Guide, o.Push, o.Top = u == untilFree, u == untilPushed, u == untilTop
	err := sim.Into(ctx, r, o, fl)
	if err == nil && u == untilTop && fl.RailExit.Happened && !fl.Burnout.Happened {
		err = sim.Into(ctx, r, sim.Options{}, fl)
	}
	return err
}

// fly is into a flight of its own.
func (u until) fly(ctx context.Context, r *rocket.Rocket) (*sim.Flight, error) {
	fl := new(sim.Flight)
	if err := u.into(ctx, r, sim.Options{}, fl); err != nil {
		return nil, err
	}
	return fl, nil
}

// flown is the flight of a rocket so far; nil of one that is not valid, and of none.
func (u until) flown(ctx context.Context, r *rocket.Rocket, o sim.Options) (*sim.Flight, error) {
	return u.onto(ctx, r, o, new(sim.Flight))
}

// onto is flown in the memory of a flight.
func (u until) onto(ctx context.Context, r *rocket.Rocket, o sim.Options, fl *sim.Flight) (*sim.Flight, error) {
	if r == nil {
		return nil, nil
	}
	err := u.into(ctx, r, o, fl)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, nil
	}
	return fl, nil
}

// farthest is how far the flights of some criteria have to go.
func farthest(gates []criterion) until {
	far := untilReady
	for i := range gates {
		if g := &gates[i]; g.flies() {
			far = min(far, g.until)
		}
	}
	return far
}
