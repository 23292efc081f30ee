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
	at             [3]float64 // the stiff components at the point looked at
	n2, n3, n4     [3]float64 // their remainders at the inner points
	forces         forces     // at an inner point: nobody reads them
	n              int        // components in use: pointStates or states

	trust   float64 // in what the step before tells: less across a knot
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
	if stiff.vane.on {
		s.swing(eq, &stiff.vane, t, h, y0, f0, y1, f1, est, end)
		return
	}
	n := s.n
	along(n, &s.y2, y0, h/2, f0)
	eq.rates(t+h/2, &s.y2, &s.f2, &s.forces)
	along(n, &s.y3, y0, h/2, &s.f2)
	eq.rates(t+h/2, &s.y3, &s.f3, &s.forces)
	along(n, &s.y4, y0, h, &s.f3)
	eq.rates(t+h, &s.y4, &s.f4, &s.forces)
	s.simpson(y1, y0, h, f0)
	eq.rates(t+h, y1, f1, end)
	s.differ(est, h, f1)
	s.lookBack(h, 0, s.n, 1, y0, f0, y1, f1, est)
}

// along goes from a state along rates: to = from + h·rates.
func along(n int, to, from *state, h float64, rates *state) {
	a, b, c := to[:n], from[:n], rates[:n]
	for i := range a {
		a[i] = b[i] + h*c[i]
	}
}

// repeat copies a state that has just been worked out, number by number: larger pieces, as copying whole arrays
// takes them, would have to wait until all that they are made of has reached the memory.
func repeat(n int, to, from *state) {
	a, b := to[:n], from[:n]
	for i := range a {
		a[i] = b[i]
	}
}

// simpson is the classical end of a step.
func (s *stages) simpson(y1, y0 *state, h float64, f0 *state) {
	h /= 6
	n := s.n
	a, b, c, d, e, f := y1[:n], y0[:n], f0[:n], s.f2[:n], s.f3[:n], s.f4[:n]
	for i := range a {
		a[i] = b[i] + h*(c[i]+2*(d[i]+e[i])+f[i])
	}
}

// differ is the classical estimate.
func (s *stages) differ(est *state, h float64, f1 *state) {
	h /= 6
	n := s.n
	a, b, c := est[:n], s.f4[:n], f1[:n]
	for i := range a {
		a[i] = h * (b[i] - c[i])
	}
}

// weights of one component for one step length.
type weights struct{ half1, half2, full1, full2, b2, b4 float64 }

// set makes them those of z, the rate times the step's length.
func (w *weights) set(z float64) {
	h1, h2, h3 := phi(z / 2)
	p1, p2, p3 := twice(z/2, h1, h2, h3)
	w.half1, w.half2, w.full1 = h1/2, h2, p1
	w.full2, w.b2, w.b4 = 2*p2, 2*p2-4*p3, 4*p3-p2
}

// remember takes what the next step needs of this one.
func (s *stages) remember(h float64, f0 *state, framed bool) {
	s.before = h
	s.trust = 1
	s.earlier = *f0
	if framed {
		s.earlier = s.baseRate
	}
}

