package gates

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/results"
)

// A limit on a result is on one that there is, found by its name, and the same that the
// check of that result goes by.
func TestLimitsOnResults(t *testing.T) {
	r := open(t, "heron")
	table := results.For(r)
	checks := map[string]Limit{}
	for _, c := range criteriaOf(r, today) {
		if c.result != "" {
			checks[c.result] = c.limit
		}
	}
	found := 0
	for _, row := range rows {
		if row.result == "" {
			continue
		}
		name := strings.Replace(row.result, "*", r.Canopies[0].Name, 1)
		require.NotNil(t, table.Find(name), row.result)
		l, there := LimitOn(r, name)
		require.True(t, there, name)
		assert.Equal(t, row.key, l.Key)
		require.Contains(t, checks, name)
		assert.Equal(t, checks[name].Word, l.Word, name)
		if row.key != LimitRailExit { // which the wind may ask more of
			assert.Equal(t, checks[name].Min, l.Min, name)
			assert.Equal(t, checks[name].Max, l.Max, name)
		}
		found++
	}
	assert.GreaterOrEqual(t, found, 8)
	for _, name := range []string{"apogee.height", "canopy.main.load", "margin.release", ""} {
		_, there := LimitOn(r, name)
		assert.False(t, there, name)
		word, level := JudgeResult(r, name, 1e9)
		assert.Empty(t, word)
		assert.Equal(t, Plain, level)
	}
	for v, want := range map[float64]string{0.5: WordLow, 2: WordGood, 4: WordHigh} {
		word, _ := JudgeResult(r, "margin.rail_exit", v)
		assert.Equal(t, want, word)
	}
	word, level := JudgeResult(r, "landing.vertical", 7)
	assert.Equal(t, WordHard, word)
	assert.Equal(t, Bad, level)
}
