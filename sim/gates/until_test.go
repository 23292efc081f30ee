package gates

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
)

// What a criterion reads of a flight that ends as soon as it has seen enough is what it reads of all of it, to the last bit,
// also where thrust outlasts the way up or a rocket never leaves its guide.
func TestShortFlightsTellTheSame(t *testing.T) {
	short := map[until]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := anyRocket(t)
		if r.Motor != nil && rapid.Bool().Draw(t, "weak") {
			r.Motor.Factor = rapid.Float64Range(0.1, 0.5).Draw(t, "thrust")
		}
		if r.Validate() != nil {
			t.Skip("no rocket")
		}
		whole, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		for _, g := range criteriaOf(r, today) {
			if g.until == untilDown || g.value == nil {
				continue
			}
			fl, err := g.until.fly(context.Background(), r)
			require.NoError(t, err)
			want, got := g.look(whole), g.look(fl)
			if want.Known || got.Known { // NaN is not itself
				assert.Equal(t, want, got, g.key)
			}
			short[g.until]++
		}
	})
	for u := untilTop; u <= untilReady; u++ {
		assert.NotZero(t, short[u])
	}
}
