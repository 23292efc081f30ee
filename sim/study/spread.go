package study

import (
	"math"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Spread is the uncertainty of one input: one standard deviation of a normal
// distribution around the rocket's value, SI (a difference, for a temperature).
type Spread = rocketfile.Spread

// defaultSpread is a row of what is uncertain when nobody says.
type defaultSpread struct {
	input string
	sd    func(v float64) float64 // of the value in force
}

// windShare is how much of a wind is uncertain, and windLeast what of the lightest, m/s.
const windShare, windLeast = 0.25, 0.5

// share is a deviation in proportion to the value.
func share(f float64) func(float64) float64 {
	return func(v float64) float64 { return f * math.Abs(v) }
}

// always is a deviation that does not depend on the value.
func always(sd float64) func(float64) float64 { return func(float64) float64 { return sd } }

// defaultSpreads are what careful hands and a handheld anemometer may leave
// uncertain: common practice, no source. A motor's delay is often promised to within
// a fifth, taken here as two deviations; its total impulse, and so the thrust, is known to 2 %. A
// knife edge finds a balance point to a few millimetres, a mass list hardly better.
var defaultSpreads = []defaultSpread{
	{"body.mass", share(0.01)},
	{"body.balance", always(3e-3)},
	{"body.drag_factor", share(0.10)},
	{"water.fill", always(0.01)},
	{"water.pressure", share(0.02)},
	{"water.discharge", always(0.005)},
	{"water.exponent", always(0.02)},
	{"water.temperature", always(2)},
	{"motor.thrust_factor", share(0.02)},
	{"motor.propellant", share(0.01)},
	{"motor.delay", share(lateShare / 2)},
	{"rail.tilt", always(1 * degree)},
	{"wind.speed", func(v float64) float64 { return math.Max(windShare*v, windLeast) }},
	{"wind.from", always(15 * degree)},
	{"wind.veer", always(15 * degree)},
}

const degree = math.Pi / 180

// A canopy's own: its drag, and when its rule acts.
const (
	spreadOfCanopy = 0.05 // share of its coefficient
	spreadOfTimer  = 0.1  // s
	spreadOfHeight = 5.0  // m
)

// DefaultSpread is what is uncertain about a rocket, on the drive that flies, when
// nobody says: common practice, no source.
func DefaultSpread(r *rocket.Rocket) []Spread {
	var spreads []Spread
	add := func(name string, sd func(v float64) float64) {
		in, ok := rocketfile.Lookup(r, name)
		if !ok || in.Kind == rocketfile.TextKind || !Depends(r, in) {
			return
		}
		if v, given := in.Get(r); (given || v != 0) && sd(v) > 0 {
			spreads = append(spreads, Spread{Input: in, SD: sd(v)})
		}
	}
	for _, d := range defaultSpreads {
		add(d.input, d.sd)
	}
	if wind, _ := r.Wind.Surface(); wind > 0 { // the layers are off together, as one forecast is
		add("wind.factor", func(v float64) float64 { return v * math.Max(windShare, windLeast/wind) })
	}
	for i := range r.Canopies {
		c := &r.Canopies[i]
		add("canopy."+c.Name+".coefficient", share(spreadOfCanopy))
		rule := always(spreadOfTimer)
		if c.Rule(r.Power).Trigger.Falls() {
			rule = always(spreadOfHeight)
		}
		add("canopy."+c.Name+".deploy."+string(r.Power), rule)
	}
	return spreads
}

// Depends tells whether a flight on the drive that flies depends on an input.
func Depends(r *rocket.Rocket, in rocketfile.Input) bool {
	return !in.Apart && (in.Drive == "" || in.Drive == r.Power)
}

// Spreads are those of a file over the defaults: a key of [spread] takes the place of
// the default for its input, and 0 takes it out. What the drive that flies does not have
// is left out.
func Spreads(f *rocketfile.File) []Spread { return overDefaults(f.Rocket(), f.Spreads()) }

// Respread gives the spreads of a rocket changed from that of a file: the file's own, and
// the defaults of its new values and of the drive that it flies on.
func Respread(f *rocketfile.File) func(*rocket.Rocket) []Spread {
	stated := f.Spreads()
	return func(r *rocket.Rocket) []Spread {
		kept := stated[:0:0]
		for _, s := range stated {
			if s.Input.Drive == "" || s.Input.Drive == r.Power {
				kept = append(kept, s)
			}
		}
		return overDefaults(r, kept)
	}
}

// overDefaults puts stated uncertainties over a rocket's defaults: each takes the
// place of the default for its input or comes after them, and 0 takes it out.
func overDefaults(r *rocket.Rocket, stated []Spread) []Spread {
	spreads := DefaultSpread(r)
	for _, s := range stated {
		found := false
		for i := range spreads {
			if spreads[i].Input.Name == s.Input.Name {
				spreads[i].SD, found = s.SD, true
			}
		}
		if !found && Depends(r, s.Input) {
			spreads = append(spreads, s)
		}
	}
	kept := spreads[:0]
	for _, s := range spreads {
		if s.SD > 0 {
			kept = append(kept, s)
		}
	}
	return kept
}
