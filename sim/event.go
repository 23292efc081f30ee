package sim

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

// eventFunction is one quantity to watch in the present phase.
type eventFunction struct {
	kind   eventFunctionKind
	canopy int
}

// value of an event function: positive before its event, not positive after.
func (r *run) value(c eventFunction, y *state, f *forces) float64 {
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

// once tells whether an event function past its zero is overdue: what happens there happens
// once. The others are quantities that may well be negative.
func (k eventFunctionKind) once() bool {
	switch k {
	case stalls, turnsDown, slidesBack, jetStops:
		return false
	}
	return true
}

// needsForces tells whether value reads the forces, so that a look inside a step
// must work them out.
func (k eventFunctionKind) needsForces() bool {
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
	add := func(k eventFunctionKind) { w = append(w, eventFunction{kind: k}) }
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
			w = append(w, eventFunction{canopyFills, i})
		}
		if r.pending&bit != 0 && r.overTop && r.rocket.Canopies[i].Rule(r.rocket.Power).Trigger.Falls() {
			w = append(w, eventFunction{fallsBelow, i})
		}
	}
	r.watched = w
}

// gusts tells whether there is a gust to meet.
func (r *run) gusts() bool { return r.rocket.Gust.Speed != 0 }
