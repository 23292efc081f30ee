package gates

import (
	"math"

	"ullage/sim"
	"ullage/sim/bench"
	"ullage/sim/rocket"
)

// Keys of the checks of the seal.
const (
	checkSqueeze = "seal-squeeze"
	checkFilled  = "seal-fill"
	checkExtrude = "seal-gap"
)

// The sources of what a seal is held to.
const (
	ringHandbook = "Parker's O-Ring Handbook, static seals, from memory"
	ringMakers   = "seal makers' tables, from memory"
)

// sealCriteria hold the seal of the chamber to what static grooves are cut for, and its gap to what its ring
// bridges at the proof that its pressure wants. They warn and do not fail: whether it holds is for the proof with water
// to tell, which is a check of its own, so that nothing is better for a seal that is not described. Of
// one that is described in part the sheet of the bench says what is missing; there is no row for it here.
func sealCriteria(r *rocket.Rocket) []criterion {
	s := &r.Bench.Seal
	if s.Cord == 0 || len(s.Missing()) > 0 {
		return nil
	}
	judged := func(key, name, unit, word, source string, low, high float64, of func(*rocket.Rocket) float64) criterion {
		return criterion{key: key, still: true, warns: true, change: "another groove or another ring",
			limit: Limit{Key: key, Name: name, Min: low, Max: high, Unit: unit, Word: word, Source: source},
			value: func(fl *sim.Flight) (float64, bool) { return of(fl.Rocket), true }}
	}
	g := []criterion{
		judged(checkSqueeze, "squeeze of the seal", "%", WordLow, ringHandbook, bench.LeastSqueeze, bench.MostSqueeze,
			func(r *rocket.Rocket) float64 { return r.Bench.Seal.Squeeze() }),
		judged(checkFilled, "fill of the seal's groove", "%", WordHigh, ringHandbook, noMin, bench.MostFill,
			func(r *rocket.Rocket) float64 { return r.Bench.Seal.Fill() }),
	}
	if math.IsNaN(s.AllowedGap(0)) { // softer than any of the tables
		return g
	}
	gap := judged(checkExtrude, "gap at the seal, of what its ring bridges at proof", "", WordHigh, ringMakers, noMin, 1, SealGap)
	gap.levers = []lever{{input: "water.pressure"}}
	return append(g, gap)
}

// SealGap is the gap at the seal over the widest that its ring bridges at the proof that its pressure wants, or at the one on
// record if that is more; more than any number can say counts as ten.
func SealGap(r *rocket.Rocket) float64 {
	const beyond = 10
	s := &r.Bench.Seal
	share := s.Gap() / s.AllowedGap(SealPressure(r))
	if math.IsInf(share, 1) {
		return beyond
	}
	return share
}

// SealPressure is the pressure that a seal has to hold, Pa: the greater of the proof wanted and the one on record.
func SealPressure(r *rocket.Rocket) float64 {
	wanted := r.ProofWanted()
	if r.Chamber != nil {
		wanted = math.Max(wanted, r.Chamber.Proof)
	}
	return wanted
}
