package plan

import (
	"cmp"
	"context"
	"maps"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/rocket"
)

// WindLimit is up to which wind near the ground every check passes in every case.
type WindLimit struct {
	Passes bool    // there is such a wind
	Most   float64 // the strongest up to which none fails, m/s, rounded down to a tenth; 0 is calm air
	Least  float64 // the lightest from which none does; 0 mostly

	// Where none passes: the checks that fail in the best of the winds tried; or else those that are
	// not judged in it, at any wind.
	Fails, Unjudged []string
	// Where one passes: the checks that fail in a little more.
	Above []string
}

// Holds tells whether a wind, m/s, is one in which none fails.
func (w *WindLimit) Holds(wind float64) bool {
	const slack = 1e-9 // of tenths that are no binary fractions
	return w.Passes && wind >= w.Least-slack && wind <= w.Most+slack
}

// windSteps is how many winds are tried up to the limit before the search closes in.
const windSteps = 6

// tenth is to what the wind is found, as what to wait for is, m/s.
const tenth = gates.WindStep

// MostWind finds it for a rocket, by its verdicts: winds of growing strength up to the limit are
// tried, with all layers scaled alike and the gust as it is, and between the last that passes and the
// first that does not it is halved. Winds beyond one that fails do not count, even if they
// pass again. What is told passes in its own worst corners; on the way to it the corners of a wind near by stand for
// them. A rocket that is not valid is a fault.List.
func MostWind(ctx context.Context, r *rocket.Rocket, o Options) (WindLimit, error) {
	s := windSearch{ctx: ctx, base: r, options: o, plain: map[int]*gates.Verdict{}, near: map[int]*gates.Verdict{}, full: map[int]*gates.Verdict{}}
	if v := o.Judged; v != nil && v.Cornered {
		s.like, s.calm = v, v.Calm
	}
	return s.find(int(math.Floor(gates.LimitFor(r, gates.LimitWind).Max/tenth + 1e-9)))
}

// windSearch keeps the verdicts on each wind that was tried, in tenths: without corners, in the corners of another wind, in
// its own.
type windSearch struct {
	ctx               context.Context
	base              *rocket.Rocket
	options           Options
	plain, near, full map[int]*gates.Verdict
	like              *gates.Verdict // whose corners fly
	calm              *sim.Flight    // the same for all winds
}

// judge is the verdict in a wind.
func (s *windSearch) judge(tenths int, o gates.Options) (*gates.Verdict, error) {
	r := s.blown(tenths)
	o.Today, o.Workers, o.Calm = s.options.Today, s.options.Workers, s.calm
	if v := s.plain[tenths]; v != nil {
		o.Day = v.Day
	}
	if o.Spreads != nil && s.options.Respread != nil {
		o.Spreads = s.options.Respread(r)
	}
	v, err := gates.Judge(s.ctx, r, o)
	if o.Only == nil {
		s.calm = v.Calm
	}
	return &v, err
}

func (s *windSearch) blown(tenths int) *rocket.Rocket {
	r := s.base.Clone()
	if tenths == 0 {
		r.Becalm()
	}
	blow(r, float64(tenths)*tenth)
	return r
}

// own is the verdict in a wind with its own worst corners, which fly for the winds around it from then on.
func (s *windSearch) own(tenths int) (*gates.Verdict, error) {
	if v := s.full[tenths]; v != nil {
		return v, nil
	}
	v, err := s.judge(tenths, gates.Options{Spreads: s.options.Spreads})
	if err != nil {
		return nil, err
	}
	if s.full[tenths] = v; v.Cornered {
		s.like = v
	}
	return v, nil
}

// at is the fullest verdict there is on a wind, with corners.
func (s *windSearch) at(tenths int) (*gates.Verdict, error) {
	if v := s.full[tenths]; v != nil {
		return v, nil
	}
	if v := s.near[tenths]; v != nil {
		return v, nil
	}
	if s.like == nil {
		return s.own(tenths)
	}
	v, err := s.judge(tenths, gates.Options{Spreads: s.options.Spreads, Like: s.like})
	if err != nil {
		return nil, err
	}
	s.near[tenths] = v
	return v, nil
}

// tried is the verdict by which a wind passes or fails: corners fly only where none fails without them.
func (s *windSearch) tried(tenths int) (*gates.Verdict, error) {
	if v := s.full[tenths]; v != nil {
		return v, nil
	}
	if s.plain[tenths] == nil {
		v, err := s.judge(tenths, gates.Options{})
		if err != nil {
			return nil, err
		}
		s.plain[tenths] = v
	}
	if v := s.plain[tenths]; v.Failed() > 0 {
		return v, nil
	}
	return s.at(tenths)
}

