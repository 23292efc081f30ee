package study

import (
	"context"
	"errors"
	"math"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/solve"
)

// errNoShape is returned where a study needs a shape and a balance, or a mass list.
var errNoShape = errors.New("needs a shape and a balance point: give [body] length and balance, [nose] and [[fins]]")

// errOutOfReach is returned where no value in the range looked at does what was asked.
var errOutOfReach = errors.New("no value in reach does it")

// Misaligned is a flight with the thrust off the centreline.
type Misaligned struct {
	Angle    float64 // of the thrust's line, rad
	Apogee   float64 // m
	Lower    float64 // than aligned, m
	Off      float64 // horizontally at the top from where the aligned flight tops, m
	MaxAngle float64 // greatest angle of attack while it is fast, rad
}

// alignmentAngles are the ones shown by default: 0.25°, 0.5° and 1°.
func alignmentAngles() []float64 {
	const degree = math.Pi / 180
	return []float64{0.25 * degree, 0.5 * degree, degree}
}

// alignments flies a rocket upright in calm air with its thrust off the centreline by
// each angle, its offset as in the file: what a nozzle or motor mount that is not
// straight does by itself.
func alignments(ctx context.Context, r *rocket.Rocket, angles []float64, o Options) ([]Misaligned, error) {
	if !r.Balanced() {
		return nil, errNoShape
	}
	kept := sim.Options{Tolerance: o.Tolerance, Keep: true, Top: true}
	straight, err := misaligned(ctx, r, 0, kept)
	if err != nil {
		return nil, err
	}
	var out []Misaligned
	for _, angle := range angles {
		fl, err := misaligned(ctx, r, angle, kept)
		if err != nil {
			return out, err
		}
		a, b := straight.At(straight.Apogee.Time), fl.At(fl.Apogee.Time)
		out = append(out, Misaligned{
			Angle: angle, Apogee: fl.Apogee.Height, Lower: straight.Apogee.Height - fl.Apogee.Height,
			Off: math.Hypot(b.East-a.East, b.North-a.North), MaxAngle: fl.Stability.MaxAngle,
		})
	}
	return out, nil
}

// misaligned flies one angle: upright, calm air, a rigid body.
func misaligned(ctx context.Context, r *rocket.Rocket, angle float64, o sim.Options) (*sim.Flight, error) {
	c := *r // only values are changed
	c.Alignment.Angle = angle
	c.Model = rocket.RigidModel
	c.Becalm()
	c.Rail.Tilt = 0
	return sim.Fly(ctx, &c, o)
}

// LargestMisalignment looked at: beyond it a mount is visibly crooked.
const LargestMisalignment = 5 * math.Pi / 180

// straightest is the least misalignment looked at: nobody builds straighter, and what stands on its tail in
// calm air for no more than that is not stable.
const straightest = 0.01 * math.Pi / 180

// alignmentTolerance is the largest angle of the thrust's line, rad, that keeps the
// angle of attack in calm air under a limit, rad: what the builder's jig must hold.
// LargestMisalignment if that does, errOutOfReach if not even one does that is as straight as any is built. Some angles
// may have flown, in rising order.
func alignmentTolerance(ctx context.Context, r *rocket.Rocket, limit float64, o Options, flown ...Misaligned) (float64, error) {
	if !r.Balanced() {
		return 0, errNoShape
	}
	under := solve.Func(func(angle float64) (float64, error) {
		fl, err := misaligned(ctx, r, angle, sim.Options{Tolerance: o.Tolerance, Top: true})
		if err != nil {
			return 0, err
		}
		return limit - fl.Stability.MaxAngle, nil
	})
	var b solve.Bracket
	held, over := false, false
	for _, m := range flown {
		p := solve.Point{X: m.Angle, Y: limit - m.MaxAngle}
		if over = !(p.Y > 0); over {
			b.Out = p
			break
		}
		b.In, held = p, true
	}
	var err error
	if !held {
		if b.In, err = under.At(straightest); err != nil {
			return 0, err
		}
	}
	if b.In.Y > 0 && !over {
		var ok bool
		if b, ok, err = solve.Outward(under, b.In, LargestMisalignment, firstAngle, 2); err != nil || !ok {
			return LargestMisalignment, err
		}
	}
	return sized(under, b.In, b.Out, angleTol/sizingTol)
}

// angleTol is how close an angle of the thrust comes, rad: finer than it can be built or measured.
const angleTol = 5e-4 * math.Pi / 180

// firstAngle is the first step towards the largest angle, rad: an angle is mostly held to a few degrees, and beyond it
// a flight that turns over takes many times as long.
const firstAngle = math.Pi / 180

