package plan

import (
	"context"
	"math"
	"time"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// OutlookOptions choose what an outlook judges by.
type OutlookOptions struct {
	Drives  []rocket.Power                      // to look at; empty for the one that flies
	Spreads func(*rocket.Rocket) []study.Spread // what is uncertain of a rocket on its drive; nil for nothing
	Today   time.Time                           // for the age of a proof; zero does not judge it
	study.Options
}

// Outcome is what becomes of one drive in one slot.
type Outcome struct {
	Slot    Slot
	Drive   rocket.Power
	Known   bool          // the forecast tells the wind; else nothing flew
	Verdict gates.Verdict // as the rocket is
	// Change is one change with which every check passes, nil where it passes as it is or where none was found; Changed is the verdict then.
	Change  *gates.Remedy
	Changed *gates.Verdict
}

// Passes tells that the rocket passes as it is.
func (o *Outcome) Passes() bool { return o.Known && o.Verdict.Pass() }

// Outlook judges a rocket on each drive in each slot, in calm air, on the day of the slot and in the worst corner, and looks
// for the one change that each needs: among the mends of the checks that fail, the first that makes all pass, but not
// another wind, which has to be waited for, nor another chamber. Outcomes are slot by slot, drive by drive. A
// rocket that is not valid on a drive is a fault.List.
func Outlook(ctx context.Context, base *rocket.Rocket, slots []Slot, o OutlookOptions) ([]Outcome, error) {
	drives := o.Drives
	if len(drives) == 0 {
		drives = []rocket.Power{base.Power}
	}
	return study.Collect(ctx, len(slots)*len(drives), o.Options, func(ctx context.Context, i int) (Outcome, error) {
		return o.outcome(ctx, base, slots[i/len(drives)], drives[i%len(drives)])
	})
}

func (o *OutlookOptions) outcome(ctx context.Context, base *rocket.Rocket, slot Slot, drive rocket.Power) (Outcome, error) {
	out := Outcome{Slot: slot, Drive: drive, Known: !math.IsNaN(slot.Wind)}
	if !out.Known {
		return out, nil
	}
	r, err := slot.on(base)
	if err != nil {
		return out, err
	}
	r.Power = drive
	if out.Verdict, err = o.judge(ctx, r, nil, false); err != nil || out.Verdict.Failed() == 0 {
		return out, err
	}
	if out.Verdict, err = o.judge(ctx, r, out.Verdict.Day, true); err != nil {
		return out, err
	}
	for i := range out.Verdict.Checks {
		c := &out.Verdict.Checks[i]
		if !c.Fails() {
			continue
		}
		for k := range c.Remedies {
			m := &c.Remedies[k]
			if m.Waits() || m.And != nil && m.And.Waits() {
				continue
			}
			changed := m.Made(r)
			if changed == nil {
				continue
			}
			v, err := o.judge(ctx, changed, nil, false)
			if ctx.Err() != nil {
				return out, ctx.Err()
			}
			if err == nil && v.Failed() == 0 {
				out.Change, out.Changed = m, &v
				return out, nil
			}
		}
	}
	return out, nil
}

// judge takes the flight of the day when there is one.
func (o *OutlookOptions) judge(ctx context.Context, r *rocket.Rocket, day *sim.Flight, mends bool) (gates.Verdict, error) {
	own := gates.Options{Day: day, Today: o.Today, Workers: 1, Remedies: mends}
	if o.Spreads != nil {
		own.Spreads, own.Respread = o.Spreads(r), o.Spreads
	}
	return gates.Judge(ctx, r, own)
}
