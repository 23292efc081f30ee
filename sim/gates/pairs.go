package gates

import (
	"slices"

	"ullage/sim/rocket"
)

// pair mends with a second input what a first one would lose.
func (m *mending) pair(a attempt, key string) (*Remedy, error) {
	i := slices.IndexFunc(m.gates, func(g criterion) bool { return g.key == a.first })
	if i < 0 {
		return nil, nil
	}
	for _, l := range m.gates[i].levers {
		p, ok := another(l, a.rocket, a.remedy.Input.Name)
		if !ok {
			continue
		}
		b, err := m.beside(a.rocket, a.remedy.change(), i, &p, key)
		if err != nil {
			return nil, err
		}
		if b != nil {
			first := a.remedy
			first.And = b
			return &first, nil
		}
	}
	return nil, nil
}

// together mends a check that no input within reach mends with two: one goes half its reach,
// then all of it, and the other as far as it takes.
func (m *mending) together(i int) (*Remedy, error) {
	g, key, tried := &m.gates[i], m.v.Checks[i].Key, 0
	for _, l := range g.levers {
		first, ok := another(l, m.v.Rocket, "")
		if !ok || first.values != nil {
			continue
		}
		for _, to := range first.halves() {
			half := first.set(m.v.Rocket, to)
			if half == nil || half.Validate() != nil {
				continue
			}
			for _, l := range g.levers {
				second, ok := another(l, half, first.in.Name)
				if !ok || tried == mostPairs {
					continue
				}
				tried++
				made := first.remedy(to, half)
				b, err := m.beside(half, made.change(), i, &second, key)
				if err != nil {
					return nil, err
				}
				if b != nil {
					made.And = b
					return &made, nil
				}
			}
		}
	}
	return nil, nil
}

// halves are the values half way to each end of what is reached for, and at the end.
func (p *pull) halves() []float64 {
	var out []float64
	for _, end := range p.reach {
		steps := p.steps(end)
		for _, k := range []int{(steps.n - 1) / 2, steps.n - 1} {
			if k >= 0 {
				out = append(out, steps.at(k))
			}
		}
	}
	return out
}

// another is a lever of a rocket, made ready, on an input that is not the first: what the day
// brings is for waiting, not for a pair.
func another(l lever, r *rocket.Rocket, first string) (pull, bool) {
	p, ok := l.ready(r)
	return p, ok && p.in.Name != first && !p.day
}

// beside is what a second input does on a rocket that has one mend already, searched along a
// criterion: the check of a key passes and nothing is lost. Nil where there is no such value.
func (m *mending) beside(base *rocket.Rocket, made change, i int, p *pull, key string) (*Remedy, error) {
	passing, _, err := m.search(base, made, i, p).nearest()
	if err != nil {
		return nil, err
	}
	b, err := m.holds(base, made, p, passing, key)
	if err != nil || b == nil || len(b.loses) > 0 {
		return nil, err
	}
	return &b.remedy, nil
}
