package chamber

import "math"

// The critical point of water.
const (
	criticalTemperature = 647.096  // K
	criticalPressure    = 22.064e6 // Pa
)

// saturation is the pressure of water vapour over water, Pa, and how it rises, Pa/K, at
// a temperature in K from freezing to the critical point (Wagner and Pruss, J. Phys.
// Chem. Ref. Data 22 (1993) 783); NaN above it.
func saturation(temperature float64) (pressure, rise float64) {
	terms := [...]struct{ factor, power float64 }{
		{-7.85951783, 1}, {1.84408259, 1.5}, {-11.7866497, 3}, {22.6807411, 3.5}, {-15.9618719, 4}, {1.80122502, 7.5},
	}
	tau := 1 - temperature/criticalTemperature
	sum, slope := 0., 0.
	for _, t := range terms {
		x := t.factor * math.Pow(tau, t.power-1)
		sum, slope = sum+x*tau, slope+x*t.power
	}
	log := criticalTemperature / temperature * sum
	pressure = criticalPressure * math.Exp(log)
	return pressure, -pressure / temperature * (log + slope)
}
