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
	g := []gate{proofGate(r)}
	if r.Chamber == nil {
		return g
	}
	if r.Chamber.Proof > 0 {
		g = append(g, ageGate(r, today))
	}
	return append(g, burstGate(r))
}

// ProofRatio is the proof on record over the pressure of the file, the proof counting for
// what heat leaves of it, since it is made cold. NaN without a proof on record, infinite
// without pressure.
func ProofRatio(r *sim.Rocket) float64 {
	if r.Chamber == nil || r.Chamber.Proof == 0 || r.Water == nil {
		return math.NaN()
	}
	return r.Chamber.Proof * r.Vessel().HeatLeft() / r.Water.Pressure
}

func proofGate(r *sim.Rocket) gate {
	g := gate{key: LimitProof, limit: LimitFor(r, LimitProof), still: true,
		value: func(fl *sim.Flight) (float64, bool) {
			v := ProofRatio(fl.Rocket)
			return v, !math.IsNaN(v)
		}}
	if r.Chamber == nil {
		g.none, g.adds = true, []Mend{{Kind: GiveChamber}}
		return g
	}
	vessel := r.Vessel().At(r.Service())
	switch {
	case vessel.ProofWanted <= vessel.ProofLimit && r.Vessel().HeatLeft() == 1:
		g.adds = []Mend{{Kind: ProveTo, To: vessel.ProofWanted}}
	case vessel.MostWorking > 0:
		g.adds = []Mend{{Kind: ProveFor, To: vessel.MostWorking}}
	}
	if g.none = r.Chamber.Proof == 0; !g.none {
		g.levers = []lever{{input: "water.pressure"}, {input: "chamber.temperature"}}
	}
	return g
}

// ageGate warns of an old proof. One that lies ahead is none.
func ageGate(r *sim.Rocket, today time.Time) gate {
	g := gate{key: LimitProofAge, limit: LimitFor(r, LimitProofAge), still: true, warns: true,
		adds: []Mend{{Kind: ProveAgain}}}
	on, err := time.Parse(time.DateOnly, r.Chamber.ProofDate)
	if err != nil || today.IsZero() {
		g.lacks = &Mend{Kind: GiveDate}
		return g
	}
	days := float64(calendarDay(today) - calendarDay(on))
	g.value = func(*sim.Flight) (float64, bool) { return days, true }
	if days < 0 {
		g.limit.Min, g.limit.Word, g.warns = 0, WordUnknown, false
		g.adds = []Mend{{Kind: GiveDate}}
	}
	return g
}

// calendarDay counts the days of the calendar where the clock stands.
func calendarDay(t time.Time) int64 {
	year, month, day := t.Date()
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60)
}

// burstGate holds the proof, on record or still to be made, against the burst pressure.
func burstGate(r *sim.Rocket) gate {
	vessel := r.Vessel().At(r.Service())
	g := gate{key: checkBurst, still: true, limit: Limit{Key: checkBurst, Min: noMin, Word: WordHigh, Source: CommonPractice}, value: overBurst}
	g.limit.Name, g.limit.Max = "proof over estimated burst", chamber.EstimatedShare
	if vessel.Basis == chamber.FromBurst {
		g.limit.Name, g.limit.Max = "proof over measured burst", chamber.MeasuredShare
	}
	if r.Chamber.Proof == 0 {
		g.limit.Name = strings.Replace(g.limit.Name, "proof", "proof wanted", 1)
		g.levers = append(g.levers, lever{input: "water.pressure"})
	}
	g.levers = append(g.levers, lever{input: "chamber.temperature"})
	for i := range r.Chamber.Plies {
		g.levers = append(g.levers, lever{input: "chamber.ply." + r.Chamber.Plies[i].Name + ".count", up: true, kind: Rebuild})
	}
	for _, part := range []string{"forward.overlap", "aft.overlap", "thread.engaged"} {
		g.levers = append(g.levers, lever{input: "chamber." + part, up: true, kind: Rebuild})
	}
	value, _ := overBurst(&sim.Flight{Rocket: r})
	switch described := r.Chamber.Forward != nil && r.Chamber.Aft != nil; {
	case math.IsNaN(vessel.Burst), vessel.Basis == chamber.FromProof && vessel.Estimate > r.Water.Pressure:
		// It has held more than the estimate, which is thereby no guide to what it holds.
		g.lacks = &Mend{Kind: GiveBurst}
	case vessel.Basis == chamber.FromProof:
		// By its description it would burst at the pressure it is to fly at: whatever it
		// held, one of the two is wrong.
		g.adds = []Mend{{Kind: GiveBurst}}
	case vessel.Basis == chamber.FromEstimate && !described && value <= g.limit.Max:
		g.lacks = &Mend{Kind: GiveClosures}
	}
	return g
}

// overBurst is the proof on record, or the one that is wanted, over the burst pressure; of
// a chamber that held more than its estimate over that.
func overBurst(fl *sim.Flight) (float64, bool) {
	v := fl.Rocket.Vessel().At(fl.Rocket.Service())
	proof := fl.Rocket.Chamber.Proof
	if proof == 0 {
		proof = v.ProofWanted
	}
	burst := v.Burst
	if v.Basis == chamber.FromProof {
		burst = v.Estimate
	}
	if burst == 0 { // no strength is left
		return math.Inf(1), true
	}
	return proof / burst, !math.IsNaN(burst)
}

// sealedGate holds what a sealed chamber builds up beside a motor, the air getting thinner
// on the way up, against the pressure that its proof is for, less what a chamber as hot
// as its air loses of its strength.
func sealedGate(r *sim.Rocket) []gate {
	if r.Chamber == nil || r.Chamber.Heating == nil {
		return nil
	}
	vessel := r.Vessel()
	hot := r.Chamber.Heating
	left := vessel.HeatLeftAt(hot.Temperature)
	g := gate{key: checkSealed, still: true,
		limit: Limit{Key: checkSealed, Name: "sealed chamber beside the motor", Min: noMin,
			Max: r.Chamber.Proof * left / LimitFor(r, LimitProof).Min, Unit: "bar", Word: WordHigh, Source: "proof on record, as hot as the air inside"},
		value: func(fl *sim.Flight) (float64, bool) {
			column := fl.Rocket.Site.Column()
			thinner := column.Air(0).Pressure - column.Air(math.Max(fl.Apogee.Height, 0)).Pressure
			return fl.Rocket.Vessel().At(fl.Rocket.Service()).Heated.Damp + thinner, true
		}}
	vent := Mend{Kind: CutVent, To: vessel.At(r.Service()).Heated.DampVent.Hole}
	if hot.Rise > g.limit.Max {
		vent.To = math.NaN() // no hole keeps it low enough
	}
	g.adds = []Mend{vent}
	if r.Chamber.Proof == 0 && left > 0 {
		g.limit.Max, g.lacks = noMax, &Mend{Kind: GiveProof}
	}
	return []gate{g}
}
