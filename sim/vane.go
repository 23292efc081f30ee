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
// a pair a ± ib, and a function of it is f(A) = α + β·(A − a)/b + γ·((A − a)² + b²)/((μ − a)² + b²) with
// α + iβ = f(a + ib) and γ = f(μ) − α − β·(μ − a)/b.
type vane struct {
	on       bool
	fast     complex128 // a + ib, 1/s
	slow     float64    // μ
	lift     float64    // acceleration across for an angle, m/s²
	a        [3]triple
	swings   [3]triple // (A − a)/b
	drifts   [3]triple // what γ goes with
	base     [4]float64
	axes     [3][3]float64
	weight   [6]wave
	n2, n3   [2]triple
	n4, ends [2]triple
}

// triple are turn, spin and velocity about one axis across.
type triple [3]float64

// wave is a function of A.
type wave struct{ steady, swing, drift float64 }

// planes tell where the two triples stand; to turn about the first axis is to drift against the second.
var planes = [2]struct {
	at   [3]int
	sign float64
}{{[3]int{attitude + 2, spin + 1, vEast}, 1}, {[3]int{attitude + 1, spin, vNorth}, -1}}

// set makes it that of a state; it is off where nothing swings, where the body lies far from the wind, and where
// it rolls faster than it swings.
func (v *vane) set(y *state, f *forces) {
	v.on = false
	if f.swing == 0 || f.across > 0.5*f.axial || math.Abs(y[spin+2]) > f.swing*f.inertia.roll {
		return
	}
	t, va, give := f.turn, f.axial, 1/(2*f.inertia.pitch)
	c, n := f.damping/f.inertia.pitch, f.sideways/f.mass
	stiff, along := 2*va*t, 2*(va*n+f.ahead/f.mass)
	v.a = [3]triple{{0, give, 0}, {-stiff, -c, t}, {along, 0, -n}}
	// λ³ + (c+n)λ² + (cn + stiff·give)λ + give(stiff·n − t·along)
	p, q, s := c+n, c*n+stiff*give, give*(stiff*n-t*along)
	mu := -s / q
	for range 3 {
		mu -= (((mu+p)*mu+q)*mu + s) / ((3*mu+2*p)*mu + q)
	}
	a := -(p + mu) / 2
	b2 := q + mu*(p+mu) - a*a
	if !(b2 > 0) {
		return
	}
	b := math.Sqrt(b2)
	v.on, v.fast, v.slow = true, complex(a, b), mu
	v.lift = n * va
	square := 1 / ((mu-a)*(mu-a) + b2)
	for i := range 3 {
		v.swings[i] = v.a[i]
		v.swings[i][i] -= a
	}
	for i := range 3 {
		for j := range 3 {
			sum := 0.0
			for k := range 3 {
				sum += v.swings[i][k] * v.swings[k][j]
			}
			if i == j {
				sum += b2
			}
			v.drifts[i][j] = sum * square
		}
	}
	for i := range 3 {
		for j := range 3 {
			v.swings[i][j] /= b
		}
	}
	copy(v.base[:], y[attitude:spin])
	v.axes[0], v.axes[1], v.axes[2] = bodyAxes(y)
}

