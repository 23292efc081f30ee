package gates

import (
	"math"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// lever is something a user can change to make a check pass: an input by its name, one
// way or either, or a change that is no input.
type lever struct {
	input      string
	up, either bool
	values     []float64 // the only ones to be had; nil: any
	instead    bool      // only where the lever before it found nothing
	day        bool      // what the day brings, to be waited for
	// with changes the rocket besides, such as the rail's heading with its tilt.
	with func(*rocket.Rocket)
	kind RemedyKind
	// change, from and to are those of a lever that is no input.
	change   func(r *rocket.Rocket, x float64) *rocket.Rocket
	from, to float64
	step     float64 // 0: that of the input
}

// pull is a lever made ready on a rocket: how to set it, where it is now, where to look.
type pull struct {
	lever
	in    rocketfile.Input
	now   float64
	reach []float64 // ends to look towards
}

// ready prepares a lever; not ok when the rocket has no such input.
func (l lever) ready(r *rocket.Rocket) (pull, bool) {
	p := pull{lever: l}
	if l.change != nil {
		p.now, p.reach = l.from, []float64{l.to}
		return p, true
	}
	in, ok := rocketfile.Lookup(r, l.input)
	if !ok || in.Drive != "" && in.Drive != r.Power {
		return p, false
	}
	if p.in = in; p.step == 0 {
		p.step = in.Step
	}
	v, given := in.Get(r)
	if !given && v == 0 {
		return p, false
	}
	p.now = v
	low, high := reach(in, r, v)
	if (l.up || l.either) && high > v {
		p.reach = append(p.reach, high)
	}
	if (!l.up || l.either) && low < v {
		p.reach = append(p.reach, low)
	}
	return p, len(p.reach) > 0
}

// reach is how far from today's value a mend is looked for. Never to more pressure: that
// is not for a search to propose.
func reach(in rocketfile.Input, r *rocket.Rocket, v float64) (low, high float64) {
	const seconds = 8
	switch {
	case in.Dimension == quantity.Time: // a delay or a timer
		return math.Max(in.Min, math.Min(0, v)-1), math.Min(in.Max, v+seconds)
	case in.Dimension == quantity.Angle, in.Dimension == quantity.Bearing, in.Dimension == quantity.Wind, in.Name == "water.fill":
		return math.Max(in.Min, 0), math.Min(in.Max, 4*v)
	}
	low, high = study.DefaultRange(in, r)
	if in.Name == "body.mass" { // what was weighed has little to give
		low = math.Max(low, lighter*v)
	}
	return low, high
}

// lighter is how much of its mass a body may be asked to keep at least.
const lighter = 0.8

// set makes a rocket with the lever at a value; nil when the rocket cannot have it.
func (p *pull) set(base *rocket.Rocket, x float64) *rocket.Rocket {
	if p.change != nil {
		return p.change(base, x)
	}
	if r := new(rocket.Rocket); p.onto(base, x, r) {
		return r
	}
	return nil
}

// onto is set in the memory of a rocket; not ok when the rocket cannot have it.
func (p *pull) onto(base *rocket.Rocket, x float64, r *rocket.Rocket) (ok bool) {
	if p.change != nil {
		if base = p.change(base, x); base == nil {
			return false
		}
		base.CopyTo(r)
		return true
	}
	base.CopyTo(r)
	if p.in.Set(r, x) != nil {
		return false
	}
	if p.with != nil {
		p.with(r)
	}
	return true
}

// steps are the values of a lever from today's towards an end: whole multiples of its
// step, n of them.
type steps struct {
	zero, first, step float64 // zero is that of the lever's unit, as of degrees Celsius
	n                 int
}

func (p *pull) steps(end float64) steps {
	const slack = 1e-6
	zero := 0.0
	if p.change == nil {
		zero = p.in.Unit.ToSI(0)
	}
	now, end := (p.now-zero)/p.step, (end-zero)/p.step
	if end > now {
		first := math.Floor(now+slack) + 1
		return steps{zero, first * p.step, p.step, int(math.Floor(end+slack) - first + 1)}
	}
	first := math.Ceil(now-slack) - 1
	return steps{zero, first * p.step, -p.step, int(first - math.Ceil(end-slack) + 1)}
}

func (s steps) at(k int) float64 { return s.zero + s.first + float64(k)*s.step }

// openingLevers move the moment a canopy opens; of a motor the delays that can be had
// come first.
func openingLevers(r *rocket.Rocket, i int) []lever {
	c := &r.Canopies[i]
	if !c.Rule(r.Power).Trigger.ByCharge() {
		return []lever{{input: "canopy." + c.Name + ".deploy." + string(r.Power), either: true}}
	}
	if r.Motor == nil { // a charge that nothing fires: another rule would have to be written
		return nil
	}
	if len(r.Motor.Delays) == 0 {
		return []lever{{input: "motor.delay", either: true}}
	}
	return []lever{{input: "motor.delay", either: true, values: r.Motor.Delays},
		{input: "motor.delay", either: true, kind: OtherDelay, instead: true}}
}

// laterLevers open canopies later or lower, so that they drift less.
func laterLevers(r *rocket.Rocket) []lever {
	var levers []lever
	for i := range r.Canopies {
		for _, l := range openingLevers(r, i) {
			l.either = false
			l.up = !r.Canopies[i].Rule(r.Power).Trigger.Falls()
			levers = append(levers, l)
		}
	}
	return levers
}

// WindStep is to what a wind is looked for, to wait for or to fly in at most, m/s: finer than it can be measured.
const WindStep = 0.1

// calmer waits for less wind, on all layers alike where it is known in layers.
func calmer(r *rocket.Rocket) lever {
	if len(r.Wind.Layers) > 0 {
		return lever{input: "wind.factor", day: true}
	}
	return lever{input: "wind.speed", day: true, step: WindStep}
}

// intoTheWind tilts the rail to where the wind comes from.
func intoTheWind() lever {
	return lever{input: "rail.tilt", either: true, kind: TiltIntoWind, with: func(r *rocket.Rocket) { _, r.Rail.Heading = r.Wind.Surface() }}
}

// noseWeight adds a weight half-way along the nose.
func noseWeight(r *rocket.Rocket) lever {
	at := r.Shape.Nose.Length / 2
	return lever{kind: AddNoseWeight, to: 2 * r.BodyMass(), step: 0.005, up: true,
		change: func(base *rocket.Rocket, x float64) *rocket.Rocket { return study.WithWeight(base, x, at) }}
}
