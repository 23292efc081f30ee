package sim

import "math"

// state is what the integrator carries. A point mass uses all of it; the indices
// say what stands where.
type state [states]float64

const (
	east    = iota // position from the pad, m
	north          //
	up             // height above the pad
	vEast          // velocity over the ground, m/s
	vNorth         //
	vUp            //
	airPath        // distance through the air, m: what a canopy fills over
	impulse        // ∫ thrust dt, N·s
	store          // liquid volume aboard, m³, or gas mass aboard, kg, as the phase says
	jet            // speed of the liquid's jet, m/s
	states
)

// stiffPart is the part of the equations that a step solves exactly: a diagonal,
// and one column that tells how the jet's acceleration pushes the rocket, both
// frozen at the start of the step. Zero where the equations are not stiff.
type stiffPart struct {
	rate [states]float64 // diagonal, 1/s
	any  bool
	push [3]float64 // ∂v̇/∂(dq/dt) on the three velocities
	kick bool       // push is not zero
}

// equations is what a step integrates: time and state in, rates out.
type equations interface {
	rates(t float64, y, dy *state)
}

// stages are the inner points of one step, kept by the caller so that a step
// allocates nothing.
type stages struct {
	y2, y3, y4     state
	f2, f3, f4     state
	base, baseRate state
	full           state
	weight         [states]weights
}

// step advances y0 (rates f0) by h to y1 (rates f1) and returns the estimated
// local error of each component in est.
//
// It is the classical fourth-order Runge–Kutta method; where the stiff part is not
// zero, its exponential form after Krogstad, J. Comput. Phys. 203 (2005) 72, with
// the same nodes, which turns into the classical one component by component as the
// rate goes to zero. Its weights are differences of φ functions, so each stage is
// written on differences of the nonlinear remainder N = f − λy and nothing cancels.
//
// Error: the rates at the new point, which the next step needs anyway, make a third
// order companion: weights (1, 2, 2, 0, 1)/6 instead of (1, 2, 2, 1, 0)/6 also
// satisfy the conditions of order three, so h·(f4 − f1)/6 estimates the error.
func (s *stages) step(eq equations, stiff *stiffPart, t, h float64, y0, f0, y1, f1, est *state) {
	if stiff.any {
		s.exponential(eq, stiff, t, h, y0, f0, y1, f1, est)
		return
	}
	for i := range y0 {
		s.y2[i] = y0[i] + h/2*f0[i]
	}
	eq.rates(t+h/2, &s.y2, &s.f2)
	for i := range y0 {
		s.y3[i] = y0[i] + h/2*s.f2[i]
	}
	eq.rates(t+h/2, &s.y3, &s.f3)
	for i := range y0 {
		s.y4[i] = y0[i] + h*s.f3[i]
	}
	eq.rates(t+h, &s.y4, &s.f4)
	for i := range y0 {
		y1[i] = y0[i] + h/6*(f0[i]+2*(s.f2[i]+s.f3[i])+s.f4[i])
	}
	eq.rates(t+h, y1, f1)
	for i := range y0 {
		est[i] = h / 6 * (s.f4[i] - f1[i])
	}
}

// weights of one component for one step length.
type weights struct{ half1, half2, full1, full2, b2, b4 float64 }

func weightsFor(z float64) weights {
	h1, h2, _ := phi(z / 2)
	p1, p2, p3 := phi(z)
	return weights{h1 / 2, h2, p1, 2 * p2, 2*p2 - 4*p3, 4*p3 - p2}
}

func (s *stages) exponential(eq equations, stiff *stiffPart, t, h float64, y0, f0, y1, f1, est *state) {
	// With the jet's push taken off the velocities (v − push·q) the stiff part is
	// diagonal; the change of variables is undone before every call of the rates.
	b, fb := &s.base, &s.baseRate
	*b, *fb = *y0, *f0
	stiff.split(b)
	stiff.split(fb)

	w := &s.weight
	plain := weights{0.5, 0.5, 1, 1, 1.0 / 3, 1.0 / 6}
	for i := range w {
		switch {
		case stiff.rate[i] == 0:
			w[i] = plain
		case i > 0 && stiff.rate[i] == stiff.rate[i-1]:
			w[i] = w[i-1]
		default:
			w[i] = weightsFor(stiff.rate[i] * h)
		}
	}
	// n is the remainder's difference from the start of the step.
	n := func(i int, f, y *state) float64 { return f[i] - fb[i] - stiff.rate[i]*(y[i]-b[i]) }
	call := func(t float64, y, f *state) {
		s.full = *y
		stiff.join(&s.full)
		eq.rates(t, &s.full, f)
		stiff.split(f)
	}
	for i := range b {
		s.y2[i] = b[i] + h*w[i].half1*fb[i]
	}
	call(t+h/2, &s.y2, &s.f2)
	for i := range b {
		s.y3[i] = s.y2[i] + h*w[i].half2*n(i, &s.f2, &s.y2)
	}
	call(t+h/2, &s.y3, &s.f3)
	for i := range b {
		s.y4[i] = b[i] + h*(w[i].full1*fb[i]+w[i].full2*n(i, &s.f3, &s.y3))
	}
	call(t+h, &s.y4, &s.f4)
	for i := range b {
		y1[i] = b[i] + h*(w[i].full1*fb[i]+w[i].b2*(n(i, &s.f2, &s.y2)+n(i, &s.f3, &s.y3))+w[i].b4*n(i, &s.f4, &s.y4))
	}
	call(t+h, y1, f1)
	for i := range b {
		est[i] = h * w[i].b4 * (n(i, &s.f4, &s.y4) - n(i, f1, y1))
	}
	stiff.join(y1)
	stiff.join(f1)
}

// split takes the jet's push off the velocities of a state or of its rates.
func (p *stiffPart) split(y *state) {
	if p.kick {
		for i, c := range p.push {
			y[vEast+i] -= c * y[jet]
		}
	}
}

// join puts it back.
func (p *stiffPart) join(y *state) {
	if p.kick {
		for i, c := range p.push {
			y[vEast+i] += c * y[jet]
		}
	}
}

// hermite is the cubic through both ends of a step with their rates: the dense
// output, as smooth as the method is accurate. θ runs from 0 to 1.
func hermite(theta, h float64, y0, f0, y1, f1, y *state) {
	a := theta * theta * (3 - 2*theta)
	b := theta * (1 - theta) * (1 - theta) * h
	c := theta * theta * (theta - 1) * h
	for i := range y {
		y[i] = y0[i] + a*(y1[i]-y0[i]) + b*f0[i] + c*f1[i]
	}
}

// worst is the largest component of est over the scale each component is held to;
// NaN if any is.
func worst(est, y0, y1 *state, floor *state, tolerance float64) float64 {
	e := 0.0
	for i := range est {
		size := math.Abs(y0[i])
		if b := math.Abs(y1[i]); b > size {
			size = b
		}
		v := math.Abs(est[i]) / (floor[i] + size)
		if v > e {
			e = v
		} else if v != v {
			return v
		}
	}
	return e / tolerance
}
