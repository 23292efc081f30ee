package sim

import (
	"math"

	"ullage/sim/rocket"
)

// atEvent makes the change of phase that an event brings.
func (r *run) atEvent(c eventFunction) {
	m := &r.model
	switch c.kind {
	case lifts:
		r.letGo()
	case guideEnds:
		r.leaveGuide()
	case tubeEnds:
		r.leaveTube()
	case stalls:
		// Exactly at rest: a remainder of speed would stop once more, for ever.
		r.y[vEast], r.y[vNorth], r.y[vUp] = 0, 0, 0
		r.topSoFar()
		if m.push == tubePush {
			// Without friction in the model it would bounce on the gas for ever.
			r.warn(Warning{Code: StuckOnTube, Value: m.travel(&r.y)})
			r.over = true
			return
		}
		r.enter()
	case slidesBack:
		r.rest()
	case liquidEnds:
		r.y[store] = 0
		r.liquidOut(0)
		r.beginGas(m.flow.CarriedGas())
		r.enter()
	case jetStops:
		r.jetStopped()
	case unchokes:
		m.push = subsonicGas
		r.y[store] = m.flow.SpeedRatio(r.y[store], r.now.pressure)
		r.resume()
		// A flow that was choked for a moment only steps on as if it had never been.
		if whole := (r.t - r.flight.LiquidOut.Time) / r.next; whole < 1 {
			r.next += (1 - whole*whole) * (r.firstStep() - r.next)
		}
	case gasEnds:
		m.left = r.now.gas
		r.endOfPush()
	case turnsDown:
		r.y[vUp] = 0
		r.top()
	case hitsGround:
		r.y[up] = 0
		r.land()
	case windRises:
		m.stretch++
		r.inStretch(m.profile.Jumps(m.stretch))
	case windFalls:
		m.stretch--
		r.inStretch(m.profile.Jumps(m.stretch + 1))
	case machRises:
		m.piece++
		r.resume()
	case machFalls:
		m.piece--
		r.resume()
	case turnsRound:
		r.turnRound()
		r.resume()
	case fallsBelow:
		r.release(c.canopy)
	case canopyFills:
		r.fill(c.canopy)
	}
}

// unseen is what no event function shows, as it is past its zero from the first: a rocket
// that slid off the pad's bottom is put back at rest, and a jet that never got going has stopped.
func (r *run) unseen() {
	m := &r.model
	switch {
	case m.guided && !m.held && m.travel(&r.y) < 0:
		r.rest()
	case !m.guided && m.findStretch(r.y[up]):
		r.enter()
	case len(m.drag) > 1 && m.findPiece(r.now.mach()):
		r.resume()
	case r.face():
		r.resume()
	case m.push == unsteadyLiquid && m.settled && r.y[jet] <= stillJet,
		m.push == steadyLiquid && r.now.drive <= stillJet*stillJet/4:
		r.jetStopped()
	}
}

// inStretch: the wind goes on otherwise, with a jump or a kink.
func (r *run) inStretch(jump bool) {
	if jump {
		r.enter()
	} else {
		r.resume()
	}
}

// letGo: the thrust has come to exceed the weight along the guide.
func (r *run) letGo() {
	m := &r.model
	m.held = false
	if !r.moved {
		r.mark(LiftOffEvent, 0)
	}
	r.moved = true
	r.enter()
}

// rest: on the pad, at rest. The flight is over unless more push may come.
func (r *run) rest() {
	m := &r.model
	r.topSoFar()
	m.held = true
	for _, i := range []int{east, north, up, vEast, vNorth, vUp} {
		r.y[i] = 0
	}
	if m.push == tubePush || r.nothingToCome() {
		r.over = true
		return
	}
	r.enter()
	if r.now.lift > 0 {
		r.letGo()
	}
}

// nothingToCome tells whether the drive is spent.
func (r *run) nothingToCome() bool { return r.model.push == noPush }

