package gates

import (
	"math"
	"slices"

	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// deviation is every uncertain input off by one standard deviation or not, one sign each.
type deviation struct {
	spreads []study.Spread
	signs   []int8
}

// rocket is the rocket of a case; nil when it cannot be made. It may be the base itself.
func (d deviation) rocket(base *rocket.Rocket, c results.Case) *rocket.Rocket {
	switch c {
	case results.Calm:
		r := *base // only values are changed
		r.Becalm()
		return &r
	case results.Corner:
		return d.off(base)
	}
	return base
}

// off is the rocket with the deviations made; nil when it cannot be made.
func (d deviation) off(base *rocket.Rocket) *rocket.Rocket {
	if r := new(rocket.Rocket); d.onto(base, r) {
		return r
	}
	return nil
}

// onto makes a rocket the base with the deviations made. Not ok when it cannot be made.
func (d deviation) onto(base, r *rocket.Rocket) (ok bool) {
	base.CopyTo(r)
	return d.turn(r)
}

// turn makes the deviations on a rocket itself; what would leave an input's range stays at
// its end. Not ok when it cannot be made.
func (d deviation) turn(r *rocket.Rocket) (ok bool) {
	for i, s := range d.spreads {
		if d.signs[i] == 0 {
			continue
		}
		// The rocket may have lost the input's part, or given it another name.
		v, given := s.Input.Get(r)
		if !given && v == 0 {
			continue
		}
		v += float64(d.signs[i]) * s.SD
		v = math.Min(math.Max(v, s.Input.Min), s.Input.Max)
		if s.Input.Set(r, v) != nil {
			return false
		}
	}
	return true
}

// slopes are what criteria come to with one input off, up and down.
type slopes struct {
	spreads  []study.Spread
	up, down [][]Value // an input each, of every criterion
}

// single is the deviation of one input alone.
func single(spreads []study.Spread, i int, sign int8) deviation {
	d := deviation{spreads, make([]int8, len(spreads))}
	d.signs[i] = sign
	return d
}

// against is the deviation of each input that goes against a criterion, and the standard
// deviation of its number by the slopes.
func (s *slopes) against(g *criterion, day Value) (deviation, float64) {
	d := deviation{s.spreads, make([]int8, len(s.spreads))}
	own := g.limit.badness(day)
	sum := 0.0
	for i := range s.spreads {
		up, down := s.up[i][g.number], s.down[i][g.number]
		if up.Known && down.Known {
			half := (up.V - down.V) / 2
			sum += half * half
		}
		b, c := g.limit.badness(up), g.limit.badness(down)
		switch {
		case math.Max(b, c) <= own: // off either way it is better, or no different
		case b >= c:
			d.signs[i] = 1
		default:
			d.signs[i] = -1
		}
	}
	return d, math.Sqrt(sum)
}

// key tells deviations apart.
func (d deviation) key() string {
	b := make([]byte, len(d.signs))
	for i, s := range d.signs {
		b[i] = byte(s + 1)
	}
	return string(b)
}

// corner gives the corner of each check of a verdict, of the spreads of another rocket: none of a check that it has not.
func (v *Verdict) corner(spreads []study.Spread) func(key string) deviation {
	return func(key string) deviation {
		d := deviation{spreads, make([]int8, len(spreads))}
		was := v.against[key]
		for k, s := range was.spreads {
			if n := slices.IndexFunc(spreads, func(is study.Spread) bool { return is.Input.Name == s.Input.Name }); n >= 0 {
				d.signs[n] = was.signs[k]
			}
		}
		return d
	}
}
