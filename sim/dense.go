package sim

// denseOutput is a whole flight, to be read at any time: every accepted step with the rates at
// its ends and the phase it was in.
type denseOutput struct {
	keep   bool
	steps  []denseStep
	phases []phase
	model  model // for the forces; copied before use, so reading is concurrent
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
	d.model = r.model
}

// hermite is the cubic through both ends of a step with their rates, of its first n
// components: the dense output, as smooth as the method is accurate. θ runs from 0 to 1.
func hermite(n int, theta, h float64, y0, f0, y1, f1, y *state) {
	a := theta * theta * (3 - 2*theta)
	b := theta * (1 - theta) * (1 - theta) * h
	c := theta * theta * (theta - 1) * h
	for i := range n {
		y[i] = y0[i] + a*(y1[i]-y0[i]) + b*f0[i] + c*f1[i]
	}
}
