package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
)

// Saturation pressures of water by IAPWS-95 (computed with the general-purpose
// library iapws for Python); Alduchov and Eskridge claim 0.4 % for their fit.
func TestSaturationPressure(t *testing.T) {
	for _, row := range []struct{ celsius, pressure float64 }{
		{10, 1228.20}, {20, 2339.32}, {30, 4246.97}, {40, 7384.94},
	} {
		near(t, row.pressure, atmosphere.SaturationPressure(row.celsius+273.15), 4e-3, "at %g °C", row.celsius)
	}
	// The fit itself at 0 °C is its first constant.
	near(t, 610.94, atmosphere.SaturationPressure(273.15), 1e-12, "at 0 °C")
	for _, cold := range []float64{-1e9, -3, 0, 10, 30.11} {
		require.Zero(t, atmosphere.SaturationPressure(cold))
	}
}

// The density of moist air after CIPM-2007 (A. Picard, R. S. Davis, M. Gläser and
// K. Fujii, Metrologia 45 (2008) 149; its constants from memory), which metrology
// goes by: it reckons with compressibility and the enhancement of vapour by air,
// together some parts in 10 000.
func cipm(celsius, pressure, humidity float64) float64 {
	t, T, p := celsius, celsius+273.15, pressure
	saturation := math.Exp(1.2378847e-5*T*T - 1.9121316e-2*T + 33.93711047 - 6.3431645e3/T)
	x := humidity * (1.00062 + 3.14e-8*p + 5.6e-7*t*t) * saturation / p
	z := 1 - p/T*(1.58123e-6-2.9331e-8*t+1.1043e-10*t*t+(5.707e-6-2.051e-8*t)*x+(1.9898e-4-2.376e-6*t)*x*x) +
		p*p/(T*T)*(1.83e-11-0.765e-8*x*x)
	return p * 28.96546e-3 / (z * 8.314472 * T) * (1 - x*(1-18.01528/28.96546))
}

func TestMoistDensity(t *testing.T) {
	for _, celsius := range []float64{5, 15, 27} {
		for _, pressure := range []float64{80000, 101325} {
			for _, humidity := range []float64{0.2, 0.5, 1} {
				elevation := 0.0
				if pressure < 90000 {
					elevation = 2000
				}
				c := atmosphere.Site{Elevation: elevation, Temperature: celsius + 273.15, Pressure: pressure, Humidity: humidity}.Column()
				a := c.Air(0)
				near(t, cipm(celsius, pressure, humidity), a.Density, 6e-4, "%g °C, %g Pa, humidity %g", celsius, pressure, humidity)
				near(t, math.Sqrt(1.4*pressure/a.Density), a.SoundSpeed, 1e-12, "speed of sound")
			}
		}
	}
}

// The hydrostatic law with virtual temperature, d(ln p)/dH = -g0/(R T_v), in
// small steps by the classical Runge–Kutta method, against the tabulated column.
func TestMoistColumnAgainstIntegration(t *testing.T) {
	const elevation, temperature, pressure, humidity = 150.0, 303.15, 99500.0, 0.8
	c := atmosphere.Site{Elevation: elevation, Temperature: temperature, Pressure: pressure, Humidity: humidity}.Column()
	foot := atmosphere.Geopotential(elevation)
	const epsilon = 18.01528 / 28.9644

	virtual := func(h, logP float64) float64 {
		kelvin := temperature - 6.5e-3*(h-foot)
		e := humidity * atmosphere.SaturationPressure(kelvin)
		return kelvin / (1 - (1-epsilon)*e/math.Exp(logP))
	}
	slope := func(h, logP float64) float64 {
		return -atmosphere.StandardGravity / (atmosphere.GasConstant * virtual(h, logP))
	}
	const step = 5.0
	h, y := foot, math.Log(pressure)
	for h+step < 11000 {
		k1 := slope(h, y)
		k2 := slope(h+step/2, y+step/2*k1)
		k3 := slope(h+step/2, y+step/2*k2)
		k4 := slope(h+step, y+step*k3)
		h, y = h+step, y+step/6*(k1+2*k2+2*k3+k4)
		p, rho := c.At(geometric(h) - elevation)
		near(t, math.Exp(y), p, 2e-8, "pressure at %g m", h)
		near(t, math.Exp(y)/(atmosphere.GasConstant*virtual(h, y)), rho, 5e-8, "density at %g m", h)
	}
}

// Moist air is lighter, more so the warmer it is; a trace of humidity does nothing.
func TestHumidityIsLight(t *testing.T) {
	for _, h := range []float64{0, 300, 3000, 9000} {
		s := atmosphere.Site{Elevation: 100, Temperature: 303.15}
		dry := s.Column()
		s.Humidity = 1e-9
		trace := s.Column()
		s.Humidity = 1
		wet := s.Column()
		near(t, dry.Air(h).Density, trace.Air(h).Density, 1e-9, "trace at %g m", h)
		if h < 5000 {
			require.Less(t, wet.Air(h).Density, dry.Air(h).Density, "at %g m", h)
		}
		require.Equal(t, dry.Air(h).Temperature, wet.Air(h).Temperature)
		require.GreaterOrEqual(t, wet.Air(h).Pressure, dry.Air(h).Pressure, "at %g m", h)
	}
}
