package plan

import (
	"context"
	"time"

	"ullage/sim/chamber"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Options choose what stands behind the figures of a day.
type Options struct {
	Spreads  []study.Spread                      // what is uncertain
	Respread func(*rocket.Rocket) []study.Spread // of a rocket that a mend has changed; nil takes the same
	Flights  int                                 // drawn for the spread
	Seed     uint64                              // of the draws
	Today    time.Time                           // for the age of a proof; zero does not judge it
	Judged   *gates.Verdict                      // on the rocket as it is, with its corners, where there is one
	Workers  int
	Progress func(done, total int) // of the draws
}

// Day is all that is known beforehand of a day at the field, on one drive.
type Day struct {
	Rocket  *rocket.Rocket
	Verdict gates.Verdict
	Scatter study.Dispersion
	Seed    uint64
	Wind    WindLimit        // up to which every check passes
	Tilts   []study.WindTilt // into each of the winds of a table, the calm first
	Chamber chamber.Result   // filled on the pad; of one that is not described, what its gas stores
}

// DayOf flies a day, every flight of the rocket's own model: its checks with what would
// mend them, the spread, and the tilt of the rail for a table of winds. A rocket that is
// not valid, or bad spreads, are faults as those of a file.
func DayOf(ctx context.Context, r *rocket.Rocket, o Options) (Day, error) {
	d := Day{Rocket: r, Seed: o.Seed}
	own := study.Options{Workers: o.Workers}
	var err error
	if d.Verdict, err = gates.Judge(ctx, r, gates.Options{
		Today: o.Today, Spreads: o.Spreads, Respread: o.Respread, Remedies: true, Workers: o.Workers}); err != nil {
		return d, err
	}
	o.Judged = &d.Verdict
	if d.Wind, err = MostWind(ctx, r, o); err != nil {
		return d, err
	}
	d.Chamber = OnThePad(r)
	if d.Tilts, err = study.WindTilts(ctx, r, winds[:], MostTilt(r), own); err != nil {
		return d, err
	}
	drawn := own
	drawn.Progress = o.Progress
	d.Scatter, err = study.Disperse(ctx, r, study.Draws{Spreads: o.Spreads, Flights: o.Flights, Seed: o.Seed}, drawn, nil)
	return d, err
}

// winds are those of the table, m/s.
var winds = [...]float64{0, 2, 4, 6, 8, 10}

// MostTilt is how far into the wind a rail is tilted at most, rad: half of the tilt
// allowed leaves as much for the rail to be set by hand (common practice, no source).
func MostTilt(r *rocket.Rocket) float64 { return gates.LimitFor(r, gates.LimitTilt).Max / 2 }

// OnThePad is the chamber filled; of one that is not described, what its gas stores.
func OnThePad(r *rocket.Rocket) chamber.Result {
	vessel := r.Vessel()
	if vessel == nil {
		vessel = &chamber.Chamber{}
	}
	return vessel.At(r.Service())
}
