package gates

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync"

	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
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
	options Options
	known   sync.Map // verdicts on rockets with a mend made, by what it is
	other   *Verdict // on the drive that does not fly; nil without one
}

// most bounds the mends of one check, and pairs how many that lose others are looked at for
// a second input.
const (
	most  = 3
	pairs = 2

	mostPairs = 6 // of inputs tried together for one check: each costs a search
)

func newMender(ctx context.Context, v *Verdict, gates []criterion, against []deviation, o Options) *mender {
	o.Remedies, o.Day = false, nil
	return &mender{ctx: ctx, v: v, gates: gates, against: against, options: o}
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

// judged is the verdict on a rocket in all cases, or without corners.
func (m *mender) judged(r *rocket.Rocket, corners bool) (*Verdict, error) {
	o := m.options
	o.Workers = 1
	switch {
	case !corners:
		o.Spreads = nil
	case len(o.Spreads) == 0:
	case o.Respread != nil:
		o.Spreads = o.Respread(r)
	default:
		o.Spreads = slices.DeleteFunc(slices.Clone(o.Spreads), func(s study.Spread) bool { return s.Input.Drive != "" && s.Input.Drive != r.Power })
	}
	v, err := Judge(m.ctx, r, o)
	if err != nil {
		return nil, err
	}
	return &v, nil
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
		if m.other, err = m.judged(r, true); err != nil && m.ctx.Err() != nil {
			return err
		}
	}
	found := make([][]Remedy, len(failing))
	err := m.each(len(failing), func(n int) (err error) {
		found[n], err = m.of(failing[n])
		return err
	})
	for n, i := range failing {
		c := &m.v.Checks[i]
		c.Remedies = append(found[n], c.Remedies...)
	}
	return err
}

// each does jobs on as many goroutines as there are workers.
func (m *mender) each(n int, do func(i int) error) error {
	workers := m.options.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var wait sync.WaitGroup
	errs := make([]error, n)
	next := make(chan int, n)
	for i := range n {
		next <- i
	}
	close(next)
	for range min(workers, n) {
		wait.Go(func() {
			for i := range next {
				if m.ctx.Err() == nil {
					errs[i] = do(i)
				}
			}
		})
	}
	wait.Wait()
	if err := m.ctx.Err(); err != nil {
		return err
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// attempt is a value that passes its check, and what else becomes of it.
type attempt struct {
	remedy Remedy
	rocket *rocket.Rocket
	second bool     // it stands on another
	loses  []string // names of checks that it would lose or make worse
	first  string   // key of the first of them on the drive that flies; empty on the other
}

// of finds the mends of one check.
func (m *mender) of(i int) ([]Remedy, error) {
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
		s := m.search(m.v.Rocket, i, &p)
		values, err := s.nearest()
		if err != nil {
			return out, err
		}
		found = len(values) > 0
		if !found && s.miss < miss {
			miss = s.miss
			nothing.Input, nothing.From, nothing.To = p.in, s.comes, s.closest
		}
		a, err := m.holds(m.v.Rocket, &p, values, c.Key)
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
			nothing.Breaks = a.loses
		}
		out = append(out, nothing)
	}
	return out, nil
}

// search is the search along a lever for one check, from a rocket that may have one mend
// already.
func (m *mender) search(base *rocket.Rocket, i int, p *pull) *search {
	s := &search{ctx: m.ctx, base: base, gate: &m.gates[i], pull: p, worst: m.v.Checks[i].Case, corner: m.against[i], miss: math.Inf(1)}
	for k := range results.Cases {
		if m.v.Checks[i].Values[k].Flown {
			s.flown = append(s.flown, k)
		}
	}
	return s
}

