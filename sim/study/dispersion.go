package study

import (
	"cmp"
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// LandingPoint is where one flight of a scatter came down.
type LandingPoint struct {
	Draw        int     // from 0
	East, North float64 // from the pad, m
	Apogee      float64 // m
}

// Summary is the distribution of one number over the flights that have it.
type Summary struct {
	Count         int
	Mean, SD      float64 // over all of them; NaN of too few
	Q05, Q50, Q95 float64 // NaN of none
}

// Influence is how much one uncertain input moves the apogee.
type Influence struct {
	Input rocketfile.Input
	SD    float64
	Rank  float64 // Spearman's correlation with apogee, -1 to 1; NaN when there is none
}

// Dispersion sums up the flights of a scatter.
type Dispersion struct {
	Asked        int         // flights asked for
	Drawn        int         // so far: fewer when interrupted
	Invalid      int         // of these made no valid rocket
	FirstInvalid error       // the first of them
	Grounded     int         // of Drawn did not leave the rail: not in the summaries
	Apogee       Summary     // m
	RailExit     Summary     // m/s
	Landed       int         // left the rail and came down
	Landing      Ellipse     // NaN of fewer than three
	Importance   []Influence // of each uncertain input, the greatest first
	Reservoir    int         // flights behind quantiles and ranks: all, or ReservoirSize chosen at random
	Partial      bool        // interrupted
}

// Sampled tells that quantiles and ranks come from some of the flights only.
func (r *Dispersion) Sampled() bool { return r.Reservoir < r.Apogee.Count }

// MaxScatter bounds a scatter: more is a slip of the pen.
const MaxDispersion = 100_000_000

// ReservoirSize bounds the flights kept for quantiles and ranks.
const ReservoirSize = 100_000

// block is how many draws are one job: a flight alone is little work to hand over.
const block = 16

// outcome is what is kept of one draw.
type outcome struct {
	invalid      error
	exited       bool
	landed       bool
	apogee, exit float64
	east, north  float64
	deviates     []float64
}

// Disperse flies a rocket n times with its uncertain inputs drawn from normal
// distributions. A tilt or a wind speed drawn below 0 points the other way; draws
// that make no valid rocket are counted and not replaced. The result depends on the
// seed, not on the workers, and memory does not grow with n. each, if there is one, is
// given every landing in the order of the draws; its first error ends the scatter.
// One that ends early returns what it has, Partial, beside the error. Bad spreads or
// a bad n are a fault.List.
func Disperse(ctx context.Context, r *rocket.Rocket, spreads []Spread, n int, seed uint64, o Options, each func(LandingPoint) error) (Dispersion, error) {
	if err := checkDispersion(r, spreads, n); err != nil {
		return Dispersion{Asked: n}, err
	}
	flight := o.flight()
	flight.Keep = false
	newDo := func() func(context.Context, int) ([]outcome, error) {
		d := newDrawer(r, spreads, seed)
		return func(ctx context.Context, b int) ([]outcome, error) {
			first := b * block
			outcomes := make([]outcome, min(block, n-first))
			deviates := make([]float64, len(outcomes)*len(spreads))
			for i := range outcomes {
				own := deviates[i*len(spreads):][:len(spreads)]
				var err error
				if outcomes[i], err = d.fly(ctx, first+i, own, flight); err != nil {
					return outcomes[:i], err
				}
			}
			return outcomes, nil
		}
	}
	c := collector{result: Dispersion{Asked: n}, spreads: spreads, each: each,
		kept: newReservoir(ReservoirSize, 2+len(spreads), seed)}
	quiet := o
	if o.Progress != nil {
		quiet.Progress = func(done, _ int) { o.Progress(min(done*block, n), n) }
	}
	err := inOrder(ctx, (n+block-1)/block, quiet, newDo, func(_ int, outcomes []outcome) error { return c.take(outcomes) })
	return c.finish(err), err
}

// checkScatter tells what is wrong before anything flies.
func checkDispersion(r *rocket.Rocket, spreads []Spread, n int) error {
	var faults fault.List
	if n < 1 || n > MaxDispersion {
		faults = append(faults, fault.Fault{Problem: "not a number of flights", Remedy: "ask for 1 to 100000000"})
	}
	for _, s := range spreads {
		if _, err := rocketfile.Find(r, s.Input.Name); err != nil {
			faults = append(faults, fault.In(err)...)
		} else if !(s.SD >= 0) || math.IsInf(s.SD, 0) {
			faults = append(faults, fault.Fault{Key: "spread." + s.Input.Name, Problem: "not a standard deviation", Remedy: "give 0 or more"})
		}
	}
	if err := r.Validate(); err != nil {
		faults = append(faults, fault.In(err)...)
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// fly draws and flies one rocket.
func (d *drawer) fly(ctx context.Context, i int, deviates []float64, o sim.Options) (outcome, error) {
	result := outcome{deviates: deviates}
	rocket, invalid := d.draw(i, deviates)
	if invalid != nil {
		result.invalid = invalid
		return result, nil
	}
	fl, invalid, err := fly(ctx, rocket, o)
	if err != nil || invalid != nil {
		result.invalid = invalid
		return result, err
	}
	result.exited = fl.RailExit.Happened && fl.Apogee.Happened
	result.landed = result.exited && fl.Landing.Happened
	result.apogee, result.exit = fl.Apogee.Height, fl.RailExit.Speed
	result.east, result.north = fl.Landing.East, fl.Landing.North
	return result, nil
}

// collector takes outcomes in the order of the draws.
type collector struct {
	result       Dispersion
	spreads      []Spread
	each         func(LandingPoint) error
	apogee, exit moments
	landing      plane
	kept         *reservoir
	row          []float64
}

func (c *collector) take(outcomes []outcome) error {
	for i := range outcomes {
		o := &outcomes[i]
		draw := c.result.Drawn
		c.result.Drawn++
		switch {
		case o.invalid != nil:
			if c.result.Invalid++; c.result.FirstInvalid == nil {
				c.result.FirstInvalid = o.invalid
			}
			continue
		case !o.exited:
			c.result.Grounded++
			continue
		}
		c.apogee.add(o.apogee)
		c.exit.add(o.exit)
		c.row = append(append(c.row[:0], o.apogee, o.exit), o.deviates...)
		c.kept.add(c.row...)
		if !o.landed {
			continue
		}
		c.landing.add(o.east, o.north)
		if c.each != nil {
			if err := c.each(LandingPoint{draw, o.east, o.north, o.apogee}); err != nil {
				return err
			}
		}
	}
	return nil
}

// finish sums up.
func (c *collector) finish(err error) Dispersion {
	r := &c.result
	r.Partial = err != nil
	r.Reservoir = c.kept.kept()
	apogees := c.kept.column(0)
	r.Apogee = summary(&c.apogee, apogees)
	r.RailExit = summary(&c.exit, c.kept.column(1))
	r.Landed = c.landing.x.n
	r.Landing = c.landing.ellipse()
	byApogee := ranks(apogees)
	for k, s := range c.spreads {
		rank := rankCorrelation(ranks(c.kept.column(2+k)), byApogee)
		r.Importance = append(r.Importance, Influence{s.Input, s.SD, rank})
	}
	slices.SortStableFunc(r.Importance, func(a, b Influence) int {
		return cmp.Compare(size(b.Rank), size(a.Rank))
	})
	return *r
}

// size orders correlations: none at all comes last.
func size(rank float64) float64 {
	if math.IsNaN(rank) {
		return -1
	}
	return math.Abs(rank)
}

func summary(m *moments, kept []float64) Summary {
	sorted := slices.Clone(kept)
	slices.Sort(sorted)
	s := Summary{Count: m.n, Mean: m.mean, SD: m.sd(), Q05: quantile(sorted, 0.05), Q50: quantile(sorted, 0.5), Q95: quantile(sorted, 0.95)}
	if m.n == 0 {
		s.Mean = math.NaN()
	}
	return s
}
