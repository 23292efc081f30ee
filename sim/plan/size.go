package plan

import (
	"context"
	"math"
	"strconv"
	"sync"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Sized is what SizeFor found.
type Sized struct {
	Found  study.Among // its values have the most room; Within is where the check with the least still passes
	Today  Stand       // of the rocket as it is, on the base that was found; empty when that is not valid
	Stand  Stand       // at what was found
	Blocks []Barrier   // what does not pass there, when anything does not
	Never  []Barrier   // of these, what no place that was looked at passes: each where it came nearest
	Judged int         // verdicts that it took
}

// SizeFor finds the values of one or more inputs, over some rockets that differ in what has no number, with which the check
// that has the least room in any of some conditions has the most: by a line search or a simplex over that room. What
// is wrong with the goals is a fault.List, as is a rocket of which something cannot be judged, since no value
// will then pass.
func SizeFor(ctx context.Context, bases []*rocket.Rocket, goals []study.Goal, c Conditions, o study.Options) (Sized, error) {
	if faults := c.Unjudged(ctx, bases[0], goals); len(faults) > 0 {
		return Sized{}, faults
	}
	w := watch{ctx: ctx, conditions: &c, nearest: map[string]Barrier{}}
	w.probe(bases[0], goals)
	aim := study.Aim{
		Value:  w.room,
		Gain:   1e-2,
		Drop:   func(best float64) float64 { return math.Max(best, 1e-9) }, // down to none
		Refuse: func(*sim.Flight) (study.Refusal, float64) { return study.Accepted, 0 },
	}
	if known, bad := c.Under(ctx, bases[0]); bad == nil && c.Spreads != nil {
		w.like = &known
	}
	var s Sized
	for round := 0; ; round++ {
		found, err := study.FindBestAmong(ctx, bases, goals, aim, o)
		if err == nil {
			err = w.err
		}
		s.Found, s.Judged = found, w.judged
		if err != nil {
			return s, err
		}
		if s.Stand, err = c.Under(ctx, found.Flight.Rocket); err != nil {
			return s, err
		}
		if w.like == nil || w.holds(found.Flight.Rocket, &s.Stand) {
			break
		}
		if w.like = nil; round < mostRounds-1 {
			known := s.Stand
			w.like = &known
		}
		w.nearest = map[string]Barrier{}
	}
	if w.like != nil && s.Stand.Passes {
		w.trim(&s.Found.Best, goals)
	}
	found := s.Found
	s.Blocks = s.Stand.barriers()
	for _, b := range s.Blocks {
		if near, there := w.nearest[keyOf(b.Drive, &b.Check)]; there && near.Check.Room() < 0 {
			s.Never = append(s.Never, near)
		}
	}
	if today, bad := c.Under(ctx, bases[found.Of]); bad == nil {
		s.Today = today
	}
	return s, ctx.Err()
}

// Unjudged are the checks that cannot be judged whatever the values are: one fault each, with what is to be stated.
func (c *Conditions) Unjudged(ctx context.Context, r *rocket.Rocket, goals []study.Goal) fault.List {
	s, err := c.Under(ctx, r)
	if err != nil {
		return nil // another value may make a rocket
	}
	searched := map[string]bool{}
	for _, g := range goals {
		searched[g.Input.Name] = true
	}
	var faults fault.List
	told := map[string]bool{}
	for _, j := range s.Verdict {
		for i := range j.Verdict.Checks {
			check := &j.Verdict.Checks[i]
			if check.Judged || told[check.Key] {
				continue
			}
			for _, m := range check.Remedies {
				if m.Kind == gates.LeaveTheRail {
					continue
				}
				told[check.Key] = true
				f := fault.Fault{Problem: check.Name + " cannot be judged", Remedy: "see ullage check for what is to be stated"}
				if len(m.Keys) > 0 {
					if f.Key = m.Keys[0]; searched[f.Key] {
						continue
					}
					f.Remedy = "state it in the rocket file; without it no value passes"
				}
				faults = append(faults, f)
				break
			}
		}
	}
	return faults
}

// watch judges every flight of a search. It may be used by several goroutines.
type watch struct {
	ctx        context.Context
	conditions *Conditions
	// like is how a rocket near those looked at stands, whose corners fly for all of them: the worst of each are looked for at
	// what is found alone, a third of the flights. Nil looks for the worst of every one.
	like  *Stand
	moved map[string]bool // keys of checks that the inputs move; nil counts all

	mu      sync.Mutex
	err     error
	judged  int
	nearest map[string]Barrier // every check on every drive, where its worst wind came nearest to passing
}

// probe finds which checks the inputs move at all: what they leave as it is would hide the room of the others.
func (w *watch) probe(base *rocket.Rocket, goals []study.Goal) {
	quick := w.conditions.uncornered()
	rooms := map[string]float64{}
	moved := map[string]bool{}
	look := func(r *rocket.Rocket) {
		s, err := quick.Under(w.ctx, r)
		if err != nil {
			return
		}
		for i := range s.Verdict {
			j := &s.Verdict[i]
			for k := range j.Verdict.Checks {
				c := &j.Verdict.Checks[k]
				key, at := keyOf(j.Drive, c), c.Key+" "+string(j.Drive)+" "+strconv.Itoa(i)
				if was, there := rooms[at]; there && math.Abs(c.Room()-was) > 1e-6 {
					moved[key] = true
				}
				rooms[at] = c.Room()
			}
		}
	}
	look(base)
	for _, g := range goals {
		for _, share := range []float64{0.25, 0.5, 0.75} {
			r := base.Clone()
			if g.Input.Set(r, g.From+share*(g.To-g.From)) == nil {
				look(r)
			}
		}
	}
	if len(moved) > 0 {
		w.moved = moved
	}
}

// room is how a flight's rocket is graded: one that passes by the least room of the checks that the inputs move, one that fails
// in the worst corner alone by how far, and one that fails without any corner, which spares flying the corners, below all of those.
func (w *watch) room(fl *sim.Flight) float64 {
	const shift = 1 + leastGrade
	quick := w.conditions.uncornered()
	s, err := quick.Under(w.ctx, fl.Rocket)
	if err == nil && s.Passes && w.conditions.Spreads != nil {
		if s, err = w.conditions.under(w.ctx, fl.Rocket, w.like, &s); err == nil {
			w.note(&s)
			return w.grade(&s)
		}
	}
	if err != nil {
		w.mu.Lock()
		defer w.mu.Unlock()
		if bad := w.ctx.Err(); bad != nil {
			w.err = bad
		}
		return -2 * shift // no rocket on another drive
	}
	w.note(&s)
	g := w.grade(&s)
	if s.Passes {
		return g
	}
	return g - shift
}

// mostRounds is how often a search goes by the corners of one rocket, the last found, before it looks for those of every one.
const mostRounds = 3

// holds tells whether the corners that flew for all are the worst of what was found, too.
func (w *watch) holds(found *rocket.Rocket, stand *Stand) bool {
	const near = 1e-3 // of the limits' sizes
	likely, err := w.conditions.under(w.ctx, found, w.like, nil)
	return err == nil && math.Abs(w.grade(&likely)-w.grade(stand)) <= near
}

// trim draws the ranges told of what was found in to where it passes in its own worst corners.
func (w *watch) trim(found *study.Best, goals []study.Goal) {
	const halvings = 10
	passes := func(k int, v float64) bool {
		r := found.Flight.Rocket.Clone()
		if goals[k].Input.Set(r, v) != nil {
			return false
		}
		s, err := w.conditions.Under(w.ctx, r)
		return err == nil && w.grade(&s) > -1e-3
	}
	for k := range goals {
		for side, end := range found.Within[k] {
			if end == found.Values[k] || passes(k, end) {
				continue
			}
			in := found.Values[k]
			for range halvings {
				if mid := (in + end) / 2; passes(k, mid) {
					in = mid
				} else {
					end = mid
				}
			}
			found.Within[k][side] = in
		}
	}
}

// leastGrade is to what gates.Check.Room is held, and so the least grade of one that fails.
const leastGrade = 10

// grade is the least room of the checks that the inputs move, and of those that fail.
func (w *watch) grade(s *Stand) float64 {
	least := math.Inf(1)
	for i := range s.Verdict {
		j := &s.Verdict[i]
		for k := range j.Verdict.Checks {
			c := &j.Verdict.Checks[k]
			if c.Warns() || c.Judged && c.Pass && w.moved != nil && !w.moved[keyOf(j.Drive, c)] {
				continue
			}
			least = math.Min(least, c.Room())
		}
	}
	return least
}

// note keeps where each check came nearest to passing. Where only calm air and the day were looked at, what passes there counts
// as passing, so that nothing is said to pass nowhere which might.
func (w *watch) note(s *Stand) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.judged += len(s.Verdict)
	worst := map[string]Barrier{}
	for i := range s.Verdict {
		j := &s.Verdict[i]
		for k := range j.Verdict.Checks {
			c := &j.Verdict.Checks[k]
			key := keyOf(j.Drive, c)
			if was, there := worst[key]; !there || c.Room() < was.Check.Room() {
				worst[key] = Barrier{j.Drive, j.Wind, *c}
			}
		}
	}
	for key, b := range worst {
		if was, there := w.nearest[key]; !there || b.Check.Room() > was.Check.Room() {
			w.nearest[key] = b
		}
	}
}

// Passing lets an aim accept only what passes every check in every condition.
func Passing(ctx context.Context, aim study.Aim, c Conditions) study.Aim {
	refuse := aim.Refuse
	quick := c.uncornered()
	aim.Refuse = func(fl *sim.Flight) (study.Refusal, float64) {
		if why, far := refuse(fl); why != study.Accepted {
			return why, far
		}
		for _, c := range []*Conditions{&quick, &c} { // the dearer only for what passes so far
			s, err := c.Under(ctx, fl.Rocket)
			if err != nil {
				return study.Failing, 1
			}
			if !s.Passes {
				return study.Failing, math.Min(1, math.Max(0, -s.Room/2))
			}
		}
		return study.Accepted, 0
	}
	return aim
}
