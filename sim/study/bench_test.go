package study

import (
	"fmt"
	"os"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// benched are the rockets of the figures: one airframe, as a point mass and as it is.
func benched(b *testing.B) map[string]*rocket.Rocket {
	b.Helper()
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(b, err)
	rigid := f.Rocket()
	point := rigid.Clone()
	point.Model = rocket.PointModel
	return map[string]*rocket.Rocket{"point": point, "rigid": rigid}
}

// spent is what something takes: time on the clock, time of processors, and which share of the
// machine was idle meanwhile (from /proc/stat; 0 where there is none).
type spent struct{ wall, cpu, idle float64 }

func spend(do func()) spent {
	idle, all := idleTicks()
	clock, cpu := time.Now(), cpuSeconds()
	do()
	s := spent{wall: time.Since(clock).Seconds(), cpu: cpuSeconds() - cpu}
	if later, of := idleTicks(); of > all {
		s.idle = (later - idle) / (of - all)
	}
	return s
}

// idleTicks are the idle and all ticks of the machine so far.
func idleTicks() (idle, all float64) {
	text, err := os.ReadFile("/proc/stat")
	if err != nil {
		return 0, 0
	}
	line, _, _ := strings.Cut(string(text), "\n")
	for i, f := range strings.Fields(line)[1:] {
		var v float64
		_, _ = fmt.Sscan(f, &v)
		if all += v; i == 3 {
			idle = v
		}
	}
	return idle, all
}

func median(x []float64) float64 {
	slices.Sort(x)
	return x[len(x)/2]
}

// BenchmarkScatter draws and flies 10 000: cpu-s is time of processors, of which two idle cores
// take half each.
func BenchmarkScatter(b *testing.B) {
	for name, r := range benched(b) {
		b.Run(name, func(b *testing.B) {
			draws := Draws{Spreads: DefaultSpread(r), Flights: 10_000, Seed: 1}
			b.ReportAllocs()
			var cpu, wall []float64
			for b.Loop() {
				s := spend(func() {
					_, err := Disperse(background, r, draws, Options{}, nil)
					require.NoError(b, err)
				})
				cpu, wall = append(cpu, s.cpu), append(wall, s.wall)
			}
			b.ReportMetric(median(cpu), "cpu-s")
			b.ReportMetric(median(wall), "s")
		})
	}
}

// BenchmarkTwoCores sets a scatter on two cores against the same on one, in turn. How much faster
// it is by the clock counts where the machine is idle else; by time of processors it is what two idle
// cores would give. Medians.
func BenchmarkTwoCores(b *testing.B) {
	for name, r := range benched(b) {
		b.Run(name, func(b *testing.B) {
			draws := Draws{Spreads: DefaultSpread(r), Flights: 4_000, Seed: 1}
			on := func(workers int) spent {
				return spend(func() {
					_, err := Disperse(background, r, draws, Options{Workers: workers}, nil)
					require.NoError(b, err)
				})
			}
			var byClock, byCPU, idle []float64
			for b.Loop() {
				one, two := on(1), on(2)
				byClock, byCPU = append(byClock, one.wall/two.wall), append(byCPU, 2*one.cpu/two.cpu)
				idle = append(idle, two.idle)
			}
			b.ReportMetric(median(byClock), "×clock")
			b.ReportMetric(median(byCPU), "×cpu")
			b.ReportMetric(100*median(idle), "idle-%")
		})
	}
}

// BenchmarkMillion is one scatter of a million, with the most memory it took.
func BenchmarkMillion(b *testing.B) {
	if testing.Short() {
		b.Skip("takes long")
	}
	r := benched(b)["point"]
	draws := Draws{Spreads: DefaultSpread(r), Flights: 1_000_000, Seed: 1}
	for b.Loop() {
		most, done := uint64(0), make(chan struct{})
		go func() {
			for {
				select {
				case <-done:
					return
				case <-time.After(100 * time.Millisecond):
					var m runtime.MemStats
					runtime.ReadMemStats(&m)
					most = max(most, m.Sys-m.HeapReleased)
				}
			}
		}()
		s := spend(func() {
			_, err := Disperse(background, r, draws, Options{}, nil)
			require.NoError(b, err)
		})
		close(done)
		b.ReportMetric(s.cpu, "cpu-s")
		b.ReportMetric(s.wall, "s")
		b.ReportMetric(float64(most)/1e6, "MB")
	}
}

// BenchmarkFillCurve101 is a fill curve as the screen draws it.
func BenchmarkFillCurve101(b *testing.B) {
	for name, r := range benched(b) {
		b.Run(name, func(b *testing.B) {
			axes := []Axis{Linear(input(b, r, "water.fill"), 0, 0.98, 101)}
			b.ReportAllocs()
			cpu := cpuSeconds()
			for b.Loop() {
				require.NoError(b, Sweep(background, r, axes, Options{}, func(Row) error { return nil }))
			}
			b.ReportMetric((cpuSeconds()-cpu)/float64(b.N)*1e3, "cpu-ms")
		})
	}
}

// BenchmarkRailExit is the look along the rail behind every flight shown.
func BenchmarkRailExit(b *testing.B) {
	for name, r := range benched(b) {
		b.Run(name, func(b *testing.B) {
			cpu := cpuSeconds()
			for b.Loop() {
				_, err := RailExitFor(background, r, 15, Options{})
				require.NoError(b, err)
			}
			b.ReportMetric((cpuSeconds()-cpu)/float64(b.N)*1e3, "cpu-ms")
		})
	}
}