// leaveTube: the launch tube's tip leaves the throat and the flow begins.
func (r *run) leaveTube() {
	m := &r.model
	res := &r.flight.Results
	res.TubeExit = r.guideEnd()
	r.mark(TubeExitEvent, 0)
	last := m.guide-m.tube < 1e-9
	if last {
		r.exitRail()
	}
	r.beginLiquid()
	r.next = 0
	r.afterGuide(last)
}

// leaveGuide: the last guide leaves the rail.
func (r *run) leaveGuide() {
	if r.model.push == tubePush && r.model.guide-r.model.tube < 1e-9 {
		r.leaveTube() // both end here, and rounding chose the other first
		return
	}
	r.exitRail()
	r.afterGuide(true)
}

func (r *run) exitRail() {
	r.maxima.guideEnds()
	r.noteStability(&r.flight.Stability.RailExit)
	r.flight.RailExit = r.guideEnd()
	r.mark(RailExitEvent, 0)
}

// afterGuide enters what follows, free if the guide has ended.
func (r *run) afterGuide(free bool) {
	if free {
		r.model.guided = false
		r.model.findStretch(r.y[up])
		r.noteGuideEnd()
		if r.options.Guide || r.options.Push && r.nothingToCome() {
			r.over = true
			return
		}
		if r.model.body != nil && r.rocket.Rigid() {
			r.model.rigid = true
			r.model.body.start(&r.y)
		}
	}
	r.resume()
	if r.model.rigid && math.Abs(r.f[spin])+math.Abs(r.f[spin+1]) > 1e-6*r.now.inertia.pitch {
		r.next = min(r.next, r.firstStep()) // it begins to swing
	}
	if !free {
		return
	}
	for i := range r.rocket.Canopies {
		if bit := uint64(1) << i; r.waited&bit != 0 {
			r.warn(Warning{Code: CanopyWaited, Canopy: r.rocket.Canopies[i].Name, Value: r.t - r.due[i]})
			r.release(i)
		}
	}
}

func (r *run) guideEnd() GuideEnd {
	return GuideEnd{r.moment(), r.now.thrust / (r.now.mass * r.model.gravity)}
}

// beginLiquid starts the flow after the tube, or at release without one.
func (r *run) beginLiquid() {
	m := &r.model
	r.y[jet] = 0
	if m.liquid0 == 0 {
		r.beginGas(m.flow.CarriedGas())
		return
	}
	m.push, m.settled = unsteadyLiquid, false
	if r.rocket.Water.Flow == rocket.SteadyFlow {
		m.push, m.settled = steadyLiquid, true
	}
}

// beginGas starts the gas's flow, if its pressure is still above the air's.
func (r *run) beginGas(mass float64) {
	m := &r.model
	r.y[store], r.y[jet] = mass, 0
	m.settled = true
	p, _ := m.flow.GasState(mass)
	ambient, _ := m.column.At(r.y[up])
	switch {
	case p <= stopRatio*ambient:
		m.left = mass
		r.endOfPush()
	case m.flow.Chokes(p, ambient):
		m.push = chokedGas
	default:
		m.push = subsonicGas
		r.y[store] = m.flow.SpeedRatio(mass, ambient)
	}
}

// liquidOut notes the end of the liquid's flow.
func (r *run) liquidOut(left float64) {
	r.noteStability(&r.flight.Stability.LiquidOut)
	r.flight.LiquidOut = r.moment()
	r.flight.LiquidLeft = left * r.model.flow.Density()
	r.mark(LiquidOutEvent, 0)
	if left > 0 {
		r.warn(Warning{Code: LiquidLeft, Value: r.flight.LiquidLeft})
	}
}

// jetStopped: the liquid's flow ends with liquid left, which rides along.
func (r *run) jetStopped() {
	m := &r.model
	r.liquidOut(r.y[store])
	m.left, m.leftLiquid = m.flow.Density()*r.y[store]+m.flow.CarriedGas(), r.y[store]
	r.endOfPush()
}