// holds is the first of the values that passes the check once all is flown again, and what
// it loses: nothing, if any of them does. Nil when none passes.
func (m *mender) holds(base *rocket.Rocket, p *pull, values []float64, key string) (*attempt, error) {
	var best *attempt
	for _, x := range values {
		r := p.set(base, x)
		if r == nil {
			continue
		}
		a := attempt{rocket: r, second: base != m.v.Rocket, remedy: Remedy{Kind: p.kind, Input: p.in, From: p.now, To: x}}
		if p.in.Kind == rocketfile.RuleKind {
			a.remedy.Rule = p.in.Text(r)
		}
		passes := false
		for _, corners := range []bool{false, true} { // the dearer only for what holds so far
			if corners && len(m.options.Spreads) == 0 {
				continue
			}
			var err error
			if passes, err = m.again(&a, key, corners); err != nil {
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
			break
		}
	}
	return best, nil
}

// again judges what a mend makes of the rocket, on both drives, and tells whether its check
// passes.
func (m *mender) again(a *attempt, key string, corners bool) (passes bool, err error) {
	v, err := m.mended(a, a.rocket, corners)
	if v == nil {
		return false, err // of one that is not valid there is no more to say
	}
	for i := range v.Checks {
		passes = passes || v.Checks[i].Key == key && v.Checks[i].Pass
	}
	if !passes {
		return false, nil
	}
	a.loses, a.first = nil, ""
	for _, k := range m.v.setBack(v, a.remedy.Kind == Rebuild) {
		if a.loses = append(a.loses, m.v.Checks[k].Name); a.first == "" {
			a.first = m.v.Checks[k].Key
		}
	}
	if m.other == nil {
		return true, nil
	}
	r := a.rocket.Clone()
	r.Power = m.other.Power
	if v, err = m.mended(a, r, corners); v == nil {
		return false, err
	}
	for _, k := range m.other.setBack(v, a.remedy.Kind == Rebuild) {
		a.loses = append(a.loses, m.other.Checks[k].Name+" on "+string(m.other.Power))
	}
	return true, nil
}

// mended is the verdict on a rocket with a mend made, which several checks may share; nil of
// one that is not valid.
func (m *mender) mended(a *attempt, r *rocket.Rocket, corners bool) (*Verdict, error) {
	type what struct {
		power   rocket.Power
		kind    RemedyKind
		input   string
		to      float64
		corners bool
	}
	key := what{r.Power, a.remedy.Kind, a.remedy.Input.Name, a.remedy.To, corners}
	if v, there := m.known.Load(key); there && !a.second {
		return v.(*Verdict), nil
	}
	v, err := m.judged(r, corners)
	if err != nil {
		return nil, m.ctx.Err()
	}
	if !a.second {
		m.known.Store(key, v)
	}
	return v, nil
}

// setBack are the checks that a verdict loses or makes worse. A chamber built anew is to be
// proved anew: that goes without saying.
func (v *Verdict) setBack(after *Verdict, rebuilt bool) []int {
	now := make(map[string]*Check, len(after.Checks))
	for i := range after.Checks {
		now[after.Checks[i].Key] = &after.Checks[i]
	}
	var out []int
	for i := range v.Checks {
		was := &v.Checks[i]
		is, there := now[was.Key]
		switch {
		case !there, rebuilt && was.About == Chamber:
		case was.Pass && !is.Pass, was.Fails() && is.worse(was):
			out = append(out, i)
		}
	}
	return out
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

// pair mends with a second input what a first one would lose.
func (m *mender) pair(a attempt, key string) (*Remedy, error) {
	i := slices.IndexFunc(m.gates, func(g criterion) bool { return g.key == a.first })
	if i < 0 {
		return nil, nil
	}
	for _, l := range m.gates[i].levers {
		p, ok := l.ready(a.rocket)
		if !ok || p.in.Name == a.remedy.Input.Name || p.in.Name == "wind.speed" {
			continue
		}
		values, err := m.search(a.rocket, i, &p).nearest()
		if err != nil {
			return nil, err
		}
		b, err := m.holds(a.rocket, &p, values, key)
		if err != nil {
			return nil, err
		}
		if b != nil && len(b.loses) == 0 {
			first := a.remedy
			first.And = &b.remedy
			return &first, nil
		}
	}
	return nil, nil
}

// together mends a check that no input within reach mends with two: one goes half its reach,
// then all of it, and the other as far as it takes.
func (m *mender) together(i int) (*Remedy, error) {
	g, key, tried := &m.gates[i], m.v.Checks[i].Key, 0
	for _, l := range g.levers {
		first, ok := l.ready(m.v.Rocket)
		if !ok || first.values != nil || first.in.Name == "wind.speed" {
			continue
		}
		for _, end := range first.reach {
			steps := first.steps(end)
			for _, k := range []int{(steps.n - 1) / 2, steps.n - 1} {
				if k < 0 {
					continue
				}
				half := first.set(m.v.Rocket, steps.at(k))
				if half == nil || half.Validate() != nil {
					continue
				}
				for _, second := range g.levers {
					p, ok := second.ready(half)
					if !ok || p.in.Name == first.in.Name || p.in.Name == "wind.speed" || tried == mostPairs {
						continue
					}
					tried++
					values, err := m.search(half, i, &p).nearest()
					if err != nil {
						return nil, err
					}
					b, err := m.holds(half, &p, values, key)
					if err != nil {
						return nil, err
					}
					if b != nil && len(b.loses) == 0 {
						a := Remedy{Kind: first.kind, Input: first.in, From: first.now, To: steps.at(k), And: &b.remedy}
						if first.in.Kind == rocketfile.RuleKind {
							a.Rule = first.in.Text(half)
						}
						return &a, nil
					}
				}
			}
		}
	}
	return nil, nil
}
