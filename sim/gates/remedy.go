package gates

import (
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// RemedyKind says what a remedy asks for.
type RemedyKind int

// The kinds of mend. The first five were found by flights and pass in every case that
// was looked at.
const (
	SetInput      RemedyKind = iota // Input to To
	OtherDelay                      // Input to To, which is not among the delays that can be had
	Rebuild                         // Input to To, which makes another chamber
	TiltIntoWind                    // the rail's tilt to To, its heading to where the wind comes from
	AddNoseWeight                   // To kg, half-way along the nose
	StrongerMount                   // a recovery mount that holds To N
	ProveTo                         // a hydrostatic proof to To Pa
	ProveFor                        // the chamber can be proved for To Pa at most
	ProveAgain                      // the proof is too old
	CutVent                         // a hole of To m across
	LeaveTheRail                    // before there is anything to judge
	GiveCanopy                      // a [[canopy]]
	Give                            // Keys, without which it cannot be judged
	GiveChamber                     // [chamber]
	GiveProof                       // a proof on record
	GiveBurst                       // a measured burst
	CheckBurst                      // whether the chamber that burst was made alike
	GiveDate                        // the day of the proof
	NothingFound                    // none of the inputs tried does it alone
)

// Remedy is something that would make a check pass.
type Remedy struct {
	Kind     RemedyKind
	Input    rocketfile.Input // of SetInput, OtherDelay, Rebuild and TiltIntoWind
	Rule     string           // of SetInput of an opening rule: all of it, as a file has it
	From, To float64          // today's value and the nearest found that passes, SI
	Keys     []string         // of Give: dotted names, as [Judge] misses them
	Why      string           // of Give: a word on it, without a full stop; may be empty
	Breaks   []string         // checks that pass today and would not, on the day of the file
}

// give is what a criterion lacks where keys of the file are missing: it is then not judged,
// which is no pass. A word on why may be added to it.
func give(keys ...string) *Remedy { return &Remedy{Kind: Give, Keys: keys} }

// because adds why the keys matter.
func (m *Remedy) because(why string) *Remedy { m.Why = why; return m }

// finder looks for values that pass.
type finder struct {
	ctx     context.Context
	base    *rocket.Rocket
	gates   []criterion
	passing []bool // of each gate, on the day of the file
	options study.Options
}

// most bounds the mends of one check, and tolerable what one of several may break.
const (
	most      = 3
	tolerable = 2
)

// find looks for what makes one gate pass in every case that was looked at.
func (m *finder) find(g *criterion, flown []results.Case, worst results.Case, corner deviation) ([]Remedy, error) {
	var out []Remedy
	found := false
	for _, l := range g.levers {
		p, ok := l.ready(m.base)
		if !ok || l.instead && found {
			continue
		}
		s := search{m, g, &p, flown, worst, corner}
		var x float64
		var err error
		if x, found, err = s.nearest(); err != nil {
			return out, err
		}
		if !found {
			continue
		}
		mend := Remedy{Kind: l.kind, Input: p.in, From: p.now, To: x}
		mended := p.set(m.base, x)
		if p.in.Kind == rocketfile.RuleKind {
			mend.Rule = p.in.Text(mended)
		}
		if mend.Breaks, err = m.breaks(mended); err != nil {
			return out, err
		}
		if l.kind == Rebuild { // that it is to be proved goes without saying
			mend.Breaks = slices.DeleteFunc(mend.Breaks, func(name string) bool { return name == LimitFor(m.base, LimitProof).Name })
		}
		out = append(out, mend)
	}
	// What breaks least comes first; what breaks more than it mends is no help beside that.
	slices.SortStableFunc(out, func(a, b Remedy) int { return len(a.Breaks) - len(b.Breaks) })
	for n := len(out); n > 1 && len(out[n-1].Breaks) > tolerable; n-- {
		out = out[:n-1]
	}
	return out[:min(len(out), most)], nil
}

// breaks names the checks that pass today and would not with a mend made.
func (m *finder) breaks(r *rocket.Rocket) ([]string, error) {
	flights, err := study.Fleet(m.ctx, []*rocket.Rocket{r}, m.options)
	if err != nil || flights[0] == nil {
		return nil, err
	}
	var names []string
	for i := range m.gates {
		g := &m.gates[i]
		if !m.passing[i] || g.lacks != nil {
			continue
		}
		if !g.passes(flights[0]) {
			names = append(names, g.limit.Name)
		}
	}
	return names, nil
}

// passes tells whether a flight is within the gate's limit.
func (g *criterion) passes(fl *sim.Flight) bool { return g.warns || g.limit.badness(g.look(fl)) <= 0 }

func (g *criterion) look(fl *sim.Flight) Value {
	if fl == nil {
		return Value{Flown: true}
	}
	v, happened := g.value(fl)
	return Value{Flown: true, Known: happened && !math.IsNaN(v), V: v}
}

// search is the search for the nearest value of one lever that passes one gate.
type search struct {
	*finder
	gate   *criterion
	pull   *pull
	flown  []results.Case
	worst  results.Case
	corner deviation
}

// Settings of the search: places looked at towards an end, and steps tried beyond the
// first that passes in the worst case.
const (
	scans   = 10
	further = 4
)

// nearest is the value nearest to today's that passes, on the lever's steps.
func (s *search) nearest() (x float64, found bool, err error) {
	best := math.NaN()
	look, ends := s.towards, s.pull.reach
	if s.pull.values != nil { // the search is among these
		look, ends = s.passesAll, s.pull.values
	}
	for _, end := range ends {
		x, ok, err := look(end)
		if err != nil {
			return 0, false, err
		}
		if ok && !(math.Abs(x-s.pull.now) >= math.Abs(best-s.pull.now)) {
			best = x
		}
	}
	return best, !math.IsNaN(best), nil
}

// towards looks on the lever's steps from today's value to an end: a scan, finer near
// today's value, finds a step that passes in the worst case, halving the first such one;
// from there on it must pass in every case.
func (s *search) towards(end float64) (x float64, found bool, err error) {
	steps := s.pull.steps(end)
	out, in := -1, -1
	try := func(k int) error {
		ok, err := s.try(steps.at(k), s.worst)
		if ok {
			in = k
		} else {
			out = k
		}
		return err
	}
	for i := 0; i <= scans && in < 0; i++ {
		if k := (steps.n - 1) * i * i / (scans * scans); k > out {
			if err := try(k); err != nil {
				return 0, false, err
			}
		}
	}
	if in < 0 {
		return 0, false, nil
	}
	for in-out > 1 {
		if err := try((in + out) / 2); err != nil {
			return 0, false, err
		}
	}
	for k := in; k < min(in+further, steps.n); k++ {
		if x, ok, err := s.passesAll(steps.at(k)); ok || err != nil {
			return x, ok, err
		}
	}
	return 0, false, nil
}

// passesAll tells whether a value passes in every case, and gives it back.
func (s *search) passesAll(x float64) (float64, bool, error) {
	for _, c := range s.flown {
		if ok, err := s.try(x, c); !ok || err != nil {
			return x, false, err
		}
	}
	return x, true, nil
}

// try tells whether a value passes in a case.
func (s *search) try(x float64, c results.Case) (bool, error) {
	r := s.pull.set(s.base, x)
	if r == nil {
		return false, nil
	}
	if r = s.corner.rocket(r, c); r == nil {
		return false, nil
	}
	if s.gate.still {
		return r.Validate() == nil && s.gate.passes(&sim.Flight{Rocket: r}), nil
	}
	flights, err := study.Fleet(s.ctx, []*rocket.Rocket{r}, s.options)
	if err != nil || flights[0] == nil {
		return false, err
	}
	return s.gate.passes(flights[0]), nil
}
