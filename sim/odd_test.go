package sim

import (
	"context"
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/thrust"

	"ullage/sim/rocket"
)

// motorRocket is a motor-driven rocket for tests, invented.
func motorRocket(t testing.TB, points ...thrust.Point) *rocket.Rocket {
	if len(points) == 0 {
		points = []thrust.Point{{Time: 0.02, Thrust: 180}, {Time: 0.5, Thrust: 150}, {Time: 1.4, Thrust: 120}, {Time: 1.6, Thrust: 0}}
	}
	c, err := thrust.NewCurve(points)
	require.NoError(t, err)
	return &rocket.Rocket{Name: "test motor", Power: rocket.MotorPower,
		Body:  rocket.Body{Diameter: 0.066, Mass: 1.1, Drag: []rocket.MachDrag{{Mach: 0, Drag: 0.5}}, DragFactor: 1},
		Motor: &rocket.Motor{Curve: c, Case: 0.2, Propellant: 0.12, Delay: 6},
		Rail:  rocket.Rail{Length: 1.8},
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 1, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Water: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}, Motor: rocket.Rule{Trigger: rocket.Ejection, Value: 0}}},
	}
}

func codes(fl *Flight) []WarningCode {
	var c []WarningCode
	for _, w := range fl.Warnings {
		c = append(c, w.Code)
	}
	return c
}

func TestTooWeakToLift(t *testing.T) {
	r := bottle()
	r.Body.Mass = 100
	fl := mustFly(r, 0)
	assert.Equal(t, []WarningCode{NeverLifted}, codes(fl))
	assert.False(t, fl.RailExit.Happened || fl.Apogee.Happened || fl.Landing.Happened)
	assert.True(t, fl.LiquidOut.Happened && fl.Burnout.Happened)
	assert.Positive(t, fl.Drive.Impulse)

	m := motorRocket(t)
	m.Body.Mass = 200
	assert.Equal(t, []WarningCode{NeverLifted}, codes(mustFly(m, 0)))
}

func TestFallsBackOnThePad(t *testing.T) {
	m := motorRocket(t, thrust.Point{Time: 0, Thrust: 0}, thrust.Point{Time: 0.1, Thrust: 200},
		thrust.Point{Time: 0.3, Thrust: 0}, thrust.Point{Time: 3, Thrust: 0})
	m.Body.Mass, m.Rail.Length = 5, 10
	fl := mustFly(m, 0)
	require.Equal(t, []WarningCode{NeverLeftGuide}, codes(fl))
	assert.InDelta(t, fl.Apogee.Height, fl.Warnings[0].Value, 1e-6)
	assert.Greater(t, fl.Apogee.Height, 0.01)
	assert.False(t, fl.RailExit.Happened || fl.Landing.Happened)
	end := fl.At(fl.Duration())
	assert.Zero(t, end.Height)
	assert.Zero(t, end.Speed)
}

// A thrust that dips below the weight and rises again lifts twice.
func TestLiftsAgain(t *testing.T) {
	m := motorRocket(t, thrust.Point{Time: 0, Thrust: 60}, thrust.Point{Time: 0.05, Thrust: 0},
		thrust.Point{Time: 1, Thrust: 0}, thrust.Point{Time: 1.1, Thrust: 200}, thrust.Point{Time: 2, Thrust: 200})
	m.Body.Mass = 4
	fl := mustFly(m, 0)
	assert.True(t, fl.RailExit.Happened)
	assert.Greater(t, fl.RailExit.Time, 1.0)
	assert.Zero(t, fl.At(0.9).Speed)
}

func TestStopsOnTheTube(t *testing.T) {
	r := bottle()
	r.Water.Pressure = 1e5
	r.Water.Throat = 0.022
	r.Water.Tube = &rocket.LaunchTube{Length: 0.3, Outer: 0.0218, Inner: 0.0001}
	r.Water.Fill = 0.1
	r.Body.Mass = 3.4
	fl := mustFly(r, 0)
	require.Contains(t, codes(fl), StuckOnTube)
	assert.False(t, fl.TubeExit.Happened)
	assert.NotContains(t, codes(fl), NeverLeftGuide)
}

func TestLiquidLeft(t *testing.T) {
	r := bottle()
	r.Water.Fill = 0.9
	fl := mustFly(r, 0)
	require.Contains(t, codes(fl), LiquidLeft)
	assert.Greater(t, fl.LiquidLeft, 0.1)
	assert.Equal(t, fl.LiquidOut, fl.Burnout)
	steady := bottle()
	steady.Water.Fill, steady.Water.Flow = 0.9, rocket.SteadyFlow
	assert.InEpsilon(t, fl.LiquidLeft, mustFly(steady, 0).LiquidLeft, 0.05)
}

