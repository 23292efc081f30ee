package gates

import (
	"context"
	"fmt"
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

// A verdict in two goes, corners first and then mends, is that in one; one of some checks only has the rows of all.
func TestVerdictInParts(t *testing.T) {
	r := open(t, "tube")
	o := all(r)
	once := judge(t, r, o)
	o.Remedies = false
	corners := judge(t, r, o)
	o.Remedies, o.Flown = true, &corners
	twice := judge(t, r, o)
	require.Positive(t, once.Failed())
	require.Len(t, twice.Checks, len(once.Checks))
	for i := range once.Checks {
		a, b := &once.Checks[i], &twice.Checks[i]
		assert.Equal(t, told(a), told(b))
	}
	only := []string{LimitRailExit, checkLeft, LimitLanding}
	some := judge(t, r, Options{Spreads: o.Spreads, Like: &corners, Only: only})
	require.Len(t, some.Checks, len(only))
	for i := range some.Checks {
		c := find(t, &once, some.Checks[i].Key)
		assert.Equal(t, fmt.Sprint(c.Values, c.Word), fmt.Sprint(some.Checks[i].Values, some.Checks[i].Word), c.Key)
	}
}

// told is a check with its mends, which have functions and numbers that are none.
func told(c *Check) string {
	s := fmt.Sprint(c.Key, c.Values, c.SD, c.Word)
	for i := range c.Remedies {
		m := &c.Remedies[i]
		s += fmt.Sprint(" ", m.Kind, m.Input.Name, m.From, m.To, m.And != nil)
	}
	return s
}
