package sim

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// benchmark flies a rocket again and again as a study does, and reports what a flight costs: right-hand sides,
// accepted and rejected steps, whole and by leg, and what is allocated; and the least that a flight of a block of them took, which
// a busy machine spoils least.
func benchmark(b *testing.B, r *rocket.Rocket) {
	var x Flyer
	var fl *Flight
	b.ReportAllocs()
	const block = 50
	least, begun := time.Duration(math.MaxInt64), time.Now()
	for n := 1; b.Loop(); n++ {
		var err error
		if fl, err = x.Fly(context.Background(), r, Options{}); err != nil {
			b.Fatal(err)
		}
		if n%block == 0 {
			now := time.Now()
			least, begun = min(least, now.Sub(begun)), now
		}
	}
	b.ReportMetric(float64(least.Nanoseconds())/block, "least-ns")
	var all effort
	report := func(e effort, of string) {
		b.ReportMetric(float64(e.rates), of+"rates")
		b.ReportMetric(float64(e.steps), of+"steps")
		if e.rejected > 0 {
			b.ReportMetric(float64(e.rejected), of+"rejected")
		}
	}
	for i, e := range fl.effort {
		all.steps += e.steps
		all.rejected += e.rejected
		all.rates += e.rates
		if e.rates > 0 {
			report(e, strings.ReplaceAll(legNames[i], " ", "-")+"-")
		}
	}
	report(all, "")
}

func BenchmarkWaterFlight(b *testing.B) {
	for _, throat := range []float64{0.005, 0.009, 0.013, 0.022} {
		for _, fill := range []float64{0.3, 0.95} {
			for _, windy := range []bool{false, true} {
				b.Run(fmt.Sprintf("throat=%gmm/fill=%g/wind=%v", throat*1e3, fill, windy), func(b *testing.B) {
					r := bottle()
					if windy {
						withWind(r)
					}
					r.Water.Throat, r.Water.Fill = throat, fill
					benchmark(b, r)
				})
			}
		}
	}
}

func BenchmarkTubeFlight(b *testing.B) {
	r := bottle()
	r.Water.Tube = &rocket.LaunchTube{Length: 0.2, Outer: 0.0085, Inner: 0.007}
	benchmark(b, r)
}

func BenchmarkMotorFlight(b *testing.B) { benchmark(b, withWind(motorRocket(b))) }

func BenchmarkRigidFlight(b *testing.B) {
	for _, drive := range []string{"water", "motor"} {
		for _, windy := range []bool{false, true} {
			b.Run(fmt.Sprintf("%s/wind=%v", drive, windy), func(b *testing.B) {
				r := rigidRocket(b)
				if drive == "water" {
					r = wetRigid(b)
				}
				if windy {
					withWind(r)
				}
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