func TestNoPressureNoWaterNoGas(t *testing.T) {
	r := bottle()
	r.Water.Pressure = 0
	assert.Contains(t, codes(mustFly(r, 0)), NeverLifted)
	r.Water.Fill = 0
	assert.Equal(t, []WarningCode{NeverLifted}, codes(mustFly(r, 0)))
	r.Water.Pressure = 8e5 // gas alone flies, a little
	fl := mustFly(r, 0)
	assert.True(t, fl.RailExit.Happened)
	assert.False(t, fl.LiquidOut.Happened)
	assert.Positive(t, fl.Apogee.Height)
}

func TestCanopyRules(t *testing.T) {
	fly := func(rule rocket.Rule, change func(*rocket.Rocket)) *Flight {
		m := motorRocket(t)
		m.Canopies[0].Motor = rule
		if change != nil {
			change(m)
		}
		return mustFly(m, 1e-8)
	}
	c := func(fl *Flight) CanopyResult { return fl.Canopies[0] }

	fl := fly(rocket.Rule{Trigger: rocket.AfterLaunch, Value: 5}, nil)
	assert.InDelta(t, 5, c(fl).Time, 1e-9)
	fl = fly(rocket.Rule{Trigger: rocket.AfterLaunch, Value: 0.7}, nil) // while thrust lasts
	assert.InDelta(t, 0.7, c(fl).Time, 1e-9)
	assert.True(t, fl.Burnout.Happened)
	fl = fly(rocket.Rule{Trigger: rocket.AfterBurnout, Value: 2}, nil)
	assert.InDelta(t, 3.6, c(fl).Time, 1e-9)
	fl = fly(rocket.Rule{Trigger: rocket.Ejection, Value: 0}, nil)
	assert.InDelta(t, 7.6, c(fl).Time, 1e-9)
	fl = fly(rocket.Rule{Trigger: rocket.AfterApogee, Value: 1.5}, nil)
	assert.InDelta(t, fl.Apogee.Time+1.5, c(fl).Time, 1e-9)

	free := fly(rocket.Rule{Trigger: rocket.Never, Value: 0}, nil)
	assert.Equal(t, []WarningCode{CanopyNever}, codes(free))
	fl = fly(rocket.Rule{Trigger: rocket.AfterApogee, Value: -1}, nil)
	assert.InDelta(t, free.Apogee.Time-1, c(fl).Time, 1e-6)
	assert.Less(t, fl.Apogee.Time, free.Apogee.Time)
	fl = fly(rocket.Rule{Trigger: rocket.AfterApogee, Value: -60}, nil) // before release: as the guide ends
	assert.Contains(t, codes(fl), CanopyWaited)
	assert.InDelta(t, fl.RailExit.Time, c(fl).Time, 1e-9)

	fl = fly(rocket.Rule{Trigger: rocket.Falling, Value: 100}, nil)
	assert.InDelta(t, 100, c(fl).Height, 1e-4)
	assert.Greater(t, c(fl).Time, fl.Apogee.Time)
	fl = fly(rocket.Rule{Trigger: rocket.Falling, Value: 3e4}, nil)
	assert.Equal(t, []WarningCode{CanopyAtApogee}, codes(fl))
	assert.InDelta(t, fl.Apogee.Time, c(fl).Time, 1e-9)
	fl = fly(rocket.Rule{Trigger: rocket.Falling, Value: 1}, nil)
	assert.Equal(t, []WarningCode{CanopyNotFull}, codes(fl))

	fl = fly(rocket.Rule{Trigger: rocket.AfterLaunch, Value: 0.01}, nil)
	assert.Equal(t, []WarningCode{CanopyWaited, CanopyThrusting}, codes(fl))
	assert.InDelta(t, fl.RailExit.Time-0.01, fl.Warnings[0].Value, 1e-9)

	fl = fly(rocket.Rule{Trigger: rocket.Ejection, Value: 0}, func(r *rocket.Rocket) { r.Motor.Delay = math.NaN() })
	assert.Equal(t, []WarningCode{CanopyNever}, codes(fl))
	water := bottle()
	water.Canopies[0].Water = rocket.Rule{Trigger: rocket.Ejection, Value: 0}
	assert.Equal(t, []WarningCode{CanopyNever}, codes(mustFly(water, 0)))

	// At once: the load is the drag at the moment it opens.
	fl = fly(rocket.Rule{Trigger: rocket.AfterApogee, Value: 2}, func(r *rocket.Rocket) { r.Canopies[0].FillConstant = 0 })
	s := fl.At(c(fl).Time - 1e-9)
	assert.InEpsilon(t, 0.75*math.Pi/4*s.DynamicPressure, c(fl).Load, 1e-6)
	assert.InEpsilon(t, 1.7*c(fl).Load, c(fl).LoadBound, 1e-9)
}

