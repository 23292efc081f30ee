package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// ASME PCC-2's 2.5 p V [1 − (p_a/p)^0.286] with p_a 101 kPa, 2 L at 10 bar gauge: 2725 J,
// 6.386e-4 kg of TNT, 2.17 m before the floor of 30 m; Brode 5000 J (computed). Its 0.286
// is γ 1.4 rounded, which is a thousandth of the energy.
func TestEnergy(t *testing.T) {
	s := gasEnergy(1.101e6, 2e-3, 101e3, 1.4)
	assert.InEpsilon(t, 2725, s.Isentropic, 1e-3)
	assert.InDelta(t, 5000, s.Brode, 1e-9)
	assert.InEpsilon(t, 6.386e-4, s.TNT, 1e-3)
	assert.InDelta(t, 2.17, s.Standoff, 5e-3)
	assert.Equal(t, 30., s.StandoffFloor)
	exact := standOff(2725, 0)
	assert.InDelta(t, 6.386e-4, exact.TNT, 5e-8)
	assert.InDelta(t, 2.17, exact.Standoff, 5e-3)
	// 100 MJ is past the floor.
	big := standOff(1e8, 0)
	assert.InEpsilon(t, 20*math.Cbrt(2*1e8/4.26692e6), big.StandoffFloor, 1e-12)
	assert.Greater(t, big.StandoffFloor, 30.)

	// As γ goes to 1 it is the work of an isothermal gas, p V ln(p/p_a).
	assert.InEpsilon(t, 1e6*1e-3*math.Log(10), gasEnergy(1e6, 1e-3, 1e5, 1+1e-7).Isentropic, 1e-5)
	assert.Zero(t, gasEnergy(1e5, 1, 1e5, 1.4).Isentropic)
	assert.Equal(t, 30., gasEnergy(1e5, 1, 1e5, 1.4).StandoffFloor)
}

func TestStores(t *testing.T) {
	c := glassTube()
	s := service()
	s.Volume = 5e-3
	r := c.At(s)
	assert.InEpsilon(t, gasEnergy(10e5+101325, 0.67*5e-3, 101325, 1.4).Isentropic, r.Gas.Isentropic, 1e-12)
	assert.InEpsilon(t, gasEnergy(r.Proof+101325, 5e-3, 101325, 1.4).Isentropic, r.Pneumatic.Isentropic, 1e-12)
	s.Gamma = 0
	assert.Equal(t, r.Gas, c.At(s).Gas, "air's")
	s.Gamma = 1.66
	assert.Less(t, c.At(s).Gas.Isentropic, r.Gas.Isentropic)
	s.Fill = 1
	assert.Zero(t, c.At(s).Gas.Isentropic)
	s.Volume = 0
	assert.InEpsilon(t, c.Volume()/5e-3*c.At(Service{Working: 10e5, Ambient: 101325, Volume: 5e-3}).Gas.Brode,
		c.At(Service{Working: 10e5, Ambient: 101325}).Gas.Brode, 1e-12)
}
