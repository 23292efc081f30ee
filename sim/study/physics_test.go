package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/thrust"
)

// Tsiolkovsky's equation with the speed of the jet at constant pressure, q = √(2ΔP/ρ):
// U = q ln(m0/m_d) less gravity's share over the burn. The chamber is so large that
// its pressure hardly falls, and wide, so that the liquid has no depth; the gas is hot
// helium, which weighs little. The larger the chamber, the closer.
func TestConstantPressureLimit(t *testing.T) {
	off := math.Inf(1)
	for _, volume := range []float64{0.01, 0.1, 1} { // m³, of which 0.1 L is liquid
		const pressure, density, liquid = 1e7, 1000.0, 1e-4
		r := bottle()
		r.Body = rocket.Body{Diameter: 2, Mass: 1, Drag: []rocket.MachDrag{{}}, DragFactor: 1}
		r.Water = &rocket.Water{Volume: volume, Bore: 1.9, Throat: 0.03, Discharge: 1, Fill: liquid / volume, Pressure: pressure,
			Gas: thrust.Helium, Temperature: 370, Density: density, Flow: rocket.SteadyFlow}
		r.Rail.Length = 0.01
		r.Canopies = nil
		fl := flown(t, r)
		q := math.Sqrt(2 * pressure / density)
		burn := liquid / (math.Pi / 4 * 0.03 * 0.03 * q)
		const air = 1.225 // kg/m³: the chamber floats a little
		want := q*math.Log(fl.LiftOffMass/(fl.LiftOffMass-density*liquid)) - 9.80665*burn*(1-air*volume/fl.LiftOffMass)
		d := math.Abs(fl.LiquidOut.Speed/want - 1)
		require.Less(t, d, off)
		off = d
	}
	require.Less(t, off, 1e-3)
}

// The impulse of a chamber depends on its contents, not on its throat: of steady flow
// without losses, ∫F dt = ∫q dm with q from the pressure alone (model of a liquid and of
// a gas driven by the same expansion). Depth and the nozzle's area are made small.
func TestImpulseIndependentOfThroat(t *testing.T) {
	r := bottle()
	r.Body.Mass, r.Body.Diameter, r.Body.Drag = 3, 0.6, []rocket.MachDrag{{}}
	r.Water.Bore, r.Water.Discharge, r.Water.Flow = 0.5, 1, rocket.SteadyFlow
	got := rows(t, r, Options{}, "water.throat=6..14mm/5")
	first := got[0].Flight.Drive.Impulse
	for _, row := range got {
		require.InEpsilon(t, first, row.Flight.Drive.Impulse, 2e-3)
	}
	require.Greater(t, got[0].Flight.Drive.BurnTime, 4*got[4].Flight.Drive.BurnTime)
}

// Light bottles fly highest with a quarter to four tenths of water, heavier ones with
// more: Finney, Am. J. Phys. 68 (2000) 223, and Gommes, Am. J. Phys. 78 (2010) 236,
// both from memory; "about a third" is common practice.
func TestBestFillOfBottles(t *testing.T) {
	last := 0.0
	for _, mass := range []float64{0.10, 0.15, 0.25, 0.5} {
		r := bottle()
		r.Body.Mass = mass
		b := best(t, r, false, "water.fill")
		require.Greater(t, b.Values[0], last)
		if last = b.Values[0]; mass < 0.2 {
			require.GreaterOrEqual(t, last, 0.25)
			require.LessOrEqual(t, last, 0.40)
		}
	}
}
