package gates

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/airframe"
	"ullage/sim/long"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// mischief makes the heron, or another example, warn of each code.
var mischief = map[sim.WarningCode]struct {
	of  string
	set func(r *rocket.Rocket)
}{
	sim.LiquidLeft:  {"bottle", func(r *rocket.Rocket) { r.Water.Fill = 0.75 }},
	sim.NeverLifted: {"heron", func(r *rocket.Rocket) { r.Body.Mass = 60 }},
	sim.NeverLeftGuide: {"heron", func(r *rocket.Rocket) {
		r.Power, r.Body.Mass, r.Rail.Length = rocket.MotorPower, 5, 10
		r.Motor.Curve, _ = thrust.NewCurve([]thrust.Point{{Time: 0}, {Time: 0.1, Thrust: 200}, {Time: 0.3}, {Time: 3}})
	}},
	sim.StuckOnTube: {"tube", func(r *rocket.Rocket) {
		r.Water.Pressure, r.Water.Fill, r.Body.Mass, r.Water.Tube.Inner = 1e5, 0.1, 3.3, 1e-4
	}},
	sim.TubeTipWet:      {"tube", func(r *rocket.Rocket) { r.Water.Fill = 0.5; r.Water.Tube.Length = 0.05 }},
	sim.TubeLeaks:       {"tube", func(r *rocket.Rocket) { r.Water.Throat = r.Water.Tube.Outer + 1.2e-3 }},
	sim.NoCanopy:        {"heron", func(r *rocket.Rocket) { r.Canopies = nil }},
	sim.CanopyNever:     {"heron", func(r *rocket.Rocket) { r.Canopies[0].Water = rocket.Rule{} }},
	sim.CanopyWaited:    {"heron", func(r *rocket.Rocket) { r.Canopies[0].Water = rocket.Rule{Trigger: rocket.AfterLaunch, Value: 0.001} }},
	sim.CanopyThrusting: {"heron", func(r *rocket.Rocket) { r.Canopies[0].Water = rocket.Rule{Trigger: rocket.AfterLaunch, Value: 0.2} }},
	sim.CanopyAtApogee:  {"heron", func(r *rocket.Rocket) { r.Canopies[0].Water = rocket.Rule{Trigger: rocket.Falling, Value: 2000} }},
	sim.CanopyNotFull:   {"heron", func(r *rocket.Rocket) { r.Canopies[0].Water = rocket.Rule{Trigger: rocket.Falling, Value: 2} }},
	sim.CanopyOrder: {"drogue-main", func(r *rocket.Rocket) {
		late, early := rocket.Rule{Trigger: rocket.AfterApogee, Value: 3}, rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}
		drogue, main := &r.Canopies[0], &r.Canopies[1]
		drogue.Water, drogue.Motor, main.Water, main.Motor = late, late, early, early
	}},
	sim.CurveEndsAbove: {"heron", func(r *rocket.Rocket) {
		r.Power = rocket.MotorPower
		r.Motor.Curve, _ = thrust.NewCurve([]thrust.Point{{Time: 0}, {Time: 0.1, Thrust: 150}, {Time: 1, Thrust: 140}})
	}},
	sim.LandedThrusting: {"heron", func(r *rocket.Rocket) {
		r.Power, r.Rail.Tilt, r.Rail.Length = rocket.MotorPower, 78*math.Pi/180, 1
		r.Motor.Curve, _ = thrust.NewCurve([]thrust.Point{{Time: 0}, {Time: 0.1, Thrust: 30}, {Time: 30}})
	}},
	sim.TimeLimit: {"drogue-main", func(r *rocket.Rocket) { // a fall of days under eight large canopies
		r.Body.Mass, r.Motor.Case, r.Motor.Fittings, r.Wind.Speed = 0.1, 0, 0, 0
		for i := range rocket.MaxCanopies {
			c := r.Canopies[0]
			c.Motor = rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}
			c.Name, c.Diameter, c.Coefficient, c.FillConstant = string(rune('a'+i)), 50, 2.5, 0
			r.Canopies = append(r.Canopies, c)
		}
		r.Canopies = r.Canopies[len(r.Canopies)-rocket.MaxCanopies:]
	}},
	sim.DragBeyondTable: {"heron", func(r *rocket.Rocket) { r.Body.Drag = []rocket.MachDrag{{Mach: 0, Drag: 0.5}, {Mach: 0.1, Drag: 0.5}} }},
	sim.SteepNose: {"heron", func(r *rocket.Rocket) {
		r.Shape.Nose.Shape, r.Shape.Nose.Length = airframe.Conical, r.Body.Diameter/2
	}},
	sim.SteepTaper: {"heron", func(r *rocket.Rocket) {
		r.Shape.Sections = append(r.Shape.Sections, airframe.Section{Name: "tail", Length: r.Body.Diameter, Forward: r.Body.Diameter, Aft: 0.5 * r.Body.Diameter})
	}},
	sim.Unstable:     {"heron", func(r *rocket.Rocket) { r.Shape.Fins[0].Span = 0.02 }},
	sim.Tumbles:      {"heron", func(r *rocket.Rocket) { r.Shape.Fins[0].Span, r.Wind.Speed = 0.02, 8 }},
	sim.MotorTooWide: {"heron", func(r *rocket.Rocket) { r.Power, r.Motor.Diameter = rocket.MotorPower, 0.030 }},
	sim.MotorTooLong: {"heron", func(r *rocket.Rocket) { r.Power, r.Motor.Length = rocket.MotorPower, 0.3 }},
	sim.MotorSlides: {"heron", func(r *rocket.Rocket) {
		r.Power, r.Motor.Diameter, r.MotorMount.Retainer = rocket.MotorPower, 28.5e-3, 28.6e-3
	}},
}

