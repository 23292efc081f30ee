package gates

import (
	"context"
	"math"
	"slices"
	"time"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Options choose how much is looked at.
type Options struct {
	Day   *sim.Flight // the flight of the rocket as the file has it, when there is one
	Calm  *sim.Flight // in calm air, when there is one, of a rocket that differs in its wind at most
	Today time.Time   // for the age of a proof; zero does not judge it
	// Spreads are what is uncertain; with any, the worst corner of each check flies.
	Spreads []study.Spread
	// Respread gives the Spreads of a rocket that a mend has changed, which may be shares of
	// its values, or that flies on its other drive; nil takes the same, of that drive.
	Respread func(*rocket.Rocket) []study.Spread
	Remedies bool // look for what would mend a failed check
	Workers  int

	// Like is a verdict with corners on a rocket much like this one: its corners, which are likely the worst of this one too, fly in place
	// of looking for the worst.
	Like *Verdict
	// Flown is a verdict on this very rocket, with the same Spreads or none, whose flights need not fly again.
	Flown *Verdict
	// Only are the keys of the checks looked at: nil are all. Flights go no farther than these ask.
	Only []string

	against func(key string) deviation // the corner of each check, where it is not to be looked for
	corners cornerValues               // of this rocket with these spreads, which flew already
	before  *Verdict                   // on this rocket, by these flights and in fewer cases, if there is one
}

// Judge checks a rocket on the drive that flies: in calm air, on the day of its file,
// and, with Spreads, in the worst corner of what is uncertain. For that every uncertain
// input goes one standard deviation off both ways by itself, and then all of them at once
// the way that goes against the check. Flights are those of the rocket's own model. A
// rocket that is not valid is a fault.List.
func Judge(ctx context.Context, r *rocket.Rocket, o Options) (Verdict, error) {
	var known *Verdict // the corners are those of this rocket
	if f := o.Flown; f != nil {
		o.Day, o.Calm, o.corners = f.Day, f.Calm, f.corners
		if f.Cornered {
			known, o.against = f, f.corner(o.Spreads)
		}
	}
	if o.Like != nil && o.Like.Cornered && o.against == nil {
		o.against = o.Like.corner(o.Spreads)
	}
	v := Verdict{Power: r.Power, Rocket: r, Day: o.Day, Cornered: len(o.Spreads) > 0}
	if v.Day == nil { // what is no rocket has no criteria
		if err := r.Check(rocket.ForFlight).Err(); err != nil {
			return v, err
		}
	}
	if b := o.before; b != nil {
		v.gates, o.corners = b.gates, b.corners
	} else {
		v.gates = criteriaOf(r, o.Today)
	}
	gates, far := slices.Clone(v.gates), untilDown
	if o.Only != nil {
		gates = slices.DeleteFunc(gates, func(g criterion) bool { return !slices.Contains(o.Only, g.key) })
		far = farthest(gates)
	}
	var err error
	if v.Day == nil {
		if v.Day, err = far.fly(ctx, r); err != nil {
			return v, err
		}
	}
	own := study.Options{Workers: o.Workers}
	switch calm := (deviation{}).rocket(r, results.Calm); {
	case o.Calm != nil:
		v.Calm = on(calm, o.Calm)
	default:
		if v.Calm, err = far.fly(ctx, calm); err != nil {
			return v, err
		}
	}
	v.Checks = make([]Check, len(gates))
	against := make([]deviation, len(gates))
	for i := range gates {
		g, c := &gates[i], &v.Checks[i]
		*c = Check{Key: g.key, Result: g.result, About: g.about, Name: g.limit.Name, Limit: g.limit}
		if g.value == nil {
			continue
		}
		if b := o.before.check(g.key); b != nil {
			c.Values[results.Day], c.Values[results.Calm] = b.Values[results.Day], b.Values[results.Calm]
			continue
		}
		c.Values[results.Day] = g.look(v.Day)
		if !g.still {
			c.Values[results.Calm] = g.look(v.Calm)
		}
	}
	if v.Cornered {
		if against, v.corners, err = corners(ctx, r, gates, v.Checks, o, own); err != nil {
			return v, err
		}
		v.against = make(map[string]deviation, len(gates))
		for i := range gates {
			v.against[gates[i].key] = against[i]
			if c := known.check(gates[i].key); c != nil {
				v.Checks[i].SD = c.SD
			}
		}
	}
	left := v.Day.RailExit.Happened
	for i := range gates {
		if g := &gates[i]; !left && !g.ground && !g.still {
			g.lacks = &Remedy{Kind: LeaveTheRail}
		}
		v.Checks[i].conclude(&gates[i])
	}
	if o.Remedies {
		err = newMender(ctx, &v, gates, against, o).mend()
	}
	return v, err
}

// conclude judges a check, and names of what would mend it all that takes no search.
func (c *Check) conclude(g *criterion) {
	if g.lacks != nil && c.unjudged(*g.lacks) {
		return
	}
	c.settle()
	if c.Pass {
		return
	}
	if g.absent != "" && math.IsNaN(c.Value) {
		c.Word = g.absent
	}
	if g.warns {
		c.Level, c.Pass = Caution, true
	}
	c.Remedies = append(c.Remedies, g.mends(c.Value)...)
}

// mends are those that take no search, for the value that failed.
func (g *criterion) mends(value float64) []Remedy {
	out := append([]Remedy(nil), g.adds...)
	for i := range out {
		if out[i].Kind == StrongerMount {
			out[i].To *= value
		}
	}
	return out
}