// Two canopies: the drogue's descent is the rate with it alone, the main's with both.
func TestDrogueAndMain(t *testing.T) {
	m := motorRocket(t)
	m.Canopies = []rocket.Canopy{
		{Name: "drogue", Diameter: 0.4, Coefficient: 0.75, FillConstant: 6, OpeningForceCoefficient: 1.7, Motor: rocket.Rule{Trigger: rocket.AfterApogee, Value: 0}},
		{Name: "main", Area: 0.8, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7, Motor: rocket.Rule{Trigger: rocket.Falling, Value: 120}}}
	fl := mustFly(m, 1e-8)
	require.Empty(t, fl.Warnings)
	before := fl.At(fl.Canopies[1].Time - 1e-6)
	assert.InEpsilon(t, before.Speed, fl.Canopies[0].Descent, 1e-3)
	assert.InEpsilon(t, fl.Landing.Vertical, fl.Canopies[1].Descent, 1e-3)
	assert.Less(t, fl.Canopies[1].Descent, fl.Canopies[0].Descent)
}

func TestLandsUnderThrust(t *testing.T) {
	m := motorRocket(t, thrust.Point{Time: 0, Thrust: 100}, thrust.Point{Time: 0.3, Thrust: 100},
		thrust.Point{Time: 0.4, Thrust: 0}, thrust.Point{Time: 60, Thrust: 0}, thrust.Point{Time: 61, Thrust: 20})
	fl := mustFly(m, 0)
	assert.Contains(t, codes(fl), LandedThrusting)
	assert.True(t, fl.Landing.Happened)
	assert.False(t, fl.Burnout.Happened)
}

