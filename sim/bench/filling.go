package bench

import "math"

// Filling is what a chamber is filled with, and how tight it is.
type Filling struct {
	Stroke         float64 // volume of air that one stroke of the pump takes in, m³
	Bottle         float64 // inside volume of a bottle of gas, m³
	BottlePressure float64 // in it before filling, Pa
	Leak           float64 // pressure lost in a leak test, Pa
	LeakTime       float64 // in which it was lost, s
	Wait           float64 // from the closing of the valve to the release, s
}

// Gas is what is pumped into a chamber: to a gauge pressure over a volume, at a temperature, K, of a gas constant,
// J/(kg K), from air at an absolute ambient pressure. Ideal gas that has come back to the
// temperature it had; what a warm pump shows falls as it cools.
type Gas struct {
	Volume, Pressure, Ambient, Temperature, Constant float64
}

// Mass is that of the gas to be added, kg: p V/(R T), the air that is in the chamber already left out.
func (g Gas) Mass() float64 { return g.Pressure * g.Volume / (g.Constant * g.Temperature) }

// Strokes is how many a pump takes at least: each brings its volume of ambient air, none of which stays behind
// in the pump.
func (g Gas) Strokes(stroke float64) float64 { return g.Pressure * g.Volume / (g.Ambient * stroke) }

// BottleAfter is the pressure of a bottle once the chamber is filled from it, Pa: less than the chamber's where the
// bottle does not reach. The drop is p V/V_b.
func (g Gas) BottleAfter(f *Filling) float64 {
	return f.BottlePressure - g.Pressure*g.Volume/f.Bottle
}

// Fillings is how often a bottle fills the chamber before its pressure is below the chamber's.
func (g Gas) Fillings(f *Filling) int {
	drop := g.Pressure * g.Volume / f.Bottle
	return max(0, int(math.Floor((f.BottlePressure-g.Pressure)/drop+1e-9)))
}

// LostBy is the pressure lost by the release, Pa, at the rate that the leak test had: the most, since a leak slows
// down as the pressure falls. NaN where test or wait are not given.
func (f *Filling) LostBy() float64 {
	if f.Leak == 0 || f.LeakTime == 0 || f.Wait == 0 {
		return math.NaN()
	}
	return f.Leak * f.Wait / f.LeakTime
}
