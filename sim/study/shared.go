package study

import (
	"context"
	"errors"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// Shared is what gives an airframe a least margin on every one of its drives at once: the same
// body flies on all of them, so that nose and fins have to serve each.
type Shared struct {
	Margin    float64 // wanted, calibres
	NoseAt    float64 // where weight would stand, m from the tip of the nose
	Tolerance float64 // of the thrust's alignment that every drive allows, rad; 0 where one allows none
	Ways      []Way
}

// Way is one way to come by it, and how each drive flies then.
type Way struct {
	Name   WayName
	Weight float64 // in the nose, kg
	Span   float64 // of the last fins, m; NaN without fins
	Out    bool    // nothing in reach does it
	On     []*sim.Flight
}

// WayName names a way.
type WayName string

// The ways.
const (
	AsItIs     WayName = "as it is"
	NoseWeight WayName = "nose weight"
	FinSpan    WayName = "fin span"
	HalfOfEach WayName = "half of each"
)

// Share finds what serves all drives of some airframes at once, each of them sized for the same margin. With
// fewer than two it is nil. Weight in the nose moves every drive's balance forward, and span every
// centre of pressure aft, so that the most that any of them needs is enough for all; each way is flown on
// all of them all the same, since what serves one may be too much for another.
func Share(ctx context.Context, frames []Airframe, o Options) (*Shared, error) {
	if len(frames) < 2 {
		return nil, nil
	}
	first := &frames[0]
	s := &Shared{Margin: first.Sizing.Margin, NoseAt: first.Sizing.NoseAt, Tolerance: math.Inf(1)}
	span := math.NaN()
	if fins := first.Flight.Rocket.Shape.Fins; len(fins) > 0 {
		span = fins[len(fins)-1].Span
	}
	weighted, spanned := Way{Name: NoseWeight, Span: span}, Way{Name: FinSpan}
	for i := range frames {
		z := &frames[i].Sizing
		weighted.Weight, weighted.Out = math.Max(weighted.Weight, z.Weight), weighted.Out || z.WeightOut
		spanned.Span, spanned.Out = math.Max(spanned.Span, z.Span), spanned.Out || z.SpanOut
		if frames[i].Crooked {
			s.Tolerance = 0
		} else {
			s.Tolerance = math.Min(s.Tolerance, frames[i].Tolerance)
		}
	}
	s.Ways = []Way{{Name: AsItIs, Span: span}, weighted, spanned}
	if !spanned.Out && !math.IsNaN(span) && spanned.Span > span {
		half, err := halfway(ctx, frames, s, (span+spanned.Span)/2, o)
		if err != nil {
			return nil, err
		}
		s.Ways = append(s.Ways, half)
	}
	for i := range s.Ways {
		if err := s.Ways[i].fly(ctx, frames, s.NoseAt, o); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// halfway is half the span that would do, and the weight that is then still needed.
func halfway(ctx context.Context, frames []Airframe, s *Shared, span float64, o Options) (Way, error) {
	w := Way{Name: HalfOfEach, Span: span}
	for i := range frames {
		weight, err := noseWeight(ctx, withSpan(frames[i].Flight.Rocket, span), s.NoseAt, s.Margin, o)
		if errors.Is(err, errOutOfReach) {
			w.Out, err = true, nil
		}
		if err != nil {
			return w, err
		}
		w.Weight = math.Max(w.Weight, weight)
	}
	return w, nil
}

// fly flies a way on each drive. A rocket that cannot be so has no flight, and the way is out.
func (w *Way) fly(ctx context.Context, frames []Airframe, at float64, o Options) error {
	if w.Out {
		return nil
	}
	for i := range frames {
		r := frames[i].Flight.Rocket
		if w.Weight > 0 {
			r = WithWeight(r, w.Weight, at)
		}
		if !math.IsNaN(w.Span) {
			r = withSpan(r, w.Span)
		}
		fl, err := sim.Fly(ctx, r, sim.Options{Tolerance: o.Tolerance})
		if errors.As(err, new(fault.List)) {
			w.Out, w.On = true, nil
			return nil
		}
		if err != nil {
			return err
		}
		w.On = append(w.On, fl)
	}
	return nil
}

// withSpan is the rocket with another span of its last fins, everything else as it is.
func withSpan(r *rocket.Rocket, span float64) *rocket.Rocket {
	c, shape := *r, *r.Shape
	shape.Fins = slices.Clone(shape.Fins)
	shape.Fins[len(shape.Fins)-1].Span = span
	c.Shape = &shape
	return &c
}
