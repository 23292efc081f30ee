package study

import (
	"context"
	"errors"
	"math"
	"slices"

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
	Field    JigRow  // the most up to which all angles land within the field under a canopy; Angle NaN where not even a straight thrust does, or no field is given
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

// JigRow is a flight with the thrust off by an angle, to either side, the worse of both.
type JigRow struct {
	Angle float64 // rad
	Gap   float64 // at the end of the jig, m; NaN where its length is not given
	Drift float64 // from the pad to the landing, m; infinite of one that does not land
	Shut  bool    // it comes down with no canopy open, of those that it has
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
		row, err := j.off(ctx, r, angle, o)
		if err != nil {
			return j, err
		}
		j.Rows = append(j.Rows, row)
	}
	angle, err := alignmentTolerance(ctx, r, r.Limits.InForce().Attack, o)
	switch {
	case err == nil:
		if j.Attack, err = j.off(ctx, r, angle, o); err != nil {
			return j, err
		}
	case !errors.Is(err, errOutOfReach):
		return j, err
	}
	if j.Radius == 0 || !(j.spare(j.Rows[0]) >= 0) {
		return j, nil
	}
	return j, j.toField(ctx, r, o)
}

// jigStep is from one angle looked at to the next: a rocket that is turned hard enough comes down near the pad again, so that
// the farthest angle is no end of those between.
const jigStep = math.Pi / 180 / 4

// spare is how much of the field is left where a flight lands; none of one that comes down with no canopy open, wherever it does.
func (j *Jigged) spare(row JigRow) float64 {
	if row.Shut {
		return -j.Radius
	}
	return j.Radius - row.Drift
}

// toField looks for the angle from which on a flight lands outside the field, or without a canopy.
func (j *Jigged) toField(ctx context.Context, r *rocket.Rocket, o Options) error {
	spare := solve.Func(func(angle float64) (float64, error) {
		row, err := j.off(ctx, r, angle, o)
		return j.spare(row), err
	})
	held := solve.Point{X: 0, Y: j.spare(j.Rows[0])}
	for angle := jigStep; angle < LargestMisalignment+jigStep/2; angle += jigStep {
		next, err := spare.At(angle)
		if err != nil {
			return err
		}
		if next.Y < 0 {
			found, err := sized(spare, held, next, jigStep)
			if err != nil {
				return err
			}
			j.Field, err = j.off(ctx, r, found, o)
			return err
		}
		held = next
	}
	j.AllField = true
	var err error
	j.Field, err = j.off(ctx, r, held.X, o)
	return err
}

// off flies with the thrust off by an angle to either side.
func (j *Jigged) off(ctx context.Context, r *rocket.Rocket, angle float64, o Options) (JigRow, error) {
	row := JigRow{Angle: angle, Gap: bench.GapAt(j.Length, angle)}
	for _, side := range []float64{1, -1} {
		c := *r
		c.Model = rocket.RigidModel
		c.Alignment.Angle = side * angle
		fl, err := sim.Fly(ctx, &c, sim.Options{Tolerance: o.Tolerance})
		if err != nil {
			return row, err
		}
		row.Shut = row.Shut || len(fl.Canopies) > 0 && !slices.ContainsFunc(fl.Canopies, func(c sim.CanopyResult) bool { return c.Opened })
		drift := math.Inf(1)
		if fl.Landing.Happened {
			drift = math.Hypot(fl.Landing.East, fl.Landing.North)
		}
		row.Drift = math.Max(row.Drift, drift)
		if angle == 0 {
			break
		}
	}
	return row, nil
}
