package sim

import (
	"math"
	"sort"
)

// record is the dense output of a flight: every accepted step with the rates at
// its ends and the phase it was in.
type record struct {
	keep   bool
	steps  []recordedStep
	phases []phase
	model  model // for the forces; copied before use, so reading is concurrent
}

type recordedStep struct {
	t, h           float64
	y0, f0, y1, f1 state
	phase          int
}

// keep records the step about to become the present.
func (r *run) keep() {
	d := &r.flight.record
	if !d.keep {
		return
	}
	if n := len(d.phases); n == 0 || d.phases[n-1] != r.model.phase {
		d.phases = append(d.phases, r.model.phase)
	}
	d.steps = append(d.steps, recordedStep{r.t, r.h, r.y, r.f, r.y1, r.f1, len(d.phases) - 1})
}

// close ends the record. A flight of no step still has its first moment.
func (d *record) close(r *run) {
	if !d.keep {
		return
	}
	if len(d.steps) == 0 {
		d.phases = append(d.phases, r.model.phase)
		d.steps = append(d.steps, recordedStep{r.t, 0, r.y, r.f, r.y, r.f, len(d.phases) - 1})
	}
	d.model = r.model
}

// Duration is the time of the last moment, s; 0 without a record.
func (fl *Flight) Duration() float64 {
	if n := len(fl.record.steps); n > 0 {
		return fl.record.steps[n-1].t + fl.record.steps[n-1].h
	}
	return 0
}

// At is the flight at a time, held to 0 … Duration. It reads the dense output, a
// cubic through each step; at the time of an event it gives what comes after. It
// returns the zero Sample if the flight was flown without Keep.
func (fl *Flight) At(t float64) Sample {
	s := fl.record.steps
	if len(s) == 0 {
		return Sample{}
	}
	i := sort.Search(len(s), func(i int) bool { return s[i].t > t }) - 1
	m := fl.record.model
	return fl.sample(&m, max(i, 0), t)
}

// sample is the flight inside one recorded step.
func (fl *Flight) sample(m *model, i int, t float64) Sample {
	s := &fl.record.steps[i]
	t = math.Min(math.Max(t, s.t), s.t+s.h)
	theta := 0.0
	if s.h > 0 {
		theta = (t - s.t) / s.h
	}
	var y, dy state
	hermite(states, theta, s.h, &s.y0, &s.f0, &s.y1, &s.f1, &y)
	m.phase = fl.record.phases[s.phase]
	if m.push == motorBurn {
		m.loadSegment(m.segment)
	}
	m.rates(t, &y, &dy)
	f := &m.last
	attack, margin := math.NaN(), math.NaN()
	if m.rigid {
		attack = f.attack
	}
	if m.body != nil {
		margin = m.body.at(f.liquid, f.gas, f.grain, f.mach(), fl.Rocket.Body.Diameter).Margin
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
	if len(fl.record.steps) == 0 || !(every > 0) || end/every > maxSamples {
		return nil
	}
	m := fl.record.model
	out := make([]Sample, 0, int(end/every)+2)
	i := 0
	for n := 0; ; n++ {
		t := float64(n) * every
		if t >= end-1e-9*every {
			break
		}
		for i+1 < len(fl.record.steps) && fl.record.steps[i+1].t <= t {
			i++
		}
		out = append(out, fl.sample(&m, i, t))
	}
	return append(out, fl.sample(&m, len(fl.record.steps)-1, end))
}

// Trace gives what a plot draws: both ends of every step and points inside, so that
// both sides of a jump and every peak the method resolved are on it. Times never
// fall; at a jump two samples share one.
func (fl *Flight) Trace() []Sample {
	const inside = 4
	m := fl.record.model
	out := make([]Sample, 0, (inside+1)*len(fl.record.steps)+1)
	for i := range fl.record.steps {
		s := &fl.record.steps[i]
		if i == 0 || fl.record.steps[i-1].phase != s.phase {
			out = append(out, fl.sample(&m, i, s.t))
		}
		if s.h == 0 {
			continue
		}
		for k := 1; k <= inside; k++ {
			out = append(out, fl.sample(&m, i, s.t+s.h*float64(k)/inside))
		}
	}
	return out
}
