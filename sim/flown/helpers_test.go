package flown

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/flown/logfile"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// open reads one of the example rockets.
func open(t testing.TB, name string) *rocketfile.File {
	t.Helper()
	f, err := rocketfile.Open("../../testdata/" + name + ".toml")
	require.NoError(t, err)
	return f
}

// madeUp says how a recorder's log of a flight is made up.
type madeUp struct {
	hertz   float64
	before  float64 // s on the pad
	after   float64 // s after landing; negative cuts the flight
	noise   float64 // m
	rho     float64 // from one sample to the next
	step    float64 // m
	release float64 // s by the recorder's clock, the log beginning with 0
	zero    float64 // m
	seed    uint64
}

// usual is a common recorder.
func usual() madeUp {
	return madeUp{hertz: 20, before: 10, after: 5, noise: 0.4, release: 10.013, zero: 0, seed: 1}
}

// heights are a log of heights as measured.
func (m madeUp) heights(fl *sim.Flight) (t, h []float64) {
	rng := rand.New(rand.NewPCG(m.seed, 12))
	end := m.release + fl.Duration() + m.after
	drift := m.noise * rng.NormFloat64()
	for i := 0; float64(i)/m.hertz <= end; i++ {
		if at := float64(i) / m.hertz; at >= m.release-m.before {
			t = append(t, at)
		}
	}
	since := make([]float64, len(t))
	for i, at := range t {
		since[i] = at - m.release
	}
	h = make([]float64, len(t))
	fl.Places(since, func(i int, p sim.Place) {
		drift = m.rho*drift + math.Sqrt(1-m.rho*m.rho)*m.noise*rng.NormFloat64()
		y := m.zero + drift
		y += math.Max(p.Height, 0)
		if m.step > 0 {
			y = math.Round(y/m.step) * m.step
		}
		h[i] = y
	})
	return t, h
}

// csv writes columns as a log.
func csv(head string, columns ...[]float64) []byte {
	var b bytes.Buffer
	b.WriteString(head + "\n")
	for i := range columns[0] {
		for k, c := range columns {
			if k > 0 {
				b.WriteByte(',')
			}
			fmt.Fprintf(&b, "%.6g", c[i])
		}
		b.WriteByte('\n')
	}
	return b.Bytes()
}

func flyWith(t testing.TB, r *rocket.Rocket, values map[string]float64) *sim.Flight {
	t.Helper()
	r = r.Clone()
	for name, v := range values {
		in, err := rocketfile.Find(r, name)
		require.NoError(t, err)
		require.NoError(t, in.Set(r, v))
	}
	fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true})
	require.NoError(t, err)
	return fl
}

// logged reads a log against a rocket.
func logged(t testing.TB, name string, text []byte, r *rocket.Rocket, o Options) Logged {
	t.Helper()
	log, err := logfile.Read(name, text, logfile.Options{})
	require.NoError(t, err)
	rd, err := Read(log, r, o)
	require.NoError(t, err)
	return Logged{Reading: rd, Rocket: r}
}

func spreadsOf(t testing.TB, f *rocketfile.File, names ...string) []study.Spread {
	t.Helper()
	s, err := Vary(f.Rocket(), study.Spreads(f), names)
	require.NoError(t, err)
	return s
}
