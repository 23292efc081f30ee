package plan

import (
	"context"

	"ullage/sim/ground"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// MostReach bounds the flights drawn for where a rocket may come down: every landing is kept.
const MostReach = 100_000

// Reach is where a rocket flies and may come down, on one drive.
type Reach struct {
	Rocket   *rocket.Rocket
	Spreads  []study.Spread
	Seed     uint64
	Scatter  study.Dispersion
	Landings []study.LandingPoint
	Courses  []study.Course // of the day, kept
	Clear    ground.Kept
}

// ReachOf flies where a rocket comes down, as its rules have it and with canopies that stay shut,
// so many draws and the day's flights. A rocket that is not valid, or bad spreads, are faults as those
// of a file.
func ReachOf(ctx context.Context, r *rocket.Rocket, draws study.Draws, o study.Options) (Reach, error) {
	out := Reach{Rocket: r, Spreads: draws.Spreads, Seed: draws.Seed}
	var err error
	if out.Courses, err = study.Courses(ctx, r); err != nil {
		return out, err
	}
	out.Clear = Clear(r, out.Courses[0].Flight)
	out.Scatter, err = study.Disperse(ctx, r, draws, o, func(l study.LandingPoint) error {
		out.Landings = append(out.Landings, l)
		return nil
	})
	return out, err
}
