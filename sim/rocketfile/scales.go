package rocketfile

import (
	"math"

	"ullage/sim/quantity"
)

// SI values of the units that the ranges below are written in.
const (
	millimetre  = 1e-3
	gram        = 1e-3
	litre       = 1e-3
	millilitre  = 1e-6
	bar         = 1e5
	hectopascal = 1e2
	megapascal  = 1e6
	gigapascal  = 1e9
	degree      = math.Pi / 180
	freezing    = 273.15 // 0 degC
)

// measured makes a scale from SI numbers.
func measured(d quantity.Dimension, unit string, min, max, step, coarse float64) scale {
	u, ok := quantity.LookupIn(unit, d)
	if !ok {
		panic("rocketfile: no unit " + unit)
	}
	return scale{d, u, min, max, step, coarse}
}

func millimetres(min, max, step, coarse float64) scale {
	return measured(quantity.Length, "mm", min*millimetre, max*millimetre, step*millimetre, coarse*millimetre)
}

func metres(min, max, step, coarse float64) scale {
	return measured(quantity.Length, "m", min, max, step, coarse)
}

func grams(max, step, coarse float64) scale {
	return measured(quantity.Mass, "g", 0, max*gram, step*gram, coarse*gram)
}

func seconds(min, max float64) scale {
	return measured(quantity.Time, "s", min, max, 0.1, 1)
}

func degrees(min, max, step, coarse float64) scale {
	return measured(quantity.Angle, "deg", min*degree, max*degree, step*degree, coarse*degree)
}

func celsius(min, max float64) scale {
	return measured(quantity.Temperature, "degC", freezing+min, freezing+max, 1, 5)
}

func number(min, max, step, coarse float64) scale {
	return measured(quantity.Number, "", min, max, step, coarse)
}

func percent(min, max, step, coarse float64) scale {
	return measured(quantity.Fraction, "%", min/100, max/100, step/100, coarse/100)
}
