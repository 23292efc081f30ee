package gates

import (
	"math"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// attempt is a value that passes its check, and what else becomes of it.
type attempt struct {
	remedy Remedy
	rocket *rocket.Rocket
	on     change   // what was made before it
	loses  []string // names of checks that it would lose or make worse
	worse  []string // of them those that fail anyway
	first  string   // key of the first of them on the drive that flies; empty on the other
}

// remedy is the mend that sets what is pulled at to a value, which makes a rocket.
func (p *pull) remedy(to float64, makes *rocket.Rocket) Remedy {
	r := Remedy{Kind: p.kind, Input: p.in, From: p.now, To: to}
	if p.in.Kind == rocketfile.RuleKind {
		r.Rule = p.in.Text(makes)
	}
	return r
}

// holds is the first of the values that passes the check once all is flown again, and what
// it loses: nothing, if any of them does. Nil when none passes.
func (m *mender) holds(base *rocket.Rocket, made change, p *pull, passing values, key string) (*attempt, error) {
	var best *attempt
	for {
		x, ok, err := passing()
		if err != nil {
			return nil, err
		}
		if !ok {
			return best, nil
		}
		r := p.set(base, x)
		if r == nil {
			continue
		}
		a := attempt{rocket: r, on: made, remedy: p.remedy(x, r)}
		passes := false
		for d := plain; d <= full; d++ {
			if d > plain && len(m.options.Spreads) == 0 {
				break
			}
			if passes, err = m.again(&a, key, d); err != nil {
				return nil, err
			}
			if !passes || len(a.loses) > 0 {
				break
			}
		}
		if !passes {
			continue
		}
		if len(a.loses) == 0 {
			return &a, nil
		}
		if best == nil || len(a.loses) < len(best.loses) {
			best = &a
		}
		if p.values == nil { // farther on it loses no less
			return best, nil
		}
	}
}

// again judges what a mend makes of the rocket, on both drives, and tells whether its check
// passes. What it loses on its own drive is enough to know: then the other does not fly.
func (m *mender) again(a *attempt, key string, d depth) (passes bool, err error) {
	v, err := m.mended(a, a.rocket, d)
	if v == nil {
		return false, err // of one that is not valid there is no more to say
	}
	for i := range v.Checks {
		passes = passes || v.Checks[i].Key == key && v.Checks[i].Pass
	}
	if !passes {
		return false, nil
	}
	a.loses, a.worse, a.first = nil, nil, ""
	for _, k := range m.v.setBack(v, a.remedy.costs) {
		was := &m.v.Checks[k]
		a.set(was, was.Name)
		if a.first == "" {
			a.first = was.Key
		}
	}
	if m.other == nil || len(a.loses) > 0 || d == likely {
		return true, nil
	}
	r := a.rocket.Clone()
	r.Power = m.other.Power
	if a.on == (change{}) && a.remedy.Input.Drive == m.v.Power { // it flies there as it did
		v, err = m.judged(r, plain, Options{Day: on(r, m.other.Day), Calm: on(r, m.other.Calm)})
	} else {
		v, err = m.mended(a, r, d)
	}
	if v == nil || err != nil {
		return false, err
	}
	for _, k := range m.other.setBack(v, a.remedy.costs) {
		was := &m.other.Checks[k]
		a.set(was, was.Name+" on "+string(m.other.Power))
	}
	return true, nil
}

// set notes a check that the attempt sets back.
func (a *attempt) set(was *Check, name string) {
	a.loses = append(a.loses, name)
	if was.Fails() {
		a.worse = append(a.worse, name)
	}
}

// on is a flight as one of another rocket that flies alike.
func on(r *rocket.Rocket, fl *sim.Flight) *sim.Flight {
	is := *fl
	is.Rocket = r
	return &is
}

// mendedKey tells verdicts on rockets with mends made apart.
type mendedKey struct {
	power         rocket.Power
	first, second change
	looked        depth
}

// mended is the verdict on a rocket with a mend made, which several checks may share; nil of
// one that is not valid.
func (m *mender) mended(a *attempt, r *rocket.Rocket, d depth) (*Verdict, error) {
	key := mendedKey{r.Power, a.remedy.change(), change{}, d}
	if a.on != (change{}) {
		key.first, key.second = a.on, key.first
	}
	return once(&m.known, key, func() (*Verdict, error) { return m.judgedAs(key, r) })
}

// judgedAs judges a rocket by the flights that there are of it.
func (m *mender) judgedAs(key mendedKey, r *rocket.Rocket) (*Verdict, error) {
	var flights [results.Corner]*sim.Flight
	for c := range flights {
		c := results.Case(c)
		fl, err := m.flight(flightKey{power: r.Power, first: key.first, second: key.second, is: c},
			func() (*sim.Flight, error) { return untilDown.flown(m.ctx, deviation{}.rocket(r, c), sim.Options{}) })
		if fl == nil {
			return nil, err
		}
		flights[c] = fl
	}
	o := Options{Day: flights[results.Day], Calm: flights[results.Calm]}
	for before := key; before.looked > plain; {
		before.looked--
		if is, there := m.known.Load(before); there {
			if v, _ := is.(func() (*Verdict, error))(); v != nil {
				if o.before = v; waits(key.first.input) {
					o.Only = m.counting(v)
				}
				break
			}
		}
	}
	v, err := m.judged(r, key.looked, o)
	if err != nil {
		return nil, m.ctx.Err()
	}
	return v, nil
}

// counting are the keys of the checks that a mend which is waited for can fail by in more cases: such as pass so far, on the
// drive that does not fly before it too. What fails in some fails in all, and only what passes is set back.
func (m *mender) counting(v *Verdict) []string {
	keys := []string{}
	for i := range v.Checks {
		c := &v.Checks[i]
		if v.Power != m.v.Power {
			if was := m.other.check(c.Key); was != nil && !was.Pass {
				continue
			}
		}
		if c.Pass {
			keys = append(keys, c.Key)
		}
	}
	return keys
}

// setBack are the checks of a verdict that count as set back by another. One that the other does not have is judged by
// nothing any more, and does not count.
func (v *Verdict) setBack(after *Verdict, counts func(was, is *Check) bool) []int {
	now := make(map[string]*Check, len(after.Checks))
	for i := range after.Checks {
		now[after.Checks[i].Key] = &after.Checks[i]
	}
	var out []int
	for i := range v.Checks {
		was := &v.Checks[i]
		if is, there := now[was.Key]; there && counts(was, is) {
			out = append(out, i)
		}
	}
	return out
}

// costs tells that a mend sets a check back: it is lost or made worse. A chamber built anew is to be proved anew: that
// goes without saying. Waiting for a calmer day sets back only what passes: the rest has to be mended for calm air anyway,
// in which each mend was flown.
func (m *Remedy) costs(was, is *Check) bool {
	if m.Kind == Rebuild && was.About == Chamber {
		return false
	}
	return lost(was, is) || !m.Waits() && was.Fails() && is.worse(was)
}

// worse tells that a check that fails does so by more than before.
func (c *Check) worse(before *Check) bool {
	is, was := c.Limit.badness(Value{true, !math.IsNaN(c.Value), c.Value}), before.Limit.badness(Value{true, !math.IsNaN(before.Value), before.Value})
	const slack = 1e-3 // of the limit, which nobody sees
	scale := math.Abs(before.Limit.Max)
	if math.IsInf(scale, 0) {
		scale = math.Abs(before.Limit.Min)
	}
	return is > 0 && is > was+slack*scale
}
