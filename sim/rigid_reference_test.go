package sim

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/thrust"

	"ullage/sim/rocket"
)

// One planar rigid flight in wind with a misaligned thrust, by SciPy's solve_ivp from
// equations of its own: testdata/reference/rigid.py, which names its versions in the file.
func TestRigidReferenceFlight(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "reference", "rigid.json"))
	require.NoError(t, err)
	var ref struct {
		Rocket struct {
			Diameter, Mass, Drag, Balance, Inertia, Length, Nose float64
			Fins                                                 airframe.Fins
			Motor                                                struct {
				Case, Propellant, Diameter, Length, Fittings float64
				Curve                                        [][2]float64
			}
			Rail rocket.Rail
			Wind struct{ Speed, Height, Exponent, From float64 }

			Misalignment, Crossflow float64
		}
		Plan, PlanAt float64
		Results      struct {
			LiftOff           float64
			RailExit, Burnout referenceMoment
			Apogee            struct{ Time, Height, Speed, East float64 }
			Samples           []struct{ Time, East, Up, Speed, Attack float64 }
		}
		Spread float64
	}
	require.NoError(t, json.Unmarshal(text, &ref))
	require.Less(t, ref.Spread, 1e-7)
	in := &ref.Rocket
	r := &rocket.Rocket{Power: rocket.MotorPower,
		Body: rocket.Body{Diameter: in.Diameter, Mass: in.Mass, Drag: []rocket.MachDrag{{Mach: 0, Drag: in.Drag}}, DragFactor: 1,
			Balance: in.Balance, Inertia: in.Inertia, RollInertia: 4e-4},
		Shape: &airframe.Shape{Length: in.Length, Diameter: in.Diameter, Roughness: 20e-6,
			Nose: airframe.Nose{Shape: airframe.Conical, Length: in.Nose}, Fins: []airframe.Fins{in.Fins}},
		Motor: &rocket.Motor{Case: in.Motor.Case, Propellant: in.Motor.Propellant, Delay: math.NaN(),
			Diameter: in.Motor.Diameter, Length: in.Motor.Length, Fittings: in.Motor.Fittings},
		Rail: in.Rail, Alignment: rocket.Alignment{Angle: in.Misalignment},
	}
	r.Wind.Speed, r.Wind.Height, r.Wind.Exponent, r.Wind.From = in.Wind.Speed, in.Wind.Height, in.Wind.Exponent, in.Wind.From
	points := make([]thrust.Point, len(in.Motor.Curve))
	for i, p := range in.Motor.Curve {
		points[i] = thrust.Point{Time: p[0], Thrust: p[1]}
	}
	r.Motor.Curve, err = thrust.NewCurve(points)
	require.NoError(t, err)
	for _, level := range []struct{ tolerance, near float64 }{{1e-10, 1e-6}, {DefaultTolerance, 5e-4}} {
		x := newRun(r, Options{Tolerance: level.tolerance, Keep: true})
		// The planform is derived on both sides; the coefficient across the flow is an input there.
		require.InEpsilon(t, ref.Plan, x.model.body.plan, 1e-9)
		require.InEpsilon(t, ref.PlanAt, x.model.body.planAt, 1e-9)
		x.model.body.planDrag = in.Crossflow
		require.NoError(t, x.fly(context.Background()))
		fl, want := x.flight, &ref.Results
		near(t, "lift-off", want.LiftOff, fl.Events[0].Time, level.near, 0)
		near(t, "rail exit time", want.RailExit.Time, fl.RailExit.Time, level.near, 0)
		near(t, "rail exit speed", want.RailExit.Speed, fl.RailExit.Speed, level.near, 0)
		near(t, "burnout height", want.Burnout.Height, fl.Burnout.Height, level.near, 0)
		near(t, "burnout speed", want.Burnout.Speed, fl.Burnout.Speed, level.near, 0)
		near(t, "apogee time", want.Apogee.Time, fl.Apogee.Time, level.near, 0)
		near(t, "apogee height", want.Apogee.Height, fl.Apogee.Height, math.Min(level.near, 2e-4), 0)
		near(t, "apogee east", want.Apogee.East, fl.At(fl.Apogee.Time).East, 10*level.near, 0)
		for _, s := range want.Samples {
			got := fl.At(s.Time)
			near(t, "sample east", s.East, got.East, 10*level.near, 1e-4)
			near(t, "sample up", s.Up, got.Height, level.near, 0)
			near(t, "sample attack", s.Attack, got.Attack, 10*level.near, 50*level.near*level.near+2*level.near)
		}
		assert.NotEmpty(t, want.Samples)
	}
}
