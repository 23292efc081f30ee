package gates

import (
	"math"
	"time"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// booked adds what the chamber's logbook makes of its proof: pressurisations since then, their greatest
// pressure, the hardest landing measured, damage found. A proof is due by any of them. A logbook that is named
// and cannot be read leaves the proof unjudged, as one that does not tell every pressure leaves the greatest.
func booked(r *rocket.Rocket, g []criterion) []criterion {
	b := r.Chamber.Booked
	if b == nil {
		return g
	}
	if b.Missing != "" {
		why := "the logbook it names cannot be read, and only it knows what the chamber went through"
		if b.Unnamed != "" {
			why = b.Unnamed + " lies beside the rocket file, and only it knows what the chamber went through"
		}
		for i := range g {
			g[i].lacks = give("chamber.logbook").because(why)
		}
		return g
	}
	again := []Remedy{proof(r, ProveAgain)}
	if b.Proof > 0 {
		g = append(g, criterion{key: LimitProofCycles, limit: LimitFor(r, LimitProofCycles), still: true, adds: again,
			value: func(*sim.Flight) (float64, bool) { return float64(b.Since), true }})
	}
	if b.Proof > 0 && (b.Untold > 0 || b.Most > 0) {
		pressed := criterion{key: checkPressed, limit: LimitFor(r, LimitProof), still: true, adds: again,
			value: func(fl *sim.Flight) (float64, bool) {
				v := proofOver(fl.Rocket, b.Most)
				return v, !math.IsNaN(v)
			}}
		pressed.limit.Key, pressed.limit.Name = checkPressed, "proof over the pressure since"
		if b.Untold > 0 {
			pressed.lacks = give("chamber.logbook").because("entries in it since the proof tell no pressure")
		}
		g = append(g, pressed)
	}
	if !math.IsNaN(b.Hardest) {
		limit := LimitFor(r, LimitLanding)
		limit.Key, limit.Name = checkFell, "hardest landing since the proof"
		g = append(g, criterion{key: checkFell, limit: limit, still: true, adds: again,
			value: func(*sim.Flight) (float64, bool) { return b.Hardest, true }})
	}
	if n := len(b.Damage); n > 0 {
		g = append(g, criterion{key: CheckDamage, still: true, adds: again,
			limit: Limit{Key: CheckDamage, Name: "damage noted since the proof", Min: noMin, Max: 0, Word: WordHigh, Source: "the logbook", Either: true},
			value: func(*sim.Flight) (float64, bool) { return float64(n), true }})
	}
	return g
}

// Due are the checks of a chamber's proof that do not pass by a logbook alone, whatever the rocket file says
// of that proof and whichever drive it flies: those that fail, those that warn, those that cannot be
// judged. Without water there are none.
func Due(r *rocket.Rocket, b *chamber.Booked, today time.Time) []Check {
	if r.Water == nil {
		return nil
	}
	own := r.Clone()
	if own.Chamber == nil {
		own.Chamber = &chamber.Chamber{}
	}
	own.Power, own.Chamber.Booked = rocket.WaterPower, b
	own.Chamber.Proof, own.Chamber.ProofDate = b.Proof, b.ProofDate
	still := &sim.Flight{Rocket: own}
	var due []Check
	for _, g := range provedCriteria(own, today) {
		c := Check{Key: g.key, About: Chamber, Name: g.limit.Name, Limit: g.limit}
		if g.value != nil {
			c.Values[results.Day] = g.look(still)
		}
		if c.conclude(&g); c.Level != Good {
			due = append(due, c)
		}
	}
	return due
}
