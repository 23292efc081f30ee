package rocket

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/thrust"
)

// Carbon dioxide above its saturation pressure is no gas: 57.29 bar absolute at 20 °C (NIST's
// Chemistry WebBook, from memory).
func TestCarbonDioxideStaysGas(t *testing.T) {
	r := wet(t)
	r.Site.Pressure, r.Site.Temperature = 101325, 293.15
	r.Water.Gas, r.Water.Temperature = thrust.CarbonDioxide, 293.15
	r.Water.Pressure = 55e5
	require.NoError(t, r.Validate())
	r.Water.Pressure = 57e5
	_, odd := keys(fault.In(r.Validate()))
	assert.Equal(t, []string{"water.pressure"}, odd)
	r.Water.Temperature = 303.15
	assert.NoError(t, r.Validate(), "warmer it may be more")
	r.Water.Gas, r.Water.Pressure = thrust.Air, 90e5
	assert.NoError(t, r.Validate())
}

// A seal narrower than the throat holds nothing.
func TestSealOverTheThroat(t *testing.T) {
	r := wet(t)
	r.Chamber = &chamber.Chamber{Material: chamber.Aluminium, Wall: 0.001,
		Thread: &chamber.Thread{Diameter: 0.03, Pitch: 0.002, Engaged: 0.01, Seal: r.Water.Throat * 0.99}}
	_, odd := keys(fault.In(r.Validate()))
	assert.Equal(t, []string{"chamber.thread.seal"}, odd)
	r.Chamber.Thread.Seal = r.Water.Throat
	assert.NoError(t, r.Validate())
}

// No wall is colder than the air of its day, whatever was said of it on another.
func TestWallAsWarmAsItsDay(t *testing.T) {
	r := wet(t)
	r.Chamber = &chamber.Chamber{Material: chamber.GlassEpoxy, Wall: 0.001, Temperature: 290}
	r.Site.Temperature = 285
	assert.Equal(t, 290.0, r.Vessel().Temperature)
	r.Site.Temperature = 325 // 52 °C: epoxy has softened (typical, from memory)
	v := r.Vessel()
	assert.Equal(t, 325.0, v.Temperature)
	assert.Less(t, v.HeatLeft(), 0.8)
	r.Chamber.HeatFactor = 0.95
	assert.Equal(t, v.HeatLeft(), r.Vessel().HeatLeft(), "a factor holds up to the temperature it was given for")
	assert.Equal(t, 290.0, r.Chamber.Temperature, "the rocket is left as it is")
	r.Site.Temperature, r.Water.Temperature = 285, 330
	assert.Equal(t, 330.0, r.Vessel().Temperature, "what rests in it warms it")
}

// A rocket weighs no less than the tube of its chamber: 68 mm inside, 1 mm of aluminium, 2700 kg/m³.
func TestRocketOverItsTube(t *testing.T) {
	r := wet(t)
	r.Chamber = &chamber.Chamber{Material: chamber.Aluminium, Wall: 0.001}
	v := r.Vessel()
	tube := math.Pi * (v.Diameter + 0.001) * 0.001 * v.TubeLength() * v.WallDensity()
	assert.InEpsilon(t, tube, v.TubeMass(), 1e-9)
	r.Body.Mass = 0.79 * tube
	_, odd := keys(fault.In(r.Validate()))
	assert.Equal(t, []string{"body.mass"}, odd)
	r.Body.Mass = 0.81 * tube
	assert.NoError(t, r.Validate())
}
