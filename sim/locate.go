package sim

import "math"

// Events are found on cubics: an event function along a step is as good as the cubic
// through its values and slopes at both ends, which is its dense output. A step aims at
// what that of the step before, drawn on, says is coming; what is left in the end, a few
// per cent of the step at most, is cut off or added by the dense output of the state.

// watch is an event function watched in the present phase: at the start of the step before,
// now, and at the end of the step being tried.
type watch struct {
	eventFunction
	before, now, then slope
}

// slope is a value and its rate of change, 1/s.
type slope struct{ value, rate float64 }

// join is the course between two of them that lie h apart.
func join(a, b slope, h float64) cubic {
	return cubic{a.value, h * a.rate, b.value, h * b.rate}
}

// cubic is a function of θ, 0 to 1, by its values and slopes at both ends.
type cubic struct{ g0, d0, g1, d1 float64 }

func (c *cubic) at(theta float64) (value, slope float64) {
	bend := 3*(c.g1-c.g0) - 2*c.d0 - c.d1
	twist := 2*(c.g0-c.g1) + c.d0 + c.d1
	return c.g0 + theta*(c.d0+theta*(bend+theta*twist)), c.d0 + theta*(2*bend+3*theta*twist)
}

// root is where it falls through zero between 0 and 1; it is positive at 0 and is not at 1.
func (c *cubic) root() float64 { return c.between(0, 1, c.g0/(c.g0-c.g1)) }

// comesBack is where it falls through zero between 0 and 1 after it rose from there; it is negative at 1. +Inf when it did not.
func (c *cubic) comesBack() float64 {
	low, high := 0.5, 1.0
	for range 20 {
		if g, _ := c.at(low); g > 0 {
			return c.between(low, high, (low+high)/2)
		}
		low, high = low/2, low
	}
	return math.Inf(1)
}

// between is where it falls through zero between a place where it is positive and one where it is not, from a guess: by
// Newton's method, by halves where that leaves the bracket.
func (c *cubic) between(low, high, theta float64) float64 {
	for range 60 {
		g, slope := c.at(theta)
		if g > 0 {
			low = theta
		} else {
			high = theta
		}
		by := g / slope
		next := theta - by
		if !(next >= low && next <= high) {
			next = (low + high) / 2
		}
		if math.Abs(next-theta) < 1e-13 || high-low < 1e-13 {
			return next
		}
		theta = next
	}
	return high
}

// beyond is where it will fall through zero after 1, drawn on; +Inf when that is not in
// sight before limit.
func (c *cubic) beyond(limit float64) float64 {
	theta := 1.0
	for range 4 {
		g, slope := c.at(theta)
		if !(slope < 0) {
			return math.Inf(1)
		}
		if theta -= g / slope; !(theta >= 1 && theta <= limit) {
			return math.Inf(1)
		}
	}
	return theta
}

// look takes the event functions' values at the end of a step.
func (r *run) look() {
	for i := range r.watched {
		w := &r.watched[i]
		w.then = r.value(w.eventFunction, &r.y1, &r.f1, &r.then)
	}
}

// coming is how long it takes to the next event, as far as that can be told; only what comes
// within some time is looked for.
func (r *run) coming(within float64) float64 {
	first := math.Inf(1)
	for i := range r.watched {
		w := &r.watched[i]
		if !(w.now.value > 0 && w.now.value+1.5*within*w.now.rate < 0) {
			continue
		}
		left := -w.now.value / w.now.rate
		if r.before > 0 {
			c := join(w.before, w.now, r.before)
			left = r.before * (c.beyond(1+2*within/r.before) - 1)
		}
		first = min(first, left)
	}
	return first
}

// firstEvent ends the step just accepted on the earliest event in it, if there is one.
func (r *run) firstEvent() (eventFunction, bool) {
	for range 20 {
		r.look()
		found, theta := -1, math.Inf(1)
		for i := range r.watched {
			w := &r.watched[i]
			at := math.Inf(1)
			if !(w.now.value > 0) {
				if !w.kind.returns() || w.then.value >= 0 || !(w.now.value > -1e-6*w.now.rate*r.h) {
					continue
				}
				c := join(w.now, w.then, r.h)
				at = c.comesBack()
			} else if w.then.value <= 0 {
				c := join(w.now, w.then, r.h)
				at = c.root()
			} else if w.then.value < stretch*w.now.value {
				c := join(w.now, w.then, r.h)
				if at = c.beyond(1 + stretch); r.t+at*r.h > r.stop {
					at = math.Inf(1)
				}
			}
			if at < theta {
				found, theta = i, at
			}
		}
		switch {
		case found < 0:
			return eventFunction{}, false
		case r.dense(theta):
			r.cut(theta)
			return r.watched[found].eventFunction, true
		case theta > 1:
			return eventFunction{}, false
		}
		r.h *= theta
		r.try()
		r.fault = r.size()
	}
	return eventFunction{}, false
}

// stretch is how far beyond its end a step may be drawn on to an event.
const stretch = 0.05

// dense tells whether the dense output at θ is as good as the step itself. A cubic's error
// goes with θ²(1 − θ)² and with what the step's error goes with.
func (r *run) dense(theta float64) bool {
	x := theta * (1 - theta)
	return r.fault*x*x < 2e-4
}

// cut makes θ of the step the step, by its dense output.
func (r *run) cut(theta float64) {
	hermite(r.stages.n, theta, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.in)
	r.h *= theta
	for i := range r.stages.n {
		r.y1[i] = r.in[i]
	}
	r.model.rates(r.t+r.h, &r.y1, &r.f1, &r.then)
	r.look()
}

// overdue makes the changes of phase that came within a hair of the one just made:
// two events in one step.
func (r *run) overdue() {
	for range 16 {
		late := -1
		for i := range r.watched {
			if w := &r.watched[i]; w.kind.once() && w.now.value < 0 {
				late = i
				break
			}
		}
		switch {
		case r.over:
			return
		case late >= 0:
			r.atEvent(r.watched[late].eventFunction)
		case !r.model.guided && !r.overTop && r.y[vUp] <= 0:
			r.atEvent(eventFunction{kind: turnsDown}) // the first time happens once as well
		default:
			return
		}
	}
}
