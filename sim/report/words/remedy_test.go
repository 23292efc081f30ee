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
	nothing := gates.Remedy{Kind: gates.NothingFound, Input: in, From: math.NaN(), To: 0.35, Breaks: []string{"landing", "wind"}, Worse: []string{"wind"}, Why: "build another"}
	assert.Equal(t, "no input within reach passes it alone: water.fill 35 % would fail landing, and make wind worse, which fails already: build another", In(quantity.Metric).Remedy(nothing))
	delay := gates.Remedy{Kind: gates.NothingFound, Input: rocketfile.Input{Name: "motor.delay"}, From: 20.7, To: 9, Why: "open by height"}
	assert.Equal(t, "no delay of this motor comes nearer than 20.7 m/s, at 9 s: open by height", In(quantity.Metric).Remedy(delay))
	both := gates.Remedy{Input: in, From: 0.3, To: 0.25, And: &gates.Remedy{Input: in, From: 0.2, To: 0.3}}
	assert.Equal(t, "water.fill 25 % or less together with water.fill 30 % or more", In(quantity.Metric).Remedy(both))
	assert.Contains(t, In(quantity.Metric).Remedy(gates.Remedy{Kind: gates.CutVent, To: math.Inf(1)}), "open")
	rail, err := rocketfile.Find(f.Rocket(), "rail.length")
	require.NoError(t, err)
	assert.Equal(t, "rail.length 6.562 ft or more", In(quantity.US).Remedy(gates.Remedy{Input: rail, From: 1, To: 2}))
}
