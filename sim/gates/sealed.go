package gates

import (
	"math"
	"time"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// sealedCriteria hold what a sealed chamber builds up beside a motor, the air getting thinner
// on the way up, against the pressure that its proof is for, less what a chamber as hot
// as its air loses of its strength, and never more than it could be proved for. Of a chamber, or of water that has to be in
// one, of which nobody says how warm it gets or that it is open, that is not known.
func sealedCriteria(r *rocket.Rocket, today time.Time) []criterion {
	g := criterion{key: checkSealed, still: true, limit: Limit{Key: checkSealed, Name: "sealed chamber beside the motor",
		Min: noMin, Max: noMax, Unit: "bar", Word: WordHigh, Source: "proof on record or to be had, as hot as the air inside"}}
	switch {
	case r.Chamber == nil && r.Water == nil, r.Chamber != nil && r.Chamber.BesideMotor == chamber.Open:
		return nil
	case r.Chamber == nil:
		g.lacks = give("chamber").because("closed, it builds up pressure as the motor warms it")
		return []criterion{g}
	case r.Chamber.Heating == nil:
		g.lacks = give("chamber.heating").because(`how warm the motor makes the closed chamber, and how soon; or chamber.beside_motor = "open" where nothing closes it`)
		return []criterion{g}
	}
	vessel := r.Vessel()
	at := vessel.At(r.Service())
	hot := r.Chamber.Heating
	most := chamber.EstimatedShare * at.ColdEstimate
	if at.Basis == chamber.FromBurst {
		most = chamber.MeasuredShare * at.ColdBurst
	}
	if r.Chamber.Proof > 0 {
		most = math.Min(r.Chamber.Proof, most)
	}
	g.limit.Max = most * vessel.HeatLeftAt(hot.Reached(r.Service().AirTemperature)) / LimitFor(r, LimitProof).Min
	g.value = func(fl *sim.Flight) (float64, bool) {
		column := fl.Rocket.Site.Column()
		thinner := column.Air(0).Pressure - column.Air(math.Max(fl.Apogee.Height, 0)).Pressure
		return fl.Rocket.ChamberAt().Heated.Damp + thinner, true
	}
	vent := Remedy{Kind: CutVent, To: at.Heated.Wider().Hole}
	if hot.Rise > g.limit.Max {
		vent.To = math.NaN() // no hole keeps it low enough
	}
	g.adds = []Remedy{vent}
	unstated, doubt := r.Chamber.UnstatedAge(), unbelievable(r, &at)
	if at.Basis != chamber.FromBurst {
		unstated = r.Chamber.Unstated(vessel.Temperature)
	}
	switch {
	case !at.Stated:
		g.lacks = stateBurst(unstated)
	case doubt != nil:
		g.lacks = doubt
	case len(unstated) > 0:
		g.lacks = give(unstated...).because("strengths built in are typical and say nothing of yours")
	}
	if r.Chamber.Proof > 0 {
		return booked(r, []criterion{g, ageCriterion(r, today)})
	}
	if at.Heated.Damp <= g.limit.Max { // what is estimated is not enough to pass
		prove := proof(r, GiveProof)
		g.lacks = &prove
	}
	return []criterion{g}
}
