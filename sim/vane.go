package sim

import "math"

// vane is the part of a rigid body's equations that makes it swing about the wind like a weather vane, which a
// step solves exactly: many times a second, long after the swings have died out, and that is what would hold the
// steps short. A step is taken in the turn since it began, its quaternion δ = q₀*q, and in the velocity u along the
// body's axes as it began; to both the way from and to is the same for states and rates. About each of the
// two axes across,
//
//	d/dt (δ, L, u) = A (δ, L, u) + N,   A = | 0      1/2I   0  |
//	                                        | −2va·t  −c    t  |
//	                                        | 2(va·n + F/M)  0  −n |
//
// with t the moment of the normal forces over the velocity across, c their damping over the inertia I, n they
// themselves over the mass M, F the force along the axis, all as the step begins. A has one slow eigenvalue μ and
// a pair a ± ib, and a function of it is f(A) = α + β·(A − a)/b + γ·rℓ with α + iβ = f(a + ib),
// γ = f(μ) − α − β·(μ − a)/b, and μ's eigenvectors r and, from the left, ℓ, ℓ·r = 1.
type vane struct {
	on                                     bool
	fast                                   complex128 // a + ib, 1/s
	slow                                   float64    // μ
	lift                                   float64    // acceleration across for an angle, m/s²
	give, stiff, damp, couple, along, side float64    // the entries of A without their signs, row by row
	path, share                            triple     // μ's eigenvector, and the one from the left that tells how much of it there is
	base                                   [4]float64
	axes                                   [3]vector
	weight                                 [6]wave
	apart                                  float64   // the square of the most that two places on a circle are apart, of what goes round in the step
	now, n2, n3, n4, ends                  [2]triple // of the point looked at, the remainders of the inner points, and what of the end is known
}

// triple are turn, spin and velocity about one axis across.
type triple struct{ turn, spin, speed float64 }

// sum is a + h·b.
func sum(a triple, h float64, b triple) triple {
	return triple{a.turn + h*b.turn, a.spin + h*b.spin, a.speed + h*b.speed}
}

// wave is a function of A: keep + swing·A + drift·(what there is of the slow mode).
type wave struct{ keep, swing, drift float64 }

// pick takes the triple of one axis out of a state: to turn about the first is to drift against the second.
func pick(axis int, y *state) triple {
	if axis == 0 {
		return triple{y[attitude+1], y[spin], -y[vNorth]}
	}
	return triple{y[attitude+2], y[spin+1], y[vEast]}
}

// place puts it back.
func place(axis int, y *state, x triple) {
	if axis == 0 {
		y[attitude+1], y[spin], y[vNorth] = x.turn, x.spin, -x.speed
		return
	}
	y[attitude+2], y[spin+1], y[vEast] = x.turn, x.spin, x.speed
}

// set makes it that of a state; it is off where nothing swings, where the body lies far from the wind, and where
// it rolls faster than it swings.
func (v *vane) set(y *state, f *forces) {
	v.on = false
	if f.swing == 0 || f.across > 0.5*f.axial || math.Abs(y[spin+2]) > f.swing*f.inertia.roll {
		return
	}
	va := f.axial
	inertia, mass := 1/f.inertia.pitch, 1/f.mass
	v.lift = va * f.sideways * mass
	v.give, v.stiff, v.damp, v.couple = inertia/2, 2*va*f.turn, f.damping*inertia, f.turn
	v.along, v.side = 2*(v.lift+f.ahead*mass), f.sideways*mass
	// λ³ + pλ² + qλ + s; μ by Newton's method, the others from what is left.
	p, q, s := v.damp+v.side, v.damp*v.side+v.stiff*v.give, v.give*(v.stiff*v.side-v.couple*v.along)
	mu := -s / q
	for range 12 {
		by := (((mu+p)*mu+q)*mu + s) / ((3*mu+2*p)*mu + q)
		mu -= by
		if math.Abs(by) <= 1e-8*math.Abs(mu) { // and the next would be of its square
			break
		}
	}
	a := -(p + mu) / 2
	b2 := q + mu*(p+mu) - a*a
	if !(b2 > 0 && v.side+mu > 0) {
		return
	}
	v.on, v.fast, v.slow = true, complex(a, math.Sqrt(b2)), mu
	lag := 1 / (v.side + mu)
	v.path = triple{1, mu / v.give, v.along * lag}
	v.share = triple{(mu + v.damp) / v.give, 1, v.couple * lag}
	norm := 1 / (v.share.turn + v.share.spin*v.path.spin + v.share.speed*v.path.speed)
	v.share = triple{v.share.turn * norm, norm, v.share.speed * norm}
	v.base[0], v.base[1], v.base[2], v.base[3] = y[attitude], y[attitude+1], y[attitude+2], y[attitude+3]
	v.axes[0], v.axes[1], v.axes[2] = bodyAxes(y)
}

