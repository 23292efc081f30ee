package study

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func best(t testing.TB, r *rocket.Rocket, leftover bool, texts ...string) Best {
	t.Helper()
	goals, err := ParseGoals(r, texts)
	require.NoError(t, err)
	b, err := FindBest(background, r, goals, Highest(leftover), Options{})
	require.NoError(t, err)
	return b
}

// densest is the highest admissible row of a dense sweep.
func densest(t *testing.T, r *rocket.Rocket, leftover bool, texts ...string) Row {
	t.Helper()
	var top Row
	for _, row := range rows(t, r, Options{}, texts...) {
		if row.Flight == nil || !row.Flight.RailExit.Happened || row.Flight.LiquidLeft > 0 && !leftover {
			continue
		}
		if top.Flight == nil || row.Flight.Apogee.Height > top.Flight.Apogee.Height {
			top = row
		}
	}
	require.NotNil(t, top.Flight)
	return top
}

// The optimum is that of a dense sweep, within few flights, and the band ends where
// the apogee is 1 % down.
func TestBestOfOne(t *testing.T) {
	long.Unraced(t)
	for name, c := range map[string]struct {
		rocket      *rocket.Rocket
		goal, sweep string
		tol         float64 // of the value
	}{
		"fill":         {bottle(), "water.fill", "water.fill=0..0.98/491", 0.004},
		"starter fill": {rocketfile.Starter().Rocket(), "water.fill", "water.fill=0..0.98/491", 0.004},
		"mass":         {bottle(), "body.mass=20..400 g", "body.mass=20..400 g/381", 0.004},
		"throat":       {bare(), "water.throat=4..60mm", "water.throat=4..60mm/561", 0.002},
		"motor mass":   {motored(), "body.mass=0.2..6kg", "body.mass=0.2..6kg/581", 0.05},
	} {
		t.Run(name, func(t *testing.T) {
			b := best(t, c.rocket, false, c.goal)
			dense := densest(t, c.rocket, false, c.sweep)
			require.GreaterOrEqual(t, b.Apogee, dense.Flight.Apogee.Height*(1-1e-5))
			require.InDelta(t, dense.Values[0].Number, b.Values[0], c.tol)
			require.LessOrEqual(t, b.Flights, 30)
			require.Equal(t, b.Apogee, b.Flight.Apogee.Height)

			in := input(t, c.rocket, c.sweep[:len(c.goal[:indexOf(c.goal, '=')])])
			goal, err := ParseGoal(c.rocket, c.goal)
			require.NoError(t, err)
			for i, end := range b.Within[0] {
				require.GreaterOrEqual(t, end, goal.From)
				require.LessOrEqual(t, end, goal.To)
				drop := flown(t, with(t, c.rocket, in.Name, end)).Apogee.Height / b.Apogee
				if end == goal.From || end == goal.To {
					require.GreaterOrEqual(t, drop, 0.99)
					continue
				}
				require.InDelta(t, 0.99, drop, 4e-4, "end %d", i)
			}
			require.Less(t, b.Within[0][0], b.Values[0])
			require.Greater(t, b.Within[0][1], b.Values[0])
		})
	}
}

// bare is the starter of which no chamber is described, whose thread would bound the throat.
func bare() *rocket.Rocket {
	r := rocketfile.Starter().Rocket().Clone()
	r.Chamber = nil
	return r
}

// What the search and the sweep propose is a rocket that a file may be of: its chamber goes with the rest.
func TestChambersGoWithTheRest(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for _, text := range []string{"body.diameter=50..200mm", "water.throat=4..60mm"} {
		b := best(t, r, false, text)
		require.NoError(t, b.Flight.Rocket.Validate(), text)
	}
	for i, row := range rows(t, r, Options{}, "body.diameter=80,120mm") {
		require.Equal(t, i == 0, row.Invalid != nil)
		require.Equal(t, with(t, r, "body.diameter", row.Values[0].Number).Validate() == nil, row.Invalid == nil)
	}
}

func indexOf(s string, c byte) int {
	for i := range len(s) {
		if s[i] == c {
			return i
		}
	}
	return len(s)
}

func TestBestAtBound(t *testing.T) {
	r := bottle()
	b := best(t, r, false, "water.fill=0.05..0.2")
	require.InDelta(t, 0.2, b.Values[0], 1e-3)
	require.Equal(t, []bool{true}, b.AtBound)
	require.Equal(t, 0.2, b.Within[0][1])
	require.Less(t, b.Within[0][0], 0.2)

	b = best(t, r, false, "water.fill=0.5..0.8")
	require.Equal(t, 0.5, b.Values[0])
	require.Equal(t, []bool{true}, b.AtBound)
	require.Equal(t, 0.5, b.Within[0][0])

	b = best(t, r, false, "water.pressure")
	require.Equal(t, r.Water.Pressure, b.Values[0], "never more than today's unless asked")
}

