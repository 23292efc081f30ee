package gates

import (
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
)

// booked adds what the chamber's logbook makes of its proof: pressurisations since then, the hardest
// landing measured, damage found. A proof is due by any of them. A logbook that is named and cannot be read leaves
// the proof unjudged.
func booked(r *rocket.Rocket, g []criterion) []criterion {
	b := r.Chamber.Booked
	if b == nil {
		return g
	}
	if b.Missing != "" {
		for i := range g {
			g[i].lacks = give("chamber.logbook").because("the logbook it names cannot be read, and only it knows what the chamber went through")
		}
		return g
	}
	again := []Remedy{{Kind: ProveAgain}}
	if b.Proved {
		g = append(g, criterion{key: LimitProofCycles, limit: LimitFor(r, LimitProofCycles), still: true, adds: again,
			value: func(*sim.Flight) (float64, bool) { return float64(b.Since), true }})
	}
	if !math.IsNaN(b.Hardest) {
		limit := LimitFor(r, LimitLanding)
		limit.Key, limit.Name = checkFell, "hardest landing since the proof"
		g = append(g, criterion{key: checkFell, limit: limit, still: true, adds: again,
			value: func(*sim.Flight) (float64, bool) { return b.Hardest, true }})
	}
	if n := len(b.Damage); n > 0 {
		g = append(g, criterion{key: checkDamage, still: true, adds: again,
			limit: Limit{Key: checkDamage, Name: "damage noted since the proof", Min: noMin, Max: 0, Word: WordHigh, Source: "the logbook"},
			value: func(*sim.Flight) (float64, bool) { return float64(n), true }})
	}
	return g
}