// times is A·p.
func (v *vane) times(p triple) triple {
	return triple{v.give * p.spin, v.couple*p.speed - v.stiff*p.turn - v.damp*p.spin, v.along*p.turn - v.side*p.speed}
}

// drifts is how much of the slow mode there is.
func (v *vane) drifts(p triple) float64 {
	return v.share.turn*p.turn + v.share.spin*p.spin + v.share.speed*p.speed
}

// weigh prepares the weights of a step's length: those of weights, for the fast pair and the slow one.
func (v *vane) weigh(h float64) {
	z := complex(real(v.fast)*h/2, imag(v.fast)*h/2)
	h1, h2, h3 := phiComplex(z)
	p1, p2, p3 := twiceComplex(z, h1, h2, h3)
	var w weights
	w.set(v.slow * h)
	e := 1 + z*h1
	v.apart = 4 // 2 − 2cos of the angle
	if sin2 := imag(e) * imag(e); imag(z) < math.Pi/2 {
		v.apart = 4 * sin2 / (real(e)*real(e) + sin2)
	}
	lean, inverse := v.slow-real(v.fast), 1/imag(v.fast)
	set := func(at int, fast complex128, slow float64) {
		swing := imag(fast) * inverse
		v.weight[at] = wave{real(fast) - swing*real(v.fast), swing, slow - real(fast) - swing*lean}
	}
	set(half1, h1*0.5, w.half1)
	set(half2, h2, w.half2)
	set(full1, p1, w.full1)
	set(full2, 2*p2, w.full2)
	set(b2, 2*p2-4*p3, w.b2)
	set(b4, 4*p3-p2, w.b4)
}

// The weights by name.
const (
	half1 = iota
	half2
	full1
	full2
	b2
	b4
)

// of is a weight's function of A, times p.
func (v *vane) of(weight int, p triple) triple {
	w, a := &v.weight[weight], v.times(p)
	drift := w.drift * v.drifts(p)
	return triple{
		w.keep*p.turn + w.swing*a.turn + drift*v.path.turn,
		w.keep*p.spin + w.swing*a.spin + drift*v.path.spin,
		w.keep*p.speed + w.swing*a.speed + drift*v.path.speed,
	}
}

// left is how much the remainder N = f − Ay of the point looked at differs from that at the start of the step.
func (v *vane) left(axis int, b, fb, f *state) triple {
	by := v.times(sum(v.now[axis], -1, pick(axis, b)))
	return sum(sum(pick(axis, f), -1, pick(axis, fb)), -1, by)
}

// goTo puts the point looked at into its state.
func (v *vane) goTo(axis int, y *state, x triple) {
	v.now[axis] = x
	place(axis, y, x)
}

// enter turns a state or its rates into the step's variables.
func (v *vane) enter(y *state) {
	a, b := &v.base, y[attitude:spin]
	y[attitude], y[attitude+1], y[attitude+2], y[attitude+3] =
		a[0]*b[0]+a[1]*b[1]+a[2]*b[2]+a[3]*b[3],
		a[0]*b[1]-a[1]*b[0]-a[2]*b[3]+a[3]*b[2],
		a[0]*b[2]+a[1]*b[3]-a[2]*b[0]-a[3]*b[1],
		a[0]*b[3]-a[1]*b[2]+a[2]*b[1]-a[3]*b[0]
	u := velocity(y)
	setVelocity(y, vector{dot(v.axes[0], u), dot(v.axes[1], u), dot(v.axes[2], u)})
}

// leave turns them back.
func (v *vane) leave(y *state) {
	a, b := &v.base, y[attitude:spin]
	y[attitude], y[attitude+1], y[attitude+2], y[attitude+3] =
		a[0]*b[0]-a[1]*b[1]-a[2]*b[2]-a[3]*b[3],
		a[0]*b[1]+a[1]*b[0]+a[2]*b[3]-a[3]*b[2],
		a[0]*b[2]-a[1]*b[3]+a[2]*b[0]+a[3]*b[1],
		a[0]*b[3]+a[1]*b[2]-a[2]*b[1]+a[3]*b[0]
	v.settle(y)
}

