package plan

import (
	"cmp"
	"context"
	"maps"
	"math"
	"slices"

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
// pass again. A rocket that is not valid is a fault.List.
func MostWind(ctx context.Context, r *rocket.Rocket, o Options) (WindLimit, error) {
	s := windSearch{ctx: ctx, base: r, options: o, plain: map[int]*gates.Verdict{}, full: map[int]*gates.Verdict{}}
	return s.find(int(math.Floor(gates.LimitFor(r, gates.LimitWind).Max/tenth + 1e-9)))
}

// windSearch keeps the verdicts on each wind that was tried, in tenths: without corners, which is cheap, and with them.
type windSearch struct {
	ctx         context.Context
	base        *rocket.Rocket
	options     Options
	plain, full map[int]*gates.Verdict
}

// at is the verdict in a wind.
func (s *windSearch) at(tenths int) (*gates.Verdict, error) {
	if v := s.full[tenths]; v != nil {
		return v, nil
	}
	o := gates.Options{Today: s.options.Today, Spreads: s.options.Spreads, Workers: s.options.Workers}
	r := s.blown(tenths)
	if s.options.Respread != nil {
		o.Spreads = s.options.Respread(r)
	}
	if v := s.plain[tenths]; v != nil {
		o.Day = v.Day
	}
	return s.judge(r, tenths, o, s.full)
}

func (s *windSearch) judge(r *rocket.Rocket, tenths int, o gates.Options, known map[int]*gates.Verdict) (*gates.Verdict, error) {
	v, err := gates.Judge(s.ctx, r, o)
	if err != nil {
		return nil, err
	}
	known[tenths] = &v
	return &v, nil
}

func (s *windSearch) blown(tenths int) *rocket.Rocket {
	r := s.base.Clone()
	if tenths == 0 {
		r.Becalm()
	}
	blow(r, float64(tenths)*tenth)
	return r
}

// passes tells whether a wind passes: corners fly only where none fails without them.
func (s *windSearch) passes(tenths int) (bool, error) {
	if s.plain[tenths] == nil {
		v, err := s.judge(s.blown(tenths), tenths, gates.Options{Today: s.options.Today, Workers: s.options.Workers}, s.plain)
		if err != nil || v.Failed() > 0 {
			return false, err
		}
	} else if s.plain[tenths].Failed() > 0 {
		return false, nil
	}
	v, err := s.at(tenths)
	return err == nil && v.Pass(), err
}

func (s *windSearch) find(top int) (WindLimit, error) {
	first, last, over := -1, -1, -1 // tenths: of those that pass, and the one that does not behind them
	for i := 0; i <= windSteps && over < 0; i++ {
		at := top * i / windSteps
		ok, err := s.passes(at)
		switch {
		case err != nil:
			return WindLimit{}, err
		case ok && first < 0:
			first, last = at, at
		case ok:
			last = at
		case first >= 0:
			over = at
		case i == 0 && s.plain[0].Failed() == 0 && s.full[0].Failed() == 0:
			return WindLimit{Unjudged: names(s.full[0], (*gates.Check).Open)}, nil
		}
	}
	if first < 0 {
		return s.none()
	}
	out := WindLimit{Passes: true}
	if over < 0 {
		over = top + 1
	}
	var err error
	if last, over, err = s.between(last, over); err == nil && first > 0 {
		first, _, err = s.between(first, first-max(top/windSteps, 1))
	}
	if err != nil {
		return WindLimit{}, err
	}
	out.Least, out.Most = float64(first)*tenth, float64(last)*tenth
	v, err := s.at(over)
	if err != nil {
		return WindLimit{}, err
	}
	out.Above = names(v, (*gates.Check).Fails)
	return out, nil
}

// between closes in on where a wind that passes meets one that does not.
func (s *windSearch) between(in, out int) (int, int, error) {
	for in-out > 1 || out-in > 1 {
		mid := (in + out) / 2
		ok, err := s.passes(mid)
		if err != nil {
			return in, out, err
		}
		if ok {
			in = mid
		} else {
			out = mid
		}
	}
	return in, out, nil
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
