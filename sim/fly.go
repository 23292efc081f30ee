package sim

import (
	"context"
	"math"

	"ullage/sim/rocket"
)

// Flight is one flown flight: its results, what to warn of, and, if it was kept,
// the dense record behind At, Samples and Trace.
type Flight struct {
	Rocket *rocket.Rocket
	Results
	Warnings []Warning
	Events   []Event
	Steps    int // accepted
	Rejected int // steps tried again shorter

	record record
}

// Fly flies a rocket from release to landing. The result depends on nothing but
// its arguments: the same ones give the same bits. It returns the rocket's Faults,
// or the context's error when that ends first; a rocket that does not leave
// the ground is a flight with a warning, not an error.
func Fly(ctx context.Context, r *rocket.Rocket, o Options) (*Flight, error) {
	if err := r.ValidateFlight(); err != nil {
		return nil, err
	}
	if o.Tolerance <= 0 {
		o.Tolerance = DefaultTolerance
	}
	early := math.NaN()
	if opensBeforeTop(r) {
		// "apogee − 1 s" needs to know the top before it comes: fly up once
		// without those canopies.
		scout := newRun(r, Options{Tolerance: o.Tolerance, Point: o.Point})
		scout.scout = true
		if err := scout.fly(ctx); err != nil {
			return nil, err
		}
		if scout.flight.Apogee.Happened {
			early = scout.flight.Apogee.Time
		}
	}
	flying := newRun(r, o)
	flying.knownTop = early
	if err := flying.fly(ctx); err != nil {
		return nil, err
	}
	return flying.flight, nil
}

// opensBeforeTop tells whether a rule counts back from the apogee.
func opensBeforeTop(r *rocket.Rocket) bool {
	for i := range r.Canopies {
		if rule := r.Canopies[i].Rule(r.Power); rule.Trigger == rocket.AfterApogee && rule.Value < 0 {
			return true
		}
	}
	return false
}

// run is one flight being integrated.
type run struct {
	rocket  *rocket.Rocket
	flight  *Flight
	options Options
	model   model
	stages  stages
	stiff   stiffPart
	floor   state

	t, h     float64
	y, f     state  // at t
	now      forces // at t
	y1, f1   state  // at t + h, the step being tried
	est      state
	next     float64 // step length to try
	in, dy   state   // for looks inside a step
	halfway  state   // the dense output in the middle of the step, when midKnown
	middle   forces  // the forces there
	midKnown bool

	watched  []crossing
	room     [16 + rocket.MaxCanopies]crossing
	maxima   maxima
	pending  uint64 // canopies not yet released
	due      [rocket.MaxCanopies]float64
	waited   uint64  // due while on the guide
	overTop  bool    // the top has been passed
	moved    bool    // it left the pad
	reached  float64 // farthest travel along the guide
	scout    bool    // only up to the top, for knownTop
	knownTop float64 // the apogee's time from a first pass; NaN without
	over     bool
}

// fly integrates until the flight is over: the one loop of the engine.
func (r *run) fly(ctx context.Context) error {
	r.begin()
	for n := 0; !r.over; n++ {
		if n%64 == 0 {
			if err := ctx.Err(); err != nil {
				return err
			}
		}
		stop := r.nextStop()
		if r.t >= stop {
			r.atStop()
			r.overdue()
			continue
		}
		if r.t >= timeLimit || n >= stepLimit {
			r.warn(Warning{Code: TimeLimit, Value: r.t})
			break
		}
		r.chooseStep(stop)
		if !r.accept() {
			continue
		}
		c, crossed := r.firstCrossing()
		r.maxima.within(r)
		r.keep()
		r.advance()
		if crossed {
			r.atCrossing(c)
			r.overdue()
		} else {
			r.stayOnPad()
		}
	}
	r.finish()
	return nil
}

// chooseStep sets the length of the next step: what the error allows, up to the
// next known time and landing on it exactly.
func (r *run) chooseStep(stop float64) {
	if r.next == 0 {
		r.next = r.firstStep()
	}
	r.next = math.Min(r.next, r.roughAhead())
	left := math.Min(stop, timeLimit) - r.t
	switch {
	case r.next >= 0.999*left:
		r.h = left
	case r.next >= 0.5*left:
		r.h = left / 2
	default:
		r.h = r.next
	}
}

// roughAhead bounds the next step where a place without smoothness lies ahead, by a
// share of the way there: steps that shrink towards it cost less than steps that try to
// reach over it and are taken back. There are two: the end of the gas's flow, which
// its mass meets like a parabola its vertex, m − m_e ∝ (t_e − t)², and the ground, where
// the wind's power law ends with an infinite slope.
func (r *run) roughAhead() float64 {
	m, f := &r.model, &r.now
	switch {
	case m.push == subsonicGas:
		excess := 1 - f.pressure/f.chamber
		return 0.75 * excess * f.gas / (m.flow.Exponent() * f.leaving)
	case r.y[vUp] < 0 && r.y[up] > windFloor && !m.guided && !m.profile.Calm():
		return math.Max(0.85*r.y[up], windFloor) / -r.y[vUp]
	}
	return math.Inf(1)
}

