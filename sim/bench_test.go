package sim

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// benchmark flies a rocket again and again, and reports what a flight costs: right-hand sides,
// accepted and rejected steps, whole and by leg.
func benchmark(b *testing.B, r *rocket.Rocket) {
	var fl *Flight
	b.ReportAllocs()
	for b.Loop() {
		var err error
		if fl, err = Fly(context.Background(), r, Options{}); err != nil {
			b.Fatal(err)
		}
	}
	var all effort
	for i, e := range fl.effort {
		all.steps += e.steps
		all.rejected += e.rejected
		all.rates += e.rates
		if e.rates > 0 {
			b.ReportMetric(float64(e.rates), strings.ReplaceAll(legNames[i], " ", "-")+"-rates")
		}
	}
	b.ReportMetric(float64(all.steps), "steps")
	b.ReportMetric(float64(all.rejected), "rejected")
	b.ReportMetric(float64(all.rates), "rates")
}

func BenchmarkWaterFlight(b *testing.B) {
	for _, throat := range []float64{0.005, 0.009, 0.013, 0.022} {
		for _, windy := range []bool{false, true} {
			b.Run(fmt.Sprintf("throat=%gmm/wind=%v", throat*1e3, windy), func(b *testing.B) {
				r := bottle()
				if windy {
					withWind(r)
				}
				r.Water.Throat = throat
				benchmark(b, r)
			})
		}
	}
}

// The account of a flight's cost is whole.
func TestEffort(t *testing.T) {
	for _, r := range []*rocket.Rocket{withWind(bottle()), motorRocket(t), withWind(rigidRocket(t))} {
		fl := mustFly(r, 0)
		var all effort
		for _, e := range fl.effort {
			all.steps += e.steps
			all.rejected += e.rejected
			all.rates += e.rates
		}
		require.Equal(t, fl.Steps, all.steps)
		require.Equal(t, fl.Rejected, all.rejected)
		require.GreaterOrEqual(t, all.rates, 4*(fl.Steps+fl.Rejected))
		require.Zero(t, fl.effort[onTube])
		require.NotZero(t, fl.effort[coasts].rates)
		require.NotZero(t, fl.effort[descends].rates)
	}
}
