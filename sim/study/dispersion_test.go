package study

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/ground"
	"ullage/sim/long"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// uncertain are spreads of some inputs.
func uncertain(t testing.TB, r *rocket.Rocket, sd map[string]float64, names ...string) []Spread {
	t.Helper()
	var spreads []Spread
	for _, name := range names {
		spreads = append(spreads, spread(t, r, name, sd[name]))
	}
	return spreads
}

func scattered(t testing.TB, r *rocket.Rocket, spreads []Spread, n int, seed uint64, o Options) (Dispersion, []LandingPoint) {
	t.Helper()
	var points []LandingPoint
	got, err := Disperse(background, r, Draws{Spreads: spreads, Flights: n, Seed: seed}, o, func(p LandingPoint) error {
		points = append(points, p)
		return nil
	})
	require.NoError(t, err)
	return got, points
}

// figures are the numbers of a result, to compare: inputs hold functions.
func figures(r Dispersion) string {
	text := fmt.Sprint(r.Asked, r.Drawn, r.Invalid, r.Grounded, r.Landed, r.Reservoir, r.Partial, r.Apogee, r.RailExit, r.Landing)
	for _, i := range r.Importance {
		text += fmt.Sprint(i.Input.Name, i.SD, i.Rank)
	}
	return text
}

// Small uncertainties propagate linearly: the variance of the apogee is the sum of
// (∂h/∂x σ)², and an input's rank correlation, of a normal pair with correlation ρ, is
// 6/π asin(ρ/2) (K. Pearson 1907, from memory).
func TestScatterAgainstLinearPropagation(t *testing.T) {
	long.Unraced(t)
	const n = 3000
	r := bottle()
	sd := map[string]float64{"body.mass": 0.002, "body.drag_factor": 0.03, "water.pressure": 5e3, "water.discharge": 0.004}
	spreads := uncertain(t, r, sd, "body.mass", "body.drag_factor", "water.pressure", "water.discharge")
	variance := 0.0
	slope := map[string]float64{}
	for _, s := range spreads {
		v, _ := s.Input.Get(r)
		up := flown(t, with(t, r, s.Input.Name, v+s.SD)).Apogee.Height
		down := flown(t, with(t, r, s.Input.Name, v-s.SD)).Apogee.Height
		slope[s.Input.Name] = (up - down) / 2
		variance += slope[s.Input.Name] * slope[s.Input.Name]
	}
	got, _ := scattered(t, r, spreads, n, 11, Options{})
	require.Equal(t, n, got.Apogee.Count)
	want := math.Sqrt(variance)
	// Four standard errors: of the mean σ/√n, of the deviation σ/√(2n).
	require.InDelta(t, flown(t, r).Apogee.Height, got.Apogee.Mean, 4*want/math.Sqrt(n)+0.02*want)
	require.InDelta(t, want, got.Apogee.SD, 4*want/math.Sqrt(2*n)+0.02*want)
	require.InDelta(t, got.Apogee.Mean+1.644854*want, got.Apogee.Q95, 0.15*want)
	require.InDelta(t, got.Apogee.Mean-1.644854*want, got.Apogee.Q05, 0.15*want)
	require.InDelta(t, got.Apogee.Mean, got.Apogee.Q50, 0.1*want)
	for _, i := range got.Importance {
		rho := slope[i.Input.Name] / want
		require.InDelta(t, 6/math.Pi*math.Asin(rho/2), i.Rank, 4/math.Sqrt(n), i.Input.Name)
	}
	for k := 1; k < len(got.Importance); k++ {
		require.GreaterOrEqual(t, math.Abs(got.Importance[k-1].Rank), math.Abs(got.Importance[k].Rank))
	}
}

func TestScatterAnyWorkers(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	spreads := DefaultSpread(r)
	want, points := scattered(t, r, spreads, 203, 5, Options{Workers: 1})
	for _, workers := range []int{2, 5, 40} {
		got, same := scattered(t, r, spreads, 203, 5, Options{Workers: workers})
		require.Equal(t, figures(want), figures(got))
		require.Equal(t, points, same)
	}
	other, _ := scattered(t, r, spreads, 203, 6, Options{})
	require.NotEqual(t, want.Apogee, other.Apogee)
	_, longer := scattered(t, r, spreads, 250, 5, Options{})
	require.Equal(t, points, longer[:len(points)], "more flights go on from fewer")
}

func TestScatterWithoutSpread(t *testing.T) {
	r := bottle()
	got, _ := scattered(t, r, nil, 40, 1, Options{})
	want := flown(t, r)
	require.InDelta(t, want.Apogee.Height, got.Apogee.Mean, 1e-9)
	require.InDelta(t, 0, got.Apogee.SD, 1e-9)
	require.InDelta(t, want.RailExit.Speed, got.RailExit.Q05, 1e-12)
	require.Empty(t, got.Importance)
}

