package gates

import (
	"math"
	"strings"
	"time"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// chamberCriteria are about the pressure chamber: on water whether it was proved for its
// pressure, on a motor what warms up in it beside one.
func chamberCriteria(r *rocket.Rocket, today time.Time) []criterion {
	if r.Power == rocket.MotorPower {
		return sealedCriteria(r, today)
	}
	g := append(provedCriteria(r, today), sealCriteria(r)...)
	if r.Chamber == nil {
		return g
	}
	g = append(append(g, burstCriterion(r)), doubtCriterion(r)...)
	return append(g, weepCriteria(r)...)
}

// provedCriteria are those of the proof.
func provedCriteria(r *rocket.Rocket, today time.Time) []criterion {
	g := []criterion{proofCriterion(r)}
	if r.Chamber == nil {
		return g
	}
	if r.Chamber.Proof > 0 {
		g = append(g, ageCriterion(r, today))
	}
	return booked(r, g)
}

// ProofRatio is the proof on record over the pressure of the file, the proof counting for
// what heat leaves of it, since it is made cold. NaN without a proof on record, infinite
// without pressure.
func ProofRatio(r *rocket.Rocket) float64 {
	if r.Water == nil {
		return math.NaN()
	}
	return proofOver(r, r.Water.Pressure)
}

// proofOver is the same over another pressure.
func proofOver(r *rocket.Rocket, pressure float64) float64 {
	if r.Chamber == nil || r.Chamber.Proof == 0 {
		return math.NaN()
	}
	return r.Chamber.Proof * r.Vessel().HeatLeft() / pressure
}

func proofCriterion(r *rocket.Rocket) criterion {
	g := criterion{key: LimitProof, limit: LimitFor(r, LimitProof), still: true,
		value: func(fl *sim.Flight) (float64, bool) {
			v := ProofRatio(fl.Rocket)
			return v, !math.IsNaN(v)
		}}
	if r.Chamber == nil {
		g.absent, g.adds = WordNone, []Remedy{{Kind: GiveChamber}}
		return g
	}
	vessel := r.ChamberAt()
	switch {
	case vessel.ProofEnough:
		prove := proof(r, ProveTo)
		prove.To = vessel.ProofWanted
		g.adds = []Remedy{prove}
	case vessel.MostWorking > 0:
		g.adds = []Remedy{{Kind: ProveFor, From: vessel.ProofLimit, To: vessel.MostWorking}}
	}
	if r.Chamber.Temperature == 0 && r.Chamber.Proof > 0 {
		g.lacks = give("chamber.temperature").because("the warmest its wall gets under pressure")
	}
	if g.lacks == nil && r.Chamber.Proof > 0 && r.Chamber.HeatUnstated(r.Vessel().Temperature) {
		g.lacks = give("chamber.heat_factor").because("the share of its strength that a wall this warm keeps, from your own coupons; what is built in is typical")
	}
	if r.Chamber.Proof == 0 {
		g.absent = WordNone
	} else {
		g.levers = []lever{{input: "water.pressure"}, {input: "chamber.temperature"}}
	}
	return g
}

// warmthUnstated names what nobody stated of a chamber's warmth: the proof that its pressure wants hangs on it.
func warmthUnstated(r *rocket.Rocket) []string {
	switch {
	case r.Chamber == nil:
		return nil
	case r.Chamber.Temperature == 0:
		return []string{"chamber.temperature"}
	case r.Chamber.HeatUnstated(r.Vessel().Temperature):
		return []string{"chamber.heat_factor"}
	}
	return nil
}

const proofHigher = "the warmer its wall, and the less it keeps of its strength, the higher its proof"

// ageCriterion warns of an old proof. One that lies ahead is none.
func ageCriterion(r *rocket.Rocket, today time.Time) criterion {
	g := criterion{key: LimitProofAge, limit: LimitFor(r, LimitProofAge), still: true, warns: true,
		adds: []Remedy{proof(r, ProveAgain)}}
	on, err := time.Parse(time.DateOnly, r.Chamber.ProofDate)
	if err != nil || today.IsZero() {
		dated := proof(r, GiveDate)
		g.lacks = &dated
		return g
	}
	days := float64(calendarDay(today) - calendarDay(on))
	g.value = func(*sim.Flight) (float64, bool) { return days, true }
	if days < 0 {
		g.limit.Min, g.limit.Word, g.warns = 0, WordAhead, false
		g.adds = []Remedy{proof(r, GiveDate)}
	}
	return g
}

// ProofDue is the day on which the proof on record is due to be made again by its age alone, as in 2027-05-01; ok is false without
// the day of one.
func ProofDue(r *rocket.Rocket) (day string, ok bool) {
	if r.Chamber == nil || r.Chamber.Proof == 0 {
		return "", false
	}
	on, err := time.Parse(time.DateOnly, r.Chamber.ProofDate)
	if err != nil {
		return "", false
	}
	return on.AddDate(0, 0, int(LimitFor(r, LimitProofAge).Max)).Format(time.DateOnly), true
}

// calendarDay counts the days of the calendar where the clock stands.
func calendarDay(t time.Time) int64 {
	year, month, day := t.Date()
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60)
}

