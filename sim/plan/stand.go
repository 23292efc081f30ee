package plan

import (
	"context"
	"math"
	"time"

	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Conditions are what a rocket has to pass at once: every check, in calm air, on the day and, with what is
// uncertain, in the worst corner, on each of some drives and in each of some winds.
type Conditions struct {
	Drives  []rocket.Power                      // empty for the one that flies
	Winds   []float64                           // m/s, in place of the file's; empty for the file's
	Spreads func(*rocket.Rocket) []study.Spread // what is uncertain of a rocket on the drive that flies; nil for nothing
	Today   time.Time                           // for the age of a proof; zero does not judge it
}

// Stand is how a rocket stands against conditions in which everything was judged.
type Stand struct {
	Room    float64 // of the tightest check of the tightest condition, as gates.Check.Room has it; positive passes
	Passes  bool    // every check of every condition
	Verdict []Judged
}

// Judged is the verdict in one condition.
type Judged struct {
	Drive   rocket.Power
	Wind    float64 // m/s
	Verdict gates.Verdict
}

// Tightest is the condition with the least room, and its check.
func (s *Stand) Tightest() (*Judged, *gates.Check) {
	var j *Judged
	var tightest *gates.Check
	for i := range s.Verdict {
		c := s.Verdict[i].Verdict.Tightest()
		if c != nil && (tightest == nil || c.Room() < tightest.Room()) {
			j, tightest = &s.Verdict[i], c
		}
	}
	return j, tightest
}

// Under judges a rocket in every condition. A rocket that is not valid on one of the drives is a fault.List.
func (c *Conditions) Under(ctx context.Context, r *rocket.Rocket) (Stand, error) {
	return c.under(ctx, r, nil, nil)
}

// under is Under with what is known already: how a rocket like it stands, whose corners fly in place of looking for the worst, and
// how this one stands without corners, whose flights need not fly again. Nil where there is none.
func (c *Conditions) under(ctx context.Context, r *rocket.Rocket, like, flown *Stand) (Stand, error) {
	s := Stand{Room: math.Inf(1), Passes: true}
	for i, r := range c.rockets(r) {
		o := gates.Options{Today: c.Today, Workers: 1}
		if like != nil {
			o.Like = &like.Verdict[i].Verdict
		}
		if flown != nil {
			o.Flown = &flown.Verdict[i].Verdict
		}
		if c.Spreads != nil {
			o.Spreads = c.Spreads(r)
		}
		v, err := gates.Judge(ctx, r, o)
		if err != nil {
			return s, err
		}
		wind, _ := r.Wind.Surface()
		if t := v.Tightest(); t != nil {
			s.Room = math.Min(s.Room, t.Room())
		}
		s.Passes = s.Passes && v.Pass()
		s.Verdict = append(s.Verdict, Judged{r.Power, wind, v})
	}
	return s, nil
}

// rockets is a rocket in every condition, drive by drive.
func (c *Conditions) rockets(base *rocket.Rocket) []*rocket.Rocket {
	drives := c.Drives
	if len(drives) == 0 {
		drives = []rocket.Power{base.Power}
	}
	var out []*rocket.Rocket
	for _, drive := range drives {
		if len(c.Winds) == 0 {
			r := base.Clone()
			r.Power = drive
			out = append(out, r)
		}
		for _, wind := range c.Winds {
			r := base.Clone()
			r.Power = drive
			blow(r, wind)
			out = append(out, r)
		}
	}
	return out
}

// uncornered are the same conditions without the worst corners.
func (c *Conditions) uncornered() Conditions {
	quick := *c
	quick.Spreads = nil
	return quick
}

// Barrier is a check that stands in the way.
type Barrier struct {
	Drive rocket.Power
	Wind  float64 // m/s
	Check gates.Check
}

// keyOf tells a check on a drive from others.
func keyOf(drive rocket.Power, c *gates.Check) string { return string(drive) + " " + c.Key }

// barriers are the checks of a stand that do not pass, each once, where it has the least room.
func (s *Stand) barriers() []Barrier {
	var out []Barrier
	place := map[string]int{}
	for i := range s.Verdict {
		j := &s.Verdict[i]
		for k := range j.Verdict.Checks {
			c := &j.Verdict.Checks[k]
			if c.Judged && c.Pass {
				continue
			}
			b := Barrier{j.Drive, j.Wind, *c}
			key := keyOf(j.Drive, c)
			at, there := place[key]
			switch {
			case !there:
				place[key] = len(out)
				out = append(out, b)
			case c.Room() < out[at].Check.Room():
				out[at] = b
			}
		}
	}
	return out
}

// turn makes the wind near the ground of a rocket blow from another bearing, rad, and what is above turn with it.
func turn(r *rocket.Rocket, from float64) {
	if len(r.Wind.Layers) == 0 {
		r.Wind.From = from
		return
	}
	_, now := r.Wind.Surface()
	r.Wind.Veer = math.Remainder(r.Wind.Veer+from-now, 2*math.Pi)
}

// blow makes the wind of a rocket another one, which somebody has told.
func blow(r *rocket.Rocket, wind float64) {
	r.Wind.Blow(wind)
	r.Wind.Stated = len(r.Wind.Layers) == 0 // a speed beside layers would be one too many
}
