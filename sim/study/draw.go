package study

import (
	"math"
	"math/rand/v2"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// drawer draws rockets and flies them, all in the same memory. Each draw has a stream of
// random numbers of its own, made from the seed and its place in the row, so that it does not
// matter who draws it.
type drawer struct {
	base    *rocket.Rocket
	spreads []Spread
	turns   []*rocketfile.Input // of each spread: what turns round when it goes below 0
	seed    uint64
	source  rand.PCG
	normal  *rand.Rand
	drawn   rocket.Rocket
	flyer   sim.Flyer
}

// vectors are inputs that are the length of a vector with the one that is its
// direction: less than nothing points the other way.
var vectors = map[string]string{"rail.tilt": "rail.heading", "wind.speed": "wind.from", "wind.factor": "wind.veer"}

func newDrawer(base *rocket.Rocket, spreads []Spread, seed uint64) *drawer {
	d := &drawer{base: base, spreads: spreads, seed: seed, turns: make([]*rocketfile.Input, len(spreads))}
	d.normal = rand.New(&d.source)
	for i, s := range spreads {
		direction, is := vectors[s.Input.Name]
		if !is {
			continue
		}
		if in, err := rocketfile.Find(base, direction); err == nil {
			d.turns[i] = &in
		}
	}
	return d
}

// mix is the finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): it makes
// neighbouring draws' streams start far apart.
func mix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// draw makes the i-th rocket and fills in how many deviations each input is off. A
// value that its input cannot take is an error. The rocket is good until the next is drawn.
func (d *drawer) draw(i int, deviates []float64) (*rocket.Rocket, error) {
	d.source.Seed(mix(d.seed), mix(^uint64(i)))
	rocket := &d.drawn
	d.base.CopyTo(rocket)
	var invalid error
	for k := range d.spreads {
		s := &d.spreads[k]
		deviates[k] = d.normal.NormFloat64()
		if invalid != nil {
			continue // but the numbers are drawn, so that every draw takes as many
		}
		// From the value in force, which may follow an input drawn before: the gas has
		// the site's temperature where it is not given.
		v, _ := s.Input.Get(rocket)
		v += s.SD * deviates[k]
		if turn := d.turns[k]; turn != nil && v < 0 {
			v = -v
			heading, _ := turn.Get(rocket)
			invalid = turn.Set(rocket, wrapped(turn, heading+math.Pi))
		}
		if invalid == nil {
			invalid = s.Input.Set(rocket, wrapped(&s.Input, v))
		}
	}
	if rocket.Wind.Turbulence > 0 {
		rocket.Wind.Eddies = d.source.Uint64() | 1
	}
	return rocket, invalid
}

// wrapped takes a compass direction once round; any other value stays.
func wrapped(in *rocketfile.Input, v float64) float64 {
	if in.Dimension != quantity.Bearing {
		return v
	}
	if v = math.Mod(v, 2*math.Pi); v < 0 {
		v += 2 * math.Pi
	}
	return v
}
