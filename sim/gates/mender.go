package gates

import (
	"context"
	"math"
	"slices"
	"sync"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// mender looks for what would mend the checks that fail, and offers what holds: flown again
// with every check of every drive that the rocket has, in every case, it makes its check
// pass, loses none that passed, and makes none worse that fails, so that no mend undoes
// another. What holds only together with a change of a second input is offered with it.
type mender struct {
	ctx     context.Context
	v       *Verdict
	gates   []criterion
	against []deviation // the corner of each
	keys    []string    // of those
	options Options
	known   sync.Map // verdicts on rockets with mends made, by mendedKey: see once
	flights sync.Map // of such rockets, by flightKey
	corners sync.Map // what the gates of a corner come to in it, by flightKey
	other   *Verdict // on the drive that does not fly; nil without one
}

// mending is the work on one check. Its flights of one search after another are in the same memory.
type mending struct {
	*mender
	craft study.Craft
	ups   [results.Cases]sim.WayUp // of the present search, in each case
}

// reads gives what a flight in a corner comes to for all gates of which it is the corner; nil where there is none.
func (m *mender) reads(k flightKey, fly func() (*sim.Flight, error)) ([]Value, error) {
	fl, err := fly()
	if fl == nil {
		return nil, err
	}
	return valuesOf(m.gates, func(i int) Value {
		if m.gates[i].until < k.until || m.keys[i] != k.corner {
			return Value{}
		}
		return m.gates[i].look(fl)
	}), nil
}

// most bounds the mends of one check, and pairs how many that lose others are looked at for
// a second input.
const (
	most  = 3
	pairs = 2

	mostPairs = 6 // of inputs tried together for one check: each costs a search
)

func newMender(ctx context.Context, v *Verdict, gates []criterion, against []deviation, o Options) *mender {
	o = Options{Today: o.Today, Spreads: o.Spreads, Respread: o.Respread, Workers: o.Workers} // the rest is of the rocket without a mend
	m := &mender{ctx: ctx, v: v, gates: gates, against: against, options: o}
	for _, d := range against {
		m.keys = append(m.keys, d.key())
	}
	return m
}

// otherDrive is a rocket on the drive that does not fly, if it has one that can.
func otherDrive(r *rocket.Rocket) *rocket.Rocket {
	if r.Water == nil || r.Motor == nil {
		return nil
	}
	o := r.Clone()
	if o.Power = rocket.MotorPower; r.Power == rocket.MotorPower {
		o.Power = rocket.WaterPower
	}
	if o.Validate() != nil {
		return nil
	}
	return o
}

// depth is how much of a rocket with a mend made is looked at: each is dearer than the one before it, and flies only
// for what holds so far.
type depth int

const (
	plain  depth = iota // in calm air and on its day
	likely              // in the corners that are the worst without the mend, too
	full                // in its own worst corners
)

// judged is the verdict on a rocket; flown has what is known of it already.
func (m *mender) judged(r *rocket.Rocket, d depth, flown Options) (*Verdict, error) {
	o := m.options
	o.Day, o.Calm, o.Only, o.before = flown.Day, flown.Calm, flown.Only, flown.before
	if d == plain {
		o.Spreads = nil
	}
	if len(o.Spreads) > 0 {
		o.Spreads = m.spreads(r)
	}
	if d == likely {
		o.against = m.v.corner(o.Spreads)
	}
	v, err := Judge(m.ctx, r, o)
	if err != nil {
		return nil, err
	}
	return &v, nil
}

// spreads are those of a rocket with mends made, or on its other drive.
func (m *mender) spreads(r *rocket.Rocket) []study.Spread {
	if m.options.Respread != nil {
		return m.options.Respread(r)
	}
	return slices.DeleteFunc(slices.Clone(m.options.Spreads), func(s study.Spread) bool { return s.Input.Drive != "" && s.Input.Drive != r.Power })
}

// mend finds the mends of every check that fails.
func (m *mender) mend() error {
	failing := []int{}
	for i := range m.v.Checks {
		if c := &m.v.Checks[i]; c.Fails() && !m.gates[i].warns {
			failing = append(failing, i)
		}
	}
	if len(failing) == 0 {
		return nil
	}
	if r := otherDrive(m.v.Rocket); r != nil {
		var err error
		if m.other, err = m.judged(r, full, Options{}); err != nil && m.ctx.Err() != nil {
			return err
		}
	}
	found, err := study.Collect(m.ctx, len(failing), study.Options{Workers: m.options.Workers}, func(_ context.Context, n int) ([]Remedy, error) {
		return (&mending{mender: m}).of(failing[n])
	})
	for n, remedies := range found {
		c := &m.v.Checks[failing[n]]
		c.Remedies = append(remedies, c.Remedies...)
	}
	return err
}

// of finds the mends of one check.
func (m *mending) of(i int) ([]Remedy, error) {
	g, c := &m.gates[i], &m.v.Checks[i]
	var out []Remedy
	var blocked []attempt
	nothing := Remedy{Kind: NothingFound, From: math.NaN(), Why: g.change}
	miss := math.Inf(1)
	found := false
	for _, l := range g.levers {
		if len(out) == most || l.instead && found {
			continue
		}
		p, ok := l.ready(m.v.Rocket)
		if !ok {
			continue
		}
		s := m.search(m.v.Rocket, change{}, i, &p)
		passing, any, err := s.nearest()
		if err != nil {
			return out, err
		}
		if found = any; !found && s.miss < miss {
			miss = s.miss
			nothing.Input, nothing.From, nothing.To = p.in, s.comes, s.closest
		}
		a, err := m.holds(m.v.Rocket, change{}, &p, passing, c.Key)
		switch {
		case err != nil:
			return out, err
		case a == nil:
		case len(a.loses) == 0:
			out = append(out, a.remedy)
		default:
			blocked = append(blocked, *a)
		}
	}
	slices.SortStableFunc(blocked, func(a, b attempt) int { return len(a.loses) - len(b.loses) })
	for _, a := range blocked[:min(len(blocked), pairs)] {
		if len(out) == most {
			break
		}
		pair, err := m.pair(a, c.Key)
		if err != nil {
			return out, err
		}
		if pair != nil {
			out = append(out, *pair)
		}
	}
	if len(out) == 0 && len(blocked) == 0 {
		if pair, err := m.together(i); err != nil {
			return out, err
		} else if pair != nil {
			out = append(out, *pair)
		}
	}
	if len(out) == 0 && len(c.Remedies) == 0 {
		if len(blocked) > 0 {
			a := &blocked[0]
			nothing.Input, nothing.Rule, nothing.From, nothing.To = a.remedy.Input, a.remedy.Rule, math.NaN(), a.remedy.To
			nothing.Breaks, nothing.Worse = a.loses, a.worse
		}
		out = append(out, nothing)
	}
	return out, nil
}

// search is the search along a lever for one check, from a rocket that may have one mend made
// already.
func (m *mending) search(base *rocket.Rocket, made change, i int, p *pull) *search {
	for c := range m.ups {
		m.ups[c].Clear()
	}
	s := &search{m: m, base: base, made: made, gate: &m.gates[i], pull: p, worst: m.v.Checks[i].Case, corner: m.against[i], miss: math.Inf(1)}
	for k := range results.Cases {
		if m.v.Checks[i].Values[k].Flown {
			s.flown = append(s.flown, k)
		}
	}
	return s
}