// burstCriterion holds the proof, on record or still to be made, against the burst pressure.
// What a chamber held says that it holds no less, and nothing of how much more: it takes
// no part here.
func burstCriterion(r *rocket.Rocket) criterion {
	vessel := r.ChamberAt()
	g := criterion{key: checkBurst, still: true, limit: Limit{Key: checkBurst, Min: noMin, Word: WordHigh, Source: CommonPractice}, value: overBurst}
	g.limit.Name, g.limit.Max = "proof over estimated burst", chamber.EstimatedShare
	if vessel.Basis == chamber.FromBurst {
		g.limit.Name, g.limit.Max = "proof over measured burst", chamber.MeasuredShare
	}
	if r.Chamber.ProvedTo() == 0 {
		g.limit.Name = strings.Replace(g.limit.Name, "proof", "proof wanted", 1)
		g.levers = []lever{{input: "water.pressure"}, {input: "chamber.temperature"}}
	}
	alike := r.Clone()
	asMade(alike)
	another, known := overBurst(&sim.Flight{Rocket: alike})
	alikeHolds := known && another <= g.limit.Max
	if !alikeHolds { // else it is not for more cloth that another one would pass
		for i := range r.Chamber.Plies {
			g.levers = append(g.levers, rebuild("chamber.ply."+r.Chamber.Plies[i].Name+".count"))
		}
		for _, part := range []string{"forward.overlap", "forward.wall", "aft.overlap", "aft.wall", "thread.engaged"} {
			g.levers = append(g.levers, rebuild("chamber."+part))
		}
	}
	value, known := overBurst(&sim.Flight{Rocket: r})
	unstated, doubt := r.Chamber.Unstated(r.Vessel().Temperature), unbelievable(r, &vessel)
	switch fails := known && value > g.limit.Max; {
	case !known, !vessel.Stated && vessel.Basis == chamber.FromEstimate && !fails:
		g.lacks = stateBurst(unstated)
	case r.Chamber.ProvedTo() == 0 && r.Chamber.Temperature == 0 && vessel.Basis == chamber.FromBurst:
		g.lacks = give("chamber.temperature").because(proofHigher)
	case doubt != nil && !fails:
		g.lacks = doubt
	case vessel.Basis == chamber.FromBurst && len(r.Chamber.UnstatedAge()) > 0:
		g.lacks = give(r.Chamber.UnstatedAge()...).because("it went off new; this one has been under pressure")
	case vessel.Basis == chamber.FromProof:
		g.adds = []Remedy{{Kind: GiveBurst}}
	case !vessel.Stated:
		g.adds = []Remedy{*stateBurst(unstated)}
	case vessel.Basis == chamber.FromEstimate && len(unstated) > 0 && !fails:
		g.lacks = give(unstated...).because("the file lets the estimate count, which takes strengths from specimens of your own; or give the chamber.burst of one made alike")
	}
	if alikeHolds {
		g.adds = append([]Remedy{{Kind: BuildAlike, To: alike.ProofWanted()}}, g.adds...)
	}
	return g
}

// stateBurst asks for what counts as the burst, an estimate being no statement; unstated is what such a one lacks.
func stateBurst(unstated []string) *Remedy {
	why := `as one made alike burst, filled with water; or "` + string(chamber.Estimated) + `", where strengths are those of your own specimens`
	if len(unstated) > 0 {
		why += ": " + strings.Join(unstated, ", ")
	}
	return give("chamber.burst").because(why)
}

// rebuild is a lever that makes another chamber, which has no proof on record.
func rebuild(input string) lever {
	return lever{input: input, up: true, kind: Rebuild, with: asMade}
}

// asMade is a chamber as it was made: not proved yet, nor under pressure.
func asMade(r *rocket.Rocket) {
	r.Chamber.Proof, r.Chamber.ProofDate, r.Chamber.Cycles, r.Chamber.Booked = 0, "", 0, nil
}

// overBurst is the proof on record, or the one that is wanted, over the burst pressure, cold
// as it is made: as measured, else as estimated.
func overBurst(fl *sim.Flight) (float64, bool) {
	v := fl.Rocket.ChamberAt()
	proof, burst := fl.Rocket.Chamber.ProvedTo(), v.ColdEstimate
	if proof == 0 {
		proof = v.ProofWanted
	}
	if v.Basis == chamber.FromBurst {
		burst = v.ColdBurst
	}
	return proof / burst, !math.IsNaN(burst)
}

// doubtCriterion warns of a burst that was measured far above what is estimated.
func doubtCriterion(r *rocket.Rocket) []criterion {
	if r.Chamber.Burst == 0 {
		return nil
	}
	return []criterion{{key: checkDoubt, still: true, warns: true, adds: []Remedy{{Kind: CheckBurst}},
		limit: Limit{Key: checkDoubt, Name: "measured burst over the estimate", Min: noMin, Max: FarApart, Word: WordHigh, Source: "common sense"},
		value: func(fl *sim.Flight) (float64, bool) {
			v := fl.Rocket.ChamberAt()
			return v.ColdBurst / v.ColdEstimate, !math.IsNaN(v.ColdEstimate)
		}}}
}

// FarApart is how many times an estimate a measured burst may be before one of the two is
// doubted, and TooFarApart before it is no measurement of this chamber at all: typical strengths are low ones, but not by
// that much. Common sense, no source.
const (
	FarApart    = 2.0
	TooFarApart = 4.0
)

// unbelievable asks what is wrong of a chamber that cannot be the one that was burst, or cannot be as strong as specimens
// are told to have been; nil of any other.
func unbelievable(r *rocket.Rocket, at *chamber.Result) *Remedy {
	switch at.Basis {
	case chamber.FromBurst:
		if at.ColdBurst > TooFarApart*at.ColdEstimate {
			return &Remedy{Kind: CheckBurst}
		}
	case chamber.FromEstimate:
		typical := r.Vessel().Typical().At(r.Service())
		if at.ColdEstimate > TooFarApart*typical.ColdEstimate {
			return &Remedy{Kind: CheckStrengths, To: at.ColdEstimate / typical.ColdEstimate}
		}
	}
	return nil
}
