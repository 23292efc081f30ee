package study

import (
	"context"
	"errors"
	"math"

	"ullage/sim"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// Airframe is an airframe with one of its drives: how it balances and points in a
// flight, what each part adds, and how straight its thrust must be.
type Airframe struct {
	Power      rocket.Power
	Flight     *sim.Flight // of the rocket's own model, on the day of the file
	Parts      []AirframePart
	Speed      float64      // that the drag shares are for: the greatest of the flight, m/s
	Drag       float64      // coefficient the shape gives at that speed, without a running jet
	Given      bool         // the file's own drag flies, not the shape's
	Alignments []Misaligned // for alignmentAngles
	Attack     float64      // limit of the angle of attack, rad
	Tolerance  float64      // of alignment, rad, for that limit
	Crooked    bool         // it exceeds that limit even with its thrust as straight as any is built: no alignment does
	Sizing     Sizing
}

// UsualMargin is what nose weight and fins are sized for when nothing is said,
// calibres: the middle of common practice, no source.
const UsualMargin = 1.5

// Sizing is what would give an airframe a least margin on the drive that flies.
type Sizing struct {
	Margin    float64 // wanted, calibres
	NoseAt    float64 // where the weight would stand: half-way along the nose, m
	Weight    float64 // kg; 0 when none is needed
	WeightOut bool    // no weight in reach does it
	Span      float64 // of the last fins, m
	SpanOut   bool    // no span in reach does it, or there are no fins
}

// sizeFor finds the nose weight, and the fin span, for a least margin on the way up.
func sizeFor(ctx context.Context, r *rocket.Rocket, margin float64, o Options) (Sizing, error) {
	if !r.Balanced() {
		return Sizing{}, errNoShape
	}
	s := Sizing{Margin: margin, NoseAt: r.Shape.Nose.Length / 2}
	var err error
	if s.Weight, err = noseWeight(ctx, r, s.NoseAt, margin, o); errors.Is(err, errOutOfReach) {
		s.WeightOut, err = true, nil
	}
	if err != nil {
		return s, err
	}
	s.Span, err = finSpan(ctx, r, margin, o)
	if errors.Is(err, errOutOfReach) || errors.Is(err, errNoShape) {
		s.SpanOut, err = true, nil
	}
	return s, err
}

// AirframePart is what one part adds.
type AirframePart struct {
	Name    string
	CNAlpha float64 // of normal force, per rad; 0 for what has none
	At      float64 // where it acts, m from the tip of the nose; NaN for what has none
	Drag    float64 // share of the drag coefficient
}

// Airframes looks at an airframe with every drive that its file has, water first, and
// sizes nose weight and fins for a least margin, calibres.
func Airframes(ctx context.Context, r *rocket.Rocket, margin float64, o Options) ([]Airframe, error) {
	if !r.Balanced() {
		return nil, errNoShape
	}
	powers := drives(r)
	frames := make([]Airframe, len(powers))
	var looks []func(context.Context) error // the longest first
	for i, power := range powers {
		c := *r
		c.Power = power
		a := &frames[i]
		*a = Airframe{Power: power, Given: len(r.Body.Drag) > 0, Attack: r.Limits.InForce().Attack}
		looks = append(looks, func(ctx context.Context) error { return a.straightness(ctx, &c, o) })
	}
	for i := range frames {
		a, c := &frames[i], *r
		c.Power = a.Power
		looks = append(looks, func(ctx context.Context) error { return a.flown(ctx, &c, margin, o) })
	}
	_, err := Collect(ctx, len(looks), o, func(ctx context.Context, i int) (struct{}, error) { return struct{}{}, looks[i](ctx) })
	if err != nil {
		return nil, err
	}
	return frames, nil
}

// flown flies the day, and sizes nose weight and fins for a least margin.
func (a *Airframe) flown(ctx context.Context, r *rocket.Rocket, margin float64, o Options) error {
	var err error
	if a.Flight, err = sim.Fly(ctx, r, sim.Options{Tolerance: o.Tolerance, Keep: true}); err != nil {
		return err
	}
	a.parts(r)
	a.Sizing, err = sizeFor(ctx, r, margin, o)
	return err
}

// straightness flies thrusts off the centreline, and looks for the most that is allowed.
func (a *Airframe) straightness(ctx context.Context, r *rocket.Rocket, o Options) error {
	var err error
	if a.Alignments, err = alignments(ctx, r, alignmentAngles(), o); err != nil {
		return err
	}
	a.Tolerance, err = alignmentTolerance(ctx, r, a.Attack, o, a.Alignments...)
	if errors.Is(err, errOutOfReach) {
		a.Crooked, err = true, nil
	}
	return err
}

// parts joins normal forces and drag shares by the parts' names, in the order along
// the rocket.
func (a *Airframe) parts(r *rocket.Rocket) {
	aero := r.Shape.Aero()
	column := r.Site.Column()
	air := column.Air(0)
	a.Speed = math.Max(a.Flight.Max.Speed, 1)
	total, shares := r.Shape.Drag(airframe.Flow{Speed: a.Speed, Density: air.Density,
		SoundSpeed: air.SoundSpeed, Viscosity: air.Viscosity()}, 0)
	a.Drag = total
	at := map[string]int{}
	add := func(name string) *AirframePart {
		if i, ok := at[name]; ok {
			return &a.Parts[i]
		}
		at[name] = len(a.Parts)
		a.Parts = append(a.Parts, AirframePart{Name: name, At: math.NaN()})
		return &a.Parts[len(a.Parts)-1]
	}
	for _, s := range shares {
		add(s.Name).Drag += s.Drag
	}
	for _, c := range aero.Components(0) {
		p := add(c.Name)
		p.CNAlpha, p.At = c.CNAlpha, c.At
	}
}