// try takes the step of length h.
func (r *run) try() {
	r.stages.step(&r.model, &r.stiff, r.t, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.est)
	if r.midKnown = r.model.push == unsteadyLiquid; r.midKnown {
		r.correct()
	}
}

// correct takes what the jet drags along once more over the step, by Simpson's rule
// on both ends and the middle of the dense output. The jet itself comes out of a stiff
// step to many digits, but not out of its stages, which costs volume, speed and
// impulse their order. The maxima look at the middle in any case.
func (r *run) correct() {
	end := r.model.last
	hermite(r.stages.n, 0.5, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.halfway)
	r.model.rates(r.t+r.h/2, &r.halfway, &r.dy)
	r.middle, r.model.last = r.model.last, end
	simpson := func(i int) float64 { return r.h / 6 * (r.f[i] + 4*r.dy[i] + r.f1[i]) }
	spurt := r.y1[jet] - r.y[jet] - simpson(jet) // what the rule would miss of the jet
	flow := &r.model.flow
	for i := range r.stages.n {
		if i == jet {
			continue
		}
		better := r.y[i] + simpson(i)
		switch i {
		case vEast, vNorth, vUp:
			better += r.stiff.push[i-vEast] * spurt
		case impulse:
			better += flow.Density() * flow.ThroatArea() * flow.Depth(r.y[store]) * spurt
		}
		// A correction that is not small beside the error allowed corrects nothing.
		if doubt := doubtful * math.Abs(better-r.y1[i]); !(doubt <= math.Abs(r.est[i])) {
			r.est[i] = doubt
		}
		r.y1[i] = better
	}
}

// doubtful is how much of a correction counts as error.
const doubtful = 0.2

// accept tries a step and judges its error. A step that is too bold, or went
// where the equations have no answer, is to be tried again shorter.
func (r *run) accept() bool {
	r.try()
	e := worst(r.stages.n, &r.est, &r.y, &r.y1, &r.floor, r.options.Tolerance)
	if e <= 1 || r.h <= 1e-13*math.Max(1, r.t) {
		grow := 5.0
		if e > 1e-4 {
			grow = math.Min(5, 0.9/math.Sqrt(math.Sqrt(e)))
		}
		r.next = r.h * grow
		r.flight.Steps++
		return true
	}
	r.flight.Rejected++
	shrink := 0.4
	if !math.IsNaN(e) {
		shrink = math.Max(0.2, 0.9/math.Sqrt(math.Sqrt(e)))
	}
	r.next = r.h * shrink
	return false
}

// firstStep guesses a length after a change of phase, after Hairer, Nørsett and
// Wanner, Solving Ordinary Differential Equations I, section II.4: from the sizes of
// the state and its first two derivatives.
func (r *run) firstStep() float64 {
	size := func(v *state) float64 { return worst(r.stages.n, v, &r.y, &r.y, &r.floor, 1) }
	d1 := size(&r.f)
	h := 1e-6
	if d1 > 1e-8 {
		h = 0.01 / d1
	}
	h = math.Min(h, 1)
	for i := range r.in {
		r.in[i] = r.y[i] + h*r.f[i]
	}
	r.model.rates(r.t+h, &r.in, &r.dy)
	for i := range r.dy {
		r.dy[i] = (r.dy[i] - r.f[i]) / h
	}
	d2 := size(&r.dy)
	bend := math.Max(d1, d2)
	if !(bend > 1e-12) {
		return math.Max(1e-6, h*1e-3)
	}
	return math.Min(100*h, math.Pow(r.options.Tolerance/bend, 0.25))
}

// advance makes the end of the step the present.
func (r *run) advance() {
	r.t += r.h
	if stop := r.nextStop(); math.Abs(r.t-stop) < 1e-12*math.Max(1, stop) {
		r.t = stop
	}
	r.y, r.f, r.now = r.y1, r.f1, r.model.last
	if r.model.rigid {
		normalise(&r.y)
	}
	old := r.stiff
	r.model.stiffness(&r.y, &r.stiff)
	for k := range min(old.count, r.stiff.count) {
		// d(f − λy)/dt with the new λ, of which the step knows that with the old one.
		r.stiff.drift[k] = r.stages.slope[k] + (old.rate[k]-r.stiff.rate[k])*r.f[r.stiff.index[k]]
	}
	r.watchMargin()
	if r.model.guided {
		r.reached = math.Max(r.reached, r.model.travel(&r.y))
	}
}

// enter begins a phase at the present time and state.
func (r *run) enter() {
	r.model.rates(r.t, &r.y, &r.f)
	r.now = r.model.last
	r.model.stiffness(&r.y, &r.stiff)
	r.floor = r.model.scales()
	r.stages.n = pointStates
	if r.model.rigid {
		r.stages.n = states
	}
	r.watch()
	r.next = 0
	r.maxima.enter(r)
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
