package study

import (
	"context"
	"math"
	"strconv"
	"strings"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Variant is a rocket to set beside others.
type Variant struct {
	Name    string
	Rocket  *rocket.Rocket
	Problem string // it does not fit the mount, or exceeds a limit; empty for none
}

// Compared is a variant and what became of it.
type Compared struct {
	Variant
	Flight  *sim.Flight // nil when invalid or interrupted
	Invalid error
	Best    *Best   // of the fill, when asked for; nil when no fill may be a best one
	Delays  []Delay // of a motor with a charge, when asked for: what each delay would do
	Delay   int     // the place of the best of Delays; -1 for none
}

// BestDelay is the best of the delays; not ok without one.
func (c *Compared) BestDelay() (Delay, bool) {
	if c.Delay < 0 || c.Delay >= len(c.Delays) {
		return Delay{}, false
	}
	return c.Delays[c.Delay], true
}

// CompareOptions say what to find for each variant besides its flight.
type CompareOptions struct {
	Options
	Fill          bool // the best fill of each on water
	AllowLeftover bool // a best fill may leave liquid aboard
	Wish          Wish // of a best fill; the zero value wishes for the highest apogee
	Delays        bool // the best delay of each on a motor
}

// Throats are variants of a rocket by the diameter of the throat, m. A diameter that
// makes no valid rocket shows as Invalid once compared.
func Throats(base *rocket.Rocket, throats []float64) []Variant {
	variants := make([]Variant, len(throats))
	for i, d := range throats {
		r := base.Clone()
		if r.Water != nil {
			r.Water.Throat = d
		}
		variants[i] = Variant{Name: strconv.FormatFloat(d*1e3, 'g', 6, 64) + " mm", Rocket: r}
	}
	return variants
}

// Motors are variants of a rocket, each with a motor in it, flown on that: those whose motor does
// not fit the mount, or has more impulse (N·s) than the limit, say so. 0 is no limit. A rocket is
// the one that its file describes with that motor: what else the file says for a motor's flight,
// as when a canopy opens, is not in one that was read without.
func Motors(with []Variant, limit float64) []Variant {
	variants := make([]Variant, len(with))
	for i, v := range with {
		r := v.Rocket.Clone()
		r.Power = rocket.MotorPower
		variants[i] = Variant{Name: v.Name, Rocket: r, Problem: unfit(r, limit)}
	}
	return variants
}

// unfit says why a rocket's motor cannot be used: it does not fit the mount, or has
// more impulse (N·s) than a limit, 0 for none. Empty when nothing known keeps it out, and without a
// motor.
func unfit(r *rocket.Rocket, limit float64) string {
	const equal = 1 + 1e-9
	if r.Motor == nil {
		return ""
	}
	problems := r.MotorFit().Problems
	if m := r.Motor; limit > 0 && m.Curve != nil && m.Impulse() > limit*equal {
		problems = append(problems, "above the impulse limit")
	}
	return strings.Join(problems, ", ")
}

// Compare flies variants side by side and keeps their order. When it ends early, with
// the context's error, the rest have no flight.
func Compare(ctx context.Context, variants []Variant, o CompareOptions) ([]Compared, error) {
	compared := make([]Compared, len(variants))
	for i, v := range variants {
		compared[i] = Compared{Variant: v, Delay: -1}
	}
	do := func(ctx context.Context, i int) (Compared, error) { return o.compare(ctx, compared[i]) }
	err := inOrder(ctx, len(variants), o.Options, do, func(i int, c Compared) error {
		compared[i] = c
		return nil
	})
	return compared, err
}

// compare flies one variant. It is one job of several, so its own studies take one
// worker.
func (o *CompareOptions) compare(ctx context.Context, c Compared) (Compared, error) {
	var err error
	c.Flight, err = sim.Fly(ctx, c.Rocket.Clone(), o.flight())
	if c.Invalid, err = parted(err); err != nil || c.Invalid != nil {
		return c, err
	}
	if c.Invalid = ofChamber(c.Rocket); c.Invalid != nil {
		c.Flight = nil
		return c, nil
	}
	alone := o.Options
	alone.Workers, alone.Keep, alone.Progress = 1, false, nil
	if o.Fill && c.Rocket.Power == rocket.WaterPower {
		if c.Best, err = bestFill(ctx, c.Rocket, o.aim(), alone); err != nil {
			return c, err
		}
	}
	if canopy := ejected(c.Rocket); o.Delays && canopy >= 0 {
		values, err := OpeningValues(ctx, c.Rocket, canopy, alone)
		if err != nil {
			return c, err
		}
		c.Delays, c.Delay, err = Opening(ctx, c.Rocket, canopy, values, alone)
		return c, err
	}
	return c, nil
}

// aim is what a best fill is after.
func (o *CompareOptions) aim() Aim {
	if o.Wish.Row.Name == "" {
		return Highest(o.AllowLeftover)
	}
	return o.Wish.Aim(o.AllowLeftover)
}

// bestFill is the best of water.fill; nil when none may be.
func bestFill(ctx context.Context, r *rocket.Rocket, aim Aim, o Options) (*Best, error) {
	goal, err := ParseGoal(r, "water.fill")
	if err != nil {
		return nil, err
	}
	best, err := FindBest(ctx, r, []Goal{goal}, aim, o)
	if _, none := err.(*NoneAdmissible); none {
		return nil, nil
	}
	return &best, err
}

// ejected is the canopy that a motor's charge opens; -1 for none.
func ejected(r *rocket.Rocket) int {
	if r.Power != rocket.MotorPower || r.Motor == nil || math.IsNaN(r.Motor.Delay) {
		return -1
	}
	for i := range r.Canopies {
		if r.Canopies[i].Motor.Trigger.ByCharge() {
			return i
		}
	}
	return -1
}
