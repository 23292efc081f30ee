package card

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// The distance is that of the class of the impulse: a code's own feet, or whole metres beyond them.
func TestClearDistance(t *testing.T) {
	says := func(impulse float64, sys quantity.System) string {
		fl := &sim.Flight{}
		fl.Drive.Impulse = impulse
		return filler{words.In(sys), &plan.Day{Rocket: &rocket.Rocket{Power: rocket.WaterPower}, Verdict: gates.Verdict{Day: fl}}}.clear()
	}
	assert.Contains(t, says(58, quantity.US), "people 30 ft away, for class F by US codes")
	assert.Contains(t, says(58, quantity.Metric), "people 10 m away, for class F")
	assert.Contains(t, says(3000, quantity.US), "people 300 ft away, 100 ft across cleared, for class L")
	assert.Contains(t, says(58, quantity.US), "which are for motors")
	assert.Contains(t, says(1e6, quantity.US), "beyond the classes")
}
