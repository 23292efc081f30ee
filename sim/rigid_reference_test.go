package sim

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/thrust"

	"ullage/sim/rocket"
)

// Planar flights of a rigid body in wind with a misaligned thrust, one on each drive, by
// SciPy's solve_ivp from equations of its own: testdata/reference/rigid.py, which names
// its versions in the file.
type rigidReference struct {
	Rocket struct {
		Diameter, Mass, Drag, Balance, Inertia, Length, Nose float64
		Fins                                                 airframe.Fins
		Motor                                                *struct {
			Case, Propellant, Diameter, Length, Fittings float64
			Curve                                        [][2]float64
		}
		Water *rocket.Water
		Rail  rocket.Rail
		Wind  atmosphere.Wind

		Misalignment, Offset, Crossflow float64
	}
	Plan, PlanAt float64
	Results      struct {
		LiftOff                      float64
		RailExit, LiquidOut, Burnout *referenceMoment
		Apogee                       struct{ Time, Height, Speed, East float64 }
		Samples                      []struct{ Time, East, Up, Speed, Attack float64 }
		Greatest                     struct{ Time, Attack float64 }
	}
	Spread float64
}

func (ref *rigidReference) rocket(t *testing.T) *rocket.Rocket {
	t.Helper()
	in := &ref.Rocket
	r := &rocket.Rocket{
		Body: rocket.Body{Diameter: in.Diameter, Mass: in.Mass, Drag: []rocket.MachDrag{{Mach: 0, Drag: in.Drag}}, DragFactor: 1,
			Balance: in.Balance, Inertia: in.Inertia, RollInertia: 4e-4},
		Shape: &airframe.Shape{Length: in.Length, Diameter: in.Diameter, Roughness: 20e-6,
			Nose: airframe.Nose{Shape: airframe.Conical, Length: in.Nose}, Fins: []airframe.Fins{in.Fins}},
		Rail: in.Rail, Wind: in.Wind, Alignment: rocket.Alignment{Angle: in.Misalignment, Offset: in.Offset},
		// The reference ends at the top; so does the rigid body here.
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, OpeningForceCoefficient: 1.7,
			Water: rocket.Rule{Trigger: rocket.AfterApogee}, Motor: rocket.Rule{Trigger: rocket.AfterApogee}}},
	}
	if m := in.Motor; m != nil {
		points := make([]thrust.Point, len(m.Curve))
		for i, p := range m.Curve {
			points[i] = thrust.Point{Time: p[0], Thrust: p[1]}
		}
		c, err := thrust.NewCurve(points)
		require.NoError(t, err)
		r.Power = rocket.MotorPower
		r.Motor = &rocket.Motor{Curve: c, Case: m.Case, Propellant: m.Propellant, Delay: math.NaN(), Diameter: m.Diameter, Length: m.Length, Fittings: m.Fittings}
		return r
	}
	r.Power, r.Water = rocket.WaterPower, in.Water
	r.Water.Gas, r.Water.Flow = thrust.Air, rocket.UnsteadyFlow
	return r
}

func TestRigidReferenceFlights(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "reference", "rigid.json"))
	require.NoError(t, err)
	var file struct{ Flights map[string]*rigidReference }
	require.NoError(t, json.Unmarshal(text, &file))
	for _, key := range []string{"motor", "water"} {
		for _, level := range []struct {
			name            string
			tolerance, near float64
		}{{"fine", 1e-10, 1e-6}, {"default", DefaultTolerance, 5e-4}} {
			t.Run(key+"/"+level.name, func(t *testing.T) {
				file.Flights[key].compare(t, level.tolerance, level.near)
			})
		}
	}
}

// compare flies at a tolerance and holds what comes out to a relative difference.
func (ref *rigidReference) compare(t *testing.T, tolerance, relative float64) {
	require.Less(t, ref.Spread, 1e-7)
	x := newRun(ref.rocket(t), Options{Tolerance: tolerance, Keep: true})
	// The planform is derived on both sides; the coefficient across the flow is an input there.
	require.InEpsilon(t, ref.Plan, x.model.body.plan, 1e-9)
	require.InEpsilon(t, ref.PlanAt, x.model.body.planAt, 1e-9)
	x.model.body.planDrag = ref.Rocket.Crossflow
	require.NoError(t, x.fly(context.Background()))
	fl, want := x.flight, &ref.Results
	near(t, "lift-off", want.LiftOff, fl.Events[0].Time, relative, 0)
	near(t, "rail exit time", want.RailExit.Time, fl.RailExit.Time, relative, 0)
	near(t, "rail exit speed", want.RailExit.Speed, fl.RailExit.Speed, relative, 0)
	require.Equal(t, want.LiquidOut != nil, fl.LiquidOut.Happened)
	if want.LiquidOut != nil {
		near(t, "liquid out time", want.LiquidOut.Time, fl.LiquidOut.Time, relative, 0)
		near(t, "liquid out height", want.LiquidOut.Height, fl.LiquidOut.Height, relative, 0)
		near(t, "liquid out speed", want.LiquidOut.Speed, fl.LiquidOut.Speed, relative, 0)
		near(t, "greatest attack", want.Greatest.Attack, fl.Stability.MaxAngle, 10*relative, 0)
		near(t, "greatest attack's time", want.Greatest.Time, fl.Stability.MaxAngleTime, 20*relative, 0)
	}
	near(t, "burnout time", want.Burnout.Time, fl.Burnout.Time, 5*relative, 0)
	near(t, "burnout height", want.Burnout.Height, fl.Burnout.Height, relative, 0)
	near(t, "burnout speed", want.Burnout.Speed, fl.Burnout.Speed, relative, 0)
	near(t, "apogee time", want.Apogee.Time, fl.Apogee.Time, relative, 0)
	near(t, "apogee height", want.Apogee.Height, fl.Apogee.Height, math.Min(relative, 2e-4), 0)
	near(t, "apogee east", want.Apogee.East, fl.At(fl.Apogee.Time).East, 10*relative, 0)
	require.NotEmpty(t, want.Samples)
	for _, s := range want.Samples {
		got := fl.At(s.Time)
		near(t, "sample east", s.East, got.East, 10*relative, relative)
		near(t, "sample up", s.Up, got.Height, relative, 0)
		near(t, "sample speed", s.Speed, got.Speed, 2*relative, 0)
		near(t, "sample attack", s.Attack, got.Attack, 10*relative, 2*relative)
	}
}