// Draws that make no valid rocket are counted: of a fill of 0 half are below it.
func TestScatterCountsInvalid(t *testing.T) {
	const n = 4000
	r := dud()
	spreads := uncertain(t, r, map[string]float64{"water.fill": 0.01}, "water.fill")
	got, points := scattered(t, r, spreads, n, 3, Options{})
	require.Equal(t, n, got.Drawn)
	require.Equal(t, n, got.Invalid+got.Grounded)
	require.InDelta(t, n/2, got.Invalid, 4*math.Sqrt(n)/2) // four standard errors
	require.ErrorContains(t, got.FirstInvalid, "water.fill")
	require.Empty(t, points)
	require.Zero(t, got.Apogee.Count)
	require.True(t, math.IsNaN(got.Apogee.Mean) && math.IsNaN(got.Apogee.Q50) && math.IsNaN(got.Landing.Major))
	require.True(t, math.IsNaN(got.Importance[0].Rank))
}

func TestScatterEndsEarly(t *testing.T) {
	r := bottle()
	spreads := DefaultSpread(r)
	seen := 0
	got, err := Disperse(background, r, Draws{Spreads: spreads, Flights: 1000, Seed: 1}, Options{}, func(p LandingPoint) error {
		if seen++; seen == 100 {
			require.True(t, p.Kind == Falling)
			return errStop
		}
		return nil
	})
	require.ErrorIs(t, err, errStop)
	require.True(t, got.Partial)
	require.Equal(t, 50, got.Apogee.Count)
	require.Equal(t, 1000, got.Asked)

	ctx, cancel := context.WithCancel(background)
	defer cancel()
	got, err = Disperse(ctx, r, Draws{Spreads: spreads, Flights: MaxDispersion, Seed: 1}, Options{}, func(p LandingPoint) error {
		if p.Draw >= 60 {
			cancel()
		}
		return nil
	})
	require.ErrorIs(t, err, context.Canceled)
	require.True(t, got.Partial)
	require.GreaterOrEqual(t, got.Drawn, 60)
	require.Less(t, got.Drawn, 10_000)
	require.False(t, math.IsNaN(got.Apogee.Q95))
}

func TestScatterProgress(t *testing.T) {
	last := 0
	_, err := Disperse(background, dud(), Draws{Spreads: nil, Flights: 1001, Seed: 1}, Options{Progress: func(done, total int) {
		require.Equal(t, 1001, total)
		require.Greater(t, done, last)
		last = done
	}}, nil)
	require.NoError(t, err)
	require.Equal(t, 1001, last)
}

func TestScatterFaults(t *testing.T) {
	r := bottle()
	for name, c := range map[string]struct {
		spreads []Spread
		n       int
		broken  bool
		want    string
	}{
		"no flights":   {nil, 0, false, "number of flights"},
		"too many":     {nil, MaxDispersion + 1, false, "number of flights"},
		"negative":     {[]Spread{spread(t, r, "body.mass", -1)}, 1, false, "spread.body.mass"},
		"no number":    {[]Spread{spread(t, r, "body.mass", math.NaN())}, 1, false, "spread.body.mass"},
		"other rocket": {[]Spread{spread(t, motored(), "motor.delay", 1)}, 1, false, "motor.delay"},
		"invalid":      {nil, 1, true, "body.mass"},
	} {
		t.Run(name, func(t *testing.T) {
			base := r.Clone()
			if c.broken {
				base.Body.Mass = -1
			}
			_, err := Disperse(background, base, Draws{Spreads: c.spreads, Flights: c.n, Seed: 1}, Options{}, nil)
			var faults fault.List
			require.ErrorAs(t, err, &faults)
			require.ErrorContains(t, err, c.want)
		})
	}
}

// pretend feeds a collector landings of a plane normal distribution, and apogees of a
// normal one.
func pretend(c *collector, n int, seed uint64) error {
	random := rand.New(rand.NewPCG(seed, 1))
	for range n {
		a, b := random.NormFloat64(), random.NormFloat64()
		x := random.NormFloat64()
		// Axes of 30 and 10 m, the long one 30° from north; centre 5, −3.
		sin, cos := math.Sincos(math.Pi / 6)
		o := outcome{exited: true, landed: true, figures: []float64{100 + 5*x, x, x},
			east: 5 + 30*a*sin + 10*b*cos, north: -3 + 30*a*cos - 10*b*sin}
		if err := c.take([]outcome{o}); err != nil {
			return err
		}
	}
	return nil
}

