package sim

import (
	"math"
	"reflect"

	"ullage/sim/rocket"
)

// WayUp is a flight up to its top, as the integrator stood there: a flight of a rocket that differs only in its
// recovery goes on from it and is to the last bit what it is from release. The zero value holds none. Flights may
// go on from one at the same time; only one may be kept in it, and none meanwhile.
type WayUp struct {
	known   bool
	rocket  rocket.Rocket // whose it is, without its recovery: see shut
	course  course
	phase   phase
	calls   int
	results Results
	before  Flight // warnings, events and counts
}

// shut takes what tells of a canopy only once it opens. What is not named here, the way up may depend on.
func shut(c *rocket.Canopy) {
	c.Coefficient, c.Diameter, c.Area = 0, 0, 0
	c.FillConstant, c.OpeningForceCoefficient = 0, 0
	c.Water, c.Motor = rocket.Rule{}, rocket.Rule{}
}

// keepWayUp keeps the way up as the top has come, if the flight is asked to and no canopy has had, or will
// have, any part in it.
func (r *run) keepWayUp() {
	up := r.options.Keeps
	if up == nil || r.overTop || r.scout || r.model.guided || r.model.push != noPush || opensBeforeTop(r.rocket) {
		return
	}
	for i := range r.rocket.Canopies {
		if r.model.open != 0 || !r.dueAfter(r.rocket, i) {
			return
		}
	}
	up.known = true
	r.rocket.CopyTo(&up.rocket)
	for i := range up.rocket.Canopies {
		shut(&up.rocket.Canopies[i])
	}
	if m := up.rocket.Motor; m != nil {
		m.Delay = 0
	}
	up.course, up.phase, up.calls = r.course, r.model.phase, r.model.calls
	c := &up.course
	c.rocket, c.flight, c.watched, c.options.Keeps, c.options.From = nil, nil, nil, nil, nil
	c.maxima.surge.frame = nil
	up.results = r.flight.Results
	up.results.Canopies = nil
	b := &up.before
	b.Warnings, b.Events = append(b.Warnings[:0], r.flight.Warnings...), append(b.Events[:0], r.flight.Events...)
	b.Steps, b.Rejected, b.effort = r.flight.Steps, r.flight.Rejected, r.flight.effort
}

// dueAfter tells that a canopy of a rocket whose flight came to its top like this is due after all that its
// steps had in sight, so that none of them was another for it.
func (c *course) dueAfter(r *rocket.Rocket, i int) bool {
	const hair = 1e-6 // s
	from, wait, ok := r.Waits(i)
	return !ok || !(c.since[from]+wait <= c.sight+hair)
}

// Clear empties it.
func (up *WayUp) Clear() { up.known = false }

// Other tells whether it is the way up of a rocket that differs from this one by more than its recovery.
func (up *WayUp) Other(r *rocket.Rocket) bool {
	return up.known && !up.alike(r, new(rocket.Rocket))
}

// leads tells whether a flight of a rocket can go on from it. Bare is memory for alike.
func (up *WayUp) leads(r *rocket.Rocket, o *Options, bare *rocket.Rocket) bool {
	if !up.known || o.Tolerance != up.course.options.Tolerance || o.Held || o.Keep || o.Guide || o.Push || opensBeforeTop(r) {
		return false
	}
	for i := range r.Canopies {
		if !up.course.dueAfter(r, i) {
			return false
		}
	}
	return up.alike(r, bare)
}

// alike tells whether a rocket has the same way up if nothing of it opens before the top: nothing but its recovery differs. Bare is
// memory for it without.
func (up *WayUp) alike(r *rocket.Rocket, bare *rocket.Rocket) bool {
	if len(r.Canopies) != len(up.rocket.Canopies) {
		return false
	}
	for i := range r.Canopies {
		c := r.Canopies[i]
		if shut(&c); c != up.rocket.Canopies[i] {
			return false
		}
	}
	motor := bare.Motor
	*bare = *r
	bare.Canopies = up.rocket.Canopies
	if r.Motor != nil {
		if motor == nil {
			motor = new(rocket.Motor)
		}
		*motor = *r.Motor
		motor.Delay = 0
		bare.Motor = motor
	}
	is := reflect.DeepEqual(bare, &up.rocket)
	*bare = rocket.Rocket{Motor: motor}
	return is
}

// goOn begins a flight at the top of the way up that it goes on from.
func (r *run) goOn() {
	up, fl := r.from, r.flight
	own, options := r.rocket, r.options
	r.course = up.course
	r.rocket, r.flight, r.options, r.watched = own, fl, options, r.room[:0]
	r.model.phase, r.model.calls = up.phase, up.calls
	canopies := fl.Canopies
	fl.Results = up.results
	fl.Canopies = canopies
	fl.Warnings, fl.Events = append(fl.Warnings, up.before.Warnings...), append(fl.Events, up.before.Events...)
	fl.Steps, fl.Rejected, fl.effort = up.before.Steps, up.before.Rejected, up.before.effort
	r.pack()
	for from, at := range r.since {
		if !math.IsNaN(at) {
			r.count(rocket.Moment(from), at)
		}
	}
	r.atEvent(eventFunction{kind: turnsDown})
	r.overdue()
}
