package gates

import (
	"context"
	"maps"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// cornerFlights are the flights of one rocket in corners, by their keys, each with how far it went.
type cornerFlights map[string]cornerFlight

type cornerFlight struct {
	until  until
	flight *sim.Flight // nil of a corner in which there is no rocket
}

// corners flies the worst corner of every gate and notes what it found. Many gates share
// one, which flies once and as far as any of them asks, unless it has flown already.
func corners(ctx context.Context, r *rocket.Rocket, gates []criterion, checks []Check, o Options, own study.Options) ([]deviation, cornerFlights, error) {
	s := slopes{spreads: o.Spreads}
	if o.against == nil {
		flights, err := study.Fleet(ctx, s.rockets(r), own)
		if err != nil {
			return nil, nil, err
		}
		s.take(flights)
	}
	against := make([]deviation, len(gates))
	asked := make(map[string]until, len(gates))
	for i := range gates {
		g := &gates[i]
		switch {
		case g.still || g.value == nil:
			continue
		case o.against != nil:
			against[i] = o.against(g.key)
		default:
			against[i], checks[i].SD = s.against(g, checks[i].Values[results.Day])
		}
		key := against[i].key()
		if far, there := asked[key]; !there || g.until < far {
			asked[key] = g.until
		}
	}
	at := make(cornerFlights, len(asked))
	maps.Copy(at, o.corners)
	var fly []deviation
	for i := range gates {
		if gates[i].still || gates[i].value == nil {
			continue
		}
		key := against[i].key()
		if c, there := at[key]; !there || c.until > asked[key] {
			at[key] = cornerFlight{until: asked[key]}
			fly = append(fly, against[i])
		}
	}
	flights, err := study.Collect(ctx, len(fly), own, func(ctx context.Context, i int) (*sim.Flight, error) {
		return asked[fly[i].key()].flown(ctx, fly[i].off(r))
	})
	if err != nil {
		return nil, nil, err
	}
	for n, d := range fly {
		at[d.key()] = cornerFlight{asked[d.key()], flights[n]}
	}
	for i := range gates {
		if g := &gates[i]; !g.still && g.value != nil {
			checks[i].Values[results.Corner] = g.look(at[against[i].key()].flight)
		}
	}
	return against, at, nil
}