// A best flight has no more pressure than the chamber is proved for, with what heat leaves
// of it; with no proof on record no more than the file's own. What is cut off is counted.
func TestBestWithinTheProof(t *testing.T) {
	r := bottle()
	b := best(t, r, false, "water.pressure=1..9bar")
	require.LessOrEqual(t, b.Values[0], r.Water.Pressure)
	require.InDelta(t, r.Water.Pressure, b.Values[0], 5e3)
	require.Positive(t, b.CutOff)
	require.Equal(t, []bool{true}, b.AtEdge)

	for _, test := range []struct{ proof, left, top float64 }{
		{10.5e5, 1, 7e5},     // over 1.5
		{10.5e5, 0.9, 6.3e5}, // warm
		{6e5, 1, 4e5},        // below the file's own
		{15e5, 1, 9e5},       // beyond the range
	} {
		r := bottle()
		r.Chamber = &chamber.Chamber{Proof: test.proof, HeatFactor: test.left}
		require.InDelta(t, test.top, min(r.ProvedFor(), 9e5), 1)
		b := best(t, r, false, "water.pressure=1..9bar")
		require.LessOrEqual(t, b.Values[0], test.top*(1+1e-9))
		require.InDelta(t, test.top, b.Values[0], 5e3)
		require.Equal(t, test.top < 9e5, b.CutOff > 0)
	}
	r.Chamber = &chamber.Chamber{Proof: 6e5, HeatFactor: 1}
	goals, err := ParseGoals(r, []string{"water.fill"})
	require.NoError(t, err)
	_, err = FindBest(background, r, goals, Highest(false), Options{})
	var none *NoneAdmissible
	require.ErrorAs(t, err, &none, "5 bar in a chamber proved for 4")
	require.Positive(t, none.Overpressed)
}

// A launch tube helps the more the fatter it is, up to the throat, past which there
// is no rocket: the best is at that edge.
func TestBestAtEdge(t *testing.T) {
	r := bottle()
	r.Water.Tube = &rocket.LaunchTube{Length: 0.15, Outer: 0.02, Inner: 0.01}
	b := best(t, r, false, "water.tube.outer=11..40mm")
	require.InDelta(t, r.Water.Throat, b.Values[0], 3*bestTol*0.029)
	require.Less(t, b.Values[0], r.Water.Throat)
	require.Equal(t, []bool{true}, b.AtEdge)
	require.Equal(t, []bool{false}, b.AtBound)
	require.LessOrEqual(t, b.Within[0][1], r.Water.Throat)
	require.LessOrEqual(t, b.Flights, 70) // thinner tubes leak and are refused, fatter ones are no rocket
}

// A best flight has no liquid left unless that is allowed.
func TestBestLeftover(t *testing.T) {
	r := bottle()
	r.Water.Pressure = 1e5 // spent before much liquid is out
	goals, err := ParseGoals(r, []string{"water.fill=0.42..0.6"})
	require.NoError(t, err)
	_, err = FindBest(background, r, goals, Highest(false), Options{})
	var none *NoneAdmissible
	require.ErrorAs(t, err, &none)
	require.Equal(t, none.Flights, none.LiquidLeft+none.NeverLeft)
	require.Greater(t, none.LiquidLeft, none.NeverLeft)
	require.ErrorContains(t, err, "ended with liquid aboard")

	b := best(t, r, true, "water.fill=0.42..0.6")
	require.Positive(t, b.Flight.LiquidLeft)
	require.InDelta(t, 0.42, b.Values[0], 1e-3)
	b = best(t, r, false, "water.fill=0.3..0.6")
	require.Zero(t, b.Flight.LiquidLeft)
}

