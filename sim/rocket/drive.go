package rocket

import (
	"math"

	"ullage/thrust"
)

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

// Chamber is the drive at release as thrust takes it, on a pad with the given
// ambient pressure (Pa) and temperature (K).
func (w *Water) Chamber(pressure, temperature float64) thrust.Chamber {
	c := thrust.Chamber{
		Volume: w.Volume, Bore: w.Bore, Throat: w.Throat, Discharge: w.Discharge,
		LiquidVolume: w.Fill * w.Volume, LiquidDensity: w.Density,
		Pressure: w.Pressure + pressure, Temperature: w.Temperature,
		GasConstant: w.Gas.Constant(), Gamma: w.Gas.Gamma(), Exponent: w.Exponent,
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
