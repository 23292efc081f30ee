package sim

import (
	"ullage/thrust"

	"ullage/sim/rocket"
)

// finish closes the books of a flight.
func (r *run) finish() {
	fl := r.flight
	r.account()
	if r.scout {
		return
	}
	r.maxima.write(fl)
	r.loads()
	push := r.maxima.guide
	if r.model.tube > 0 { // the tube lifts it, not the jet that follows
		_, push = r.model.flow.TubePush(0, r.model.padPressure)
	}
	fl.LiftOffThrustToWeight = push / (fl.LiftOffMass * r.model.gravity)
	r.sumDrive()
	r.verdicts()
	r.endStability()
	fl.dense.close(r)
}

// loads settles what each canopy pulls: no less than the weight that hangs on it by itself or with those open by then, and than what
// its line takes to stop it, however slowly it fills.
func (r *run) loads() {
	fl, m := r.flight, &r.model
	for i := range fl.Canopies {
		c := &fl.Canopies[i]
		if !c.Opened {
			continue
		}
		all := 0. // of those that are open with it; what opens later takes nothing off it until then
		for k := range fl.Canopies {
			if other := &fl.Canopies[k]; other.Opened && other.Time <= c.Time+SameInstant {
				all += m.canopies[k].area
			}
		}
		c.Hanging = (m.dryMass + m.left) * m.gravity * m.canopies[i].area / all
		if mount := r.rocket.Recovery; mount != nil {
			if n, _ := mount.Snatch(c.Airspeed); n > 0 { // NaN where it is not described
				c.Snatch = n
			}
		}
		c.Load = max(c.Filling, c.Hanging, c.Snatch)
		c.LoadBound = max(c.LoadBound, c.Load)
	}
}

// sumDrive: total impulse, burn time, average. A motor's are its curve's; water's
// burn time runs from release to the end of thrust.
func (r *run) sumDrive() {
	d := &r.flight.Drive
	if r.rocket.Power == rocket.MotorPower {
		m := r.rocket.Motor
		*d = Drive{Impulse: m.Impulse(), Average: m.ThrustFactor() * m.Curve.Average(), BurnTime: m.Curve.BurnTime(), Class: thrust.Class(m.Impulse())}
		return
	}
	d.Impulse = r.y[impulse]
	d.Exponent, d.Growth = r.model.flow.Exponent(), r.model.chamber/r.rocket.Water.Volume-1
	if r.flight.Burnout.Happened {
		d.BurnTime = r.flight.Burnout.Time
	} else {
		d.BurnTime = r.t
	}
	if d.BurnTime > 0 {
		d.Average = d.Impulse / d.BurnTime
	}
}

// hop is the travel along the guide below which a rocket has not moved, m.
const hop = 0.01

// verdicts adds the warnings that only the whole flight can tell.
func (r *run) verdicts() {
	fl := r.flight
	if r.moved && !fl.RailExit.Happened && r.reached < hop && !r.stuck() {
		// The start-up surge jerked it; nobody would say that it flew.
		r.moved, fl.Apogee = false, Moment{}
	}
	switch {
	case r.options.Held:
	case !r.moved:
		r.warn(Warning{Code: NeverLifted})
	case !fl.RailExit.Happened && !r.stuck():
		r.warn(Warning{Code: NeverLeftGuide, Value: r.reached})
	}
	if fl.RailExit.Happened {
		r.turns()
		for i := range fl.Canopies {
			switch c := &fl.Canopies[i]; {
			case !c.Opened:
				r.warn(Warning{Code: CanopyNever, Canopy: c.Name})
			case !c.Full && fl.Landing.Happened:
				r.warn(Warning{Code: CanopyNotFull, Canopy: c.Name})
			}
		}
	}
	if limit := r.rocket.DragReach(); fl.Max.Mach > limit {
		r.warn(Warning{Code: DragBeyondTable, Value: fl.Max.Mach, Limit: limit})
	}
	if m, mount := r.rocket.Motor, r.rocket.MotorMount; r.rocket.Power == rocket.MotorPower && mount != nil {
		if !mount.Takes(m) {
			r.warn(Warning{Code: MotorTooWide, Value: m.Diameter, Limit: mount.Bore()})
		}
		if !mount.Reaches(m) {
			r.warn(Warning{Code: MotorTooLong, Value: m.Length, Limit: mount.Length})
		}
		if !mount.Keeps(m) {
			r.warn(Warning{Code: MotorSlides, Value: mount.Retainer, Limit: mount.Held(m.Diameter)})
		}
	}
}

// turns warns of canopies that open while it is pushed, or before one that is meant to open
// first: the larger meets the speed that the smaller is there to take off.
func (r *run) turns() {
	fl := r.flight
	for i := range fl.Canopies {
		c := &fl.Canopies[i]
		if !c.Opened {
			continue
		}
		if fl.Burnout.Happened && c.Time < fl.Burnout.Time-SameInstant || !fl.Burnout.Happened {
			r.warn(Warning{Code: CanopyThrusting, Canopy: c.Name, Value: fl.Burnout.Time - c.Time})
		}
		for k := range fl.Canopies {
			if first := &fl.Canopies[k]; first.Opened && r.rocket.Precedes(k, i) && c.Time < first.Time-SameInstant {
				r.warn(Warning{Code: CanopyOrder, Canopy: c.Name, Value: first.Time - c.Time})
				break
			}
		}
	}
}

func (r *run) stuck() bool {
	for _, w := range r.flight.Warnings {
		if w.Code == StuckOnTube {
			return true
		}
	}
	return false
}