// settle turns back a velocity alone.
func (v *vane) settle(y *state) {
	u := velocity(y)
	setVelocity(y, vector{}.on(u.x, v.axes[0]).on(u.y, v.axes[1]).on(u.z, v.axes[2]))
}

// swing is the step of a weather vane: exponential, with matrices for rates.
func (s *stages) swing(eq equations, v *vane, t, h float64, y0, f0, y1, f1, est *state, end *forces) {
	s.base, s.baseRate = *y0, *f0
	b, fb := &s.base, &s.baseRate
	v.enter(b)
	v.enter(fb)
	v.weigh(h)
	n := s.n
	along(n, &s.y2, b, h/2, fb)
	for k := range 2 {
		v.goTo(k, &s.y2, sum(pick(k, b), h, v.of(half1, pick(k, fb))))
	}
	s.swung(eq, v, t+h/2, &s.y2, &s.f2)
	along(n, &s.y3, b, h/2, &s.f2)
	for k := range 2 {
		v.n2[k] = v.left(k, b, fb, &s.f2)
		v.goTo(k, &s.y3, sum(v.now[k], h, v.of(half2, v.n2[k])))
	}
	s.swung(eq, v, t+h/2, &s.y3, &s.f3)
	along(n, &s.y4, b, h, &s.f3)
	for k := range 2 {
		v.ends[k] = sum(pick(k, b), h, v.of(full1, pick(k, fb)))
		v.n3[k] = v.left(k, b, fb, &s.f3)
		v.goTo(k, &s.y4, sum(v.ends[k], h, v.of(full2, v.n3[k])))
	}
	s.swung(eq, v, t+h, &s.y4, &s.f4)
	s.simpson(y1, b, h, fb)
	for k := range 2 {
		v.n4[k] = v.left(k, b, fb, &s.f4)
		middle := v.of(b2, sum(v.n2[k], 1, v.n3[k]))
		v.goTo(k, y1, sum(v.ends[k], h, sum(middle, 1, v.of(b4, v.n4[k]))))
	}
	v.leave(y1)
	eq.rates(t+h, y1, f1, end)
	repeat(n, &s.last, f1)
	v.enter(&s.last)
	s.differ(est, h, &s.last)
	for k := range 2 {
		off := sum(v.n4[k], -1, v.left(k, b, fb, &s.last))
		place(k, est, sum(triple{}, h, v.of(b4, off)))
	}
	v.unseen(h, fb, &s.last, est)
	v.settle(est)
	s.lookBack(h, 0, pointStates, 1, y0, f0, y1, f1, est)
	z := h * imag(v.fast)
	z *= z
	s.lookBack(h, pointStates, n, 1/(1+z*z), y0, f0, y1, f1, est) // long swings are no quadratures
}

// swinging is where in a swing the rates are that f tells, for one axis: it goes round with the fast pair, its size
// that of the swing, rad. What the rates have of the slow mode, in which the body turns with its path, is none of it.
func (v *vane) swinging(axis int, f *state) complex128 {
	p := pick(axis, f)
	p = sum(p, -v.drifts(p), v.path)
	inverse := 1 / imag(v.fast)
	return complex(2*v.give*inverse*inverse*p.spin, 2*inverse*p.turn)
}

// size2 is the square of how far it swings in the step. What does not go round is no swing but the lean that
// the path's own bend asks for, or most of it.
func (v *vane) size2(fb, last *state) float64 {
	square := func(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }
	some, all := 0.0, 0.0
	for k := range 2 {
		from, to := v.swinging(k, fb), v.swinging(k, last)
		all += square(from)
		some += square(from - to)
	}
	return max(some/v.apart, 0.01*all)
}

// unseen adds to the estimate what it cannot see, for the swing itself is exact: what the swing costs of the speed goes with
// its square, of twice its frequency, which Simpson's rule takes for what it is only while that is
// short; and the cubic of the dense output, which is allowed ten times as much, must follow the swing.
func (v *vane) unseen(h float64, fb, last, est *state) {
	z := h * imag(v.fast)
	size := v.size2(fb, last)
	z *= z
	z *= z
	est[vUp] = math.Abs(est[vUp]) + h*v.lift*size/2*min(16*z/2880, 1)
	est[attitude] = math.Abs(est[attitude]) + 0.1*math.Sqrt(size)*z/384
}

// swung takes the rates of an inner point, in the step's variables; the point itself leaves them for good.
func (s *stages) swung(eq equations, v *vane, t float64, y, f *state) {
	v.leave(y)
	eq.rates(t, y, f, &s.forces)
	v.enter(f)
}