// Every code is a check that fails whenever the flight of the day warns so, or a note with
// its reason: nothing warned of is a go.
func TestEveryWarningIsJudged(t *testing.T) {
	long.Unraced(t)
	require.Len(t, warnings, len(sim.WarningCodes()), "a code is bound that there is not")
	for _, code := range sim.WarningCodes() {
		t.Run(string(code), func(t *testing.T) {
			b, there := warnings[code]
			require.True(t, there, "bind it in warnings.go")
			require.NotEqual(t, b.check == "", b.note == "", "a check or a note, not both")
			way, there := mischief[code]
			require.True(t, there, "make a rocket that warns so")
			r := open(t, way.of)
			way.set(r)
			v := judge(t, r, Options{})
			warned := false
			for _, w := range v.Day.Warnings {
				warned = warned || w.Code == code
			}
			require.True(t, warned, "it does not warn: %v", v.Day.Warnings)
			assertWarningsJudged(t, &v)
		})
	}
}

// assertWarningsJudged holds that each warning of the day's flight fails its check.
func assertWarningsJudged(t require.TestingT, v *Verdict) {
	for _, w := range v.Day.Warnings {
		key := CheckOf(w)
		if key == "" {
			require.NotEmpty(t, NoteOn(w.Code), w.Code)
			continue
		}
		fails := false
		for i := range v.Checks {
			if c := &v.Checks[i]; (c.Key == key || strings.HasPrefix(c.Key, key+".")) && c.Fails() && c.Limit.badness(c.Values[results.Day]) > 0 {
				fails = true
			}
		}
		require.True(t, fails || !v.Day.RailExit.Happened, "warned of %s, and %s does not fail", w.Code, key)
		require.Equal(t, WordNoGo, v.Word())
	}
}

// A warning and the check that fails by it part at one place: a motor as wide as its mount, in whatever unit either was
// given, goes in.
func TestWarningAndCheckAgreeOnWidth(t *testing.T) {
	for wider, fits := range map[float64]bool{1: true, 1 + 0.9e-9: true, 1 + 1.1e-9: false, 1.01: false} {
		r := open(t, "heron")
		r.Power = rocket.MotorPower
		r.Motor.Diameter = r.MotorMount.Bore() * wider // heron has a liner
		v := judge(t, r, Options{})
		require.Equal(t, fits, find(t, &v, checkMotorFits).Pass, wider)
		require.Equal(t, !fits, warns(v.Day, sim.MotorTooWide), wider)
	}
}

// A steep nose is neither warned of nor checked where a table of drag stands for the shape.
func TestSteepNoseBesideATable(t *testing.T) {
	for _, table := range []bool{false, true} {
		r := open(t, "heron")
		r.Shape.Nose.Shape, r.Shape.Nose.Length = airframe.Conical, r.Body.Diameter/2
		if table {
			r.Body.Drag = []rocket.MachDrag{{Drag: 0.5}}
		}
		require.Equal(t, !table, r.ShapeDrags())
		v := judge(t, r, Options{})
		listed := false
		for i := range v.Checks {
			listed = listed || v.Checks[i].Key == checkNose
		}
		require.Equal(t, !table, listed)
		require.Equal(t, !table, warns(v.Day, sim.SteepNose))
	}
}

func warns(fl *sim.Flight, code sim.WarningCode) bool {
	for _, w := range fl.Warnings {
		if w.Code == code {
			return true
		}
	}
	return false
}
