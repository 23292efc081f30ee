package sim

import "math"

// equations is what a step integrates: time and state in, rates out, and the forces
// they were made from.
type equations interface {
	rates(t float64, y, dy *state, f *forces)
}

// stages are the inner points of one step, kept by the caller so that a step
// allocates nothing.
type stages struct {
	y2, y3, y4     state
	f2, f3, f4     state
	base, baseRate state
	full, last     state
	weight         [3]weights
	forces         forces // at an inner point: nobody reads them
	n              int    // components in use: pointStates or states

	before  float64 // length of the step before; 0 when it tells nothing
	earlier state   // rates as it began
}

// step advances y0 (rates f0) by h to y1 (rates f1, forces end) and returns the
// estimated local error of each component in est.
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
func (s *stages) step(eq equations, stiff *stiffPart, t, h float64, y0, f0, y1, f1, est *state, end *forces) {
	if stiff.count > 0 {
		s.exponential(eq, stiff, t, h, y0, f0, y1, f1, est, end)
		return
	}
	n := s.n
	for i := range n {
		s.y2[i] = y0[i] + h/2*f0[i]
	}
	eq.rates(t+h/2, &s.y2, &s.f2, &s.forces)
	for i := range n {
		s.y3[i] = y0[i] + h/2*s.f2[i]
	}
	eq.rates(t+h/2, &s.y3, &s.f3, &s.forces)
	for i := range n {
		s.y4[i] = y0[i] + h*s.f3[i]
	}
	eq.rates(t+h, &s.y4, &s.f4, &s.forces)
	for i := range n {
		y1[i] = y0[i] + h/6*(f0[i]+2*(s.f2[i]+s.f3[i])+s.f4[i])
	}
	eq.rates(t+h, y1, f1, end)
	for i := range n {
		est[i] = h / 6 * (s.f4[i] - f1[i])
	}
	s.lookBack(h, y0, f0, y1, f1, est)
}

// weights of one component for one step length.
type weights struct{ half1, half2, full1, full2, b2, b4 float64 }

func weightsFor(z float64) weights {
	h1, h2, h3 := phi(z / 2)
	p1, p2, p3 := twice(z/2, h1, h2, h3)
	return weights{h1 / 2, h2, p1, 2 * p2, 2*p2 - 4*p3, 4*p3 - p2}
}

// remember takes what the next step needs of this one.
func (s *stages) remember(h float64, f0 *state, framed bool) {
	s.before = h
	s.earlier = *f0
	if framed {
		s.earlier = s.baseRate
	}
}

// lookBack widens the estimate by what it cannot see. To a mere quadrature, a rate that
// depends on nothing but time, the method and its companion are both Simpson's rule, and
// their difference is nothing. The quadratic through the rates at both ends and at the start of the step before
// integrates to third order, so that what it misses tells the rates' third derivative.
func (s *stages) lookBack(h float64, y0, f0, y1, f1, est *state) {
	if s.before == 0 {
		return
	}
	w := s.before / h
	a, b, c := -1/(6*w*(1+w)), (1+3*w)/(6*w), (2+3*w)/(6*(1+w))
	share := 1 / (9 * (1 + 2*w))
	for i := range s.n {
		missed := share * (y1[i] - y0[i] - h*(a*s.earlier[i]+b*f0[i]+c*f1[i]))
		if math.Abs(missed) > math.Abs(est[i]) {
			est[i] = missed
		}
	}
}

func (s *stages) exponential(eq equations, stiff *stiffPart, t, h float64, y0, f0, y1, f1, est *state, end *forces) {
	b, fb := y0, f0
	frame := stiff.frame
	if frame != nil {
		s.base, s.baseRate = *y0, *f0
		b, fb = &s.base, &s.baseRate
		frame.begin(b)
		frame.enterRates(b, fb)
		frame.enter(b)
	}
	for k := range stiff.count {
		if k > 0 && stiff.rate[k] == stiff.rate[k-1] {
			s.weight[k] = s.weight[k-1]
		} else {
			s.weight[k] = weightsFor(stiff.rate[k] * h)
		}
	}
	call := func(t float64, y, f *state) {
		if frame == nil {
			eq.rates(t, y, f, &s.forces)
			return
		}
		s.full = *y
		frame.leave(&s.full)
		eq.rates(t, &s.full, f, &s.forces)
		frame.enterRates(&s.full, f)
	}
	// Every component takes the classical stage; the stiff ones then take theirs. n is
	// the remainder's difference from the start of the step.
	n := func(k, i int, f, y *state) float64 { return f[i] - fb[i] - stiff.rate[k]*(y[i]-b[i]) }
	for i := range s.n {
		s.y2[i] = b[i] + h/2*fb[i]
	}
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		s.y2[i] = b[i] + h*w.half1*fb[i]
	}
	call(t+h/2, &s.y2, &s.f2)
	for i := range s.n {
		s.y3[i] = b[i] + h/2*s.f2[i]
	}
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		s.y3[i] = s.y2[i] + h*w.half2*n(k, i, &s.f2, &s.y2)
	}
	call(t+h/2, &s.y3, &s.f3)
	for i := range s.n {
		s.y4[i] = b[i] + h*s.f3[i]
	}
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		s.y4[i] = b[i] + h*(w.full1*fb[i]+w.full2*n(k, i, &s.f3, &s.y3))
	}
	call(t+h, &s.y4, &s.f4)
	for i := range s.n {
		y1[i] = b[i] + h/6*(fb[i]+2*(s.f2[i]+s.f3[i])+s.f4[i])
	}
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		y1[i] = b[i] + h*(w.full1*fb[i]+w.b2*(n(k, i, &s.f2, &s.y2)+n(k, i, &s.f3, &s.y3))+w.b4*n(k, i, &s.f4, &s.y4))
	}
	s.full, s.last = *y1, *f1
	if frame != nil {
		frame.leave(y1)
	}
	eq.rates(t+h, y1, f1, end)
	s.last = *f1
	if frame != nil {
		frame.enterRates(y1, &s.last)
	}
	for i := range s.n {
		est[i] = h / 6 * (s.f4[i] - s.last[i])
	}
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		est[i] = h * w.b4 * (n(k, i, &s.f4, &s.y4) - n(k, i, &s.last, &s.full))
	}
	if frame != nil {
		e := est[jet]
		s.lookBack(h, b, fb, &s.full, &s.last, est)
		est[jet] = e * frame.perUnit(y1[jet])
	}
}

// worst is the largest of the first n components of est, weighed; NaN if any is.
func worst(n int, est, weights *state) float64 {
	e := 0.0
	for i := range n {
		// Not v > e, so that NaN goes in.
		if v := math.Abs(est[i]) * weights[i]; !(v <= e) {
			if e = v; e != e {
				return e
			}
		}
	}
	return e
}
