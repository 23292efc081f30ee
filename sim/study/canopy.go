package study

import (
	"context"
	"math"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/solve"
)

// Sized is a canopy that lands the rocket at a chosen speed.
type Sized struct {
	Diameter float64 // nominal, m
	Area     float64 // nominal, m²
	Vertical float64 // at landing, m/s
	Drift    float64 // of the landing from the pad, m
	Time     float64 // of landing, s
	Flights  int     // it took
	Flight   *sim.Flight
}

// How close the landing speed comes to what was asked for, as a share: what the search
// is after, and what it may end with where the speed jumps.
const (
	sizeTol = 1e-4
	sizeFar = 1e-2
)

// How the search widens from today's diameter: the first step as a share of the one that
// a settled speed would take, and each as a multiple of the one before.
const (
	widen     = 1.2
	widenMore = 1.5
)

// CanopyFor finds, by flights, the nominal diameter of a canopy on which the rocket
// lands at a vertical speed, m/s. Its coefficient, rule and the other canopies stay.
// Where no diameter of the input's range does, the error is a fault.List.
func CanopyFor(ctx context.Context, r *rocket.Rocket, canopy int, vertical float64, o Options) (Sized, error) {
	if canopy < 0 || canopy >= len(r.Canopies) {
		return Sized{}, fault.List{{Key: "canopy", Problem: "the rocket has no such canopy", Remedy: "add one"}}
	}
	c := &r.Canopies[canopy]
	in, err := rocketfile.Find(r, "canopy."+c.Name+".diameter")
	if err != nil {
		return Sized{}, err
	}
	wrong := func(problem, remedy string) error {
		return fault.List{{Key: in.Name, Problem: problem, Remedy: remedy}}
	}
	if !(vertical > 0) || math.IsInf(vertical, 0) {
		return Sized{}, wrong("no landing speed to aim for", "give a speed above zero")
	}
	var s Sized
	flight := o.unkept()
	up := new(sim.WayUp)
	flight.From, flight.Keeps = up, up
	// The settled speed goes with 1/diameter: the logarithm of one is nearly straight
	// against that of the other.
	tooSlow := func(x float64) (float64, error) {
		try := r.Clone()
		d := math.Min(in.Max, math.Max(in.Min, math.Exp(x)))
		if err := in.Set(try, d); err != nil {
			return 0, err
		}
		fl, err := sim.Fly(ctx, try, flight)
		switch {
		case err != nil:
			return 0, err
		case !fl.Canopies[canopy].Opened:
			return 0, wrong("the canopy does not open", "mend its rule first")
		case !(fl.Landing.Vertical > 0):
			return 0, wrong("the rocket does not land", "give it a rail it can leave")
		}
		s.Flights++
		y := math.Log(vertical / fl.Landing.Vertical)
		if s.Flight == nil || math.Abs(y) < math.Abs(math.Log(vertical/s.Vertical)) {
			s.Flight, s.Diameter, s.Vertical = fl, d, fl.Landing.Vertical
		}
		return y, nil
	}
	low, high := math.Log(in.Min), math.Log(in.Max)
	at := math.Min(high, math.Max(low, math.Log(c.NominalDiameter())))
	first, err := tooSlow(at)
	if err != nil {
		return Sized{}, err
	}
	// Widen from today's diameter towards the answer.
	if math.Abs(first) > sizeTol {
		end := low
		if first < 0 {
			end = high
		}
		b, ok, err := solve.Outward(tooSlow, solve.Point{X: at, Y: first}, end, widen*math.Abs(first), widenMore)
		switch {
		case err != nil:
			return Sized{}, err
		case !ok && end == low:
			return Sized{}, wrong("the rocket lands slower than that without it", "ask for a higher speed")
		case !ok:
			return Sized{}, wrong("no canopy in the range is large enough", "ask for a higher speed, or open it earlier")
		}
		if _, err = solve.Root(tooSlow, b, solve.Tolerance{X: sizeTol / 100, Y: sizeTol}); err != nil {
			return Sized{}, err
		}
	}
	if math.Abs(math.Log(vertical/s.Vertical)) > sizeFar {
		return Sized{}, wrong("no diameter makes it land at just that speed", "open it earlier, or ask for another speed")
	}
	return s.flown(ctx, o)
}

// flown completes the outcome from its flight.
func (s Sized) flown(ctx context.Context, o Options) (Sized, error) {
	s.Area = math.Pi / 4 * s.Diameter * s.Diameter
	s.Time = s.Flight.Landing.Time
	s.Drift = math.Hypot(s.Flight.Landing.East, s.Flight.Landing.North)
	var err error
	if o.Keep {
		s.Flight, err = sim.Fly(ctx, s.Flight.Rocket, o.flight())
	}
	return s, err
}