func newPretence(each func(LandingPoint) error) *collector {
	return &collector{spreads: []Spread{{SD: 1}}, rows: make([]results.Row, shownFigures), moments: make([]moments, shownFigures), each: each,
		kept: newReservoir(ReservoirSize, shownFigures+1, 1)}
}

// Quantiles of the normal distribution and the ellipse of a plane one: closed forms,
// and nine in ten of other points inside by counting.
func TestScatterClosedForms(t *testing.T) {
	const n = 20_000
	c := newPretence(nil)
	require.NoError(t, pretend(c, n, 1))
	got := c.finish(nil, Options{})
	require.Equal(t, got.Apogee.Count, got.Reservoir, "all are kept")
	require.InDelta(t, 100, got.Apogee.Mean, 4*5/math.Sqrt(n))
	require.InDelta(t, 5, got.Apogee.SD, 4*5/math.Sqrt(2*n))
	require.InDelta(t, 100-1.644854*5, got.Apogee.Q05, 0.3)
	require.InDelta(t, 100, got.Apogee.Q50, 0.2)
	require.InDelta(t, 100+1.644854*5, got.Apogee.Q95, 0.3)
	require.InDelta(t, 1, got.Importance[0].Rank, 1e-12)

	e := got.Landing
	k := math.Sqrt(-2 * math.Log(0.1))
	require.InEpsilon(t, 30*k, e.Major, 0.03)
	require.InEpsilon(t, 10*k, e.Minor, 0.03)
	require.InDelta(t, math.Pi/6, e.Heading, 0.02)
	require.InDelta(t, 5, e.East, 0.8)
	require.InDelta(t, -3, e.North, 1)
	inside := 0
	sin, cos := math.Sincos(e.Heading)
	other := newPretence(func(p LandingPoint) error {
		x, y := p.East-e.East, p.North-e.North
		if along, across := x*sin+y*cos, x*cos-y*sin; math.Hypot(along/e.Major, across/e.Minor) <= 1 {
			inside++
		}
		return nil
	})
	require.NoError(t, pretend(other, n, 2))
	require.InDelta(t, 0.9, float64(inside)/n, 0.01)
}

// What is shown is summed up over the flights in which it has a value; apogee asked for by
// name is what is always told of it.
func TestShownResults(t *testing.T) {
	r := bottle()
	table := results.For(r)
	draws := Draws{Spreads: []Spread{spread(t, r, "water.fill", 0.05), spread(t, r, "body.mass", 0.02)}, Flights: 400, Seed: 3}
	for _, name := range []string{"apogee.height", "landing.drift", "drive.class", "tube_exit.speed"} {
		draws.Show = append(draws.Show, *table.Must(name))
	}
	got, err := Disperse(background, r, draws, Options{}, nil)
	require.NoError(t, err)
	require.Len(t, got.Shown, 4)
	require.Equal(t, fmt.Sprint(got.Apogee), fmt.Sprint(got.Shown[0].Of))
	require.Equal(t, got.Importance[0].Rank, got.Shown[0].Importance[0].Rank)
	require.Equal(t, 400, got.Shown[1].Of.Count)
	for _, none := range got.Shown[2:] {
		require.Zero(t, none.Of.Count)
		require.True(t, math.IsNaN(none.Of.Mean))
		require.True(t, math.IsNaN(none.Importance[0].Rank))
	}
	// A result that half of the flights lack.
	some := newPretence(nil)
	some.rows, some.moments = append(some.rows, results.Row{}), make([]moments, shownFigures+1)
	some.kept = newReservoir(ReservoirSize, shownFigures+2, 1)
	for i := range 100 {
		v, x := math.NaN(), float64(i)
		if i%2 == 0 {
			v = 2 * x
		}
		require.NoError(t, some.take([]outcome{{exited: true, figures: []float64{x, x, v, x}}}))
	}
	half := some.finish(nil, Options{}).Shown[0]
	require.Equal(t, 50, half.Of.Count)
	require.InDelta(t, 98, half.Of.Mean, 1e-9) // 0, 4, … 196
	require.InDelta(t, 98, half.Of.Q50, 1e-9)
	require.InDelta(t, 1, half.Importance[0].Rank, 1e-12)
}