// weigh prepares the weights of a step's length: those of weights, for the fast pair and the slow one.
func (v *vane) weigh(h float64) {
	z := v.fast * complex(h, 0)
	h1, h2, h3 := phiComplex(z / 2)
	p1, p2, p3 := twiceComplex(z/2, h1, h2, h3)
	w := weightsFor(v.slow * h)
	lean := (v.slow - real(v.fast)) / imag(v.fast)
	for i, f := range [6]struct {
		fast complex128
		slow float64
	}{{h1 / 2, w.half1}, {h2, w.half2}, {p1, w.full1}, {2 * p2, w.full2}, {2*p2 - 4*p3, w.b2}, {4*p3 - p2, w.b4}} {
		v.weight[i] = wave{real(f.fast), imag(f.fast), f.slow - real(f.fast) - imag(f.fast)*lean}
	}
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
func (v *vane) of(weight int, p *triple) triple {
	w := &v.weight[weight]
	var out triple
	for i := range out {
		s, d := &v.swings[i], &v.drifts[i]
		out[i] = w.steady*p[i] + w.swing*(s[0]*p[0]+s[1]*p[1]+s[2]*p[2]) + w.drift*(d[0]*p[0]+d[1]*p[1]+d[2]*p[2])
	}
	return out
}

// pick takes a plane's triple out of a state.
func pick(plane int, y *state) triple {
	p := &planes[plane]
	return triple{y[p.at[0]], y[p.at[1]], p.sign * y[p.at[2]]}
}

// place puts it back.
func place(plane int, y *state, x triple) {
	p := &planes[plane]
	y[p.at[0]], y[p.at[1]], y[p.at[2]] = x[0], x[1], p.sign*x[2]
}

// left is how much the remainder N = f − Ay differs from that at the start of the step.
func (v *vane) left(plane int, b, fb, y, f *state) triple {
	at, rate, from, was := pick(plane, y), pick(plane, f), pick(plane, b), pick(plane, fb)
	x := triple{at[0] - from[0], at[1] - from[1], at[2] - from[2]}
	for i := range rate {
		a := &v.a[i]
		rate[i] -= was[i] + a[0]*x[0] + a[1]*x[1] + a[2]*x[2]
	}
	return rate
}

// enter turns a state or its rates into the step's variables.
func (v *vane) enter(y *state) {
	a, b := &v.base, y[attitude:spin]
	y[attitude], y[attitude+1], y[attitude+2], y[attitude+3] =
		a[0]*b[0]+a[1]*b[1]+a[2]*b[2]+a[3]*b[3],
		a[0]*b[1]-a[1]*b[0]-a[2]*b[3]+a[3]*b[2],
		a[0]*b[2]+a[1]*b[3]-a[2]*b[0]-a[3]*b[1],
		a[0]*b[3]-a[1]*b[2]+a[2]*b[1]-a[3]*b[0]
	u := [3]float64{y[vEast], y[vNorth], y[vUp]}
	y[vEast], y[vNorth], y[vUp] = dot(v.axes[0], u), dot(v.axes[1], u), dot(v.axes[2], u)
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
	for i, u := range [3]float64{y[vEast], y[vNorth], y[vUp]} {
		if i == 0 {
			y[vEast], y[vNorth], y[vUp] = 0, 0, 0
		}
		y[vEast] += u * v.axes[i][0]
		y[vNorth] += u * v.axes[i][1]
		y[vUp] += u * v.axes[i][2]
	}
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
	for k := range planes {
		p := pick(k, fb)
		place(k, &s.y2, sum(pick(k, b), h, v.of(half1, &p)))
	}
	s.swung(eq, v, t+h/2, &s.y2, &s.f2)
	along(n, &s.y3, b, h/2, &s.f2)
	for k := range planes {
		v.n2[k] = v.left(k, b, fb, &s.y2, &s.f2)
		place(k, &s.y3, sum(pick(k, &s.y2), h, v.of(half2, &v.n2[k])))
	}
	s.swung(eq, v, t+h/2, &s.y3, &s.f3)
	along(n, &s.y4, b, h, &s.f3)
	for k := range planes {
		p := pick(k, fb)
		v.ends[k] = sum(pick(k, b), h, v.of(full1, &p))
		v.n3[k] = v.left(k, b, fb, &s.y3, &s.f3)
		place(k, &s.y4, sum(v.ends[k], h, v.of(full2, &v.n3[k])))
	}
	s.swung(eq, v, t+h, &s.y4, &s.f4)
	s.simpson(y1, b, h, fb)
	for k := range planes {
		v.n4[k] = v.left(k, b, fb, &s.y4, &s.f4)
		both := sum(v.n2[k], 1, v.n3[k])
		place(k, y1, sum(sum(v.ends[k], h, v.of(b2, &both)), h, v.of(b4, &v.n4[k])))
	}
	s.full = *y1
	v.leave(y1)
	eq.rates(t+h, y1, f1, end)
	s.last = *f1
	v.enter(&s.last)
	s.differ(est, h, &s.last)
	for k := range planes {
		last := v.left(k, b, fb, &s.full, &s.last)
		off := sum(v.n4[k], -1, last)
		place(k, est, sum(triple{}, h, v.of(b4, &off)))
	}
	v.unseen(h, fb, est)
	v.settle(est)
	s.n = pointStates // swings are no quadratures
	s.lookBack(h, y0, f0, y1, f1, est)
	s.n = n
}

// size2 is the square of how far it swings, rad, from its rates: what they have of the slow mode, in which the body
// turns with its path, is none of it.
func (v *vane) size2(fb *state) float64 {
	size := 0.0
	inverse := 1 / imag(v.fast)
	for k := range planes {
		p := pick(k, fb)
		turn, spin := &v.drifts[0], &v.drifts[1]
		goes := 2 * inverse * (p[0] - turn[0]*p[0] - turn[1]*p[1] - turn[2]*p[2])
		lies := 2 * v.a[0][1] * inverse * inverse * (p[1] - spin[0]*p[0] - spin[1]*p[1] - spin[2]*p[2])
		size += goes*goes + lies*lies
	}
	return size
}

// unseen adds to the estimate what it cannot see, for the swing itself is exact: what the swing costs of the speed goes with
// its square, of twice its frequency, which Simpson's rule takes for what it is only while that is
// short; and the cubic of the dense output, which is allowed ten times as much, must follow the swing.
func (v *vane) unseen(h float64, fb, est *state) {
	z, size := h*imag(v.fast), v.size2(fb)
	z *= z
	z *= z
	est[vUp] = math.Abs(est[vUp]) + h*v.lift*size/2*min(16*z/2880, 1)
	est[attitude] = math.Abs(est[attitude]) + 0.1*math.Sqrt(size)*z/384
}

// sum is a + h·b.
func sum(a triple, h float64, b triple) triple {
	return triple{a[0] + h*b[0], a[1] + h*b[1], a[2] + h*b[2]}
}

// swung takes the rates of an inner point.
func (s *stages) swung(eq equations, v *vane, t float64, y, f *state) {
	s.full = *y
	v.leave(&s.full)
	eq.rates(t, &s.full, f, &s.forces)
	v.enter(f)
}
