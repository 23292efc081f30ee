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

// Stiffness is what makes the unsteady jet stiff: how fast it relaxes,
// ∂(dq/dt)/∂q (1/s, negative while it flows), and how its acceleration pushes the
// rocket, ∂(dv/dt)/∂(dq/dt) = ρ·A_n·h/M. Held, the rocket does not answer.
func (e *Expulsion) Stiffness(liquid, speed, mass float64, held bool) (relaxation, push float64) {
	h := liquid / e.boreArea
	flow := e.density * e.throatArea
	if held {
		return -e.loss * math.Abs(speed) / (h*e.beta + e.passage), 0
	}
	push = flow * h / mass
	return (2*push*(1-e.beta)*speed - e.loss*math.Abs(speed)) / (h*e.beta + e.passage - push*h), push
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
	q2 := drive / math.Max(resistance, 1e-3*e.loss)
	return Jet{pressure, 0, math.Sqrt(q2), e.density * e.throatArea * (1 - e.beta) * q2}
}
