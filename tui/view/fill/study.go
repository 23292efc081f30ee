package fill

import (
	"context"
	"errors"
	"math"
	"sync"

	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// fillPoints is how many flights make a curve.
const fillPoints = 101

// fillInput is the input that the fill view walks along.
const fillInput = "water.fill"

// fillCurve is what is wanted of a rocket, how high it flies mostly, and how fast it leaves its rail, against
// its fill. Everything is SI; NaN stands where it never leaves the rail or makes
// no valid rocket.
type fillCurve struct {
	member
	wish              study.Wish
	fill, value, rail []float64   // value is that of what is wanted
	left              []bool      // it leaves the rail but ends with liquid aboard
	stuck             []bool      // it never leaves the rail
	best              *study.Best // nil when no fill may be a best one
	overpressed       bool        // none may, since the chamber is not proved for the pressure
	invalid           error       // why no fill makes a valid rocket; nil mostly
}

// fillCurves flies the rocket of every member over the fills, and finds each
// one's best.
func fillCurves(ctx context.Context, members []member, wish study.Wish) ([]fillCurve, error) {
	curves := make([]fillCurve, len(members))
	errs := make([]error, len(members))
	var wait sync.WaitGroup
	for i := range members {
		wait.Go(func() { curves[i], errs[i] = newFillCurve(ctx, members[i], wish) })
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return curves, nil
}

func newFillCurve(ctx context.Context, of member, wish study.Wish) (fillCurve, error) {
	c := fillCurve{
		member: of, wish: wish,
		fill: make([]float64, 0, fillPoints), value: make([]float64, 0, fillPoints), rail: make([]float64, 0, fillPoints),
		left: make([]bool, 0, fillPoints), stuck: make([]bool, 0, fillPoints),
	}
	in, err := rocketfile.Find(of.rocket, fillInput)
	if err != nil {
		return c, err
	}
	axis := study.Linear(in, in.Min, in.Max, fillPoints)
	var invalid error
	valid := 0
	err = study.Sweep(ctx, of.rocket, []study.Axis{axis}, study.Options{}, func(row study.Row) error {
		c.add(row)
		if row.Flight != nil {
			valid++
		} else if invalid == nil {
			invalid = row.Invalid
		}
		return nil
	})
	if err != nil {
		return c, err
	}
	if valid == 0 {
		c.invalid = invalid
		return c, nil
	}
	goal, err := study.ParseGoal(of.rocket, fillInput)
	if err != nil {
		return c, err
	}
	best, err := study.FindBest(ctx, of.rocket, []study.Goal{goal}, wish.Aim(false), study.Options{})
	if none := new(study.NoneAdmissible); errors.As(err, &none) {
		c.overpressed = none.Overpressed > 0
		return c, nil
	}
	c.best = &best
	return c, err
}

// add appends one flight.
func (c *fillCurve) add(row study.Row) {
	value, rail, left, stuck := math.NaN(), math.NaN(), false, false
	if fl := row.Flight; fl != nil {
		if stuck = !fl.Results.RailExit.Happened; !stuck {
			value, rail, left = c.wish.Row.Of(fl), fl.Results.RailExit.Speed, fl.Results.LiquidLeft > 0
		}
	}
	c.fill, c.value, c.rail = append(c.fill, row.Values[0].Number), append(c.value, value), append(c.rail, rail)
	c.left, c.stuck = append(c.left, left), append(c.stuck, stuck)
}

// granted is what the best fill has of what is wanted.
func (c *fillCurve) granted() float64 { return c.wish.Row.Of(c.best.Flight) }

// stretch is a range of fills, from its first flight to its last.
type stretch struct{ from, to float64 }

// stretches are the ranges over which something holds.
func (c *fillCurve) stretches(holds []bool) []stretch {
	var out []stretch
	for i, is := range holds {
		switch {
		case !is:
		case i > 0 && holds[i-1]:
			out[len(out)-1].to = c.fill[i]
		default:
			out = append(out, stretch{c.fill[i], c.fill[i]})
		}
	}
	return out
}
