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
	untilDown  until = iota // the landing: all of it
	untilTop                // the top: the way up, to the end of thrust
	untilFree               // the end of the guide
	untilReady              // the rocket as it stands there: nothing flies
)

// fly flies a rocket so far. What thrust ends beyond the top goes on to the ground.
func (u until) fly(ctx context.Context, r *rocket.Rocket) (*sim.Flight, error) {
	if u == untilReady {
		if err := r.Validate(); err != nil {
			return nil, err
		}
		return &sim.Flight{Rocket: r}, nil
	}
	// Searches fly for a third of a second on all processors. What a key of the screen asks for
	// goes before their next flight, and need not wait till the scheduler takes a turn from them.
	runtime.Gosched()
	fl, err := sim.Fly(ctx, r, sim.Options{Guide: u == untilFree, Top: u == untilTop})
	if err == nil && u == untilTop && fl.RailExit.Happened && !fl.Burnout.Happened {
		return sim.Fly(ctx, r, sim.Options{})
	}
	return fl, err
}

// flown is the flight of a rocket so far; nil of one that is not valid, and of none.
func (u until) flown(ctx context.Context, r *rocket.Rocket) (*sim.Flight, error) {
	if r == nil {
		return nil, nil
	}
	fl, err := u.fly(ctx, r)
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
		if g := &gates[i]; !g.still && g.value != nil {
			far = min(far, g.until)
		}
	}
	return far
}
