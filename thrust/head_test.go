package thrust

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Without pressure the liquid of a rocket that is held runs out under its own head:
// Torricelli's √(2gh), through a velocity coefficient and with the surface's own speed
// counted √(2gh/(1/C_d² − β²)). The jet with inertia starts at gh over its length, ends at
// that speed, and the thrust is the momentum theorem's.
func TestTorricelli(t *testing.T) {
	c := liquidChamber(0.02, 1.4)
	c.Bore, c.Discharge, c.InertialLength = 0.05, 0.96, 0.02
	e := c.Prepare()
	const liquid, g = 5e-4, 9.6
	area, h, beta := math.Pi/4*4e-4, liquid/(math.Pi/4*0.0025), 0.16
	p := e.LiquidPressure(liquid)
	q := math.Sqrt(2 * g * h / (1/(0.96*0.96) - beta*beta))

	steady, drive := e.SteadyJetHeld(liquid, p, g)
	assert.InEpsilon(t, g*h, drive, 1e-12)
	assert.InEpsilon(t, q, steady.Speed, 1e-12)
	assert.InEpsilon(t, 1000*area*(1-beta)*q*q, steady.Thrust, 1e-12)
	assert.Equal(t, p, steady.Pressure)

	end := e.UnsteadyJetHeld(liquid, q, p, g)
	assert.InDelta(t, 0, end.Acceleration, 1e-12*g)
	assert.InEpsilon(t, steady.Thrust, end.Thrust, 1e-12)
	start := e.UnsteadyJetHeld(liquid, 0, p, g)
	assert.InEpsilon(t, g*h/(h*beta+0.02), start.Acceleration, 1e-12)
	assert.InEpsilon(t, 1000*area*h*start.Acceleration, start.Thrust, 1e-12, "what sets the column going")
	// Halfway there it is q tanh(q∞ t/(2L)): the acceleration is that of the start less
	// the square of the speed's share.
	half := e.UnsteadyJetHeld(liquid, q/2, p, g)
	assert.InEpsilon(t, 0.75*start.Acceleration, half.Acceleration, 1e-12)
	assert.InEpsilon(t, 1000*area*((1-beta)*q*q/4+h*half.Acceleration), half.Thrust, 1e-12)
}

// The launch tube's piston with more gas in hose and valve than the tube takes up: the same
// closed form as TestTubePiston's, from the same volume at release.
func TestTubeWithHose(t *testing.T) {
	area := math.Pi / 4 * 0.021 * 0.021
	e := Chamber{Volume: 0.002, Bore: 0.1, Throat: 0.021, Discharge: 1, LiquidVolume: 0.0009, LiquidDensity: 1000,
		Pressure: 801325, Temperature: 288.15, GasConstant: air1, Gamma: 1.4,
		Tube: Tube{Length: 0.25, Outer: 0.021, InnerVolume: area*0.25 + 0.0003}}.Prepare()
	p, force := e.TubePush(0.25, ambient)
	assert.InEpsilon(t, 736750.080, p, 1e-8)
	assert.InEpsilon(t, area*(p-ambient), force, 1e-12)
	assert.InEpsilon(t, 801325*0.0014/(air1*288.15), e.StoredGas(), 1e-12)
	assert.InEpsilon(t, e.StoredGas()*0.0011/(0.0014+area*0.25), e.CarriedGas(), 1e-12)
	assert.InEpsilon(t, p, e.LiquidPressure(0.0009), 1e-12)
}
