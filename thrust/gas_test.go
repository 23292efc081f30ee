package thrust

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// vibration is a mode's share of c_v/R at a temperature: Einstein's function of its
// wavenumber, 1/cm (McQuarrie, Statistical Mechanics, chapters 6 and 8).
func vibration(wavenumber, temperature float64) float64 {
	const second = 1.438777 // hc/k, cm K
	x := second * wavenumber / temperature
	e := math.Expm1(-x)
	return x * x * (1 + e) / (e * e)
}

// The ratio of specific heats of each gas at 300 K: 1 + R/c_v of an ideal gas that moves,
// turns and vibrates, with the fundamentals of Shimanouchi, NSRDS-NBS 39 (1972, from
// memory). Carbon dioxide's 1.289 is the value of textbook tables at 300 K (from memory);
// vibration by fundamentals gives 1.2875, the JANAF tables' 37.221 J/(mol K) 1.2876, and a per cent
// would be 0.013.
func TestGamma(t *testing.T) {
	gamma := func(still float64, modes ...float64) float64 {
		for _, m := range modes {
			still += vibration(m, 300)
		}
		return 1 + 1/still
	}
	carbonDioxide := gamma(5./2, 667, 667, 1333, 2349)
	assert.InDelta(t, 37.221/(37.221-8.314463), carbonDioxide, 2e-4)
	assert.InDelta(t, carbonDioxide, CarbonDioxide.Gamma(), 2e-3)
	assert.Equal(t, 1.289, CarbonDioxide.Gamma())
	nitrogen, oxygen := gamma(5./2, 2330), gamma(5./2, 1556)
	assert.InDelta(t, nitrogen, Nitrogen.Gamma(), 5e-4)
	assert.Equal(t, 1.4, Nitrogen.Gamma())
	// Air by its shares (U.S. Standard Atmosphere, 1976, table 3), c_v by c_v.
	air := 1 + 1/(0.78084/(nitrogen-1)+0.20948/(oxygen-1)+0.00934*3/2+0.00031/(carbonDioxide-1))
	assert.InDelta(t, air, Air.Gamma(), 5e-4)
	assert.Equal(t, 1.4, Air.Gamma())
	for _, noble := range []Gas{Argon, Helium} {
		assert.InDelta(t, gamma(3./2), noble.Gamma(), 1e-15)
	}
}

// Gas constants from standard atomic weights, g/mol (IUPAC, abridged: C 12.011, N 14.007,
// O 15.999, Ar 39.95, He 4.0026), and air's from its shares, which ISO 2533 rounds.
func TestGasConstants(t *testing.T) {
	for gas, mass := range map[Gas]float64{Nitrogen: 2 * 14.007, Argon: 39.95, Helium: 4.0026, CarbonDioxide: 12.011 + 2*15.999,
		Air: 0.78084*2*14.007 + 0.20948*2*15.999 + 0.00934*39.95 + 0.00031*(12.011+2*15.999)} {
		assert.InEpsilon(t, 8314.462618/mass, gas.Constant(), 6e-5, gas)
		assert.InEpsilon(t, mass/1000, gases[gas].molarMass, 6e-5, gas)
	}
}

// As the liquid is out the gas fills the chamber: p V = m R T, with a temperature that fell
// as T V^(n−1) on the tube and in the chamber.
func TestGasAtLiquidOut(t *testing.T) {
	area := math.Pi / 4 * 0.02 * 0.02
	for _, tube := range []Tube{{}, {Length: 0.3, Outer: 0.02, InnerVolume: 5e-5}} {
		e := Chamber{Volume: 0.002, Bore: 0.1, Throat: 0.021, Discharge: 1, LiquidVolume: 0.0006, LiquidDensity: 1000,
			Pressure: 801325, Temperature: 290, GasConstant: air1, Gamma: 1.4, Exponent: 1.25, Tube: tube}.Prepare()
		first, last := 0.0014, 0.0014
		if tube.Length > 0 {
			first, last = 0.0014+5e-5-area*0.3, 0.0014+5e-5
		}
		p, temperature := e.GasState(e.CarriedGas())
		grown := last / first * 0.002 / 0.0014
		assert.InEpsilon(t, 290*math.Pow(grown, -0.25), temperature, 1e-12)
		assert.InEpsilon(t, 801325*math.Pow(grown, -1.25), p, 1e-12)
		assert.InEpsilon(t, 801325*first/(air1*290), e.StoredGas(), 1e-12)
		assert.InEpsilon(t, e.CarriedGas()*air1*temperature, p*0.002, 1e-12)
	}
}

// Carbon dioxide's vapour pressure, NIST's webbook values from memory: 34.85 bar at 0 °C, 57.29 bar at 20 °C, 73.77 bar at the critical point.
func TestSaturationOfCarbonDioxide(t *testing.T) {
	assert.InDelta(t, 34.85e5, CarbonDioxide.Saturation(273.15), 0.02e5)
	assert.InDelta(t, 57.29e5, CarbonDioxide.Saturation(293.15), 0.02e5)
	assert.InDelta(t, 73.77e5, CarbonDioxide.Saturation(304.1282), 0.01e5)
	assert.Equal(t, CarbonDioxide.Saturation(304.1282), CarbonDioxide.Saturation(350))
	assert.True(t, math.IsInf(Air.Saturation(220), 1))
}
