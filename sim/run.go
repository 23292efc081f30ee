package sim

import (
	"context"
	"math"
	"ullage/sim/rocket"
)

// run is one flight being integrated. It can be made ready for another one.
type run struct {
	made   made
	model  model
	stages stages
	stiff  stiffPart
	course
}

// course is what is new with every flight.
type course struct {
	rocket  *rocket.Rocket
	flight  *Flight
	options Options
	from    *WayUp // that it goes on from; nil mostly

	t, h    float64
	y, f    state  // at t
	now     forces // at t
	y1, f1  state  // at t + h, the step being tried
	then    forces // at t + h
	est     state
	weights state   // of the errors
	hurry   float64 // scale of the velocity over the speed, while the drive pushes; else 0
	next    float64 // step length to try
	stop    float64 // the next time known beforehand
	fault   float64 // error of the step being tried over what is allowed

	before      float64 // length of the step before, in this phase; 0 if none
	faultBefore float64
	again       bool // the step has been tried longer, with
	longer      float64
	faultAgain  float64

	in, dy state // for looks inside a step
	inner  forces

	watched  []watch
	room     [16 + rocket.MaxCanopies]watch
	maxima   maxima
	pending  uint64 // canopies not yet released
	due      [rocket.MaxCanopies]float64
	since    [rocket.Moments]float64 // when what rules count from came; NaN before
	sight    float64                 // the farthest time that steps had in sight
	taken    int                     // turns of the loop
	waited   uint64                  // due while on the guide
	overTop  bool                    // the top has been passed
	moved    bool                    // it left the pad
	reached  float64                 // farthest travel along the guide
	scout    bool                    // only up to the top, for knownTop
	knownTop float64                 // the apogee's time from a first pass; NaN without
	over     bool
	leg      leg
}

// fly integrates until the flight is over, from release or from a way up: the one loop of the engine.
func (r *run) fly(ctx context.Context) error {
	if r.from != nil {
		r.goOn()
	} else {
		r.begin()
	}
	for ; !r.over; r.taken++ {
		if r.taken%64 == 0 {
			if err := ctx.Err(); err != nil {
				return err
			}
		}
		if r.t >= timeLimit || r.taken >= stepLimit {
			r.warn(Warning{Code: TimeLimit, Value: r.t})
			break
		}
		r.onward()
	}
	r.finish()
	return nil
}

// onward does what is due, or takes a step and what comes at its end.
func (r *run) onward() {
	r.stop = r.nextStop()
	if r.t >= r.stop {
		r.atStop()
		r.overdue()
		return
	}
	r.chooseStep()
	if !r.accept() {
		return
	}
	c, crossed := r.firstEvent()
	r.maxima.within(r)
	r.keep()
	r.advance()
	if crossed {
		if c.kind == turnsDown {
			r.keepWayUp()
		}
		r.atEvent(c)
		r.overdue()
	} else {
		r.unseen()
	}
}

// try takes the step of length h.
func (r *run) try() {
	r.sight = max(r.sight, r.t+(1+stretch)*r.h)
	r.stages.step(&r.model, &r.stiff, r.t, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.est, &r.then)
}

// advance makes the end of the step the present.
func (r *run) advance() {
	r.t += r.h
	if math.Abs(r.t-r.stop) < 1e-12*max(1, r.stop) {
		r.t = r.stop
	}
	r.before, r.faultBefore = r.h, r.fault
	if r.model.push != noPush || !r.overTop {
		r.stages.remember(r.h, &r.f, r.stiff.frame != nil)
	}
	for i := range r.watched {
		w := &r.watched[i]
		w.before, w.now = w.now, w.then
	}
	r.y = r.y1 // one after the other: all at once they would be copied twice
	r.f = r.f1
	r.now = r.then
	if r.model.rigid {
		normalise(&r.y)
	}
	r.model.stiffness(&r.y, &r.f, &r.now, &r.stiff)
	r.rescale()
	r.watchMargin()
	if r.model.guided {
		r.reached = max(r.reached, r.model.travel(&r.y))
	}
}

// enter begins a phase at the present time and state.
func (r *run) enter() {
	r.account()
	if len(r.model.drag) > 1 {
		r.model.air(&r.y, &r.now)
		r.model.findPiece(r.now.mach())
	}
	r.model.rates(r.t, &r.y, &r.f, &r.now)
	r.face()
	r.model.stiffness(&r.y, &r.f, &r.now, &r.stiff)
	r.scale()
	r.stages.n = r.model.active()
	r.y1 = r.y // of which a step leaves alone what does not change in the phase
	r.watch()
	r.stages.before = 0
	r.next = 0
	r.maxima.enter(r)
}

// resume begins a phase that goes on as the one before: the length of the step does not
// start anew.
func (r *run) resume() {
	next := r.next
	r.enter()
	r.next = next
}

func (r *run) warn(w Warning) { r.flight.Warnings = append(r.flight.Warnings, w) }

func (r *run) mark(kind EventKind, canopy int) {
	r.flight.Events = append(r.flight.Events, Event{kind, canopy, r.t, r.y[up]})
}

// moment is the present as the user reads it.
func (r *run) moment() Moment {
	return Moment{true, r.t, r.y[up], speedOf(&r.y)}
}

func speedOf(y *state) float64 {
	return math.Sqrt(y[vEast]*y[vEast] + y[vNorth]*y[vNorth] + y[vUp]*y[vUp])
}
