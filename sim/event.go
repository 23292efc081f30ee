package sim

import (
	"math"
)

// eventFunctionKind names a quantity of time and state whose fall through zero is an
// event: it ends the step, and most often the phase.
type eventFunctionKind uint8

const (
	guideEnds eventFunctionKind = iota
	tubeEnds
	slidesBack  // back on the pad
	stalls      // stops on the guide, on its way up
	lifts       // thrust exceeds the weight along the guide
	liquidEnds  // none left
	jetStops    // with liquid left
	unchokes    // the gas's flow turns subsonic
	gasEnds     // chamber and ambient pressure have met
	turnsDown   // the top
	hitsGround  //
	fallsBelow  // the height of a canopy's rule
	canopyFills //
	windRises   // through the upper end of a stretch of wind
	windFalls   // through its lower end
	machRises   // through the upper end of a piece of the drag table
	machFalls   // through its lower end
	turnsRound  // the wind along the axis
)

// eventFunction is one quantity to watch in the present phase.
type eventFunction struct {
	kind   eventFunctionKind
	canopy int
}

// value of an event function, positive before its event, not positive after, and how fast
// it changes.
func (r *run) value(c eventFunction, y, dy *state, f *forces) slope {
	m := &r.model
	switch c.kind {
	case guideEnds:
		return slope{m.guide - m.travel(y), -m.travel(dy)}
	case tubeEnds:
		return slope{m.tube - m.travel(y), -m.travel(dy)}
	case slidesBack:
		return slope{m.travel(y), m.travel(dy)}
	case stalls:
		return slope{m.along(y), m.along(dy)}
	case lifts:
		if m.push != motorBurn {
			return slope{-f.lift, -r.changes(y, dy, f.lift, func(f *forces) float64 { return f.lift })}
		}
		return slope{-f.lift, -m.slope - f.leaving*m.gravity*m.cosTilt}
	case liquidEnds:
		return slope{y[store], dy[store]}
	case jetStops:
		if m.push == steadyLiquid {
			// The drive touches zero more than that it crosses it: it goes with the square of the jet's speed.
			speed := func(f *forces) float64 { return math.Sqrt(max(f.drive, 0)) }
			return slope{speed(f) - stillJet/2, r.changes(y, dy, speed(f), speed)}
		}
		return slope{y[jet] - stillJet, dy[jet]}
	case unchokes:
		margin := m.flow.ChokingMargin(f.chamber, f.pressure)
		pressing := m.flow.Exponent()*dy[store]/y[store] + f.density*m.gravity*dy[up]/f.pressure
		return slope{margin, (margin + 1) * pressing}
	case gasEnds:
		return slope{y[store] - m.flow.LastSpeedRatio(), dy[store]}
	case turnsDown:
		return slope{y[vUp], dy[vUp]}
	case hitsGround:
		return slope{y[up], dy[up]}
	case fallsBelow:
		return slope{y[up] - r.rocket.Canopies[c.canopy].Rule(r.rocket.Power).Value, dy[up]}
	case windRises:
		_, high := m.profile.Ends(m.stretch)
		return slope{high - y[up], -dy[up]}
	case windFalls:
		low, _ := m.profile.Ends(m.stretch)
		return slope{y[up] - low, dy[up]}
	case machRises:
		s := m.machSlope(y, dy, f)
		return slope{m.drag[m.piece].high - s.value, -s.rate}
	case machFalls:
		s := m.machSlope(y, dy, f)
		return slope{s.value - m.drag[m.piece].low, s.rate}
	case turnsRound:
		return m.axialSlope(y, dy, f)
	default: // canopyFills
		return slope{m.canopies[c.canopy].fill - (y[airPath] - m.airFrom[c.canopy]), -dy[airPath]}
	}
}

// changes tells how fast a force changes that has a value: a little on along the rates.
func (r *run) changes(y, dy *state, now float64, of func(*forces) float64) float64 {
	const bit = 1e-7 // s
	for i := range r.in {
		r.in[i] = y[i] + bit*dy[i]
	}
	r.model.rates(r.t, &r.in, &r.dy, &r.inner) // nothing of the time in them but for a motor
	return (of(&r.inner) - now) / bit
}

// stillJet is the speed below which a jet that slows down has stopped: with the
// liquid's inertia it may creep up to its rest for ever, pushing next to nothing, m/s.
const stillJet = 0.02

// once tells whether an event function past its zero is overdue: what happens there happens
// once. The others are quantities that may well be negative.
func (k eventFunctionKind) once() bool {
	switch k {
	case stalls, turnsDown, slidesBack, jetStops, windRises, windFalls, machRises, machFalls, turnsRound:
		return false
	}
	return true
}

// returns tells whether what has just begun at an event function's zero, rising, may be over within a step.
func (k eventFunctionKind) returns() bool {
	switch k {
	case turnsDown, windRises, windFalls, machRises, machFalls, turnsRound:
		return true
	}
	return false
}

// watch lists what can end the present phase, into the run's own array.
func (r *run) watch() {
	m := &r.model
	w := r.watched[:0]
	add := func(k eventFunctionKind) { w = append(w, watch{eventFunction: eventFunction{kind: k}}) }
	switch {
	case m.held && r.options.Held:
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
		if low, high := m.profile.Ends(m.stretch); !m.profile.Even() {
			if !math.IsInf(high, 1) {
				add(windRises)
			}
			if !math.IsInf(low, -1) {
				add(windFalls)
			}
		}
	}
	if m.rigid && m.faces != broadside {
		add(turnsRound)
	}
	switch m.push {
	case unsteadyLiquid:
		add(liquidEnds)
		add(jetStops)
	case steadyLiquid:
		add(liquidEnds)
		add(jetStops)
	case chokedGas:
		add(unchokes)
	case subsonicGas:
		add(gasEnds)
	}
	if p := &m.drag[m.piece]; !m.held {
		if !math.IsInf(p.high, 1) {
			add(machRises)
		}
		if !math.IsInf(p.low, -1) {
			add(machFalls)
		}
	}
	for i := range m.canopies {
		bit := uint64(1) << i
		if m.open&bit != 0 && m.full&bit == 0 {
			w = append(w, watch{eventFunction: eventFunction{canopyFills, i}})
		}
		if r.pending&bit != 0 && r.overTop && r.rocket.Canopies[i].Rule(r.rocket.Power).Trigger.Falls() {
			w = append(w, watch{eventFunction: eventFunction{fallsBelow, i}})
		}
	}
	for i := range w {
		w[i].now = r.value(w[i].eventFunction, &r.y, &r.f, &r.now)
	}
	r.watched, r.before = w, 0
}
