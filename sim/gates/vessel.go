package gates

import (
	"math"
	"strings"
	"time"

	"ullage/sim"
	"ullage/sim/chamber"
)

// chamberGates are about the pressure chamber: on water whether it was proved for its
// pressure, on a motor what warms up in it beside one.
func chamberGates(r *sim.Rocket, today time.Time) []gate {
	if r.Power == sim.MotorPower {
		return sealedGate(r)
	}
	proof := gate{key: LimitProof, limit: LimitFor(r, LimitProof), still: true, none: true,
		value: func(fl *sim.Flight) (float64, bool) {
			if fl.Rocket.Chamber == nil || fl.Rocket.Chamber.Proof == 0 {
				return math.NaN(), false
			}
			return fl.Rocket.Chamber.Proof / fl.Rocket.Water.Pressure, true
		}}
	if r.Chamber == nil {
		proof.adds = []Mend{{Kind: GiveChamber}}
		return []gate{proof}
	}
	vessel := r.Vessel().At(r.Service())
	factor := proof.limit.Min
	switch wanted := factor * r.Water.Pressure; {
	case wanted <= vessel.ProofLimit:
		proof.adds = []Mend{{Kind: ProveTo, To: wanted}}
	case vessel.ProofLimit > 0:
		proof.adds = []Mend{{Kind: ProveFor, To: vessel.ProofLimit / factor}}
	}
	if r.Chamber.Proof > 0 {
		proof.levers, proof.none = []lever{{input: "water.pressure"}}, false
	}
	g := []gate{proof}
	if r.Chamber.Proof > 0 {
		g = append(g, ageGate(r, today))
	}
	return append(g, burstGate(r, vessel, factor))
}

// ageGate warns of an old proof.
func ageGate(r *sim.Rocket, today time.Time) gate {
	g := gate{key: LimitProofAge, limit: LimitFor(r, LimitProofAge), still: true, warns: true,
		adds: []Mend{{Kind: ProveAgain}}}
	on, err := time.Parse(time.DateOnly, r.Chamber.ProofDate)
	if err != nil || today.IsZero() {
		g.lacks = &Mend{Kind: GiveDate}
		return g
	}
	days := math.Floor(today.Sub(on).Hours() / 24)
	if days < 0 { // a slip of the pen
		g.lacks = &Mend{Kind: GiveDate}
		return g
	}
	g.value = func(*sim.Flight) (float64, bool) { return days, true }
	return g
}

// burstGate holds the proof, on record or still to be made, against the burst pressure.
func burstGate(r *sim.Rocket, vessel chamber.Result, factor float64) gate {
	g := gate{key: checkBurst, still: true, limit: Limit{Key: checkBurst, Min: noMin, Word: WordHigh, Source: CommonPractice}}
	g.limit.Name, g.limit.Max = "proof over estimated burst", chamber.EstimatedShare
	if vessel.Basis == chamber.FromBurst {
		g.limit.Name, g.limit.Max = "proof over measured burst", chamber.MeasuredShare
	}
	if r.Chamber.Proof == 0 {
		g.limit.Name = strings.Replace(g.limit.Name, "proof", "proof wanted", 1)
	}
	g.value = func(fl *sim.Flight) (float64, bool) {
		proof := fl.Rocket.Chamber.Proof
		if proof == 0 {
			proof = factor * fl.Rocket.Water.Pressure
		}
		v := fl.Rocket.Vessel().At(fl.Rocket.Service())
		return proof / v.Burst, v.Burst > 0
	}
	if vessel.Basis == chamber.FromProof || math.IsNaN(vessel.Burst) {
		// It has held more than the estimate, which is thereby no guide to what it holds.
		g.lacks = &Mend{Kind: GiveBurst}
		return g
	}
	if r.Chamber.Proof == 0 {
		g.levers = append(g.levers, lever{input: "water.pressure"})
	}
	for i := range r.Chamber.Plies {
		g.levers = append(g.levers, lever{input: "chamber.ply." + r.Chamber.Plies[i].Name + ".count", up: true})
	}
	for _, end := range []string{"forward", "aft"} {
		g.levers = append(g.levers, lever{input: "chamber." + end + ".overlap", up: true})
	}
	g.levers = append(g.levers, lever{input: "chamber.thread.engaged", up: true})
	return g
}

// sealedGate holds what a sealed chamber builds up beside a motor against the pressure
// that its proof is for, less what a wall as hot as its air loses of its strength.
func sealedGate(r *sim.Rocket) []gate {
	if r.Chamber == nil || r.Chamber.Heating == nil {
		return nil
	}
	g := gate{key: checkSealed, still: true,
		limit: Limit{Key: checkSealed, Name: "sealed chamber beside the motor", Min: noMin, Unit: "bar", Word: WordHigh, Source: "proof on record, wall as hot as its air"},
		value: func(fl *sim.Flight) (float64, bool) {
			return fl.Rocket.Vessel().At(fl.Rocket.Service()).Heated.Damp, true
		}}
	vessel := r.Vessel().At(r.Service())
	hot := *r.Vessel()
	hot.Temperature, hot.HeatFactor = r.Chamber.Heating.Temperature, 0
	if left := r.Vessel().HeatFactorInForce(); left > 0 {
		g.limit.Max = r.Chamber.Proof / LimitFor(r, LimitProof).Min * math.Min(1, hot.HeatFactorInForce()/left)
	}
	g.adds = []Mend{{Kind: CutVent, To: vessel.Heated.DampVent.Hole}}
	if r.Chamber.Proof == 0 {
		g.limit.Max, g.lacks = noMax, &Mend{Kind: GiveProof}
	}
	return []gate{g}
}
