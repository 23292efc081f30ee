package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// No step of a body that turns over and over reaches across the jump of its drag: each ends where the wind is broadside.
func TestBroadsideIsAnEvent(t *testing.T) {
	x := newRun(newLot(885).rocket(), Options{Tolerance: DefaultTolerance})
	x.begin()
	turns := 0
	for !x.over {
		before, faced := x.now, x.model.faces
		x.onward()
		if !x.model.rigid {
			continue
		}
		within := math.Min(math.Abs(before.axial)/before.airspeed, math.Abs(x.now.axial)/x.now.airspeed)
		require.False(t, before.axial*x.now.axial < 0 && within > 1e-3, x.t)
		require.False(t, float64(x.model.faces)*x.now.axial < -1e-3*x.now.airspeed, x.t)
		if x.model.faces != faced {
			turns++
		}
	}
	assert.Greater(t, turns, 10)
}

// Straight up in still air a rigid body falls tail first from its very top on: its drag is against that at once.
func TestTailSlide(t *testing.T) {
	r := rigidRocket(t)
	usual, exact := mustFly(r, 0), mustFly(r, 1e-8)
	require.True(t, exact.Canopies[0].Opened)
	assert.InEpsilon(t, exact.Canopies[0].Airspeed, usual.Canopies[0].Airspeed, 1e-5)
}

// A body that both ways of facing would send back stays broadside, held by less than all of its drag, until its weight takes it
// away; it costs few steps meanwhile.
func TestBroadsideForAWhile(t *testing.T) {
	const v = 50.0
	x := adrift(t, 100, 0, func(r *rocket.Rocket) { r.Body.Drag[0].Drag = 20 })
	x.options.Tolerance = DefaultTolerance
	x.y[vEast], x.y[vUp] = v, 0.1
	x.enter()
	require.Equal(t, headFirst, x.model.faces)
	stayed := 0
	for x.t < 3 && !x.over && (stayed == 0 || x.model.faces == broadside) {
		x.onward()
		if x.model.faces == broadside {
			stayed++
			assert.Less(t, math.Abs(x.now.axial), 1e-3*x.now.airspeed)
			_, _, a := bodyAxes(&x.y)
			push := x.now.mass * (dot(velocity(&x.f), a))
			assert.Less(t, math.Abs(push), x.now.drag)
		}
	}
	assert.Positive(t, stayed)
	assert.NotEqual(t, broadside, x.model.faces)
	assert.Less(t, x.flight.Steps+x.flight.Rejected, 500)
}

// Straight up it slows down to nothing and faces the wind with its other end in one moment: where that comes first by a
// rounding, the top is not missed.
func TestTopAndBroadsideInOne(t *testing.T) {
	x := newRun(rigidRocket(t), Options{Tolerance: DefaultTolerance})
	x.begin()
	for !x.over && !(x.model.rigid && x.y[vUp] < 10) {
		x.onward()
	}
	x.y[vUp] = -1e-13
	x.enter()
	x.atEvent(eventFunction{kind: turnsRound})
	x.overdue()
	require.True(t, x.overTop)
	assert.Equal(t, x.y[up], x.flight.Apogee.Height)
	assert.Equal(t, tailFirst, x.model.faces)
}
