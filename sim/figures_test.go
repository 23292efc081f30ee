package sim

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// A gust is all the wind there is: what flew straight up comes down where it blows to.
func TestGustBlowsItsWay(t *testing.T) {
	for _, from := range []float64{20, 110, 200, 290} {
		r := rigidRocket(t)
		r.Model = rocket.PointModel
		r.Gust = rocket.Gust{Speed: 6, From: from * math.Pi / 180, Height: 60}
		fl := mustFly(r, 0)
		toward := math.Atan2(-fl.Landing.East, -fl.Landing.North)
		assert.InDelta(t, 0, math.Remainder(toward-r.Gust.From, 2*math.Pi), 1e-9, "%v", from)
	}
}

// The tip of the launch tube stands in a ring of liquid between it and the bore: the depth
// is the volume over π/4 (D² − d²).
func TestTubeTipInTheLiquid(t *testing.T) {
	r := bottle()
	r.Water.Fill = 0.6
	r.Water.Tube = &rocket.LaunchTube{Length: 0.15, Outer: 0.009, Inner: 0.007}
	fl := mustFly(r, 0)
	for _, w := range fl.Warnings {
		if w.Code == TubeTipWet {
			assert.InEpsilon(t, 0.6*0.002/(math.Pi/4*(0.088*0.088-0.009*0.009)), w.Value, 1e-12)
			assert.Equal(t, 0.15, w.Limit)
			return
		}
	}
	assert.Fail(t, "the tip is wet")
}

// Drag from the shape is the airframe's at the air of the site: its Reynolds number and its
// Mach number, with the base bare or under the jet. Sutherland's viscosity and the speed of
// sound are those of the U.S. Standard Atmosphere, 1976, at 1000 m.
func TestShapeDragIsOfTheSite(t *testing.T) {
	s := slender()
	site := atmosphere.Site{Elevation: 1000}
	column := site.Column()
	coasting, pushed := shapeDrag(s, column.Air(0), 2e-4)
	require.Equal(t, len(coasting), len(pushed))
	for i, at := range coasting {
		flow := airframe.Flow{Speed: at.Mach * 336.435, Density: 1.11166, SoundSpeed: 336.435, Viscosity: 1.7578e-5}
		bare, _ := s.Drag(flow, 0)
		under, _ := s.Drag(flow, 2e-4)
		assert.InEpsilon(t, bare, at.Drag, 1e-5, "Mach %v", at.Mach)
		assert.InEpsilon(t, under, pushed[i].Drag, 1e-5, "Mach %v", at.Mach)
		assert.Less(t, under, bare)
	}
	assert.Equal(t, airframe.MachLimit, coasting[len(coasting)-1].Mach)
}

// The drive's figures of a motor of one thrust, by hand: thrust over weight as it lights,
// and the mean of it.
func TestFiguresOfTheDrive(t *testing.T) {
	r := rigidRocket(t)
	var err error
	r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 40}, {Time: 1.5, Thrust: 40}})
	require.NoError(t, err)
	fl := mustFly(r, 0)
	assert.InEpsilon(t, 40/(0.59*9.80665), fl.LiftOffThrustToWeight, 1e-12)
	assert.InEpsilon(t, 60, fl.Drive.Impulse, 1e-12)
	assert.InEpsilon(t, 40, fl.Drive.Average, 1e-12)

	wet := mustFly(bottle(), 0)
	assert.InEpsilon(t, wet.Drive.Impulse/wet.Burnout.Time, wet.Drive.Average, 1e-12)
	assert.InEpsilon(t, wet.Burnout.Time, wet.Drive.BurnTime, 1e-12)
}

// A drag that is one number is trusted up to Mach 0.8, a table up to its last entry.
func TestDragBeyondTable(t *testing.T) {
	r := rigidRocket(t)
	r.Model = rocket.PointModel
	most := mustFly(r, 0).Max.Mach
	for _, c := range []struct {
		end  float64
		told bool
	}{{most * 1.001, false}, {most * 0.999, true}} {
		r.Body.Drag = []rocket.MachDrag{{Mach: 0, Drag: 0.5}, {Mach: c.end, Drag: 0.5}}
		fl := mustFly(r, 0)
		assert.Equal(t, c.told, slices.Contains(codes(fl), DragBeyondTable), "%v", c.end)
	}
	// As fast as it takes: half the mass, and thrust until it passes.
	r.Body.Drag = r.Body.Drag[:1]
	for _, push := range []float64{100, 150, 200, 300} {
		var err error
		r.Motor.Curve, err = thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: push}, {Time: 1.5, Thrust: push}})
		require.NoError(t, err)
		fl := mustFly(r, 0)
		assert.Equal(t, fl.Max.Mach > 0.8, slices.Contains(codes(fl), DragBeyondTable), "Mach %v", fl.Max.Mach)
		for _, w := range fl.Warnings {
			if w.Code == DragBeyondTable {
				assert.Equal(t, 0.8, w.Limit)
				assert.Equal(t, fl.Max.Mach, w.Value)
			}
		}
	}
}
