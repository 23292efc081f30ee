package sim

import (
	"math"
	"sort"
)

// Sample is the flight at one time.
type Sample struct {
	Time            float64 // s
	East, North     float64 // m
	Height          float64 // above the pad, m
	Speed           float64 // over the ground, m/s
	Vertical        float64 // positive up, m/s
	Airspeed        float64 // m/s
	Acceleration    float64 // |dv/dt|, m/s²
	Mach            float64
	Thrust          float64 // N
	Drag            float64 // of body and canopies, N
	Mass            float64 // kg
	Chamber         float64 // absolute, Pa; NaN when there is no chamber
	Air             float64 // ambient pressure, Pa
	DynamicPressure float64 // Pa
	Attack          float64 // total angle of attack, rad; NaN when no rigid body flies
	Margin          float64 // stability margin, calibres; NaN without shape and balance
}

// Duration is the time of the last moment, s; 0 without dense output.
func (fl *Flight) Duration() float64 {
	if n := len(fl.dense.steps); n > 0 {
		return fl.dense.steps[n-1].t + fl.dense.steps[n-1].h
	}
	return 0
}

// At is the flight at a time, held to 0 … Duration. It reads the dense output, a
// cubic through each step; at the time of an event it gives what comes after. It
// returns the zero Sample if the flight was flown without Keep.
func (fl *Flight) At(t float64) Sample { return fl.Reader()(t) }

// Reader is At for who looks many times, in any order: what that takes is made ready once. It is
// not for several goroutines.
func (fl *Flight) Reader() func(t float64) Sample {
	s := fl.dense.steps
	if len(s) == 0 {
		return func(float64) Sample { return Sample{} }
	}
	x := fl.reader()
	return func(t float64) Sample {
		i := sort.Search(len(s), func(i int) bool { return s[i].t > t }) - 1
		return x.sample(max(i, 0), t)
	}
}

// sample is the flight inside one recorded step.
func (x *reader) sample(step int, t float64) Sample {
	var y, dy state
	t = x.at(step, t, &y)
	m := &x.m
	if m.push == motorBurn {
		m.loadSegment(m.segment)
	}
	var f forces
	m.rates(t, &y, &dy, &f)
	attack, margin := math.NaN(), math.NaN()
	if m.rigid {
		attack = f.attack()
	}
	if m.body != nil {
		margin = m.body.at(f.liquid, f.gas, f.grain, f.mach(), x.fl.Rocket.Body.Diameter).Margin
	}
	return Sample{
		Time: t, East: y[east], North: y[north], Height: y[up],
		Speed: speedOf(&y), Vertical: y[vUp], Airspeed: f.airspeed,
		Acceleration: math.Sqrt(f.acceleration2), Mach: f.mach(),
		Thrust: f.thrust, Drag: f.drag, Mass: f.mass, Chamber: f.chamber, Air: f.pressure,
		DynamicPressure: 0.5 * f.density * f.airspeed * f.airspeed,
		Attack:          attack, Margin: margin,
	}
}

// maxSamples bounds what Samples returns, whatever the spacing asked for.
const maxSamples = 5_000_000

// Samples gives the flight every so many seconds from release on; the last one is
// the landing (or whatever ended the flight). A spacing that is not positive,
// or so small that more than five million would come, gives nil.
func (fl *Flight) Samples(every float64) []Sample {
	end := fl.Duration()
	if len(fl.dense.steps) == 0 || !(every > 0) || end/every > maxSamples {
		return nil
	}
	x := fl.reader()
	out := make([]Sample, 0, int(end/every)+2)
	i := 0
	for n := 0; ; n++ {
		t := float64(n) * every
		if t >= end-1e-9*every {
			break
		}
		for i+1 < len(fl.dense.steps) && fl.dense.steps[i+1].t <= t {
			i++
		}
		out = append(out, x.sample(i, t))
	}
	return append(out, x.sample(len(fl.dense.steps)-1, end))
}

// Trace gives what a plot draws: both ends of every step and points inside, so that
// both sides of a jump and every peak the method resolved are on it. Times never
// fall; at a jump two samples share one.
func (fl *Flight) Trace() []Sample {
	// Long steps bend much between their ends: the fewer they are the more points inside.
	inside := 2 + 300/max(len(fl.dense.steps), 1)
	x := fl.reader()
	out := make([]Sample, 0, (inside+1)*len(fl.dense.steps)+1)
	for i := range fl.dense.steps {
		s := &fl.dense.steps[i]
		if i == 0 || fl.dense.steps[i-1].phase != s.phase {
			out = append(out, x.sample(i, s.t))
		}
		if s.h == 0 {
			continue
		}
		for k := 1; k <= inside; k++ {
			out = append(out, x.sample(i, s.t+s.h*float64(k)/float64(inside)))
		}
	}
	return out
}