// endOfPush: burnout. What counts from it can now be set.
func (r *run) endOfPush() {
	m := &r.model
	m.push = noPush
	r.noteStability(&r.flight.Stability.Burnout)
	r.flight.Burnout = r.moment()
	r.mark(BurnoutEvent, 0)
	r.countFrom(rocket.Burnout)
	if m.held || r.options.Push && !m.guided {
		r.over = true
		return
	}
	r.enter()
}

// nextStop is the next time known beforehand: a point of the thrust curve or a
// canopy that is due.
func (r *run) nextStop() float64 {
	stop := math.Inf(1)
	if r.model.push == motorBurn {
		stop = r.model.knot[1].time
	}
	for i := range r.rocket.Canopies {
		if bit := uint64(1) << i; r.pending&bit != 0 && r.waited&bit == 0 {
			stop = min(stop, r.due[i])
		}
	}
	return stop
}

// atStop does what was due.
func (r *run) atStop() {
	m := &r.model
	for i := range r.rocket.Canopies {
		bit := uint64(1) << i
		if r.pending&bit == 0 || r.waited&bit != 0 || r.due[i] > r.t {
			continue
		}
		if m.guided {
			r.waited |= bit
			continue
		}
		r.release(i)
	}
	if m.push != motorBurn || m.knot[1].time > r.t {
		return
	}
	if m.segment+2 >= m.curve.Len() {
		r.endOfPush()
		return
	}
	r.nextSegment()
}

// topSoFar keeps the highest point.
func (r *run) topSoFar() {
	a := &r.flight.Apogee
	if r.moved && (!a.Happened || r.y[up] > a.Height) {
		*a = r.moment()
	}
}

// top: the rocket turns down. What counts from it can now be set.
func (r *run) top() {
	r.topSoFar()
	if r.overTop { // thrust or a canopy took it up and over once more
		r.resume()
		return
	}
	r.overTop, r.model.fallen = true, true
	r.model.fast = math.Inf(1)
	r.mark(ApogeeEvent, 0)
	if r.scout || r.options.Top {
		r.over = true
		return
	}
	if r.model.rigid && r.options.NoseFirst {
		r.model.rigid = false
		r.enter()
	} else {
		r.resume()
	}
	r.countFrom(rocket.Apogee)
	for i := range r.rocket.Canopies {
		c := &r.rocket.Canopies[i]
		rule := c.Rule(r.rocket.Power)
		if r.pending&(1<<i) != 0 && rule.Trigger.Falls() && r.y[up] <= rule.Value {
			r.warn(Warning{Code: CanopyAtApogee, Canopy: c.Name, Value: rule.Value, Limit: r.y[up]})
			r.release(i)
		}
	}
}

// countFrom sets when canopies are due whose rules count from the moment that has come.
// One that counts back from the apogee was set at the beginning, if the apogee was known.
func (r *run) countFrom(moment rocket.Moment) {
	r.since[moment] = r.t
	r.count(moment, r.t)
}

// count is countFrom for a moment that came at a time.
func (r *run) count(moment rocket.Moment, at float64) {
	for i := range r.rocket.Canopies {
		from, wait, ok := r.rocket.Waits(i)
		if ok && from == moment && r.pending&(1<<i) != 0 && !(wait < 0 && !math.IsNaN(r.knownTop)) {
			r.due[i] = at + max(0, wait)
		}
	}
}

// land: touch-down.
func (r *run) land() {
	r.settle()
	m := r.moment()
	r.flight.Landing = Landing{
		Moment: m, Vertical: -r.y[vUp], Energy: 0.5 * r.now.mass * m.Speed * m.Speed,
		East: r.y[east], North: r.y[north],
	}
	r.mark(LandingEvent, 0)
	if r.model.push != noPush {
		r.warn(Warning{Code: LandedThrusting})
	}
	r.over = true
}
