package report

import (
	"context"
	"time"

	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// CardOptions choose what stands behind the figures of a card.
type CardOptions struct {
	Spreads  []study.Spread // what is uncertain
	Flights  int            // drawn for the spread
	Seed     uint64         // of the draws
	Today    time.Time      // for the age of a proof; zero does not judge it
	Workers  int
	Progress func(done, total int) // of the draws
}

// CardFigures are what the card of a rocket on one drive is filled from.
type CardFigures struct {
	Rocket  *rocket.Rocket
	Verdict gates.Verdict
	Scatter study.Dispersion
	Seed    uint64
	Leans   []study.Lean // into each of the winds of the card
}

// GatherCard flies all that a card needs, every flight of the rocket's own model: the
// day and its checks with what would mend them, the spread, and the lean of the rail for
// a table of winds. A rocket that is not valid, or bad spreads, are faults as those of a
// file.
func GatherCard(ctx context.Context, r *rocket.Rocket, o CardOptions) (CardFigures, error) {
	f := CardFigures{Rocket: r, Seed: o.Seed}
	own := study.Options{Rigid: true, Workers: o.Workers}
	var err error
	if f.Verdict, err = gates.Judge(ctx, r, gates.Options{
		Today: o.Today, Spreads: o.Spreads, Remedies: true, Workers: o.Workers}); err != nil {
		return f, err
	}
	// Half of the tilt allowed leaves as much for the rail to be set by hand: common
	// practice, no source.
	most := gates.LimitFor(r, gates.LimitTilt).Max / 2
	if f.Leans, err = study.Leans(ctx, r, cardWinds[:], most, own); err != nil {
		return f, err
	}
	drawn := own
	drawn.Progress = o.Progress
	f.Scatter, err = study.Disperse(ctx, r, o.Spreads, o.Flights, o.Seed, drawn, nil)
	return f, err
}

// cardWinds are those of the card's table, m/s.
var cardWinds = [...]float64{0, 2, 4, 6, 8, 10}
