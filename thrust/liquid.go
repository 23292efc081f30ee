package thrust

import "math"

// LiquidPressure is the chamber pressure while a liquid volume is aboard and no
// gas has left: p·Vⁿ = const. Absolute, Pa.
func (e *Expulsion) LiquidPressure(liquid float64) float64 {
	return e.startPressure * e.expansion.of(e.startVolume/(e.volume-liquid))
}

// Jet is one moment of the liquid's flow.
type Jet struct {
	Pressure     float64 // in the chamber, absolute, Pa
	Acceleration float64 // dq/dt of the jet, m/s²; 0 with steady flow
	Speed        float64 // q relative to the rocket, m/s
	Thrust       float64 // N
}

// UnsteadyJet is the liquid's flow with its inertia, in free motion: Bernoulli
// between the free surface and the exit in the rocket's frame,
//
//	ℓ dq/dt = (p − p_a)/ρ + f·h − (1/C_d² − β²)·q|q|/2,   f = (F − D)/M
//	F = ρ·A_n·[(1 − β)·q² + h·dq/dt]
//
// with ℓ = hβ + ℓ_n; the thrust is the momentum theorem on rocket plus liquid, and
// the two equations are solved for dq/dt together. Drag is along the axis, mass
// everything aboard. Derived; liquid inertia as in Gommes, Am. J. Phys. 78 (2010) 236.
func (e *Expulsion) UnsteadyJet(liquid, speed, ambient, drag, mass float64) Jet {
	p := e.LiquidPressure(liquid)
	h := liquid / e.boreArea
	flow := e.density * e.throatArea
	steady := flow * (1 - e.beta) * speed * speed
	rate := ((p-ambient)/e.density + h*(steady-drag)/mass - e.loss*speed*math.Abs(speed)/2) /
		(h*e.beta + e.passage - flow*h*h/mass)
	return Jet{p, rate, speed, steady + flow*h*rate}
}

// UnsteadyJetHeld is the same while the rocket is held and cannot move: the
// specific force along its axis is then that of the pad, gravity·cos(tilt).
func (e *Expulsion) UnsteadyJetHeld(liquid, speed, ambient, gravity float64) Jet {
	p := e.LiquidPressure(liquid)
	h := liquid / e.boreArea
	rate := ((p-ambient)/e.density + gravity*h - e.loss*speed*math.Abs(speed)/2) / (h*e.beta + e.passage)
	flow := e.density * e.throatArea
	return Jet{p, rate, speed, flow * ((1-e.beta)*speed*speed + h*rate)}
}

// Tendency is what the unsteady jet tends to with a liquid volume aboard, and what it takes
// along, as functions of that volume alone: what changes them besides, drag and the air's pressure
// on the way up, is left out.
type Tendency struct {
	Speed, SpeedSlope       float64 // the jet's speed without acceleration, m/s, and its slope, 1/m²·s
	Momentum, MomentumSlope float64 // of the liquid column over the jet's speed, ρ·A_n·h, kg, and kg/m³
	Share, ShareSlope       float64 // Momentum over the whole mass: ∂(dv/dt)/∂(dq/dt), and 1/m³; 0 held
	Relaxation              float64 // ∂(dq/dt)/∂q over q, 1/m
}

// Tend tells the jet's tendency in air of a pressure, with a mass aboard besides the liquid; held, the rocket does not
// answer, and the column weighs on its exit with the gravity along the axis. Where the chamber's
// pressure comes down to the air's the speed does not reach 0 but turns off above it, smoothly,
// so that it is good for a change of variables wherever the liquid flows.
func (e *Expulsion) Tend(liquid, ambient, others, gravity float64, held bool, t *Tendency) {
	const faint = 5e3 // Pa
	gas := e.volume - liquid
	h := liquid / e.boreArea
	pressure := e.startPressure * e.expansion.of(e.startVolume/gas)
	excess, excessSlope := pressure-ambient, e.exponent*pressure/gas
	resistance, resistanceSlope := e.loss, 0.0
	perVolume := e.density * e.beta
	momentum, share, shareSlope := perVolume*liquid, 0.0, 0.0
	inertia := h*e.beta + e.passage
	if held {
		excess += e.density * gravity * h
		excessSlope += e.density * gravity / e.boreArea
	} else {
		mass := 1 / (others + e.density*liquid)
		share, shareSlope = momentum*mass, perVolume*others*mass*mass
		resistance -= 2 * (1 - e.beta) * share
		resistanceSlope -= 2 * (1 - e.beta) * shareSlope
		inertia -= share * h
	}
	root := math.Sqrt(excess*excess + faint*faint)
	speed := math.Sqrt((excess + root) / (e.density * resistance))
	t.Momentum, t.MomentumSlope, t.Share, t.ShareSlope = momentum, perVolume, share, shareSlope
	t.Speed, t.SpeedSlope = speed, speed/2*(excessSlope/root-resistanceSlope/resistance)
	t.Relaxation = -resistance / inertia
}

// SteadyJet is the textbook form without inertia, in free motion:
//
//	q² = [(p − p_a)/ρ − hD/M] / [(1/C_d² − β²)/2 − h·ρ·A_n·(1−β)/M],   F = ρ·A_n·(1−β)·q²
//
// Drive is the numerator, which ends the flow as it falls to 0 (the jet's speed is
// then 0 and stays so below).
func (e *Expulsion) SteadyJet(liquid, ambient, drag, mass float64) (jet Jet, drive float64) {
	h := liquid / e.boreArea
	p := e.LiquidPressure(liquid)
	drive = (p-ambient)/e.density - h*drag/mass
	return e.steady(p, drive, e.loss/2-h*e.density*e.throatArea*(1-e.beta)/mass), drive
}

// SteadyJetHeld is the same while the rocket cannot move.
func (e *Expulsion) SteadyJetHeld(liquid, ambient, gravity float64) (jet Jet, drive float64) {
	p := e.LiquidPressure(liquid)
	drive = (p-ambient)/e.density + gravity*liquid/e.boreArea
	return e.steady(p, drive, e.loss/2), drive
}

func (e *Expulsion) steady(pressure, drive, resistance float64) Jet {
	if drive <= 0 {
		return Jet{Pressure: pressure}
	}
	// A heavy column over a wide throat in a light rocket can outrun its own
	// resistance; the steady form then has no finite answer. Keep it finite: the
	// unsteady one covers such rockets.
	q2 := drive / max(resistance, 1e-3*e.loss)
	return Jet{pressure, 0, math.Sqrt(q2), e.density * e.throatArea * (1 - e.beta) * q2}
}
