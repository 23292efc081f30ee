package sim

import (
	"math"

	"ullage/sim/rocket"
)

// crossingKind is a condition that ends a step: a quantity of time and state that
// is positive before it and falls through zero there.
type crossingKind uint8

const (
	guideEnds crossingKind = iota
	tubeEnds
	slidesBack  // back on the pad
	stalls      // stops on the guide, on its way up
	lifts       // thrust exceeds the weight along the guide
	liquidEnds  // none left
	jetStops    // with liquid left
	jetSettles  // the jet has gathered its speed
	unchokes    // the gas's flow turns subsonic
	gasEnds     // chamber and ambient pressure have met
	turnsDown   // the top
	hitsGround  //
	fallsBelow  // the height of a canopy's rule
	canopyFills //
	gustBegins  // rising through the gust's height
	gustEnds    // falling through it
)

// crossing is one condition to watch for in the present phase.
type crossing struct {
	kind   crossingKind
	canopy int
}

// value of a crossing's quantity: positive before, not positive after.
func (r *run) value(c crossing, y *state, f *forces) float64 {
	m := &r.model
	switch c.kind {
	case guideEnds:
		return m.guide - m.travel(y)
	case tubeEnds:
		return m.tube - m.travel(y)
	case slidesBack:
		return m.travel(y)
	case stalls:
		return m.along(y)
	case lifts:
		return -f.lift
	case liquidEnds:
		return y[store]
	case jetStops:
		if m.push == steadyLiquid {
			return f.drive
		}
		return y[jet] - stillJet
	case jetSettles:
		return f.jetRate
	case unchokes:
		return m.flow.ChokingMargin(f.chamber, f.pressure)
	case gasEnds:
		return f.chamber/f.pressure - stopRatio
	case turnsDown:
		return y[vUp]
	case hitsGround:
		return y[up]
	case fallsBelow:
		return y[up] - r.rocket.Canopies[c.canopy].Rule(r.rocket.Power).Value
	case gustBegins:
		return r.rocket.Gust.Height - y[up]
	case gustEnds:
		return y[up] - r.rocket.Gust.Height
	default: // canopyFills
		return m.canopies[c.canopy].fill - (y[airPath] - m.airFrom[c.canopy])
	}
}

// stillJet is the speed below which a jet that slows down has stopped: with the
// liquid's inertia it may creep up to its rest for ever, pushing next to nothing, m/s.
const stillJet = 0.02

// once tells whether a crossing, past its zero, is overdue: what happens there happens
// once. The others are quantities that may well be negative.
func (k crossingKind) once() bool {
	switch k {
	case stalls, turnsDown, slidesBack, jetStops:
		return false
	}
	return true
}

// overdue makes the changes of phase that came within a hair of the one just made:
// two crossings in one step.
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
		r.atCrossing(r.watched[late])
	}
}

// needsForces tells whether value reads the forces, so that a look inside a step
// must work them out.
func (k crossingKind) needsForces() bool {
	switch k {
	case lifts, jetStops, jetSettles, unchokes, gasEnds:
		return true
	}
	return false
}

// watch lists what can end the present phase, into the run's own array.
func (r *run) watch() {
	m := &r.model
	w := r.watched[:0]
	add := func(k crossingKind) { w = append(w, crossing{kind: k}) }
	switch {
	case m.held:
		add(lifts)
	case m.guided:
		add(guideEnds)
		add(stalls)
		add(slidesBack)
		if m.push == tubePush {
			add(tubeEnds)
		}
	default:
		add(turnsDown)
		add(hitsGround)
		if r.gusts() {
			if m.gusty {
				add(gustEnds)
			} else {
				add(gustBegins)
			}
		}
	}
	switch m.push {
	case unsteadyLiquid:
		add(liquidEnds)
		add(jetStops)
		if !m.settled {
			add(jetSettles)
		}
	case steadyLiquid:
		add(liquidEnds)
		add(jetStops)
	case chokedGas:
		add(unchokes)
		add(gasEnds)
	case subsonicGas:
		add(gasEnds)
	}
	for i := range m.canopies {
		bit := uint64(1) << i
		if m.open&bit != 0 && m.full&bit == 0 {
			w = append(w, crossing{canopyFills, i})
		}
		if r.pending&bit != 0 && r.overTop && r.rocket.Canopies[i].Rule(r.rocket.Power).Trigger == rocket.Falling {
			w = append(w, crossing{fallsBelow, i})
		}
	}
	r.watched = w
}

// gusts tells whether there is a gust to meet.
func (r *run) gusts() bool { return r.rocket.Gust.Speed != 0 }

// firstCrossing finds the earliest watched crossing inside the step just tried,
// and shortens the step to end there. It tells whether there was one.
func (r *run) firstCrossing() (crossing, bool) {
	var found crossing
	first := math.Inf(1)
	for _, c := range r.watched {
		before, after := r.value(c, &r.y, &r.now), r.value(c, &r.y1, &r.model.last)
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

// inside finds where on the step's interpolant a crossing lies, as a fraction.
// Illinois false position: the quantity is smooth and changes sign once.
func (r *run) inside(c crossing, before, after float64) float64 {
	end := r.model.last // looking inside overwrites it
	defer func() { r.model.last = end }()
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

// lookInside is a crossing's quantity on the interpolant.
func (r *run) lookInside(c crossing, theta float64) float64 {
	hermite(r.stages.n, theta, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.in)
	if c.kind.needsForces() {
		r.model.rates(r.t+theta*r.h, &r.in, &r.dy)
	}
	return r.value(c, &r.in, &r.model.last)
}

// shorten takes the step again up to a crossing, as a step of the method and not
// by interpolation, and corrects its length by Newton until the time is right
// to 10 ns (or to the last digits of a long flight's clock). The last hair of the way
// goes by the rates at the end, which over so short a time are all there is to know.
func (r *run) shorten(c crossing, theta float64) {
	const delta = 1e-5
	slope := (r.lookInside(c, theta+delta) - r.lookInside(c, theta-delta)) / (2 * delta * r.h)
	full := r.h
	h := theta * full
	near := math.Max(1e-8, 1e-14*r.t)
	for range 8 {
		r.h = h
		r.try()
		g := r.value(c, &r.y1, &r.model.last)
		by := g / slope
		switch far := math.Abs(by); {
		case !(far > near): // also when the slope is nothing
			return
		case far < 1e-3*h && far < 1e-5:
			r.h -= by
			for i := range r.y1 {
				r.y1[i] -= by * r.f1[i]
			}
			r.model.rates(r.t+r.h, &r.y1, &r.f1)
			return
		}
		h = math.Min(math.Max(h-by, h/2), full)
	}
}
