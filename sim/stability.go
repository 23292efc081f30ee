package sim

import (
	"math"
)

// Stability is how the rocket balances and points, known when the file gives a shape
// and a balance.
type Stability struct {
	Known     bool
	Dry       StabilityAt // the airframe with the drive's fittings and case, nothing aboard
	Release   StabilityAt
	RailExit  StabilityAt
	LiquidOut StabilityAt
	Burnout   StabilityAt

	Least     float64 // least margin from the guide's end, or the end of liquid or thrust, up to the top, calibres
	LeastTime float64 // s

	RailExitAngle float64 // angle of attack from the wind as the guide ends, rad
	AtAngle       float64 // margin at that angle, body cross-flow in it, calibres
	MaxAngle      float64 // greatest angle of attack from there on up to the top, while the airspeed is not below that of the guide's end, rad; 0 for a point mass
	MaxAngleTime  float64 // s
}

// StabilityAt is the state of balance at a moment.
type StabilityAt struct {
	Happened       bool
	Time           float64 // s
	Balance        float64 // balance point from the tip of the nose, m
	Pitch, Roll    float64 // inertias about it, kg·m²
	PressureCentre float64 // from the tip of the nose, m
	CNAlpha        float64 // of the whole rocket, per rad
	Margin         float64 // (centre of pressure − balance point)/diameter, calibres
}

// at works out the state of balance with what is aboard, at a Mach number.
func (b *rigidBody) at(liquid, gas, grain, mach, diameter float64) StabilityAt {
	l := b.masses.with(liquid, gas, grain)
	m0, m1, _ := b.aero.Moments(mach)
	return StabilityAt{
		Happened: true, Balance: l.balance, Pitch: l.pitch, Roll: l.roll,
		PressureCentre: m1 / m0, CNAlpha: m0, Margin: (m1/m0 - l.balance) / diameter,
	}
}

// noteStability keeps the present state of balance.
func (r *run) noteStability(s *StabilityAt) {
	if b := r.model.body; b != nil {
		f := &r.now
		*s = b.at(f.liquid, f.gas, f.grain, f.mach(), r.rocket.Body.Diameter)
		s.Time = r.t
	}
}

// beginStability opens the account at release.
func (r *run) beginStability() {
	b := r.model.body
	if b == nil {
		return
	}
	s := &r.flight.Stability
	s.Known, s.Least = true, math.Inf(1)
	s.Dry = b.at(0, 0, 0, 0, r.rocket.Body.Diameter)
	r.noteStability(&s.Release)
}

// noteGuideEnd keeps the angle of attack as the guide ends: from the wind at the
// height of the balance point, the tail still where the guide ends.
func (r *run) noteGuideEnd() {
	m := &r.model
	b := m.body
	if b == nil {
		return
	}
	above := b.masses.exit - r.flight.Stability.RailExit.Balance
	we, wn := m.profile.At(max(r.y[up]+above*m.cosTilt, windFloor))
	v := vector{r.y[vEast] - we, r.y[vNorth] - wn, r.y[vUp]}
	along := dot(v, m.axis)
	across := math.Sqrt(max(0, dot(v, v)-along*along))
	s := &r.flight.Stability
	s.RailExitAngle = math.Atan2(across, along)
	s.AtAngle = (b.aero.PressureCentre(r.now.mach(), s.RailExitAngle) - s.RailExit.Balance) / r.rocket.Body.Diameter
	m.fast = math.Sqrt(dot(v, v))
}

// watchMargin follows the margin on the way up.
func (r *run) watchMargin() {
	m := &r.model
	if m.body == nil || m.guided || r.overTop {
		return
	}
	var now StabilityAt
	r.noteStability(&now)
	if s := &r.flight.Stability; now.Margin < s.Least {
		s.Least, s.LeastTime = now.Margin, r.t
	}
}

// endStability closes the account.
func (r *run) endStability() {
	s := &r.flight.Stability
	if !s.Known {
		return
	}
	for _, at := range []StabilityAt{s.RailExit, s.LiquidOut, s.Burnout} {
		if at.Happened && at.Margin < s.Least {
			s.Least, s.LeastTime = at.Margin, at.Time
		}
	}
	if math.IsInf(s.Least, 1) {
		s.Least = s.Release.Margin // nothing ever moved
	}
	if !r.flight.RailExit.Happened {
		return
	}
	if r.rocket.Rigid() && s.RailExitAngle > s.MaxAngle {
		// The wind at the balance point, above the tail, is a little stronger.
		s.MaxAngle, s.MaxAngleTime = s.RailExitAngle, r.flight.RailExit.Time
	}
	if s.Least <= 0 {
		r.warn(Warning{Code: Unstable, Value: s.Least})
	}
	if s.MaxAngle > math.Pi/3 {
		r.warn(Warning{Code: Tumbles, Value: s.MaxAngle})
	}
}