func (s *windSearch) find(top int) (WindLimit, error) {
	first, last, under, over := -1, -1, -1, -1 // tenths: of those that pass, and the ones that do not around them
	for i := 0; i <= windSteps && over < 0; i++ {
		at := top * i / windSteps
		v, err := s.tried(at)
		if err == nil && i == 0 && !v.Pass() && v.Failed() == 0 {
			v, err = s.own(at)
		}
		switch {
		case err != nil:
			return WindLimit{}, err
		case v.Pass() && first < 0:
			first, last = at, at
		case v.Pass():
			last = at
		case first >= 0:
			over = at
		case i == 0 && v.Failed() == 0:
			return WindLimit{Unjudged: names(v, (*gates.Check).Open)}, nil
		default:
			under = at
		}
	}
	if first < 0 {
		return s.none()
	}
	if over < 0 {
		over = top + 1
	}
	most, above, err := s.border(last, over)
	least := first
	if err == nil && above != nil && first > 0 {
		var below *gates.Verdict
		if least, below, err = s.border(first, under); below == nil {
			above = nil
		}
	}
	switch {
	case err != nil:
		return WindLimit{}, err
	case above == nil: // one of the winds tried fails in its own corners after all
		return s.find(top)
	}
	return WindLimit{Passes: true, Least: float64(least) * tenth, Most: float64(most) * tenth, Above: names(above, (*gates.Check).Fails)}, nil
}

// border closes in on where a wind that passes meets one that does not, and gives that which passes, in its own worst
// corners, and the verdict on the other. None where the first does not pass in its own.
func (s *windSearch) border(in, out int) (int, *gates.Verdict, error) {
	for far := out; ; {
		at, beyond, err := s.between(in, out)
		if err != nil {
			return in, nil, err
		}
		v, err := s.own(at)
		switch {
		case err != nil:
			return in, nil, err
		case !v.Pass() && at == in:
			return in, nil, nil
		case !v.Pass():
			out = at
			continue
		}
		if v, err = s.tried(beyond); err == nil && v.Pass() {
			v, err = s.own(beyond)
		}
		if err != nil || !v.Pass() {
			return at, v, err
		}
		in, out = beyond, far
	}
}

// between halves the winds between one that passes and one that does not, by the checks that fail in this.
func (s *windSearch) between(in, out int) (int, int, error) {
	var fails []string
	for in-out > 1 || out-in > 1 {
		if fails == nil {
			v, err := s.tried(out)
			if err != nil {
				return in, out, err
			}
			fails = failing(v)
		}
		mid := (in + out) / 2
		v, err := s.judge(mid, gates.Options{Spreads: s.options.Spreads, Like: s.like, Only: fails})
		switch {
		case err != nil:
			return in, out, err
		case v.Failed() == 0:
			in = mid
		default:
			out, fails = mid, failing(v)
		}
	}
	return in, out, nil
}

// failing are the keys of the checks that fail.
func failing(v *gates.Verdict) []string {
	var keys []string
	for i := range v.Checks {
		if v.Checks[i].Fails() {
			keys = append(keys, v.Checks[i].Key)
		}
	}
	return keys
}

// none is what stands in the way in the wind in which the fewest checks fail, the lightest of
// such. Those that fail without corners fail with them: a wind that has more of them than the best has in all is none.
func (s *windSearch) none() (WindLimit, error) {
	tried := slices.SortedFunc(maps.Keys(s.plain), func(a, b int) int {
		return cmp.Or(cmp.Compare(s.plain[a].Failed(), s.plain[b].Failed()), cmp.Compare(a, b))
	})
	var best *gates.Verdict
	at := 0
	for _, tenths := range tried {
		if best != nil && s.plain[tenths].Failed() > best.Failed() {
			break
		}
		v, err := s.at(tenths)
		if err != nil {
			return WindLimit{}, err
		}
		if best == nil || v.Failed() < best.Failed() || v.Failed() == best.Failed() && tenths < at {
			best, at = v, tenths
		}
	}
	best, err := s.own(at)
	if err != nil {
		return WindLimit{}, err
	}
	return WindLimit{Fails: names(best, (*gates.Check).Fails), Unjudged: names(best, (*gates.Check).Open)}, nil
}

// names are those of some checks of a verdict.
func names(v *gates.Verdict, of func(*gates.Check) bool) []string {
	var out []string
	for i := range v.Checks {
		if of(&v.Checks[i]) {
			out = append(out, v.Checks[i].Name)
		}
	}
	return out
}
