package rocket

import (
	"math"

	"ullage/thrust"
)

// Drives are those that the rocket carries, whichever flies.
func (r *Rocket) Drives() []Power {
	var out []Power
	if r.Water != nil {
		out = append(out, WaterPower)
	}
	if r.Motor != nil {
		out = append(out, MotorPower)
	}
	return out
}

// JetArea is what a running jet covers of the base, m².
func (r *Rocket) JetArea() float64 {
	d := 0.0
	if r.Power == MotorPower {
		d = r.Motor.Diameter
	} else {
		d = r.Water.Throat
	}
	return math.Pi / 4 * d * d
}

// Expulsion is the chamber at release as thrust takes it, on a pad with the given ambient pressure
// (Pa) and temperature (K): grown under its pressure, with the liquid that was filled into it before.
func (r *Rocket) Expulsion(pressure, temperature float64) thrust.Chamber {
	w := r.Water
	c := thrust.Chamber{
		Volume: w.Volume * (1 + r.Growth()), Bore: w.Bore, Throat: w.Throat, Discharge: w.Discharge,
		LiquidVolume: w.Fill * w.Volume, LiquidDensity: w.Density,
		Pressure: w.Pressure + pressure, Temperature: w.Temperature,
		GasConstant: w.Gas.Constant(), Gamma: w.Gas.Gamma(), Exponent: w.Exponent,
	}
	if w.Exponent == 0 || w.Expansion == Saturated {
		c.Exponent, c.Saturated = 0, true
	}
	if c.Temperature == 0 {
		c.Temperature = temperature
	}
	if t := w.Tube; t != nil {
		c.Tube = thrust.Tube{Length: t.Length, Outer: t.Outer,
			InnerVolume: math.Pi/4*t.Inner*t.Inner*t.Length + t.DeadVolume}
	}
	return c
}

// ExponentInForce is that of the expansion: as given, else that of saturated gas.
func (r *Rocket) ExponentInForce() float64 {
	column := r.Site.Column()
	air := column.Air(0)
	c := r.Expulsion(air.Pressure, air.Temperature)
	if c.Exponent != 0 {
		return c.Exponent
	}
	return c.SaturatedExponent()
}

// Growth is by what share the chamber's volume grows under the pressure at release; 0 where nothing
// is known of its wall. A flight keeps that volume throughout: the wall gives back what it
// stored while the gas has most of its work still to do, and what that changes is small.
func (r *Rocket) Growth() float64 {
	if r.Chamber == nil || r.Water == nil {
		return 0
	}
	return r.Chamber.Growth(r.Water.Bore, r.Water.Pressure)
}

// ThrustFactor is what the thrust of the curve is multiplied by. Burn time and propellant stay.
func (m *Motor) ThrustFactor() float64 {
	if m.Factor == 0 {
		return 1
	}
	return m.Factor
}

// Impulse is the motor's, N·s.
func (m *Motor) Impulse() float64 { return m.ThrustFactor() * m.Curve.Impulse() }
