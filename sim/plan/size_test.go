package plan

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

var (
	today      = time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC) // some days after the proof on record
	background = context.Background()
	bothDrives = []rocket.Power{rocket.WaterPower, rocket.MotorPower}
)

func heron(t testing.TB) *rocketfile.File {
	t.Helper()
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	return f
}

func goals(t *testing.T, r *rocket.Rocket, texts ...string) []study.Goal {
	t.Helper()
	g, err := study.ParseGoals(r, texts)
	require.NoError(t, err)
	return g
}

// What passes is what passes in a dense sweep, every drive, wind and corner judged at each value.
func TestSizeAgainstADenseSweep(t *testing.T) {
	f := heron(t)
	r := f.Rocket()
	c := Conditions{Drives: bothDrives, Winds: []float64{3}, Spreads: study.Respread(f), Today: today}
	g := goals(t, r, "fins.tail.span=85..105mm")
	z, err := SizeFor(background, []*rocket.Rocket{r}, g, c, study.Options{})
	require.NoError(t, err)
	require.True(t, z.Stand.Passes)
	assert.Empty(t, z.Blocks)
	assert.Len(t, z.Stand.Verdict, 2)
	low, high := z.Found.Within[0][0], z.Found.Within[0][1]
	require.Less(t, low, high)
	const n = 11
	passing := 0
	for i := range n {
		v := g[0].From + (g[0].To-g[0].From)*float64(i)/(n-1)
		at := r.Clone()
		require.NoError(t, g[0].Input.Set(at, v))
		s, err := c.Under(background, at)
		require.NoError(t, err)
		switch tol := 2e-3 * (g[0].To - g[0].From); {
		case v > low+tol && v < high-tol:
			assert.True(t, s.Passes, "%g", v)
			passing++
		case v < low-tol || v > high+tol:
			assert.False(t, s.Passes, "%g", v)
		}
	}
	assert.Positive(t, passing)
	assert.Less(t, passing, n-2, "some do not")
}

// Where no value passes it is said which check stands in the way, and how near it comes.
func TestWhatStandsInTheWay(t *testing.T) {
	f := heron(t)
	r := f.Rocket()
	c := Conditions{Spreads: study.Respread(f), Today: today}
	z, err := SizeFor(background, []*rocket.Rocket{r}, goals(t, r, "rail.length=0.4..0.8m"), c, study.Options{})
	require.NoError(t, err)
	require.False(t, z.Stand.Passes)
	var slow *Barrier
	for i := range z.Never {
		if z.Never[i].Check.Key == "rail-exit" {
			slow = &z.Never[i]
		}
	}
	require.NotNil(t, slow, "too short a rail")
	at := r.Clone()
	at.Rail.Length = 0.8
	quick := c.uncornered()
	s, err := quick.Under(background, at)
	require.NoError(t, err)
	for i := range s.Verdict[0].Verdict.Checks {
		if check := &s.Verdict[0].Verdict.Checks[i]; check.Key == "rail-exit" {
			assert.InDelta(t, check.Value, slow.Check.Value, 0.02, "the longest comes nearest")
		}
	}
}

// What is not known is never a pass: nothing is looked for until it is stated.
func TestSizeAsksForWhatIsNotStated(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	_, err := SizeFor(background, []*rocket.Rocket{r}, goals(t, r, "water.fill"), Conditions{}, study.Options{})
	var faults fault.List
	require.ErrorAs(t, err, &faults)
	assert.ErrorContains(t, err, "cannot be judged")
}

// The best among those that pass passes, and is no better than the best of all.
func TestPassing(t *testing.T) {
	f := heron(t)
	r := f.Rocket()
	c := Conditions{Spreads: study.Respread(f), Today: today}
	g := goals(t, r, "water.fill=0.1..0.6")
	aim := study.Highest(false)
	free, err := study.FindBest(background, r, g, aim, study.Options{})
	require.NoError(t, err)
	s, err := c.Under(background, free.Flight.Rocket)
	require.NoError(t, err)
	require.False(t, s.Passes)
	held, err := study.FindBest(background, r, g, Passing(background, aim, c), study.Options{})
	require.NoError(t, err)
	s, err = c.Under(background, held.Flight.Rocket)
	require.NoError(t, err)
	assert.True(t, s.Passes)
	assert.Less(t, held.Apogee, free.Apogee)
	assert.Greater(t, held.Apogee, 0.98*free.Apogee)
	_, err = study.FindBest(background, r, goals(t, r, "water.fill=0.01..0.05"), Passing(background, aim, c), study.Options{})
	var none *study.NoneAdmissible
	require.ErrorAs(t, err, &none)
	assert.Positive(t, none.Failing)
}

func TestSizeEndsWithItsContext(t *testing.T) {
	f := heron(t)
	ctx, cancel := context.WithCancel(background)
	cancel()
	_, err := SizeFor(ctx, []*rocket.Rocket{f.Rocket()}, goals(t, f.Rocket(), "water.fill"), Conditions{}, study.Options{})
	assert.ErrorIs(t, err, context.Canceled)
}

func BenchmarkSizeOfTwo(b *testing.B) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(b, err)
	r := f.Rocket()
	g, err := study.ParseGoals(r, []string{"nose.length", "fins.tail.span"})
	require.NoError(b, err)
	for b.Loop() {
		_, err := SizeFor(background, []*rocket.Rocket{r}, g, Conditions{Drives: bothDrives, Spreads: study.Respread(f), Today: today}, study.Options{})
		require.NoError(b, err)
	}
}
