package rocket

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/chamber"
)

// By hand: 10 bar on a throat of 13 mm is 132.73 N; 2 kg weigh 19.613 N.
func TestOnTheLauncher(t *testing.T) {
	r := &Rocket{Power: WaterPower, Body: Body{Mass: 0.74}, Water: &Water{Volume: 4.2e-3, Fill: 0.3, Density: 1000, Throat: 13e-3, Pressure: 1e6}}
	l := r.OnTheLauncher()
	assert.InDelta(t, 132.732, l.Recoil, 1e-3)
	assert.InDelta(t, 132.732-19.6133, l.HoldDown, 1e-3)
	assert.False(t, l.Tube)
	r.Water.Tube = &LaunchTube{Length: 0.3, Outer: 12e-3, Inner: 10e-3}
	l = r.OnTheLauncher()
	assert.True(t, l.Tube)
	assert.InDelta(t, 1e6*math.Pi*36e-6, l.Recoil, 1e-9)
	r.Body.Mass = 50
	assert.Zero(t, r.OnTheLauncher().HoldDown, "too heavy to be held")
	r.Power = MotorPower
	assert.Zero(t, r.OnTheLauncher())
}

// 10 bar over 1 bar of air at 330 K are 8.75 bar at 293 K: 11 × 293/330 − 1 = 8.7667.
func TestSettled(t *testing.T) {
	assert.InDelta(t, 8.7667e5, Settled(1e6, 1e5, 330, 293), 10)
	assert.Equal(t, 1e6, Settled(1e6, 1e5, 293, 293))
}

// The same on a rocket, with what its proof is for so warm; the file's own temperature gives the file's own pressure.
func TestClosedAt(t *testing.T) {
	r := &Rocket{Power: WaterPower, Water: &Water{Volume: 4.2e-3, Fill: 0.3, Pressure: 1e6, Bore: 0.1, Temperature: 300},
		Chamber: &chamber.Chamber{Material: "E-glass/epoxy", Proof: 16e5}}
	at := r.ClosedAt(300)
	assert.InDelta(t, 1e6, at.Gauge, 1e-6)
	assert.InDelta(t, r.ProvedFor(), at.ProvedFor, 1e-6)
	assert.False(t, at.Vent())
	hot := r.ClosedAt(360)
	assert.InDelta(t, 1101325*360./300-101325, hot.Gauge, 1)
	assert.Less(t, hot.ProvedFor, at.ProvedFor, "hot resin holds less")
	assert.True(t, hot.Vent())
	assert.Equal(t, r.ProvedFor(), r.ClosedAt(250).ProvedFor, "cold adds nothing")
	r.Chamber.Proof = 0
	assert.True(t, r.ClosedAt(250).Vent(), "no proof is no pass")
}