// What is the best, and what may be, is the caller's to say.
func TestBestOfAnyAim(t *testing.T) {
	long.Unraced(t)
	r := bottle()
	goals, err := ParseGoals(r, []string{"water.fill=0..0.6"})
	require.NoError(t, err)
	slowly := Aim{ // down, but 20 m up at least
		Value: func(fl *sim.Flight) float64 { return 100 - fl.Landing.Vertical },
		Refuse: func(fl *sim.Flight) (Refusal, float64) {
			if fl.Apogee.Height < 20 {
				return NeverLeft, 0
			}
			return Accepted, 0
		},
	}
	b, err := FindBest(background, r, goals, slowly, Options{})
	require.NoError(t, err)
	least := math.Inf(1)
	for _, row := range rows(t, r, Options{}, "water.fill=0..0.6/301") {
		if row.Flight.Apogee.Height >= 20 {
			least = math.Min(least, row.Flight.Landing.Vertical)
		}
	}
	require.LessOrEqual(t, b.Flight.Landing.Vertical, least+1e-4)
	require.GreaterOrEqual(t, b.Apogee, 20.0)

	fastest := Aim{Value: func(fl *sim.Flight) float64 { return fl.RailExit.Speed }, Refuse: Highest(true).Refuse}
	goals, err = ParseGoals(r, []string{"water.fill=0..0.6", "water.throat=6..30mm"})
	require.NoError(t, err)
	b, err = FindBest(background, r, goals, fastest, Options{})
	require.NoError(t, err)
	top := 0.0
	for _, row := range rows(t, r, Options{}, "water.fill=0..0.6/31", "water.throat=6..30mm/25") {
		top = math.Max(top, row.Flight.RailExit.Speed)
	}
	require.GreaterOrEqual(t, b.Flight.RailExit.Speed, top*(1-1e-4))
}

func TestNoneAdmissible(t *testing.T) {
	r := bottle()
	r.Body.Mass = 50
	goals, err := ParseGoals(r, []string{"water.fill"})
	require.NoError(t, err)
	_, err = FindBest(background, r, goals, Highest(false), Options{})
	var none *NoneAdmissible
	require.ErrorAs(t, err, &none)
	require.Equal(t, none.Flights, none.NeverLeft+none.LiquidLeft+none.InvalidCount)
	require.Positive(t, none.NeverLeft)
	require.ErrorContains(t, err, "did not leave the rail")

	goals, err = ParseGoals(bottle(), []string{"water.throat=0.2..0.4m"})
	require.NoError(t, err)
	_, err = FindBest(background, bottle(), goals, Highest(false), Options{})
	require.ErrorAs(t, err, &none)
	require.Equal(t, none.Flights, none.InvalidCount)
	require.ErrorContains(t, err, "is as wide as the bore or wider")

	goals, err = ParseGoals(r, []string{"water.fill", "water.throat"})
	require.NoError(t, err)
	_, err = FindBest(background, r, goals, Highest(false), Options{})
	require.ErrorAs(t, err, &none)
}

func TestBestOfSeveral(t *testing.T) {
	long.Unraced(t)
	r := rocketfile.Starter().Rocket()
	b := best(t, r, false, "water.fill=0.1..0.6", "water.throat=5..40mm")
	dense := densest(t, r, false, "water.fill=0.1..0.6/51", "water.throat=5..40mm/36")
	require.GreaterOrEqual(t, b.Apogee, dense.Flight.Apogee.Height*(1-2e-5))
	require.InDelta(t, dense.Values[0].Number, b.Values[0], 0.03)
	require.LessOrEqual(t, b.Flights, 400)
	require.Len(t, b.Within, 2)
	for k, name := range []string{"water.fill", "water.throat"} {
		at := with(t, with(t, r, "water.fill", b.Values[0]), "water.throat", b.Values[1])
		for _, end := range b.Within[k] {
			require.GreaterOrEqual(t, flown(t, with(t, at, name, end)).Apogee.Height/b.Apogee, 0.9896, name)
		}
		require.LessOrEqual(t, b.Within[k][0], b.Values[k])
		require.GreaterOrEqual(t, b.Within[k][1], b.Values[k])
	}
}

// The same search finds the same to the last bit, on any number of cores.
func TestBestAnyWorkers(t *testing.T) {
	r := bottle()
	for _, texts := range [][]string{{"water.fill"}, {"water.fill", "water.throat"}, {"water.fill", "water.throat", "body.mass"}} {
		goals, err := ParseGoals(r, texts)
		require.NoError(t, err)
		one, err := FindBest(background, r, goals, Highest(false), Options{Workers: 1})
		require.NoError(t, err)
		for _, workers := range []int{2, 8} {
			again, err := FindBest(background, r, goals, Highest(false), Options{Workers: workers})
			require.NoError(t, err)
			require.Equal(t, one.Values, again.Values)
			require.Equal(t, one.Within, again.Within)
			require.Equal(t, one.Flights, again.Flights)
			require.Equal(t, one.Flight.Results, again.Flight.Results)
		}
	}
	require.Equal(t, bottle(), r)
}

