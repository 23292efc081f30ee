package study

import (
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Delay is one value of the number in a canopy's rule, and what it does.
type Delay struct {
	Value     float64 // s, or m for a rule on height
	Listed    bool    // among the delays of the motor that can be had
	Opened    bool    // the rest, but for Landing, means something only then
	Early     bool    // it opens before thrust has ended
	OutOfTurn bool    // it opens after a canopy that it is meant to precede, or before one that is to precede it
	SinceTop  float64 // of the opening after the top that no canopy cuts short, s; negative before it
	Airspeed  float64 // as it opens, m/s
	Height    float64 // as it opens, above the pad, m
	Load      float64 // N
	LoadBound float64 // N
	Landing   sim.Landing
	Flight    *sim.Flight
}

// settling is the least time a canopy opened by height should be full before
// landing, s: common practice, no source.
const settling = 5

// Opening flies a rocket over the number in a canopy's rule for the drive that
// flies: its motor's delay for "ejection", seconds, or a height. It tells which value
// is best, -1 for none:
//
//   - in time, the least airspeed as the canopy opens among those that open after
//     thrust has ended; of a motor that lists the delays that can be had, among these;
//   - by height, the lowest that leaves the canopy full for 5 s before landing
//     (common practice, no source): higher drifts more.
//
// What opens out of turn, a drogue after its main ([rocket.Rocket.Precedes]), is never the best.
//
// A rule without a number, or a value out of range, is a fault.List.
func Opening(ctx context.Context, r *rocket.Rocket, canopy int, values []float64, o Options) (delays []Delay, best int, err error) {
	in, err := openingInput(r, canopy)
	if err != nil {
		return nil, -1, err
	}
	axis := Axis{Input: in}
	var faults fault.List
	trial := r.Clone()
	for _, v := range values {
		faults = append(faults, fault.In(in.Set(trial, v))...)
		axis.Values = append(axis.Values, Value{Number: v})
	}
	if len(faults) > 0 {
		return nil, -1, faults
	}
	trigger := r.Canopies[canopy].Rule(r.Power).Trigger
	var listed []float64
	if trigger.ByCharge() && r.Motor != nil {
		listed = r.Motor.Delays
	}
	o.from = new(sim.WayUp)
	shut, err := unopened(ctx, r, o)
	if err != nil {
		return nil, -1, err
	}
	err = Sweep(ctx, r, []Axis{axis}, o, func(row Row) error {
		if row.Invalid != nil {
			return fault.In(row.Invalid)
		}
		row = row.Clone()
		d := delayOf(row.Flight, canopy, row.Values[0].Number, shut.Apogee.Time)
		d.Listed = slices.ContainsFunc(listed, func(v float64) bool { return sameDelay(v, d.Value) })
		delays = append(delays, d)
		return nil
	})
	return delays, bestDelay(delays, trigger, len(listed) > 0), err
}

// sameDelay tells whether two values are the same to a reader.
func sameDelay(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// openingInput is the input that holds the number of a canopy's rule.
func openingInput(r *rocket.Rocket, canopy int) (rocketfile.Input, error) {
	if canopy < 0 || canopy >= len(r.Canopies) {
		return rocketfile.Input{}, fault.List{{Key: "canopy", Problem: "the rocket has no such canopy", Remedy: "add one"}}
	}
	name := r.OpeningInput(canopy)
	if name == "" {
		c := &r.Canopies[canopy]
		wrong := fault.Fault{Key: "canopy." + c.Name + ".deploy." + string(r.Power), Problem: "the canopy never opens on this drive", Remedy: "give it a rule"}
		if c.Rule(r.Power).Trigger.ByCharge() {
			wrong.Problem, wrong.Remedy = "waits for a charge that this drive does not have", "give motor.delay, or another rule"
		}
		return rocketfile.Input{}, fault.List{wrong}
	}
	return rocketfile.Find(r, name)
}

func delayOf(fl *sim.Flight, canopy int, value, top float64) Delay {
	c := &fl.Canopies[canopy]
	d := Delay{Value: value, Opened: c.Opened, Landing: fl.Landing, Flight: fl}
	if c.Opened {
		d.Early = !fl.Burnout.Happened || c.Time < fl.Burnout.Time
		d.OutOfTurn = outOfTurn(fl, canopy)
		d.SinceTop = c.Time - top
		d.Airspeed, d.Height, d.Load, d.LoadBound = c.Airspeed, c.Height, c.Load, c.LoadBound
	}
	return d
}

// outOfTurn tells whether a canopy that opens does so on the wrong side of another.
func outOfTurn(fl *sim.Flight, canopy int) bool {
	at := fl.Canopies[canopy].Time
	for i, c := range fl.Canopies {
		if c.Opened && (at > c.Time && fl.Rocket.Precedes(canopy, i) || at < c.Time && fl.Rocket.Precedes(i, canopy)) {
			return true
		}
	}
	return false
}

// bestDelay is the place of the best by the rule of Opening; -1 for none.
func bestDelay(delays []Delay, trigger rocket.Trigger, fromList bool) int {
	best := -1
	for i, d := range delays {
		switch {
		case !d.Opened, d.OutOfTurn, fromList && !d.Listed:
		case trigger.Falls():
			if d.settles() && (best < 0 || d.Value < delays[best].Value) {
				best = i
			}
		case d.Early:
		case best < 0 || d.Airspeed < delays[best].Airspeed:
			best = i
		}
	}
	return best
}

// settles tells whether every canopy that opens is full long enough before landing.
func (d *Delay) settles() bool {
	if !d.Landing.Happened {
		return false
	}
	for _, c := range d.Flight.Canopies {
		if c.Opened && !(c.Full && d.Landing.Time-c.FullTime >= settling) {
			return false
		}
	}
	return true
}