// leastMargin is the least margin on the way up; NaN of a rocket that cannot be so.
func leastMargin(ctx context.Context, r *rocket.Rocket, o Options) (float64, error) {
	fl, err := sim.Fly(ctx, r, sim.Options{Tolerance: o.Tolerance, Top: true})
	var faults fault.List
	switch {
	case errors.As(err, &faults): // such a size does not go with the rest
		return math.NaN(), nil
	case err != nil:
		return 0, err
	}
	return fl.Stability.Least, nil
}

// noseWeight is the weight, kg, to add at a place in the nose, m from its tip, for a
// least margin on the way up, calibres; 0 when it has that already.
func noseWeight(ctx context.Context, r *rocket.Rocket, at, margin float64, o Options) (float64, error) {
	if !r.Balanced() {
		return 0, errNoShape
	}
	spare := solve.Func(func(weight float64) (float64, error) {
		m, err := leastMargin(ctx, WithWeight(r, weight, at), o)
		return m - margin, err
	})
	none, err := spare.At(0)
	if err != nil || none.Y >= 0 {
		return 0, err
	}
	mass := r.BodyMass()
	most := math.Min(3*mass, rocket.NumberNamed("body.mass").Range.Max-mass)
	b, ok, err := solve.Outward(spare, none, most, most/32, 2)
	if err == nil && !ok {
		err = errOutOfReach
	}
	if err != nil {
		return 0, err
	}
	return sized(spare, b.In, b.Out, most)
}

// WithWeight is the rocket with a lump more in its body, balance and inertia moved by it. It is
// one that was weighed, balanced and swung: a mass list has no more to say of it.
func WithWeight(r *rocket.Rocket, weight, at float64) *rocket.Rocket {
	c := *r
	d := r.DryBody()
	c.Parts = nil
	c.Body.Mass = d.Mass + weight
	c.Body.Balance = (d.Mass*d.At + weight*at) / c.Body.Mass
	c.Body.Inertia = d.Pitch + d.Mass*weight/c.Body.Mass*(d.At-at)*(d.At-at)
	c.Body.RollInertia = d.Roll
	// What a mass list adds up to may be no inertia that could be given: then it is estimated.
	pitch, roll := c.MostInertia()
	for _, x := range []struct {
		at   *float64
		name string
		most float64
	}{{&c.Body.Inertia, "body.inertia", pitch}, {&c.Body.RollInertia, "body.roll_inertia", roll}} {
		if *x.at > x.most || rocket.NumberNamed(x.name).Range.Check(*x.at) != nil {
			*x.at = 0
		}
	}
	return &c
}

// finSpan is the exposed semi-span, m, of the last fins for a least margin on the way
// up, calibres, everything else as it is; the fins' own weight stays as weighed.
func finSpan(ctx context.Context, r *rocket.Rocket, margin float64, o Options) (float64, error) {
	if !r.Balanced() || len(r.Shape.Fins) == 0 {
		return 0, errNoShape
	}
	spare := solve.Func(func(span float64) (float64, error) {
		m, err := leastMargin(ctx, withSpan(r, span), o)
		return m - margin, err
	})
	last := &r.Shape.Fins[len(r.Shape.Fins)-1]
	low, high := math.Max(last.Span/8, math.Abs(last.Sweep)/4), math.Min(last.Span*4, 8*r.Shape.Diameter) // within what a shape may have
	// From today's span on: far narrower fins turn over and over, which takes many times as long to fly.
	today, err := spare.At(last.Span)
	if err != nil || today.Y == 0 {
		return last.Span, err
	}
	end := high
	if today.Y > 0 {
		end = low
	}
	b, ok, err := solve.Outward(spare, today, end, last.Span*min(0.5, max(0.01, math.Abs(today.Y)/2)), 2)
	switch {
	case err != nil:
		return 0, err
	case !ok && today.Y > 0:
		return low, nil
	case !ok:
		return 0, errOutOfReach
	}
	return sized(spare, b.In, b.Out, high-low)
}

// sizingTol is how close a size comes, as a share of its range.
const sizingTol = 1e-6

// sized is the size furthest from one that is enough, towards one that is not, at which
// something is still to spare; errOutOfReach if the one is not enough. The range is as wide as told.
func sized(spare solve.Func, enough, short solve.Point, width float64) (float64, error) {
	switch {
	case enough.Y == 0:
		return enough.X, nil
	case !(enough.Y > 0):
		return 0, errOutOfReach
	}
	b, err := solve.Root(spare, solve.Bracket{In: enough, Out: short}, solve.Tolerance{X: sizingTol * width})
	return b.In.X, err
}
