package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func heron(t *testing.T) *rocket.Rocket {
	t.Helper()
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	return f.Rocket()
}

func TestStructureFliesEveryDrive(t *testing.T) {
	r := heron(t)
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		r.Power = power
		s, err := StructureOf(background, r)
		require.NoError(t, err)
		require.Len(t, s.Flights, 2)
		assert.Equal(t, rocket.WaterPower, s.Flights[0].Rocket.Power)
		assert.Equal(t, rocket.MotorPower, s.Flights[1].Rocket.Power)
		assert.Equal(t, WorkingFilled, s.Basis)
		assert.Equal(t, 10e5, s.Service.Working)
	}
	r.Water = nil
	r.Chamber.Diameter, r.Chamber.Length = 0.068, 1.1
	s, err := StructureOf(background, r)
	require.NoError(t, err)
	assert.Len(t, s.Flights, 1)
}

func TestStructureForces(t *testing.T) {
	s, err := StructureOf(background, heron(t))
	require.NoError(t, err)
	// By hand: three layers of 163 and one of 150 g/m² over 2580 kg/m³ × 0.35.
	wall := (3*0.163 + 0.150) / (2580 * 0.35)
	assert.InEpsilon(t, wall, s.Vessel.WallThickness(), 1e-12)
	assert.InEpsilon(t, 1e6*(0.068+wall)/2/wall, s.Hoop(1e6), 1e-12)
	assert.InEpsilon(t, s.Hoop(1e6)/2, s.Axial(1e6), 1e-12)
	assert.InEpsilon(t, 1e6*3.63168e-3, s.ClosureForce(1e6), 1e-5)  // π/4 × 68²
	assert.InEpsilon(t, 1e6*9.07920e-4, s.RetainerForce(1e6), 1e-5) // π/4 × 34², the seal's
	s.Vessel.Thread.Seal = 0
	assert.InEpsilon(t, 1e6*1.017876e-3, s.RetainerForce(1e6), 1e-5) // π/4 × 36², the thread's
	s.Vessel.Thread = nil
	assert.True(t, math.IsNaN(s.RetainerForce(1e6)))
}

func TestWorkingPressureOfWhatIsNotFilled(t *testing.T) {
	r := heron(t)
	r.Water.Pressure = 0
	s, err := StructureOf(background, r)
	require.NoError(t, err)
	assert.Equal(t, WorkingProved, s.Basis)
	assert.InEpsilon(t, 16e5/1.5, s.Service.Working, 1e-12)
	assert.Equal(t, s.Result.MostOnRecord, s.Service.Working)
	r.Chamber.Proof, r.Chamber.ProofDate = 0, ""
	s, err = StructureOf(background, r)
	require.NoError(t, err)
	assert.Equal(t, WorkingUnknown, s.Basis)
	assert.Zero(t, s.Service.Working)
}

func TestStructureNeedsAChamber(t *testing.T) {
	_, err := StructureOf(background, bottle())
	assert.ErrorIs(t, err, ErrNoChamber)
	r := heron(t)
	r.Body.Mass = -1
	_, err = StructureOf(background, r)
	var faults fault.List
	assert.ErrorAs(t, err, &faults)
}

func TestTypicalIsSaidOfTheBurst(t *testing.T) {
	r := heron(t)
	r.Chamber.Around, r.Chamber.Along = 0, 0
	r.Chamber.Proof, r.Chamber.ProofDate = 0, ""
	s, err := StructureOf(background, r)
	require.NoError(t, err)
	require.Equal(t, chamber.FromEstimate, s.Result.Basis)
	assert.True(t, s.Typical())
	r.Chamber.Burst = 60e5
	s, err = StructureOf(background, r)
	require.NoError(t, err)
	assert.False(t, s.Typical())
}
