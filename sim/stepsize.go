package sim

import "math"

// The apogee has to be smooth against whatever changes a little from one flight to the next, for those who look
// for its highest: so the lengths of steps are smooth functions too. A step is cut at what it meets, however little
// of it is left; one that is taken again is shorter by no more than what makes it fit; and what
// is believed of a step goes by how much of it was taken. As a step comes or goes then, it comes and goes as one of no length.

// chooseStep sets the length of the next step: what the error allows, up to the next known
// time, landing on it exactly, or to the next event that is in sight.
func (r *run) chooseStep() {
	fresh := r.next == 0
	if fresh {
		r.next = r.firstStep()
	}
	share := 1.0
	if fresh {
		share = 0.5 // with nothing to look back on, a step that does a whole phase tells too little of its error
	}
	event := share * r.coming(r.next/share)
	event = max(event, least*max(1, r.t))
	r.h = min(r.next, event, min(r.stop, timeLimit)-r.t, r.roughAhead())
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
// where the equations have no answer, is to be tried again shorter.
func (r *run) accept() bool {
	r.try()
	r.fault = r.size()
	fits := 0.4
	if !math.IsNaN(r.fault) {
		fits = 1 / math.Sqrt(math.Sqrt(r.fault))
	}
	if r.fault <= 1 || r.h <= 1e-13*max(1, r.t) {
		// A step that was cut short to meet something tells little of those behind it, if its error is small.
		whole := r.h / r.next
		r.next += min(whole*whole+r.fault, 1) * (r.h*min(0.9*fits*r.trend(), growth) - r.next)
		r.again = false
		r.flight.Steps++
		r.flight.effort[r.leg].steps++
		return true
	}
	r.shorten()
	r.flight.Rejected++
	r.flight.effort[r.leg].rejected++
	return false
}

// shorten sets the length at which a step that is too bold is taken again, shorter by no more than what makes it fit. How its
// error goes with its length is taken from the try before, if there was one: far from small it does not yet
// go with the fourth power.
func (r *run) shorten() {
	power, share := 4.0, 0.2
	tells := !math.IsNaN(r.fault) && !math.IsInf(r.fault, 1)
	if tells {
		if r.again {
			power = min(max(math.Log(r.faultAgain/r.fault)/math.Log(r.longer/r.h), 1), 4)
		}
		share = min(max(math.Pow(r.fault, -4/(3*power)), share), 1-1e-6)
	}
	r.again, r.longer, r.faultAgain = tells, r.h, r.fault
	r.next = r.h * share
}

// trend shortens the next step by what made the error grow from the step before to this one, for it will
// go on: Gustafsson, ACM Trans. Math. Softw. 20 (1994) 496. Errors of next to nothing tell no trend.
func (r *run) trend() float64 {
	const faint = 0.05
	smaller := min(r.fault, r.faultBefore)
	if r.before == 0 || smaller <= faint {
		return 1
	}
	grown := r.h / r.before * math.Sqrt(math.Sqrt(r.faultBefore/r.fault))
	return 1 - min(1, 10*(smaller-faint))*(1-min(1, grown))
}

// size is the error of the step just tried over what is allowed; NaN if it has none.
func (r *run) size() float64 {
	e := worst(r.stages.n, &r.est, &r.weights) / r.options.Tolerance
	if r.stages.before == 0 && (r.model.push.liquid() || r.model.push == tubePush) {
		e *= 6 // with nothing to look back on, an estimate within a surge tells too little
	}
	return e
}

// nextSegment goes on to the thrust curve's next segment: the slope changes, not the size of things, and what the step before
// tells is kept, its rates as they would have been with the new slope; how the change acts on mass and drag is left out.
func (r *run) nextSegment() {
	m, s := &r.model, &r.stages
	before, slope := s.before, m.slope
	m.loadSegment(m.segment + 1)
	r.resume()
	if m.held {
		return
	}
	s.before, s.trust = before, 0.3
	by := (slope - m.slope) * before
	s.earlier[impulse] += by
	setVelocity(&s.earlier, velocity(&s.earlier).on(by/r.now.mass, m.pushLine(&r.y)))
}

// firstStep guesses a length after a change of phase, after Hairer, Nørsett and
// Wanner, Solving Ordinary Differential Equations I, section II.4: from the sizes of
// the state and its first two derivatives.
func (r *run) firstStep() float64 {
	if r.stiff.frame != nil && !r.model.settled {
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
