package sim

import (
	"math"

	"ullage/sim/solve"
)

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

// inside finds where on the step's dense output an event lies, as a fraction. Its function
// is smooth there and changes sign once.
func (r *run) inside(c eventFunction, before, after float64) float64 {
	b, _ := solve.Root(func(theta float64) (float64, error) { return r.lookInside(c, theta), nil },
		solve.Bracket{In: solve.Point{X: 0, Y: before}, Out: solve.Point{X: 1, Y: after}},
		solve.Tolerance{X: 1e-9, Y: 1e-4 * math.Min(before, -after)})
	if near := b.Nearest().X; near > 0 {
		return near
	}
	return b.Out.X // a step has a length
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
