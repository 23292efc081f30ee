package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Saturation at 10, 20, 30, 40 °C: 1228.20, 2339.32, 4246.97, 7384.94 Pa (IAPWS-95 by
// python3-iapws). Wagner and Pruss's equation is for it, not the same.
func TestSaturation(t *testing.T) {
	for temperature, want := range map[float64]float64{283.15: 1228.20, 293.15: 2339.32, 303.15: 4246.97, 313.15: 7384.94} {
		p, rise := saturation(temperature)
		assert.InEpsilon(t, want, p, 1e-4)
		up, _ := saturation(temperature + 0.01)
		down, _ := saturation(temperature - 0.01)
		assert.InEpsilon(t, (up-down)/0.02, rise, 1e-6)
	}
	// Boiling at one atmosphere, 373.124 K (IAPWS-95, from memory), and the critical point.
	p, _ := saturation(373.124)
	assert.InEpsilon(t, 101325, p, 1e-4)
	p, _ = saturation(criticalTemperature)
	assert.Equal(t, criticalPressure, p)
	p, _ = saturation(700)
	assert.True(t, math.IsNaN(p))
}

// Sealed at 20 °C and an atmosphere, warmed to 60 °C: the gas law and the vapour
// pressures by hand, 19.946 kPa at 60 °C (IAPWS-95, from memory).
func TestSealed(t *testing.T) {
	c := glassTube()
	r := c.At(service())
	h := r.Heated
	assert.InDelta(t, 101325*40/293.15, h.Dry, 1e-6)
	assert.InDelta(t, (101325-2339.32)*333.15/293.15+19946-101325, h.Damp, 10)
	// As hot as its air, 60 °C, a quarter of its strength is left.
	assert.InEpsilon(t, 4*h.Dry/r.MostWorking, h.DryUse, 1e-9)
	assert.InEpsilon(t, 4*h.Damp/r.MostWorking, h.DampUse, 1e-9)
	c.Heating = nil
	assert.Nil(t, c.At(service()).Heated)
}

// The vent against its equation by hand at the first instant, when dry air is densest.
func TestVent(t *testing.T) {
	h := &Heating{Temperature: 333.15, Time: 30, Rise: 2000}
	s := service()
	const volume = 5e-3
	r := h.heated(s, volume, 1e6)
	density := 103325 / (287.05287 * 293.15)
	mass := density * volume
	want := mass * (40. / 30) / 293.15 / (0.61 * math.Sqrt(2*density*2000))
	assert.InEpsilon(t, want, r.Vent.Area, 1e-12)
	assert.Equal(t, 293.15, r.Vent.Temperature)
	assert.InEpsilon(t, want, math.Pi/4*r.Vent.Hole*r.Vent.Hole, 1e-12)
	assert.Greater(t, r.DampVent.Area, r.Vent.Area)
	assert.Equal(t, 333.15, r.DampVent.Temperature, "vapour grows faster and faster")

	// No instant between wants more than the ends.
	for k := range 101 {
		dry, damp := h.needs(s, volume, 293.15+0.4*float64(k))
		assert.LessOrEqual(t, dry, r.Vent.Area)
		assert.LessOrEqual(t, damp, r.DampVent.Area)
	}
	h.Time *= 2
	assert.InEpsilon(t, want/2, h.heated(s, volume, 1e6).Vent.Area, 1e-12)
	h.Temperature = 400
	boils := h.heated(s, volume, 1e6)
	assert.True(t, math.IsInf(boils.DampVent.Area, 1))
	assert.False(t, math.IsInf(boils.Vent.Area, 1))
	h.Temperature = 280
	assert.Zero(t, h.heated(s, volume, 1e6).Vent.Area, "cooling wants none")
	h.Rise = 0
	assert.True(t, math.IsNaN(h.heated(s, volume, 1e6).Vent.Hole))
}

// The damp vent against a balance of moles in small steps: what stays is saturated, at
// the pressure allowed, and what leaves takes air and vapour as they are mixed.
func TestDampVent(t *testing.T) {
	h := &Heating{Temperature: 333.15, Time: 30, Rise: 2000}
	s := service()
	const volume, gas = 5e-3, 8.314462618
	at, dt := 330., 1e-4
	held := s.Ambient + h.Rise
	moles := func(temperature float64) float64 {
		v, _ := saturation(temperature)
		return (held - v) * volume / (gas * temperature)
	}
	rate := 40. / 30
	v, _ := saturation(at)
	air := (moles(at-rate*dt/2) - moles(at+rate*dt/2)) / dt     // leaving, mol/s
	flow := air * held / (held - v) * gas * at / held           // m³/s of the mixture
	density := ((held-v)*0.0289644 + v*0.01801528) / (gas * at) // kg/mol of air and water
	_, damp := h.needs(s, volume, at)
	assert.InEpsilon(t, flow/(0.61*math.Sqrt(2*h.Rise/density)), damp, 2e-5)
}
