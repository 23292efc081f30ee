package words

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// Every mend has words of its own, in either system, fit for the end of a line.
func TestRemedies(t *testing.T) {
	f := rocketfile.Starter()
	in, err := rocketfile.Find(f.Rocket(), "water.fill")
	require.NoError(t, err)
	seen := map[string]gates.RemedyKind{}
	for k := gates.SetInput; k <= gates.NothingFound; k++ {
		for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
			text := In(sys).Remedy(gates.Remedy{Kind: k, Input: in, From: 0.3, To: 0.25})
			assert.NotEmpty(t, text)
			assert.NotContains(t, strings.ToLower(text), "safe")
			assert.False(t, strings.HasSuffix(text, "."), text)
			if other, there := seen[text]; there {
				assert.Equal(t, k, other, text)
			}
			seen[text] = k
		}
	}
	assert.Equal(t, "water.fill 25 % or less", In(quantity.Metric).Remedy(gates.Remedy{Input: in, From: 0.3, To: 0.25}))
	assert.Equal(t, "water.fill 35 % or more, but then, on the day, outside its limit: landing", In(quantity.Metric).Remedy(gates.Remedy{Input: in, From: 0.3, To: 0.35, Breaks: []string{"landing"}}))
	assert.Contains(t, In(quantity.Metric).Remedy(gates.Remedy{Kind: gates.CutVent, To: math.Inf(1)}), "open")
	rail, err := rocketfile.Find(f.Rocket(), "rail.length")
	require.NoError(t, err)
	assert.Equal(t, "rail.length 6.57 ft or more", In(quantity.US).Remedy(gates.Remedy{Input: rail, From: 1, To: 2}))
}
