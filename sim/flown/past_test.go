package flown

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/flown/logbook"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/study"
)

// Made-up flights of rockets whose true deviations are as told, twice and half of that: the factor lies
// between Low and High in 90 % of all such sets, whatever the flights have in common.
func TestFactorIsCovered(t *testing.T) {
	const sets = 1500
	rng := rand.New(rand.NewPCG(7, 3))
	for _, truth := range []float64{0.5, 1, 2} {
		for _, n := range []int{3, 6} {
			for _, common := range []float64{0, 2} {
				inside, between, narrow, wide := 0, 0, 0, 0
				for range sets {
					shared := truth * common * rng.NormFloat64()
					var of []Outcome
					for i := range n {
						scale := 1 + 0.3*float64(i%3) // days differ
						of = append(of, Outcome{Measured: 100 + scale*(shared+truth*rng.NormFloat64()), Predicted: 100, Common: common * scale, Daily: scale})
					}
					p, ok := Judge(results.Row{}, of)
					if common == 0 { // nothing predicts an offset, and each day's own deviation counts
						ok = ok && p.OffsetSD > 0
					}
					require.True(t, ok)
					inside += count(p.Low <= truth && truth <= p.High)
					between += count(p.BetweenLow <= truth && truth <= p.BetweenHigh)
					narrow += count(p.Word() == TooNarrow)
					wide += count(p.Word() == TooWide)
				}
				assert.InDelta(t, 0.9, float64(inside)/sets, 0.031, "%v %d", truth, n) // four standard errors
				assert.InDelta(t, 0.9, float64(between)/sets, 0.031, "%v %d", truth, n)
				if truth == 1 {
					assert.InDelta(t, 0.05, float64(narrow)/sets, 0.023)
					assert.InDelta(t, 0.05, float64(wide)/sets, 0.023)
				}
			}
		}
	}
}

func count(is bool) int {
	if is {
		return 1
	}
	return 0
}

// By hand: three flights 3, 5 and 7 m too high, 4 m of common and 2 m of daily deviation: 5 m off in
// the mean beside √(16 + 4/3) = 4.163 m, 2 m from one to the next; 8/4 + 25/17.33 = 3.4423 over three
// degrees of freedom, whose χ² has its 5 and 95 % at 0.3518 and 7.8147 (handbook tables).
func TestFactorByHand(t *testing.T) {
	for _, x := range []struct{ degrees, low, high float64 }{{1, 0.00393, 3.841}, {2, 0.1026, 5.991}, {5, 1.145, 11.070}, {10, 3.940, 18.307}, {100, 77.929, 124.342}} { // handbook tables
		assert.InEpsilon(t, x.low, chiSquared(x.degrees, 0.05), 1e-3)
		assert.InEpsilon(t, x.high, chiSquared(x.degrees, 0.95), 1e-3)
	}
	of := []Outcome{{103, 100, 4, 2}, {105, 100, 4, 2}, {107, 100, 4, 2}}
	p, ok := Judge(results.Row{}, of)
	require.True(t, ok)
	assert.InDelta(t, 5, p.Offset, 1e-12)
	assert.InDelta(t, 4.1633, p.OffsetSD, 1e-4)
	assert.InDelta(t, 2, p.Between, 1e-12)
	assert.InDelta(t, 2, p.BetweenSD, 1e-12)
	assert.InDelta(t, 1.0712, p.Factor, 1e-4)
	assert.InDelta(t, math.Sqrt(3.4423/7.8147), p.Low, 1e-4)
	assert.InDelta(t, math.Sqrt(3.4423/0.35185), p.High, 1e-4)
	assert.Equal(t, Agrees, p.Word())

	// Next to nothing from flight to flight: 5/4.0 alone, one degree of freedom, 0.0039321 and 3.8415.
	mean, ok := Judge(results.Row{}, []Outcome{{103, 100, 4, 1e-3}, {105, 100, 4, 1e-3}, {107, 100, 4, 1e-3}})
	require.True(t, ok)
	assert.InDelta(t, 1.25, mean.Factor, 1e-4)
	assert.InDelta(t, 1.25/math.Sqrt(3.8415), mean.Low, 1e-4)
	assert.InDelta(t, 1.25/math.Sqrt(0.0039321), mean.High, 1e-2)
	assert.False(t, mean.InMean() || mean.InScatter())

	_, ok = Judge(results.Row{}, of[:2])
	assert.False(t, ok, "two flights tell nothing")
	of[1].Daily = 0
	_, ok = Judge(results.Row{}, of)
	assert.False(t, ok, "nothing differs from flight to flight")
	assert.True(t, Daily("water.fill") && Daily("motor.thrust_factor") && Daily("canopy.main.deploy.water"))
	assert.False(t, Daily("body.drag_factor") || Daily("water.discharge") || Daily("canopy.main.coefficient"))
}

