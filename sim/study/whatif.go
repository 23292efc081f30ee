package study

import (
	"cmp"
	"context"
	"slices"

	"ullage/sim"
	"ullage/sim/rocket"
)

// WhatIf is a flight on which a canopy, or every one of them, opens otherwise than planned.
type WhatIf struct {
	Case    WhatIfCase
	Canopy  int         // that does not keep to its rule; AllCanopies
	Shift   float64     // how much later than planned, s; negative when earlier. Of all, of the first one
	Opened  bool        // it opens before landing; of all, any does
	Opens   float64     // after release, s; of all, the first of them
	Flight  *sim.Flight // nil when the case makes no sense
	Problem string      // why it makes none; empty otherwise

	which []int // the canopies that do not keep to their rules, in the order in which they open as planned
}

// AllCanopies stands for all of them together.
const AllCanopies = -1

// Ballistic tells whether nothing at all opens on a flight that comes down.
func (w *WhatIf) Ballistic() bool {
	return w.Flight != nil && w.Flight.Landing.Happened &&
		!slices.ContainsFunc(w.Flight.Canopies, func(c sim.CanopyResult) bool { return c.Opened })
}

// WhatIfCase names a way to open otherwise than planned.
type WhatIfCase string

// The cases. A delay's tolerance is often given as a fifth of it: common practice, no
// source.
const (
	AsPlanned WhatIfCase = "as planned"
	EarlyBy1s WhatIfCase = "1 s early"
	LateBy1s  WhatIfCase = "1 s late"
	LateBy20  WhatIfCase = "20 % late"
	NotAtAll  WhatIfCase = "never"
)

// failures are the cases that are not as planned.
var failures = [...]WhatIfCase{EarlyBy1s, LateBy1s, LateBy20, NotAtAll}

// How far off the plan the cases are.
const (
	offBy     = 1.0 // s
	lateShare = 0.2 // of the rule's seconds
)

// WhatIfs flies a rocket as planned, then with each canopy that has a rule on the drive that
// flies opening 1 s early and late, a fifth of its delay late, and never, the others keeping to
// their rules, and with all of them so at once where there are several. The canopy named comes
// first among them. Where the one that should open first never does the rocket falls nose first, as a point mass, from
// the top until another does; till any other should have opened the flight is the planned one. The time it is early or late is by the clock, whatever the
// rule counts. A rule of the canopy named that opens nothing is a fault.List.
func WhatIfs(ctx context.Context, r *rocket.Rocket, first int, o Options) ([]WhatIf, error) {
	if _, err := openingInput(r, first); err != nil {
		return nil, err
	}
	flight := o.flight()
	flight.Keeps = new(sim.WayUp)
	plan, err := sim.Fly(ctx, r.Clone(), flight)
	o.from = flight.Keeps
	if err != nil {
		return nil, err
	}
	cases := otherwise(plan, first)
	do := func(ctx context.Context, i int) (*sim.Flight, error) { return cases[i].fly(ctx, plan, o) }
	err = inOrder(ctx, len(cases), o, do, func(i int, fl *sim.Flight) error {
		c := &cases[i]
		c.Flight = fl
		if fl == nil {
			return nil
		}
		for k := range fl.Canopies {
			if x := &fl.Canopies[k]; x.Opened && (c.Canopy == k || c.Canopy == AllCanopies && !(c.Opened && c.Opens <= x.Time)) {
				c.Opened, c.Opens = true, x.Time
			}
		}
		return nil
	})
	return cases, err
}

// otherwise lists the cases.
func otherwise(plan *sim.Flight, first int) []WhatIf {
	r := plan.Rocket
	which := []int{first}
	for i := range r.Canopies {
		if i != first && r.OpeningInput(i) != "" {
			which = append(which, i)
		}
	}
	cases := []WhatIf{{Case: AsPlanned, Canopy: first}}
	for _, i := range which {
		for _, failure := range failures {
			cases = append(cases, WhatIf{Case: failure, Canopy: i, which: []int{i}})
		}
	}
	if len(which) > 1 {
		inTurn := slices.Clone(which)
		slices.SortStableFunc(inTurn, func(a, b int) int { return cmp.Compare(plan.Canopies[a].Time, plan.Canopies[b].Time) })
		for _, failure := range failures {
			cases = append(cases, WhatIf{Case: failure, Canopy: AllCanopies, which: inTurn})
		}
	}
	return cases
}

// fly flies the case; nil when it makes no sense. What is late is late against the moment at
// which it would have opened after all that went wrong before it.
func (w *WhatIf) fly(ctx context.Context, plan *sim.Flight, o Options) (*sim.Flight, error) {
	if w.Case == AsPlanned {
		return plan, nil
	}
	changed, now := plan.Rocket.Clone(), plan
	wrong := 0 // canopies that do not keep to their rules
	var err error
	for n, i := range w.which {
		rule := rocket.Rule{}
		if w.Case != NotAtAll {
			if n > 0 {
				if now, err = sim.Fly(ctx, changed, o.unkept()); err != nil {
					return nil, err
				}
			}
			late, problem := lateness(now, i, w.Case)
			if problem != "" {
				w.Problem = cmp.Or(w.Problem, problem)
				continue
			}
			if wrong == 0 {
				w.Shift = late
			}
			rule = rocket.Rule{Trigger: rocket.AfterLaunch, Value: max(0, now.Canopies[i].Time+late)}
		}
		wrong++
		changed.Canopies[i].Water, changed.Canopies[i].Motor = rule, rule
	}
	if wrong == 0 {
		return nil, nil
	}
	w.Problem = ""
	flight := o.flight()
	flight.NoseFirst = w.Case == NotAtAll && nothingBefore(plan, w.which...)
	return sim.Fly(ctx, changed, flight)
}

// nothingBefore tells that none but these canopies is the first to open as planned.
func nothingBefore(plan *sim.Flight, shut ...int) bool {
	first := -1
	for i := range plan.Canopies {
		if x := &plan.Canopies[i]; x.Opened && (first < 0 || x.Time < plan.Canopies[first].Time) {
			first = i
		}
	}
	return first < 0 || slices.Contains(shut, first)
}

// lateness is how much later a canopy opens in a case, s, or why that makes no sense.
func lateness(fl *sim.Flight, canopy int, failure WhatIfCase) (late float64, problem string) {
	if !fl.Canopies[canopy].Opened {
		return 0, "it does not open as planned"
	}
	switch failure {
	case EarlyBy1s:
		return -offBy, ""
	case LateBy1s:
		return offBy, ""
	case LateBy20:
		delay, ok := seconds(fl.Rocket, canopy)
		if !ok {
			return 0, "the rule counts no seconds"
		}
		return lateShare * delay, ""
	}
	return 0, ""
}

// seconds is what a canopy's rule counts, if it counts seconds on from something.
func seconds(r *rocket.Rocket, canopy int) (float64, bool) {
	_, wait, ok := r.Waits(canopy)
	return wait, ok && (wait > 0 || r.Canopies[canopy].Rule(r.Power).Trigger.ByCharge())
}
