package gates

import (
	"context"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// change is a mend made on a rocket, by which flights and verdicts are known again; the zero one is none.
type change struct {
	kind  RemedyKind
	input string
	to    float64
}

func (m *Remedy) change() change { return change{m.Kind, m.Input.Name, m.To} }

// flightKey tells the flights of one search for mends apart: on which drive, with which mends made, in which case, and
// whether no farther than the guide.
type flightKey struct {
	power         rocket.Power
	first, second change
	is            results.Case
	corner        string
	guide         bool
}

// flight is that of a key, which the rocket made for it flies unless it has flown already: checks share mends, and so
// their flights. Nil of a rocket that cannot be made or is not valid.
func (m *mender) flight(k flightKey, made func() *rocket.Rocket) (*sim.Flight, error) {
	whole := k
	whole.guide = false
	for _, key := range [...]flightKey{whole, k} {
		if fl, there := m.flights.Load(key); there {
			return fl.(*sim.Flight), nil
		}
	}
	var fl *sim.Flight
	if r := made(); r != nil {
		var err error
		if fl, err = flown(m.ctx, r, sim.Options{Guide: k.guide}); err != nil {
			return nil, err
		}
	}
	m.flights.Store(k, fl)
	return fl, nil
}

// flown is the flight of a rocket; nil of one that is not valid.
func flown(ctx context.Context, r *rocket.Rocket, o sim.Options) (*sim.Flight, error) {
	fl, err := sim.Fly(ctx, r, o)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, nil
	}
	return fl, nil
}
