package rocket

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
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
