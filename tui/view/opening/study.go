package opening

import (
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/view"
)

// opening is what there is to see of one canopy of one flight. Everything is SI.
type figures struct {
	of     *view.Outcome
	canopy int
	number string // the input that moves the opening; empty when the rule has none
	top    openingTop
	curve  openingCurve
	values []study.Delay // those worth a look
	best   int           // of values; −1 for none
	cases  []study.WhatIf
}

// openingTop is the flight from a little before the top to a little after the
// last canopy of it.
type openingTop struct {
	from, to               float64
	time, height, airspeed []float64
}

// openingCurve is what opening does against the number in the rule, in rising
// order of the number. Where the canopy opens under thrust or never there is
// NaN.
type openingCurve struct {
	value, airspeed, load []float64
}

// ruleOf names the input that is a canopy's rule on the drive that flies.
func ruleOf(r *rocket.Rocket, canopy int) string {
	return "canopy." + r.Canopies[canopy].Name + ".deploy." + string(r.Power)
}

// newOpening looks at one canopy of a flight.
func newFigures(ctx context.Context, of *view.Outcome, canopy int) (figures, error) {
	r := of.File.Rocket()
	o := figures{of: of, canopy: canopy, number: r.OpeningInput(canopy), best: -1, top: newOpeningTop(of.Flight)}
	if o.number == "" {
		return o, nil
	}
	values, err := study.OpeningValues(ctx, r, canopy, study.Options{})
	if err != nil {
		return o, err
	}
	if o.values, o.best, err = study.Opening(ctx, r, canopy, values, study.Options{}); err != nil {
		return o, err
	}
	if o.curve, err = curveThrough(ctx, r, canopy, o.values); err != nil {
		return o, err
	}
	o.cases, err = study.WhatIfs(ctx, r, canopy, study.Options{})
	return o, err
}

// closePoints is how many values make a curve.
const closePoints = 81

// curveThrough is the curve from the least to the greatest of some values that have flown, of which it takes what it meets.
func curveThrough(ctx context.Context, r *rocket.Rocket, canopy int, flown []study.Delay) (openingCurve, error) {
	values := make([]float64, len(flown))
	for i := range flown {
		values[i] = flown[i].Value
	}
	at := func(v float64) int {
		return slices.IndexFunc(flown, func(d study.Delay) bool { return sameNumber(d.Value, v) })
	}
	fine := between(values, closePoints)
	more, _, err := study.Opening(ctx, r, canopy, slices.DeleteFunc(slices.Clone(fine), func(v float64) bool { return at(v) >= 0 }), study.Options{})
	if err != nil {
		return openingCurve{}, err
	}
	curve := make([]study.Delay, 0, len(fine))
	for _, v := range fine {
		if i := at(v); i >= 0 {
			curve = append(curve, flown[i])
			continue
		}
		curve, more = append(curve, more[0]), more[1:]
	}
	return newOpeningCurve(curve), nil
}

// between are so many values from the least to the greatest of some.
func between(values []float64, n int) []float64 {
	if len(values) < 2 {
		return values
	}
	lo, hi := slices.Min(values), slices.Max(values)
	out := make([]float64, n)
	for i := range out {
		out[i] = lo + (hi-lo)*float64(i)/float64(n-1)
	}
	return out
}

func newOpeningCurve(delays []study.Delay) openingCurve {
	var c openingCurve
	for _, d := range delays {
		airspeed, load := d.Airspeed, d.Load
		if !d.Opened || d.Early {
			airspeed, load = math.NaN(), math.NaN()
		}
		c.value = append(c.value, d.Value)
		c.airspeed, c.load = append(c.airspeed, airspeed), append(c.load, load)
	}
	return c
}

// newOpeningTop cuts the part around the top and the openings out of a flight.
func newOpeningTop(fl *sim.Flight) openingTop {
	const before, after = 3, 3 // s
	first, last := math.Inf(1), math.Inf(-1)
	for _, e := range fl.Events {
		if e.Kind == sim.ApogeeEvent || e.Kind == sim.CanopyEvent {
			first, last = min(first, e.Time), max(last, e.Time)
		}
	}
	t := openingTop{from: 0, to: fl.Duration()}
	if last >= first {
		t.from, t.to = max(first-before, 0), min(last+after, t.to)
	}
	for _, s := range fl.Trace() {
		if s.Time >= t.from && s.Time <= t.to {
			t.time, t.height, t.airspeed = append(t.time, s.Time), append(t.height, s.Height), append(t.airspeed, s.Airspeed)
		}
	}
	return t
}
