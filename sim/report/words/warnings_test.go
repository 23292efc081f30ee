package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
)

// Every code that the engine can warn with is told, and its sentences give the
// numbers and end as sentences do.
func TestEveryWarningIsTold(t *testing.T) {
	codes := sim.WarningCodes()
	require.NotEmpty(t, codes)
	assert.Len(t, warnings, len(codes))
	for _, code := range codes {
		told, ok := warningOf(code)
		if !assert.True(t, ok, "%s", code) {
			continue
		}
		for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
			text := In(sys).Warning(sim.Warning{Code: code, Canopy: "main", Value: 1.5, Limit: 2.5})
			assert.Greater(t, len(text), 60, "%s says what to do", code)
			assert.Equal(t, byte('.'), text[len(text)-1])
		}
		assert.Contains(t, gates.Words(), told.word)
	}
}

func TestWarningTextShowsItsNumbers(t *testing.T) {
	assert.Contains(t, In(quantity.Metric).Warning(sim.Warning{Code: sim.TubeTipWet, Value: 0.31, Limit: 0.25}),
		"310 mm deep but the launch tube reaches only 250 mm")
	assert.Contains(t, In(quantity.US).Warning(sim.Warning{Code: sim.CanopyAtApogee, Canopy: "main", Value: 120, Limit: 95.5}),
		"394 ft, but apogee is at 313 ft")
	assert.Contains(t, In(quantity.Metric).Warning(sim.Warning{Code: sim.LiquidLeft, Value: 1.25}), "1.25 kg")
	assert.Equal(t, "rain", In(quantity.Metric).Warning(sim.Warning{Code: "rain"}))
}
