package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/ground"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// The greatest distance rules and is told first: a code's own feet, or whole metres beyond them.
func TestClearDistance(t *testing.T) {
	us, metric := In(quantity.US), In(quantity.Metric)
	const codes = " by US codes (NFPA 1122, 1127; from memory)"
	assert.Equal(t, "people 30 ft away: class F"+codes+"; the range officer's counts", us.Clear(ground.Keep(58, 0, 0), rocket.MotorPower))
	assert.Equal(t, "people 10 m away: class F"+codes+"; the range officer's counts", metric.Clear(ground.Keep(58, 0, 0), rocket.MotorPower))
	assert.Equal(t, "people 40 m away: the field's own rule; 31 m for class H"+codes+"; 16 m across cleared of what burns; the range officer's counts",
		metric.Clear(ground.Keep(300, 40, 0), rocket.MotorPower))
	assert.Equal(t, "people 30 m away: the blast distance of the gas, and fragments go farther; 20 m by the field's own rule; 10 m for class F"+codes+
		", which are for motors; the range officer's counts", metric.Clear(ground.Keep(58, 20, 30), rocket.WaterPower))
	assert.Equal(t, "beyond the classes of US codes; the range officer's counts", metric.Clear(ground.Keep(1e6, 0, 0), rocket.MotorPower))
	assert.Equal(t, "people 40 m away: the field's own rule; beyond the classes of US codes; the range officer's counts",
		metric.Clear(ground.Keep(1e6, 40, 0), rocket.MotorPower))
	assert.Equal(t, "at the clearance that the range officer names, never less than 40 m, the field's own rule", metric.Stand(ground.Keep(300, 40, 0)))
	assert.Equal(t, "at the clearance that the range officer names", metric.Stand(ground.Keep(1e6, 0, 0)))
}

func TestShare(t *testing.T) {
	for want, x := range map[string][2]int{"0 %": {0, 7}, "0.1 %": {1, 1000}, "2.4 %": {24, 1000}, "50 %": {1, 2}, "98 %": {98, 100}, "99.9 %": {9999, 10000}, "100 %": {3, 3}} {
		assert.Equal(t, want, Share(x[0], x[1]))
	}
}
