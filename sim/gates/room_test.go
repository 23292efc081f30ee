package gates

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Room is the distance to the nearest bound over its size, or over one of its unit.
func TestRoom(t *testing.T) {
	check := func(min, max float64, unit string, v float64) *Check {
		return &Check{Judged: true, Value: v, Limit: Limit{Min: min, Max: max, Unit: unit}}
	}
	for _, x := range []struct {
		c    *Check
		room float64
	}{
		{check(15, noMax, "m/s", 18), 0.2},
		{check(15, noMax, "m/s", 12), -0.2},
		{check(noMin, 75, "J", 15), 0.8},
		{check(1, 3, "", 1.3), 0.1}, // over 3
		{check(1, 3, "", 2.7), 0.1},
		{check(0, noMax, "", 0.4), 0.4},            // of a limit of 0
		{check(noMin, 0, "g", 0.002), -2},          // over 1 g
		{check(15, noMax, "m/s", 1e6), 10},         // held
		{check(15, noMax, "m/s", math.NaN()), -10}, // did not happen
	} {
		assert.InDelta(t, x.room, x.c.Room(), 1e-6, "%+v", x.c.Limit)
	}
	left := check(noMin, 0, "g", 0)
	left.Limit.Either, left.Pass = true, true
	assert.EqualValues(t, 10, left.Room(), "nothing left is as good as it gets")
	left.Value, left.Pass = 0.002, false
	assert.InDelta(t, -2, left.Room(), 1e-6)
	open := check(15, noMax, "m/s", 18)
	open.Judged = false
	assert.EqualValues(t, -10, open.Room(), "what is unknown is no room")
}
