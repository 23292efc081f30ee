package sim

import (
	"math"
	"slices"
)

// denseOutput is a whole flight, to be read at any time: every accepted step with the rates at
// its ends and the phase it was in.
type denseOutput struct {
	keep   bool
	steps  []denseStep
	phases []phase
	model  *model // for the forces, of what is kept; copied before use, so reading is concurrent
}

type denseStep struct {
	t, h           float64
	y0, f0, y1, f1 state
	phase          int
}

// keep adds the step about to become the present.
func (r *run) keep() {
	d := &r.flight.dense
	if !d.keep {
		return
	}
	if n := len(d.phases); n == 0 || d.phases[n-1] != r.model.phase {
		d.phases = append(d.phases, r.model.phase)
	}
	d.steps = append(d.steps, denseStep{r.t, r.h, r.y, r.f, r.y1, r.f1, len(d.phases) - 1})
}

// close ends the dense output. A flight of no step still has its first moment.
func (d *denseOutput) close(r *run) {
	if !d.keep {
		return
	}
	if len(d.steps) == 0 {
		d.phases = append(d.phases, r.model.phase)
		d.steps = append(d.steps, denseStep{r.t, 0, r.y, r.f, r.y, r.f, len(d.phases) - 1})
	}
	if d.model == nil {
		d.model = new(model)
	}
	r.model.copyTo(d.model)
}

// copyTo makes c a model that shares nothing with the run, which will fly other rockets.
func (m *model) copyTo(c *model) {
	*c = *m
	c.drag, c.pushedDrag, c.canopies = slices.Clone(m.drag), slices.Clone(m.pushedDrag), slices.Clone(m.canopies)
	if m.body != nil {
		body := *m.body
		c.body = &body
	}
}

// share is a time held to the step, and how far it is through it: 0 to 1.
func (s *denseStep) share(t float64) (held, theta float64) {
	t = min(max(t, s.t), s.t+s.h)
	if s.h > 0 {
		theta = (t - s.t) / s.h
	}
	return t, theta
}

// reader reads a flight, in memory of its own. What a step of the unsteady jet takes to be read
// is made ready once for all that is read of it.
type reader struct {
	fl     *Flight
	m      model
	step   int // that the course is of
	stiff  stiffPart
	course jetCourse
}

func (fl *Flight) reader() *reader {
	x := &reader{fl: fl, step: -1}
	if len(fl.dense.steps) > 0 {
		x.m = *fl.dense.model
	}
	return x
}

// at is the state at a time, held to a step, and that time; the model is left in the step's phase.
func (x *reader) at(step int, t float64, y *state) float64 {
	s := &x.fl.dense.steps[step]
	t, theta := s.share(t)
	x.m.phase = x.fl.dense.phases[s.phase]
	if x.m.push != unsteadyLiquid || s.h == 0 {
		hermite(states, theta, s.h, &s.y0, &s.f0, &s.y1, &s.f1, y)
		return t
	}
	if x.step != step {
		x.step = step
		var now forces
		a, fa := s.y0, s.f0
		x.m.rates(s.t, &a, &fa, &now)
		x.m.stiffness(&a, &fa, &now, &x.stiff)
		x.course.take(&x.stiff, s.h, &a, &fa, &s.y1, &s.f1)
	}
	x.course.at(theta, y)
	return t
}

// jetCourse is the dense output of a step of the unsteady jet: the cubic in the variables of its step,
// beside what dies away in it like an exponential.
type jetCourse struct {
	frame        *jetFrame
	h, rate, lag float64
	a, fa, b, fb state
}

// take makes it that of a step with its stiff part.
func (c *jetCourse) take(stiff *stiffPart, h float64, y0, f0, y1, f1 *state) {
	j := stiff.frame
	c.frame, c.rate, c.h, c.lag = j, stiff.rate[0], h, 0
	c.a, c.fa, c.b, c.fb = *y0, *f0, *y1, *f1
	j.begin(&c.a)
	j.enterRates(&c.a, &c.fa)
	j.enter(&c.a)
	j.tend(c.b[store])
	j.enterRates(&c.b, &c.fb)
	j.enter(&c.b)
	if left := math.Exp(c.rate * h); left < 0.9 {
		c.lag = (c.fa[jet] - c.fb[jet]) / (c.rate * (1 - left)) // what makes the slopes differ
		c.a[jet], c.fa[jet] = c.a[jet]-c.lag, c.fa[jet]-c.rate*c.lag
		c.b[jet], c.fb[jet] = c.b[jet]-c.lag*left, c.fb[jet]-c.rate*c.lag*left
	}
}

// at is the state at θ.
func (c *jetCourse) at(theta float64, y *state) {
	hermite(states, theta, c.h, &c.a, &c.fa, &c.b, &c.fb, y)
	y[jet] += c.lag * math.Exp(c.rate*theta*c.h)
	c.frame.leave(y)
}

// hermite is the cubic through both ends of a step with their rates, of its first n
// components: the dense output, as smooth as the method is accurate. θ runs from 0 to 1.
func hermite(n int, theta, h float64, y0, f0, y1, f1, y *state) {
	a := theta * theta * (3 - 2*theta)
	b := theta * (1 - theta) * (1 - theta) * h
	c := theta * theta * (theta - 1) * h
	p, q, r, u, v := y[:n], y0[:n], f0[:n], y1[:n], f1[:n]
	for i := range p {
		p[i] = q[i] + a*(u[i]-q[i]) + b*r[i] + c*v[i]
	}
}
