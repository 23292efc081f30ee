package sim

import "math"

// firstEvent finds the earliest watched event inside the step just tried,
// and shortens the step to end there. It tells whether there was one.
func (r *run) firstEvent() (eventFunction, bool) {
	var found eventFunction
	first := math.Inf(1)
	for _, c := range r.watched {
		before, after := r.value(c, &r.y, &r.now), r.value(c, &r.y1, &r.then)
		if !(before > 0 && after <= 0) {
			continue
		}
		if theta := r.inside(c, before, after); theta < first {
			first, found = theta, c
		}
	}
	if math.IsInf(first, 1) {
		return found, false
	}
	r.shorten(found, first)
	return found, true
}

// inside finds where on the step's dense output an event lies, as a fraction.
// Illinois false position: the quantity is smooth and changes sign once.
func (r *run) inside(c eventFunction, before, after float64) float64 {
	a, fa, b, fb := 0.0, before, 1.0, after
	kept := 0 // which end the last two points left standing
	for range 60 {
		x := (a*fb - b*fa) / (fb - fa)
		if !(x > a && x < b) {
			x = (a + b) / 2
		}
		fx := r.lookInside(c, x)
		if fx > 0 {
			a, fa = x, fx
			if kept == 1 {
				fb /= 2
			}
			kept = 1
		} else {
			b, fb = x, fx
			if kept == -1 {
				fa /= 2
			}
			kept = -1
		}
		if math.Abs(fx) <= 1e-4*math.Min(before, -after) || (b-a) < 1e-9 {
			return x
		}
	}
	return b
}

// lookInside is an event function on the dense output.
func (r *run) lookInside(c eventFunction, theta float64) float64 {
	hermite(r.stages.n, theta, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.in)
	if c.kind.needsForces() {
		r.model.rates(r.t+theta*r.h, &r.in, &r.dy, &r.inner)
	}
	return r.value(c, &r.in, &r.inner)
}

// shorten takes the step again up to an event, as a step of the method and not
// by interpolation, and corrects its length by Newton until the time is right
// to 10 ns (or to the last digits of a long flight's clock). The last hair of the way
// goes by the rates at the end, which over so short a time are all there is to know.
func (r *run) shorten(c eventFunction, theta float64) {
	const delta = 1e-5
	slope := (r.lookInside(c, theta+delta) - r.lookInside(c, theta-delta)) / (2 * delta * r.h)
	full := r.h
	h := theta * full
	near := math.Max(1e-8, 1e-14*r.t)
	for range 8 {
		r.h = h
		r.try()
		g := r.value(c, &r.y1, &r.then)
		by := g / slope
		switch far := math.Abs(by); {
		case !(far > near): // also when the slope is nothing
			return
		case far < 1e-3*h && far < 1e-5:
			r.h -= by
			for i := range r.y1 {
				r.y1[i] -= by * r.f1[i]
			}
			r.model.rates(r.t+r.h, &r.y1, &r.f1, &r.then)
			return
		}
		h = math.Min(math.Max(h-by, h/2), full)
	}
}

// overdue makes the changes of phase that came within a hair of the one just made:
// two events in one step.
func (r *run) overdue() {
	for range 16 {
		late := -1
		for i, c := range r.watched {
			if c.kind.once() && r.value(c, &r.y, &r.now) < 0 {
				late = i
				break
			}
		}
		if late < 0 || r.over {
			return
		}
		r.atEvent(r.watched[late])
	}
}
