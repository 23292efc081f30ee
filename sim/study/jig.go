package study

import (
	"context"
	"errors"
	"math"

	"ullage/sim"
	"ullage/sim/bench"
	"ullage/sim/rocket"
	"ullage/sim/solve"
)

// Jigged is how straight the thrust has to be, as a gap at the end of an alignment jig.
type Jigged struct {
	Power    rocket.Power
	Length   float64 // of the jig, m; NaN where it is not given
	Rows     []JigRow
	Radius   float64 // of the field, m; 0 where it is not given
	Field    JigRow  // the most up to which all angles land within the field; Angle NaN where not even a straight thrust does, or no field is given
	AllField bool    // Field is the largest angle looked at
	Attack   JigRow  // the most that keeps the angle of attack in calm air; Angle NaN where none does
}

// Most is the lesser of what the field holds and what the angle of attack allows, NaN where one of them is not known.
func (j *Jigged) Most() JigRow {
	if j.Attack.Angle < j.Field.Angle {
		return j.Attack
	}
	return j.Field
}

// JigRow is a flight with the thrust off by an angle, to the side on which it lands farther.
type JigRow struct {
	Angle float64 // rad
	Gap   float64 // at the end of the jig, m; NaN where its length is not given
	Drift float64 // from the pad to the landing, m
}

// JigOf flies a rocket on its own day with its thrust off the centreline, to either side in the plane of the rail's
// tilt: unlike the angle of attack, which is of calm air, it tells what the field has to hold. Without
// shape and balance it fails.
func JigOf(ctx context.Context, r *rocket.Rocket, o Options) (Jigged, error) {
	nothing := JigRow{Angle: math.NaN(), Gap: math.NaN(), Drift: math.NaN()}
	j := Jigged{Power: r.Power, Length: math.NaN(), Radius: r.Field.Radius, Field: nothing, Attack: nothing}
	if !r.Balanced() {
		return j, errNoShape
	}
	if r.Bench.Jig > 0 {
		j.Length = r.Bench.Jig
	}
	for _, angle := range append([]float64{0}, alignmentAngles()...) {
		drift, err := driftOff(ctx, r, angle, o)
		if err != nil {
			return j, err
		}
		j.Rows = append(j.Rows, j.row(angle, drift))
	}
	angle, err := alignmentTolerance(ctx, r, r.Limits.InForce().Attack, o)
	switch {
	case err == nil:
		drift, err := driftOff(ctx, r, angle, o)
		if err != nil {
			return j, err
		}
		j.Attack = j.row(angle, drift)
	case !errors.Is(err, errOutOfReach):
		return j, err
	}
	if j.Radius == 0 || !(j.Rows[0].Drift <= j.Radius) {
		return j, nil
	}
	return j, j.toField(ctx, r, o)
}

// jigStep is from one angle looked at to the next: a rocket that is turned hard enough comes down near the pad again, so that
// the farthest angle is no end of those between.
const jigStep = math.Pi / 180 / 4

// toField looks for the angle from which on a flight lands outside the field.
func (j *Jigged) toField(ctx context.Context, r *rocket.Rocket, o Options) error {
	spare := solve.Func(func(angle float64) (float64, error) {
		drift, err := driftOff(ctx, r, angle, o)
		return j.Radius - drift, err
	})
	held := solve.Point{X: 0, Y: j.Radius - j.Rows[0].Drift}
	for angle := jigStep; angle < LargestMisalignment+jigStep/2; angle += jigStep {
		next, err := spare.At(angle)
		if err != nil {
			return err
		}
		if next.Y < 0 {
			found, err := sized(spare, held, next)
			if err != nil {
				return err
			}
			drift, err := driftOff(ctx, r, found, o)
			j.Field = j.row(found, drift)
			return err
		}
		held = next
	}
	j.AllField, j.Field = true, j.row(held.X, j.Radius-held.Y)
	return nil
}

func (j *Jigged) row(angle, drift float64) JigRow {
	return JigRow{Angle: angle, Gap: bench.GapAt(j.Length, angle), Drift: drift}
}

// driftOff is how far from the pad a flight lands with the thrust off by an angle to either side, the farther of both;
// infinite where one does not land.
func driftOff(ctx context.Context, r *rocket.Rocket, angle float64, o Options) (float64, error) {
	far := 0.0
	for _, side := range []float64{1, -1} {
		c := *r
		c.Model = rocket.RigidModel
		c.Alignment.Angle = side * angle
		fl, err := sim.Fly(ctx, &c, sim.Options{Tolerance: o.Tolerance})
		if err != nil {
			return 0, err
		}
		if !fl.Landing.Happened {
			return math.Inf(1), nil
		}
		far = math.Max(far, math.Hypot(fl.Landing.East, fl.Landing.North))
		if angle == 0 {
			break
		}
	}
	return far, nil
}
