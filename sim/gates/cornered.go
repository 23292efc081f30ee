package gates

import (
	"context"
	"maps"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// cornerValues are what the criteria of one rocket come to in its corners, by their keys: a value for each criterion by its
// number, flown where a flight went far enough for it.
type cornerValues map[string][]Value

// of is the value of a criterion in a corner; flown where it is known.
func (c cornerValues) of(d deviation, g *criterion) Value {
	if values := c[d.key()]; g.number < len(values) {
		return values[g.number]
	}
	return Value{}
}

// corners looks at the worst corner of every gate and notes what it found. Many gates share
// one, which flies once and as far as any of them asks, unless it has flown already.
func corners(ctx context.Context, r *rocket.Rocket, gates []criterion, checks []Check, o Options, own study.Options) ([]deviation, cornerValues, error) {
	f := cornerFleet{base: r, gates: gates, own: own}
	known := make(cornerValues, len(gates))
	maps.Copy(known, o.corners)
	s := slopes{spreads: o.Spreads}
	if o.against == nil {
		day := deviation{o.Spreads, make([]int8, len(o.Spreads))}
		singles := make([]deviation, 0, 2*len(o.Spreads))
		for i := range o.Spreads {
			singles = append(singles, single(o.Spreads, i, 1), single(o.Spreads, i, -1))
		}
		if err := f.climb(ctx); err != nil {
			return nil, nil, err
		}
		flown, err := f.fly(ctx, singles, func(int) until { return untilDown })
		if err != nil {
			return nil, nil, err
		}
		for i := range o.Spreads {
			s.up, s.down = append(s.up, flown[2*i]), append(s.down, flown[2*i+1])
		}
		for i, d := range singles {
			known[d.key()] = flown[i]
		}
		known[day.key()] = valuesOf(gates, func(i int) Value { return checks[i].Values[results.Day] })
	}
	against := make([]deviation, len(gates))
	asked := make(map[string]until, len(gates))
	var fly []deviation
	for i := range gates {
		g := &gates[i]
		switch {
		case !g.flies():
			continue
		case o.against != nil:
			against[i] = o.against(g.key)
		default:
			against[i], checks[i].SD = s.against(g, checks[i].Values[results.Day])
		}
		if known.of(against[i], g).Flown {
			continue
		}
		key := against[i].key()
		far, there := asked[key]
		if !there {
			fly = append(fly, against[i])
			far = g.until
		}
		asked[key] = min(far, g.until)
	}
	flown, err := f.fly(ctx, fly, func(i int) until { return asked[fly[i].key()] })
	if err != nil {
		return nil, nil, err
	}
	for i, d := range fly {
		known[d.key()] = flown[i]
	}
	for i := range gates {
		if g := &gates[i]; g.flies() {
			checks[i].Values[results.Corner] = known.of(against[i], g)
		}
	}
	return against, known, nil
}

// cornerFleet flies deviations of a rocket for its criteria.
type cornerFleet struct {
	base  *rocket.Rocket
	gates []criterion
	own   study.Options
	up    *sim.WayUp // of the base
}

// climb flies the way up of the base, from which all go on that differ from it in what opens after it.
func (f *cornerFleet) climb(ctx context.Context) error {
	f.up = new(sim.WayUp)
	_, err := untilTop.flown(ctx, f.base, sim.Options{Keeps: f.up})
	return err
}

// fly gives what each deviation comes to, flown so far.
func (f *cornerFleet) fly(ctx context.Context, all []deviation, far func(i int) until) ([][]Value, error) {
	return study.Fleet(ctx, len(all), f.own, func(ctx context.Context, i int, c *study.Craft) ([]Value, error) {
		r := &c.Rocket
		if !all[i].onto(f.base, r) {
			r = nil
		}
		fl, err := far(i).onto(ctx, r, sim.Options{From: f.up}, &c.Flight)
		if err != nil {
			return nil, err
		}
		return valuesOf(f.gates, func(k int) Value {
			if f.gates[k].until < far(i) {
				return Value{}
			}
			return f.gates[k].look(fl)
		}), nil
	})
}

// valuesOf are those of the criteria which fly, by their numbers.
func valuesOf(gates []criterion, of func(i int) Value) []Value {
	var out []Value
	for i := range gates {
		if g := &gates[i]; g.flies() {
			if out == nil {
				out = make([]Value, gates[len(gates)-1].number+1)
			}
			out[g.number] = of(i)
		}
	}
	return out
}
