package study

import (
	"context"
	"errors"
	"math"

	"ullage/sim/bench"
	"ullage/sim/rocket"
)

// Benched is what the bench asks of flights: how straight the thrust has to be and what the electronics are set to, by drive,
// beside what needs none.
type Benched struct {
	Rocket   *rocket.Rocket
	Jigs     []Jigged // water first; none without shape and balance
	Settings []Settings
	Sealed   *Structure // with a chamber that is described; nil otherwise
	Gas      bench.Gas  // that is filled in on water; the zero value without
	LeakCost float64    // height that the leak measured costs by the release, m; NaN where it is not known
}

// BenchOf flies every drive that a rocket has.
func BenchOf(ctx context.Context, r *rocket.Rocket, o Options) (Benched, error) {
	b := Benched{Rocket: r, LeakCost: math.NaN()}
	var err error
	if b.Settings, err = SettingsOf(ctx, r); err != nil {
		return b, err
	}
	for _, power := range drives(r) {
		c := *r
		c.Power = power
		jig, err := JigOf(ctx, &c, o)
		if errors.Is(err, errNoShape) {
			break
		}
		if err != nil {
			return b, err
		}
		b.Jigs = append(b.Jigs, jig)
	}
	if r.Chamber != nil && r.Chamber.Heating != nil {
		s, err := StructureOf(ctx, r)
		if err != nil {
			return b, err
		}
		b.Sealed = &s
	}
	if r.Water == nil {
		return b, nil
	}
	b.Gas = GasOf(r)
	if lost := r.Bench.Filling.LostBy(); !math.IsNaN(lost) {
		b.LeakCost, err = LeakCost(ctx, r, lost)
	}
	return b, err
}

// GasOf is the gas that a flight on water is filled with, at the temperature that it has at release. The rocket has that drive.
func GasOf(r *rocket.Rocket) bench.Gas {
	w := r.Water
	column := r.Site.Column()
	air := column.Air(0)
	g := bench.Gas{Volume: w.Volume * (1 - w.Fill), Pressure: w.Pressure, Ambient: air.Pressure, Temperature: r.GasTemperature(), Constant: w.Gas.Constant()}
	if w.Tube != nil {
		g.Volume += w.Tube.DeadVolume
	}
	return g
}