// lookBack widens the estimate by what it cannot see. To a mere quadrature, a rate that
// depends on nothing but time, the method and its companion are both Simpson's rule, and
// their difference is nothing. The quadratic through the rates at both ends and at the start of the step before
// integrates to third order, so that what it misses tells the rates' third derivative: of the components from low
// up to high, as far as it is to be trusted.
func (s *stages) lookBack(h float64, low, high int, trust float64, y0, f0, y1, f1, est *state) {
	if s.before == 0 {
		return
	}
	w := s.before / h
	share := trust * s.trust / (9 * (1 + 2*w))
	a, b, c := -h/(6*w*(1+w)), h*(1+3*w)/(6*w), h*(2+3*w)/(6*(1+w))
	from, to, first, last, earlier, e := y0[low:high], y1[low:high], f0[low:high], f1[low:high], s.earlier[low:high], est[low:high]
	for i := range e {
		missed := share * (to[i] - from[i] - (a*earlier[i] + b*first[i] + c*last[i]))
		// By their bits, as in worst.
		e[i] = math.Float64frombits(max(math.Float64bits(math.Abs(missed)), math.Float64bits(math.Abs(e[i]))))
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
			s.weight[k].set(stiff.rate[k] * h)
		}
	}
	// Every component takes the classical stage; the stiff ones then take theirs.
	n := s.n
	along(n, &s.y2, b, h/2, fb)
	for k := range stiff.count {
		i := stiff.index[k]
		s.at[k] = b[i] + h*s.weight[k].half1*fb[i]
		s.y2[i] = s.at[k]
	}
	s.inner(eq, frame, t+h/2, &s.y2, &s.f2)
	along(n, &s.y3, b, h/2, &s.f2)
	for k := range stiff.count {
		i := stiff.index[k]
		s.n2[k] = stiff.left(k, b, fb, s.at[k], &s.f2)
		s.at[k] += h * s.weight[k].half2 * s.n2[k]
		s.y3[i] = s.at[k]
	}
	s.inner(eq, frame, t+h/2, &s.y3, &s.f3)
	along(n, &s.y4, b, h, &s.f3)
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		s.n3[k] = stiff.left(k, b, fb, s.at[k], &s.f3)
		s.at[k] = b[i] + h*(w.full1*fb[i]+w.full2*s.n3[k])
		s.y4[i] = s.at[k]
	}
	s.inner(eq, frame, t+h, &s.y4, &s.f4)
	s.simpson(y1, b, h, fb)
	for k := range stiff.count {
		i, w := stiff.index[k], &s.weight[k]
		s.n4[k] = stiff.left(k, b, fb, s.at[k], &s.f4)
		s.at[k] = b[i] + h*(w.full1*fb[i]+w.b2*(s.n2[k]+s.n3[k])+w.b4*s.n4[k])
		y1[i] = s.at[k]
	}
	to, last := y1, f1
	if frame != nil {
		to, last = &s.full, &s.last
		repeat(n, to, y1)
		frame.leave(y1)
	}
	eq.rates(t+h, y1, f1, end)
	if frame != nil {
		repeat(n, last, f1)
		frame.enterRates(y1, last)
	}
	s.differ(est, h, last)
	for k := range stiff.count {
		est[stiff.index[k]] = h * s.weight[k].b4 * (s.n4[k] - stiff.left(k, b, fb, s.at[k], last))
	}
	if frame != nil {
		e := est[jet]
		s.lookBack(h, 0, n, 1, b, fb, to, last, est)
		est[jet] = e * frame.perUnit(y1[jet])
	}
}

// inner takes the rates of an inner point, in the step's variables; the point itself leaves them for good.
func (s *stages) inner(eq equations, frame *jetFrame, t float64, y, f *state) {
	if frame != nil {
		frame.leave(y)
	}
	eq.rates(t, y, f, &s.forces)
	if frame != nil {
		frame.enterRates(y, f)
	}
}

// left is how much the remainder N = f − λy of a stiff component, which stands at y, differs from that at the
// start of the step.
func (p *stiffPart) left(k int, b, fb *state, y float64, f *state) float64 {
	i := p.index[k]
	return f[i] - fb[i] - p.rate[k]*(y-b[i])
}

// worst is the largest of the first n components of est, weighed; NaN if any is.
func worst(n int, est, weights *state) float64 {
	// The bits of numbers that are not below nothing lie in the order of the numbers, and NaN's above them all:
	// compared as such, the largest is found without a jump that none could foretell.
	top := uint64(0)
	e, w := est[:n], weights[:n]
	for i := range e {
		top = max(top, math.Float64bits(math.Abs(e[i])*w[i]))
	}
	return math.Float64frombits(top)
}
