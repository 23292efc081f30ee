package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocket"
)

// WhatIf is a canopy that opens otherwise than planned.
type WhatIf struct {
	Case    WhatIfCase
	Shift   float64     // how much later than planned, s; negative when earlier
	Opened  bool        // it opens before landing
	Opens   float64     // after release, s
	Flight  *sim.Flight // nil when the case makes no sense
	Problem string      // why it makes none; empty otherwise

	rule rocket.Rule
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

// How far off the plan the cases are.
const (
	offBy     = 1.0 // s
	lateShare = 0.2 // of the rule's seconds
)

// WhatIfs flies a rocket with one canopy opening as planned, 1 s early and late, a
// fifth of its delay late, and never; the other canopies keep to their rules. Where it
// never opens the rocket falls as a point mass, nose first, whatever its model. The
// time it is early or late is by the clock, whatever the rule counts. A rule that
// opens nothing is a fault.List.
func WhatIfs(ctx context.Context, r *rocket.Rocket, canopy int, o Options) ([]WhatIf, error) {
	if _, err := openingInput(r, canopy); err != nil {
		return nil, err
	}
	plan, err := sim.Fly(ctx, r.Clone(), o.flight())
	if err != nil {
		return nil, err
	}
	cases := otherwise(plan, canopy)
	do := func(ctx context.Context, i int) (*sim.Flight, error) {
		if cases[i].Problem != "" || cases[i].Case == AsPlanned {
			return cases[i].Flight, nil
		}
		changed := r.Clone()
		changed.Canopies[canopy].Water, changed.Canopies[canopy].Motor = cases[i].rule, cases[i].rule
		if cases[i].Case == NotAtAll {
			// Nose first, as a point mass falls: a rigid body may find a gentle
			// glide on its side that nobody should count on.
			changed.Model = rocket.PointModel
		}
		return sim.Fly(ctx, changed, o.flight())
	}
	err = inOrder(ctx, len(cases), o, alike(do), func(i int, fl *sim.Flight) error {
		c := &cases[i]
		c.Flight = fl
		if fl != nil {
			c.Opened, c.Opens = fl.Canopies[canopy].Opened, fl.Canopies[canopy].Time
		}
		return nil
	})
	return cases, err
}

// otherwise lists the cases with the rule of each.
func otherwise(plan *sim.Flight, canopy int) []WhatIf {
	opened := plan.Canopies[canopy]
	at := func(late float64) WhatIf {
		if !opened.Opened {
			return WhatIf{Problem: "it does not open as planned"}
		}
		return WhatIf{Shift: late, rule: rocket.Rule{Trigger: rocket.AfterLaunch, Value: max(0, opened.Time+late)}}
	}
	cases := []WhatIf{{Flight: plan}, at(-offBy), at(offBy), {Problem: "the rule counts no seconds"}, {}}
	if delay, ok := seconds(plan.Rocket, canopy); ok {
		cases[3] = at(lateShare * delay)
	}
	for i, c := range []WhatIfCase{AsPlanned, EarlyBy1s, LateBy1s, LateBy20, NotAtAll} {
		cases[i].Case = c
	}
	return cases
}

// seconds is what a canopy's rule counts, if it counts seconds on from something.
func seconds(r *rocket.Rocket, canopy int) (float64, bool) {
	_, wait, ok := r.Waits(canopy)
	return wait, ok && (wait > 0 || r.Canopies[canopy].Rule(r.Power).Trigger.ByCharge())
}
