package flown

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

// Deviations are what they say: of many made-up logs, the true values drawn from the spreads
// and the noise white, stepped or correlated, so many lie within one and within two.
func TestCoverage(t *testing.T) {
	long.Unraced(t)
	f := open(t, "bottle")
	r := f.Rocket()
	spreads := spreadsOf(t, f, "body.drag_factor", "water.discharge", "water.exponent", "canopy.main.coefficient")
	kinds := []struct {
		name string
		log  madeUp
	}{
		{"white", madeUp{hertz: 20, before: 8, after: 4, noise: 0.5}},
		{"stepped", madeUp{hertz: 20, before: 8, after: 4, noise: 0.1, step: 0.3}},
		{"correlated", madeUp{hertz: 20, before: 8, after: 4, noise: 0.4, rho: 0.9}},
	}
	logs := long.Of(18, 300)
	var mu sync.Mutex
	one, two, all := map[string]int{}, map[string]int{}, map[string]int{}
	t.Run("logs", func(t *testing.T) {
		for part := range 2 {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				for n := part; n < logs; n += 2 {
					k := kinds[n%len(kinds)]
					rng := rand.New(rand.NewPCG(uint64(n), 2026))
					truth := map[string]float64{}
					for _, s := range spreads {
						v, _ := s.Input.Get(r)
						truth[s.Input.Name] = v + s.SD*rng.NormFloat64()
					}
					m := k.log
					m.seed, m.release, m.zero = uint64(n), 9+rng.Float64(), rng.NormFloat64()
					at, h := m.heights(flyWith(t, r, truth))
					l := logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
					got, err := Fit(context.Background(), []Logged{l}, spreads)
					if !errors.Is(err, ErrNothingLearned) {
						require.NoError(t, err, "log %d", n)
					}
					mu.Lock()
					for _, in := range got.Inputs {
						off := math.Abs(in.Value-truth[in.Input.Name]) / in.SD
						for _, name := range []string{k.name, in.Input.Name, "all"} {
							all[name]++
							if off < 1 {
								one[name]++
							}
							if off < 2 {
								two[name]++
							}
						}
					}
					mu.Unlock()
				}
			})
		}
	})
	for name, n := range all {
		t.Logf("%-24s %5d: %.1f %% within one, %.1f %% within two", name, n, 100*float64(one[name])/float64(n), 100*float64(two[name])/float64(n))
	}
	// Of fewer logs chance takes more: three deviations of a share.
	n := float64(all["all"])
	chance := long.Of(3*math.Sqrt(0.68*0.32/n), 0)
	assert.InDelta(t, 0.68, float64(one["all"])/n, 0.05+chance)
	assert.GreaterOrEqual(t, float64(two["all"])/n, 0.93-chance)
	assert.LessOrEqual(t, float64(two["all"])/n, 0.975+chance)
}
