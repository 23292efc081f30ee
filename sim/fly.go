package sim

import (
	"context"
	"math"
	"slices"
	"sync"

	"ullage/sim/rocket"
)

// Flight is one flown flight: its results, what to warn of, and, if it was kept,
// the dense output behind At, Samples and Trace.
type Flight struct {
	Rocket *rocket.Rocket
	Results
	Warnings []Warning
	Events   []Event
	Steps    int // accepted
	Rejected int // steps tried again shorter

	effort [legs]effort
	dense  denseOutput
}

// Fly flies a rocket from release to landing. The result depends on nothing but
// its arguments: the same ones give the same bits. It returns what is wrong with the
// rocket, a fault.List, or the context's error when that ends first; a rocket that does
// not leave the ground is a flight with a warning, not an error.
func Fly(ctx context.Context, r *rocket.Rocket, o Options) (*Flight, error) {
	fl := &Flight{Events: make([]Event, 0, 8+2*len(r.Canopies))}
	if o.Keep {
		fl.dense.steps = make([]denseStep, 0, 96) // most flights take no more
	}
	if err := Into(ctx, r, o, fl); err != nil {
		return nil, err
	}
	return fl, nil
}

// Into is as Fly, but into a flight of the caller's, whose memory it uses again.
func Into(ctx context.Context, r *rocket.Rocket, o Options, fl *Flight) error {
	x := flyers.Get().(*Flyer)
	defer flyers.Put(x)
	return x.Into(ctx, r, o, fl)
}

// flyers are those between two flights of Fly and Into.
var flyers = sync.Pool{New: func() any { return new(Flyer) }}

// Flyer flies one rocket after another in the same memory: after the first few a flight
// allocates nothing, and what takes long to make ready is kept from one to the next, as air,
// wind, powers and shape mostly are the same. The zero value is fit for use, by one goroutine at
// a time. What it has flown before changes nothing of a flight.
type Flyer struct {
	check  rocket.FlightCheck
	run    run
	flight Flight
	bare   rocket.Rocket // for WayUp.leads
}

// Fly is as the function Fly, but that the flight it returns, all of it, is good until the next one only.
func (x *Flyer) Fly(ctx context.Context, r *rocket.Rocket, o Options) (*Flight, error) {
	fl := &x.flight
	fl.reset(r)
	if err := x.fly(ctx, r, o, fl); err != nil {
		return nil, err
	}
	return fl, nil
}

// Into is as Fly, but into a flight of the caller's, whose memory it uses again: whoever has
// several of them may look at these together.
func (x *Flyer) Into(ctx context.Context, r *rocket.Rocket, o Options, fl *Flight) error {
	fl.reset(r)
	return x.fly(ctx, r, o, fl)
}

// Clone is a flight, but for what Keep keeps, in memory of its own, of the same rocket.
func (fl *Flight) Clone() *Flight {
	c := *fl
	c.Canopies, c.Warnings, c.Events = slices.Clone(fl.Canopies), slices.Clone(fl.Warnings), slices.Clone(fl.Events)
	c.dense = denseOutput{}
	return &c
}

// reset empties a flight but keeps its memory.
func (fl *Flight) reset(r *rocket.Rocket) {
	canopies, warnings, events := fl.Canopies[:0], fl.Warnings[:0], fl.Events[:0]
	dense := denseOutput{steps: fl.dense.steps[:0], phases: fl.dense.phases[:0], model: fl.dense.model}
	*fl = Flight{} // in place: a whole one on the stack is what makes the stack grow
	fl.Rocket, fl.Canopies, fl.Warnings, fl.Events = r, canopies, warnings, events
	fl.dense = dense
}

func (x *Flyer) fly(ctx context.Context, r *rocket.Rocket, o Options, fl *Flight) error {
	if err := x.check.Of(r).Err(); err != nil {
		return err
	}
	if o.Held && r.Water != nil && r.Water.Tube != nil {
		r = r.Clone()
		r.Water.Tube = nil
		fl.Rocket = r
	}
	if o.Tolerance <= 0 {
		o.Tolerance = DefaultTolerance
	}
	early := math.NaN()
	leads := o.From != nil && o.From.leads(r, &o, &x.bare)
	if opensBeforeTop(r) && !o.Held {
		// "apogee − 1 s" needs to know the top before it comes: fly up once
		// without those canopies.
		x.run.prepare(r, Options{Tolerance: o.Tolerance}, fl)
		x.run.scout = true
		if err := x.run.fly(ctx); err != nil {
			return err
		}
		if fl.Apogee.Happened {
			early = fl.Apogee.Time
		}
		fl.reset(r)
	}
	x.run.prepare(r, o, fl)
	x.run.knownTop = early
	if leads {
		x.run.from = o.From
	}
	err := x.run.fly(ctx)
	x.run.flight, x.run.rocket = nil, nil
	return err
}

// opensBeforeTop tells whether a rule counts back from the apogee.
func opensBeforeTop(r *rocket.Rocket) bool {
	for i := range r.Canopies {
		if _, wait, ok := r.Waits(i); ok && wait < 0 {
			return true
		}
	}
	return false
}