func TestContextEndsAFlight(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Fly(ctx, bottle(), Options{})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestSamplesAndTrace(t *testing.T) {
	fl := mustFly(withWind(bottle()), 0)
	s := fl.Samples(0.01)
	require.Greater(t, len(s), 1000)
	for i := range s[:len(s)-1] {
		require.InDelta(t, float64(i)*0.01, s[i].Time, 1e-9)
	}
	last := s[len(s)-1]
	assert.Equal(t, fl.Landing.Time, last.Time)
	assert.InDelta(t, 0, last.Height, 1e-6)
	assert.InDelta(t, -fl.Landing.Vertical, last.Vertical, 1e-9)
	top := 0.0
	trace := fl.Trace()
	for i := range trace {
		require.False(t, i > 0 && trace[i].Time < trace[i-1].Time)
		top = max(top, trace[i].Height)
	}
	assert.InEpsilon(t, fl.Apogee.Height, top, 1e-9)
	assert.Nil(t, fl.Samples(0))
	assert.Nil(t, fl.Samples(math.NaN()))
	assert.Nil(t, fl.Samples(1e-9))
	bare, err := Fly(context.Background(), bottle(), Options{})
	require.NoError(t, err)
	assert.Zero(t, bare.Duration())
	assert.Empty(t, bare.Samples(0.1))
	assert.Empty(t, bare.Trace())
	assert.Equal(t, Sample{}, bare.At(1))
}

// drawRocket draws a rocket that passes Validate, ordinary or absurd.
func drawRocket(t *rapid.T) *rocket.Rocket {
	log := func(name string, low, high float64) float64 {
		return math.Exp(rapid.Float64Range(math.Log(low), math.Log(high)).Draw(t, name))
	}
	r := &rocket.Rocket{Power: rocket.WaterPower,
		Body: rocket.Body{Diameter: log("diameter", 1e-3, 1), Mass: log("mass", 1e-3, 100), DragFactor: rapid.Float64Range(0, 3).Draw(t, "factor"),
			Drag: []rocket.MachDrag{{Mach: 0, Drag: rapid.Float64Range(0, 2).Draw(t, "drag")}, {Mach: 0.9, Drag: 0.6}, {Mach: 1.2, Drag: 0.8}}},
		Rail: rocket.Rail{Length: log("rail", 0.01, 10), Tilt: rapid.Float64Range(0, 1.4).Draw(t, "tilt"), Heading: rapid.Float64Range(0, 6).Draw(t, "heading")},
	}
	r.Wind.Speed, r.Wind.Height, r.Wind.Exponent = rapid.Float64Range(0, 20).Draw(t, "wind"), 10, rapid.Float64Range(0, 0.4).Draw(t, "shear")
	r.Wind.From = rapid.Float64Range(0, 6).Draw(t, "from")
	r.Site.Elevation = rapid.Float64Range(-300, 4000).Draw(t, "elevation")
	bore := log("bore", 0.01, 0.5)
	r.Water = &rocket.Water{Volume: log("volume", 1e-5, 0.1), Bore: bore, Throat: bore * rapid.Float64Range(0.01, 0.99).Draw(t, "throat"),
		Discharge: rapid.Float64Range(0.3, 1).Draw(t, "discharge"), Fill: rapid.Float64Range(0, 0.99).Draw(t, "fill"),
		Pressure: rapid.Float64Range(0, 3e6).Draw(t, "pressure"), Gas: thrust.Air, Density: 998, Exponent: rapid.SampledFrom([]float64{0, 1, 1.2, 1.4}).Draw(t, "n"),
		Flow: rapid.SampledFrom([]rocket.Flow{rocket.UnsteadyFlow, rocket.SteadyFlow}).Draw(t, "flow")}
	if rapid.Bool().Draw(t, "tube") {
		length := r.Water.Volume / (math.Pi / 4 * bore * bore) * rapid.Float64Range(0.01, 1).Draw(t, "tube length")
		outer := r.Water.Throat * rapid.Float64Range(0.1, 1).Draw(t, "tube outer")
		r.Water.Tube = &rocket.LaunchTube{Length: length, Outer: outer, Inner: outer / 2}
	}
	triggers := []rocket.Trigger{rocket.Never, rocket.AfterLaunch, rocket.AfterBurnout, rocket.AfterApogee, rocket.Falling, rocket.Ejection}
	for i := range rapid.IntRange(0, 3).Draw(t, "canopies") {
		r.Canopies = append(r.Canopies, rocket.Canopy{Name: string(rune('a' + i)), Diameter: log("canopy", 0.05, 5), Coefficient: 0.75,
			FillConstant: rapid.SampledFrom([]float64{0, 1, 8, 100}).Draw(t, "fill constant"), OpeningForceCoefficient: 1.7,
			Water: rocket.Rule{Trigger: rapid.SampledFrom(triggers).Draw(t, "trigger"), Value: rapid.Float64Range(0, 20).Draw(t, "value")}})
		if c := &r.Canopies[i]; c.Water.Trigger == rocket.AfterApogee {
			c.Water.Value -= 10
		}
	}
	return r
}

// A jet without pressure to speak of, which the liquid's weight alone drives, has a surge of finite length.
func TestSurgeThatHardlyIs(t *testing.T) {
	r := bottle()
	bore := math.Exp(-2.5)
	r.Body.Mass, r.Body.Diameter, r.Rail.Length, r.Rail.Tilt = math.E, 1/math.E, math.E, 1
	r.Water = &rocket.Water{Volume: 0.1, Bore: bore, Throat: bore / 64, Discharge: 1, Fill: 0.5, Pressure: 1,
		Gas: thrust.Air, Density: 998, Flow: rocket.UnsteadyFlow}
	fl := mustFly(r, 0)
	assert.False(t, math.IsNaN(fl.Startup.Duration))
	assert.GreaterOrEqual(t, fl.Startup.Duration, 0.0)
}

// Any rocket that passes Validate gives a finite flight, in order, the same each time.
func TestAnyRocketFlies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRocket(t)
		if r.Validate() != nil {
			t.Skip("refused")
		}
		fl, err := Fly(context.Background(), r, Options{Keep: true})
		if err != nil {
			t.Fatal(err)
		}
		finite(t, reflect.ValueOf(fl.Results), "")
		for i := range fl.Events {
			if i > 0 && fl.Events[i].Time < fl.Events[i-1].Time {
				t.Fatalf("events out of order: %v", fl.Events)
			}
		}
		if fl.Steps+fl.Rejected > 50000 { // a twentieth of a second; ordinary flights take a hundred
			t.Fatalf("%d steps", fl.Steps)
		}
		again, _ := Fly(context.Background(), r, Options{})
		if !reflect.DeepEqual(fl.Results, again.Results) || !reflect.DeepEqual(fl.Warnings, again.Warnings) {
			t.Fatal("not the same twice")
		}
		if !fl.Landing.Happened {
			for _, w := range fl.Warnings {
				switch w.Code {
				case NeverLifted, NeverLeftGuide, StuckOnTube, TimeLimit:
					return
				}
			}
			t.Fatalf("no landing, and no word why: %v", fl.Warnings)
		}
	})
}

// finite walks a result and refuses anything not finite.
func finite(t *rapid.T, v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			t.Fatalf("%s is %v", path, f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, v.Field(i), path+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, v.Index(i), path)
		}
	}
}
