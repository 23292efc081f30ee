package sim

import "math"

// chooseStep sets the length of the next step: what the error allows, up to the next known
// time, landing on it exactly, or to the next event that is in sight.
func (r *run) chooseStep() {
	if r.next == 0 {
		r.next = r.firstStep()
	}
	left := min(r.stop, timeLimit) - r.t
	if event := max(r.coming(r.next), least*max(1, r.t)); event < left {
		left = event
	}
	switch {
	case r.next >= 0.95*left:
		r.h = left
	case r.next >= 0.5*left:
		r.h = left / 2
	default:
		r.h = r.next
	}
	r.h = min(r.h, r.roughAhead())
}

// growth is the most that a step may be longer than the one before.
const growth = 10

// least is the shortest step towards an event, over the time (or 1 s): 10 ns.
const least = 1e-8

// roughAhead bounds the next step where the ground lies ahead in wind, whose power law ends
// there with an infinite slope, by a share of the way: steps that shrink towards it cost
// less than steps that try to reach over it and are taken back.
func (r *run) roughAhead() float64 {
	if r.nearsGround() && r.y[up] > windFloor {
		way, speed, faster := max(0.85*r.y[up], windFloor), -r.y[vUp], max(-r.f[vUp], 0)
		return 2 * way / (speed + math.Sqrt(speed*speed+2*faster*way))
	}
	return math.Inf(1)
}

// nearsGround tells whether it falls in wind.
func (r *run) nearsGround() bool {
	return r.y[vUp] <= 0 && !r.model.guided && r.model.profile.Rooted()
}

// accept tries a step and judges its error. A step that is too bold, or went
// where the equations have no answer, is to be tried again shorter. A step that was cut
// short to meet something does not hold back those behind it.
func (r *run) accept() bool {
	r.try()
	r.fault = r.size()
	better := 0.9 / math.Sqrt(math.Sqrt(r.fault))
	if r.before > 0 && min(r.fault, r.faultBefore) > 0.1 {
		// What made the error grow will go on: Gustafsson, ACM Trans. Math. Softw. 20 (1994) 496.
		better *= min(1, r.h/r.before*math.Sqrt(math.Sqrt(r.faultBefore/r.fault)))
	}
	if r.fault <= 1 || r.h <= 1e-13*max(1, r.t) {
		r.next = r.h * min(better, max(growth, r.next/r.h))
		r.flight.Steps++
		r.flight.effort[r.leg].steps++
		return true
	}
	r.flight.Rejected++
	r.flight.effort[r.leg].rejected++
	if math.IsNaN(r.fault) {
		better = 0.4
	}
	r.next = r.h * max(0.2, better)
	return false
}

// size is the error of the step just tried over what is allowed; NaN if it has none.
func (r *run) size() float64 {
	return worst(r.stages.n, &r.est, &r.weights) / r.options.Tolerance
}

// firstStep guesses a length after a change of phase, after Hairer, Nørsett and
// Wanner, Solving Ordinary Differential Equations I, section II.4: from the sizes of
// the state and its first two derivatives.
func (r *run) firstStep() float64 {
	if r.stiff.frame != nil {
		return 0.3 / math.Abs(r.stiff.rate[0])
	}
	size := func(v *state) float64 { return worst(r.stages.n, v, &r.weights) }
	d1 := size(&r.f)
	h := 1e-6
	if d1 > 1e-8 {
		h = 0.01 / d1
	}
	h = min(h, 1)
	for i := range r.in {
		r.in[i] = r.y[i] + h*r.f[i]
	}
	r.model.rates(r.t+h, &r.in, &r.dy, &r.inner)
	for i := range r.dy {
		r.dy[i] = (r.dy[i] - r.f[i]) / h
	}
	d2 := size(&r.dy)
	bend := max(d1, d2)
	if !(bend > 1e-12) {
		return max(1e-6, h*1e-3)
	}
	return min(100*h, math.Pow(r.options.Tolerance/bend, 0.25))
}

// timeLimit ends a flight that does not come down, s.
const timeLimit = 24 * 3600.0

// stepLimit ends a flight that will not get on, so that nothing can hang: a hundred
// times what the longest curves need.
const stepLimit = 1_000_000
