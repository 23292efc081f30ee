package sim_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocketfile"
)

// Places are those of At.
func TestPlacesAreThoseOfAt(t *testing.T) {
	for _, name := range []string{"heron", "bottle", "tube", "drogue-main"} {
		f, err := rocketfile.Open("../testdata/" + name + ".toml")
		require.NoError(t, err)
		fl, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{Keep: true})
		require.NoError(t, err)
		var times []float64
		for at := -1.0; at < fl.Duration()+1; at += 0.0137 {
			times = append(times, at)
		}
		n := 0
		fl.Places(times, func(i int, p sim.Place) {
			s := fl.At(times[i])
			require.Equal(t, sim.Place{Height: s.Height, Vertical: s.Vertical, Speed: s.Speed}, p, "%s at %v", name, times[i])
			n++
		})
		require.Equal(t, len(times), n)
		fl.Read(times, func(i int, s sim.Sample) {
			want := fl.At(times[i])
			require.Equal(t, fmt.Sprint(want), fmt.Sprint(s), "%s at %v", name, times[i]) // NaN and all
			n--
		})
		require.Zero(t, n)
	}
	(&sim.Flight{}).Places([]float64{1}, func(int, sim.Place) { t.Fail() })
	(&sim.Flight{}).Read([]float64{1}, func(int, sim.Sample) { t.Fail() })
}

func BenchmarkPlaces(b *testing.B) {
	f, err := rocketfile.Open("../testdata/heron.toml")
	require.NoError(b, err)
	fl, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{Keep: true})
	require.NoError(b, err)
	times := make([]float64, 5000)
	for i := range times {
		times[i] = fl.Duration() * float64(i) / 5000
	}
	sum := 0.0
	b.Run("places", func(b *testing.B) {
		for b.Loop() {
			fl.Places(times, func(_ int, p sim.Place) { sum += p.Height })
		}
	})
	b.Run("read", func(b *testing.B) {
		for b.Loop() {
			fl.Read(times, func(_ int, s sim.Sample) { sum += s.Height })
		}
	})
	b.Run("at", func(b *testing.B) {
		for b.Loop() {
			for _, t := range times {
				sum += fl.At(t).Height
			}
		}
	})
}