func TestBestOptions(t *testing.T) {
	r := bottle()
	goals, err := ParseGoals(r, []string{"water.fill"})
	require.NoError(t, err)
	told := 0
	b, err := FindBest(background, r, goals, Highest(false), Options{Keep: true, Progress: func(done, total int) {
		require.Zero(t, total)
		require.Greater(t, done, told)
		told = done
	}})
	require.NoError(t, err)
	require.NotEmpty(t, b.Flight.Trace())
	require.Equal(t, b.Flights, told+1, "one more to keep its record")
	require.Equal(t, b.Apogee, b.Flight.Apogee.Height)

	for _, texts := range [][]string{{"water.fill"}, {"water.fill", "body.mass"}} {
		goals, err := ParseGoals(r, texts)
		require.NoError(t, err)
		for _, after := range []int{1, scanned, scanned + 3} {
			ctx, cancel := context.WithCancel(background)
			_, err = FindBest(ctx, r, goals, Highest(false), Options{Progress: func(done, _ int) {
				if done == after {
					cancel()
				}
			}})
			require.ErrorIs(t, err, context.Canceled)
			cancel()
		}
	}
}

func TestGoalFaults(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for want, texts := range map[string][]string{
		"no input to find the best of": nil,
		"perhaps water.fill is meant":  {"water.fil"},
		"has no number":                {"water.gas"},
		"not a range":                  {"water.fill=0.3"},
		"too large":                    {"water.fill=0.1..2"},
		"given twice":                  {"water.fill", "water.fill=0.2..0.3"},
		"ends where it begins":         {"water.fill=0.3..0.3"},
		"7 inputs at once":             {"water.fill", "water.throat", "body.mass", "body.drag", "water.volume", "water.bore", "wind.speed"},
	} {
		_, err := ParseGoals(r, texts)
		require.ErrorContains(t, err, want)
		require.IsType(t, fault.List{}, err)
	}
	in := input(t, r, "water.fill")
	for _, goals := range [][]Goal{nil, {{in, 0.4, 0.2}}, {{in, math.NaN(), 0.2}}, {{in, 0.1, 3}}, {{in, 0.1, 0.2}, {in, 0.1, 0.2}}} {
		_, err := FindBest(background, r, goals, Highest(false), Options{})
		require.IsType(t, fault.List{}, err)
	}
	g, err := ParseGoal(r, "water.fill=0.4..0.2")
	require.NoError(t, err)
	require.Equal(t, [2]float64{0.2, 0.4}, [2]float64{g.From, g.To})
}

// The maps of a range onto 0 … 1 and back agree, evenly or by ratio.
func TestGoalPlaces(t *testing.T) {
	for _, g := range []Goal{{From: 0, To: 0.98}, {From: -3, To: 5}, {From: 0.001, To: 0.5}, {From: 1, To: 9}} {
		require.Equal(t, g.From, g.stretched(0))
		require.Equal(t, g.To, g.stretched(1))
		for _, u := range []float64{0.001, 0.3, 0.99} {
			require.InDelta(t, u, g.place(g.stretched(u)), 1e-12)
		}
		require.Zero(t, g.place(g.From-1))
		require.Equal(t, 1.0, g.place(g.To+1))
	}
}

func BenchmarkBestOfOne(b *testing.B) {
	r := rocketfile.Starter().Rocket()
	goals, err := ParseGoals(r, []string{"water.fill"})
	require.NoError(b, err)
	for b.Loop() {
		if _, err := FindBest(background, r, goals, Highest(false), Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBestOfTwo(b *testing.B) {
	r := rocketfile.Starter().Rocket()
	goals, err := ParseGoals(r, []string{"water.fill", "water.throat"})
	require.NoError(b, err)
	for b.Loop() {
		if _, err := FindBest(background, r, goals, Highest(false), Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// A launch tube that leaks in its throat is no piston, and no best value of it either.
func TestBestKeepsThePiston(t *testing.T) {
	r := bottle()
	r.Water.Throat = 0.0217
	r.Water.Tube = &rocket.LaunchTube{Length: 0.1, Outer: 0.0214, Inner: 0.018}
	require.NoError(t, r.Validate())
	goals, err := ParseGoals(r, []string{"water.throat=21.5mm..30mm"})
	require.NoError(t, err)
	best, err := FindBest(background, r, goals, Highest(true).Within(r), Options{})
	require.NoError(t, err)
	require.LessOrEqual(t, best.Values[0], 0.0214+2*rocket.LeakingGap+1e-9)
}
