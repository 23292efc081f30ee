package gates

import (
	"fmt"
	"math"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// canopyCriteria are about the canopies: each opens slowly enough, clear of rail and thrust,
// in its turn, where its rule says, and fills; and what holds it is strong enough.
func canopyCriteria(r *rocket.Rocket, out results.Table) []criterion {
	if len(r.Canopies) == 0 {
		return []criterion{{key: checkUnstated, absent: WordNone, still: true,
			limit: Limit{Key: checkUnstated, Name: "canopies", Min: 1, Max: noMax, Word: WordNone, Source: CommonPractice},
			value: func(*sim.Flight) (float64, bool) { return 0, true },
			adds:  []Remedy{{Kind: GiveCanopy}}}}
	}
	var g []criterion
	for i := range r.Canopies {
		name := r.Canopies[i].Name
		g = append(g, criterion{key: LimitOpening + "." + name, limit: LimitFor(r, LimitOpening), levers: openingLevers(r, i), change: openingChange(r, i)}.
			judging(out.Must("canopy."+name+".airspeed")))
	}
	for i := range r.Canopies {
		g = append(g, freeCriterion(r, i), fullCriterion(r, i))
		g = append(g, turnCriteria(r, i)...)
		g = append(g, placeCriteria(r, i)...)
	}
	for i := range r.Canopies {
		g = append(g, loadCriteria(r, i, out)...)
	}
	return g
}

// loadCriteria hold the opening load of a canopy against the strength of the mount, and warn
// where the most it may come to, filling before the rocket slows or snatched by its line,
// is more than the mount holds.
func loadCriteria(r *rocket.Rocket, i int, out results.Table) []criterion {
	factor := LimitFor(r, LimitMount)
	g := criterion{key: LimitMount + "." + r.Canopies[i].Name, levers: openingLevers(r, i),
		limit: Limit{Key: LimitMount, Min: noMin, Max: noMax, Unit: "N", Word: WordHigh, Source: "strength of [recovery]"}}.
		judging(out.Must("canopy." + r.Canopies[i].Name + ".load"))
	strength := math.NaN()
	if r.Recovery != nil {
		strength, _, _ = r.Recovery.Strength()
	}
	if missing := r.Recovery.Unstated(); len(missing) > 0 {
		g.lacks = give(missing...).because("what holds the canopy is as strong as the weakest of line, pin and bond; 0 says that there is no pin, or no bond")
	} else if math.IsNaN(strength) {
		g.lacks = give("recovery.line", "recovery.pin", "recovery.bond_area").because("something has to hold the canopy")
	}
	if math.IsNaN(strength) {
		return []criterion{g}
	}
	g.limit.Max, g.limit.Source = strength/factor.Min, fmt.Sprintf("strength of [recovery] over %.4g (%s)", factor.Min, factor.Source)
	g.adds = []Remedy{{Kind: StrongerMount, To: factor.Min}} // times the load
	if missing := r.Recovery.UnstatedSnatch(); len(missing) > 0 && g.lacks == nil {
		g.lacks = give(missing...).because(snatched)
	}
	if r.Recovery.Line == 0 { // every mount has one, and it is often the weakest
		g.lacks = give("recovery.line").because("its breaking strength as rigged")
	}
	worst := criterion{key: checkMost + "." + r.Canopies[i].Name, warns: true, adds: []Remedy{{Kind: StrongerMount, To: 1}},
		limit: Limit{Key: checkMost, Name: "most that " + r.Canopies[i].Name + " may pull", Min: noMin, Max: strength, Unit: "N", Word: WordHigh, Source: "strength of [recovery]"},
		value: func(fl *sim.Flight) (float64, bool) {
			c := &fl.Canopies[i]
			most := c.LoadBound
			if snatch, _ := fl.Rocket.Recovery.Snatch(c.Airspeed); snatch > most {
				most = snatch
			}
			return most, c.Opened
		}}
	if missing := append(r.Recovery.Unstated(), r.Recovery.UnstatedSnatch()...); len(missing) > 0 {
		worst.lacks = give(missing...).because(snatched)
	}
	return []criterion{g, worst}
}

const snatched = "the line is snatched as it stops the canopy; how hard, and what holds it, hangs on them"

// openingChange is what else makes a canopy open slower than any moment of its rule does.
func openingChange(r *rocket.Rocket, i int) string {
	if r.Canopies[i].Rule(r.Power).Trigger.ByCharge() {
		return "open by height, or near the top by a timer, or fly a motor with another delay"
	}
	return "open nearer to the top, or by height, or after a smaller canopy that slows it"
}

// between is a time from one moment to another; moments as near as events are found are one.
func between(from, to float64) float64 {
	if d := to - from; math.Abs(d) > sim.SameInstant {
		return d
	}
	return 0
}

// waited is how long a canopy was due before the guide let it go, s.
func waited(fl *sim.Flight, name string) float64 {
	for _, w := range fl.Warnings {
		if w.Code == sim.CanopyWaited && w.Canopy == name {
			return w.Value
		}
	}
	return 0
}

// freeCriterion holds that a canopy is due once the guide and the thrust have ended. One
// that was due on the guide waited, and counts from when it was due.
func freeCriterion(r *rocket.Rocket, i int) criterion {
	name := r.Canopies[i].Name
	return criterion{key: checkFree + "." + name, levers: openingLevers(r, i),
		limit: Limit{Key: checkFree, Name: name + " due after guide and thrust", Min: 0, Max: noMax, Unit: "s", Word: WordEarly, Source: CommonPractice},
		value: func(fl *sim.Flight) (float64, bool) {
			c := &fl.Canopies[i]
			due := c.Time - waited(fl, name)
			clear := math.Max(fl.RailExit.Time, fl.Burnout.Time)
			return between(clear, due), c.Opened && fl.RailExit.Happened && fl.Burnout.Happened
		}}
}

// fullCriterion holds that a canopy has filled before the ground is there.
func fullCriterion(r *rocket.Rocket, i int) criterion {
	name := r.Canopies[i].Name
	return criterion{key: checkFull + "." + name, levers: openingLevers(r, i), absent: WordPartial,
		limit: Limit{Key: checkFull, Name: name + " full before the landing", Min: 0, Max: noMax, Unit: "s", Word: WordPartial, Source: theModel},
		value: func(fl *sim.Flight) (float64, bool) {
			c := &fl.Canopies[i]
			if c.Full && !fl.Landing.Happened { // which the landing says
				return noMax, true
			}
			return between(c.FullTime, fl.Landing.Time), c.Full
		}}
}

// turnCriteria hold that a canopy opens after those of less drag area: the larger is made
// for the speed that they leave.
func turnCriteria(r *rocket.Rocket, i int) []criterion {
	var g []criterion
	for k := range r.Canopies {
		if !r.Precedes(k, i) {
			continue
		}
		name, first := r.Canopies[i].Name, r.Canopies[k].Name
		g = append(g, criterion{key: checkTurn + "." + name + "." + first, levers: append(openingLevers(r, i), openingLevers(r, k)...),
			limit: Limit{Key: checkTurn, Name: name + " opens after " + first, Min: 0, Max: noMax, Unit: "s", Word: WordEarly, Source: CommonPractice},
			value: func(fl *sim.Flight) (float64, bool) {
				a, b := &fl.Canopies[k], &fl.Canopies[i]
				return between(a.Time, b.Time), a.Opened && b.Opened
			}})
	}
	return g
}

// placeCriteria hold that a canopy that is to open falling through a height has been higher:
// otherwise it opens at the top.
func placeCriteria(r *rocket.Rocket, i int) []criterion {
	rule := r.Canopies[i].Rule(r.Power)
	if !rule.Trigger.Falls() {
		return nil
	}
	name := r.Canopies[i].Name
	return []criterion{{key: checkPlace + "." + name, levers: openingLevers(r, i),
		limit: Limit{Key: checkPlace, Name: "apogee over the height set for " + name, Min: 0, Max: noMax, Unit: "m", Word: WordLow, Source: theFile},
		value: func(fl *sim.Flight) (float64, bool) {
			over := fl.Apogee.Height - fl.Rocket.Canopies[i].Rule(fl.Rocket.Power).Value
			return over, fl.Apogee.Happened
		}}}
}
