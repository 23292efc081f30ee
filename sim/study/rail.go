package study

import (
	"context"
	"math"
	"sync"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/solve"
)

// RailExit says whether a rocket is fast enough as it leaves its guide, and what
// would make it so.
type RailExit struct {
	Limit    float64 // asked for, m/s
	Guided   float64 // travel along the guide: the rail, or the launch tube if longer, m
	Exited   bool    // it leaves the guide
	Speed    float64 // as it does, m/s
	Reached  bool    // the limit is reached on the guide as it is
	At       float64 // travel along the guide where it is, m; NaN when it is not
	Enough   float64 // rail length that would be enough, m; NaN when none up to LongestRail is
	Pressure float64 // least gauge pressure with which the guide as it is would be enough, Pa; NaN when none in reach is and that the chamber is proved for (TopPressure), and on a motor
	Wind     float64 // the strongest wind of which Speed is Factor times as much, m/s
	Factor   float64 // least ratio of the speed to the wind
}

// LongestRail is the longest rail looked at, m.
const LongestRail = 20.0

// pressureReach is how many times today's pressure is looked at.
const pressureReach = 4

// travelTol is how close a time on the guide comes, s.
const travelTol = 1e-9

// pressureTol is how close a pressure comes, as a share of today's.
const pressureTol = 1e-4

// RailExitFor finds where along a guide the speed reaches a limit, m/s, and the
// pressure at which it would do so on the guide as it is. A rocket that is not valid
// is a fault.List.
func RailExitFor(ctx context.Context, r *rocket.Rocket, limit float64, o Options) (RailExit, error) {
	e := RailExit{Limit: limit, Factor: r.Limits.InForce().RailExitWind, At: math.NaN(), Enough: math.NaN(), Pressure: math.NaN()}
	s := railStudies.Get().(*railStudy)
	defer railStudies.Put(s)
	s.ctx, s.base, s.limit, s.options = ctx, r, limit, o.unkept()
	s.options.Guide = true // nothing after it is asked for
	fl, err := s.flyer.Fly(ctx, r, s.options)
	if err != nil {
		return e, err
	}
	e.Guided = r.Rail.Length
	if r.Power == rocket.WaterPower && r.Water.Tube != nil {
		e.Guided = math.Max(e.Guided, r.Water.Tube.Length)
	}
	if e.Exited = fl.RailExit.Happened; e.Exited {
		e.Speed = fl.RailExit.Speed
		e.Wind = e.Speed / e.Factor
	}
	if e.Enough, err = s.travel(); err != nil {
		return e, err
	}
	if e.Reached = e.Enough <= e.Guided; e.Reached {
		e.At = e.Enough
	}
	if r.Power == rocket.WaterPower {
		e.Pressure, err = s.pressure(e.Speed)
	}
	return e, err
}

// railStudy looks for what a rail exit speed takes.
type railStudy struct {
	ctx     context.Context
	base    *rocket.Rocket
	limit   float64
	options sim.Options
	flyer   sim.Flyer
	try     rocket.Rocket // the one that flies
}

// railStudies are kept for the next one: a flyer is too large for the stack.
var railStudies = sync.Pool{New: func() any { return new(railStudy) }}

// travel is how far along a long guide the speed reaches the limit, m; NaN if it does
// not. What happens on a guide does not depend on how much of it is still to come.
func (s *railStudy) travel() (float64, error) {
	long := &s.try
	s.base.CopyTo(long)
	long.Rail.Length = LongestRail
	long.Canopies = nil // which do not open on a guide
	kept := s.options
	kept.Keep = true
	fl, err := s.flyer.Fly(s.ctx, long, kept)
	if err != nil {
		return math.NaN(), err
	}
	fastest := solve.Point{X: fl.Max.SpeedTime, Y: s.limit - fl.Max.Speed}
	if fastest.Y > 0 {
		return math.NaN(), nil
	}
	at := fl.Reader()
	slow := func(t float64) (float64, error) { return s.limit - at(t).Speed, nil }
	b, err := solve.Root(slow, solve.Bracket{In: solve.Point{Y: s.limit}, Out: fastest}, solve.Tolerance{X: travelTol})
	if err != nil {
		return math.NaN(), err
	}
	return math.Max(0, at(b.Out.X).Height/math.Cos(long.Rail.Tilt)), nil
}

// pressure is the least gauge pressure at which the guide as it is would be enough,
// Pa; NaN when none in reach is, nor any that the chamber is proved for. speed is today's.
func (s *railStudy) pressure(speed float64) (float64, error) {
	in, err := rocketfile.Find(s.base, "water.pressure")
	if err != nil {
		return math.NaN(), err
	}
	// The square of the speed goes about with the pressure.
	over := func(p float64) (float64, error) {
		s.base.CopyTo(&s.try)
		if err := in.Set(&s.try, p); err != nil {
			return 0, err
		}
		fl, err := s.flyer.Fly(s.ctx, &s.try, s.options)
		if err != nil {
			return 0, err
		}
		v := 0.0
		if fl.RailExit.Happened {
			v = fl.RailExit.Speed
		}
		return v*v - s.limit*s.limit, nil
	}
	today := s.base.Water.Pressure
	b := solve.Bracket{
		In:  solve.Point{X: today, Y: speed*speed - s.limit*s.limit},
		Out: solve.Point{X: in.Min, Y: -s.limit * s.limit},
	}
	if b.In.Y <= 0 {
		b.Out = b.In
		if b.In.X = min(in.Max, pressureReach*today, TopPressure(s.base, s.base)); !(b.In.X > today) {
			return math.NaN(), nil
		}
		if b.In.Y, err = over(b.In.X); err != nil || b.In.Y <= 0 {
			return math.NaN(), err
		}
	}
	b, err = solve.Root(over, b, solve.Tolerance{X: pressureTol * today})
	return b.In.X, err
}