// Past the reservoir, quantiles come from a choice of the flights, mean and deviation
// from all, and what is kept grows no more.
func TestScatterFlatMemory(t *testing.T) {
	long.Unraced(t)
	live := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	c := newPretence(nil)
	require.NoError(t, pretend(c, ReservoirSize, 1))
	before := live()
	require.NoError(t, pretend(c, 4*ReservoirSize, 2))
	after := live()
	require.Less(t, after, before+100_000)
	got := c.finish(nil, Options{})
	require.Equal(t, 5*ReservoirSize, got.Apogee.Count)
	require.Equal(t, ReservoirSize, got.Reservoir)
	require.Less(t, got.Reservoir, got.Apogee.Count)
	require.InDelta(t, 100+1.644854*5, got.Apogee.Q95, 0.15)
}

// A share of the draws flies once more without canopies, nose first, and what comes down beyond
// the field is counted of both.
func TestScatterOutsideAndBallistic(t *testing.T) {
	long.Unraced(t)
	r := rocketfile.Starter().Rocket()
	r.Field.Radius = 60
	got, points := scattered(t, r, DefaultSpread(r), 600, 2, Options{})
	require.Equal(t, min(600, BallisticFlights), got.Ballistic.Landed)
	outside, fell, far := 0, 0, 0.0
	for i, p := range points {
		away := math.Hypot(p.East, p.North)
		switch {
		case p.Kind == Falling:
			require.Equal(t, points[i-1].Draw, p.Draw, "behind the landing of its draw")
			require.Equal(t, points[i-1].Apogee, p.Apogee)
			far = math.Max(far, away)
			if away > r.Field.Radius {
				fell++
			}
		case away > r.Field.Radius:
			outside++
		}
	}
	require.Equal(t, outside, got.Outside)
	require.Positive(t, outside)
	require.Equal(t, fell, got.Ballistic.Outside)
	require.Equal(t, far, got.Ballistic.Farthest)

	// One draw by hand.
	d := newDrawer(r, DefaultSpread(r), 2)
	alone, err := d.draw(7, make([]float64, len(d.spreads)))
	require.NoError(t, err)
	alone.Canopies = nil
	fl, err := sim.Fly(background, alone, sim.Options{NoseFirst: true})
	require.NoError(t, err)
	i := slices.IndexFunc(points, func(p LandingPoint) bool { return p.Kind == Falling && p.Draw == 7 })
	require.InDelta(t, fl.Landing.East, points[i].East, 1e-6)
	require.InDelta(t, fl.Landing.North, points[i].North, 1e-6)

	r.Field.Radius, r.Canopies = 0, nil
	got, _ = scattered(t, r, DefaultSpread(r), 20, 2, Options{})
	require.Zero(t, got.Ballistic.Landed, "every landing is one")
	require.Zero(t, got.Outside)
}

// What only the other drive has is not uncertain on this one, even where the file says so.
func TestSpreadsAreOfTheDrive(t *testing.T) {
	r := motored()
	stated := []Spread{spread(t, r, "water.fill", 0.1), spread(t, r, "site.temperature", 2), spread(t, r, "canopy.main.deploy.water", 1)}
	for _, s := range overDefaults(r, stated) {
		require.NotEqual(t, rocket.WaterPower, s.Input.Drive, s.Input.Name)
	}
	require.Len(t, overDefaults(r, stated), len(DefaultSpread(r))+1)
}

// Without its main, the larger of two canopies, a rocket comes down faster and nearer; landings on
// either side of a boundary are counted.
func TestScatterOnTheDrogueAlone(t *testing.T) {
	r := bottle()
	r.Wind.Speed, r.Wind.From = 4, math.Pi/2 // to the west
	drogue := r.Canopies[0]
	drogue.Name, drogue.Diameter = "drogue", 0.2
	r.Canopies = append(r.Canopies, drogue)
	r.Field.Boundary = ground.Polygon{{East: -40, North: -500}, {East: 500, North: -500}, {East: 500, North: 500}, {East: -40, North: 500}}
	got, points := scattered(t, r, DefaultSpread(r), 40, 2, Options{})
	require.Equal(t, 40, got.DrogueOnly.Landed)
	require.Equal(t, 40, got.Ballistic.Landed)
	require.Less(t, got.Landing.East, got.DrogueOnly.Landing.East)
	require.Less(t, got.DrogueOnly.Landing.East, got.Ballistic.Landing.East)
	outside := map[LandingKind]int{}
	for _, p := range points {
		if p.East < -40 {
			outside[p.Kind]++
		}
	}
	require.Equal(t, []int{got.Outside, got.DrogueOnly.Outside, got.Ballistic.Outside}, []int{outside[Planned], outside[DrogueOnly], outside[Falling]})
	require.Positive(t, got.Outside)
	one, _ := scattered(t, bottle(), DefaultSpread(bottle()), 4, 2, Options{})
	require.Zero(t, one.DrogueOnly.Landed, "one canopy has no drogue")
}