// Flights of the wagtail whose inputs were drawn three times as far out as its file says, told by logs and by a
// logbook: both find the uncertainties too narrow, by about that.
func TestPastOfFlights(t *testing.T) {
	f := open(t, "wagtail")
	r := f.Rocket()
	spreads := study.Spreads(f)
	rng := rand.New(rand.NewPCG(11, 4))
	shared := map[string]float64{}
	var all []*Compared
	d := Days{Book: &logbook.Book{}}
	for i := range 4 {
		values := map[string]float64{}
		for _, s := range spreads {
			at, _ := s.Input.Get(r)
			draw := 3 * s.SD * rng.NormFloat64()
			if !Daily(s.Input.Name) {
				if i == 0 {
					shared[s.Input.Name] = draw
				}
				draw = shared[s.Input.Name]
			}
			values[s.Input.Name] = min(max(at+draw, s.Input.Min), s.Input.Max)
		}
		fl := flyWith(t, r, values)
		m := usual()
		m.seed, m.noise = uint64(i), 0.1
		at, h := m.heights(fl)
		c, err := Hold(context.Background(), logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights}))
		require.NoError(t, err)
		all = append(all, c)
		e := logbook.New()
		e.Date, e.Kind = "2026-05-17", logbook.Flight
		e.Measured, e.Predicted = map[string]string{}, map[string]string{}
		for _, x := range c.Differences {
			e.Measured[x.Row.Name] = quantity.Format(x.Measured, x.Row.Metric(), 5)
			e.Predicted[x.Row.Name] = quantity.Format(x.Predicted, x.Row.Metric(), 5)
		}
		d.Entries = append(d.Entries, e, logbook.Entry{Kind: logbook.Proof, Pressure: 16e5})
	}
	p, err := PastOf(context.Background(), f, append(all, all[0]), spreads, study.Options{})
	require.NoError(t, err)
	assert.Equal(t, 4, p.Flights, "one given twice counts once")
	assert.Contains(t, p.Daily, "water.fill")
	assert.Contains(t, p.Common, "body.drag_factor")
	of := map[string]Past{}
	for _, x := range p.Results {
		of[x.Row.Name] = x
	}
	apogee := of["apogee.height"]
	assert.Equal(t, TooNarrow, apogee.Word(), "%+v", apogee)
	assert.Less(t, apogee.Low, 3.0)
	assert.Greater(t, apogee.High, 3.0)

	booked, err := PastOfBook(context.Background(), f, d, spreads, study.Options{})
	require.NoError(t, err)
	assert.Equal(t, 4, booked.Flights)
	require.Len(t, booked.Results, len(p.Results))
	for i := range booked.Results {
		assert.InEpsilon(t, p.Results[i].Factor, booked.Results[i].Factor, 0.05, p.Results[i].Row.Name)
	}
	two, err := PastOf(context.Background(), f, all[:2], spreads, study.Options{})
	require.NoError(t, err)
	assert.Empty(t, two.Results)
}
