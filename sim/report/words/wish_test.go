package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

func TestWishWords(t *testing.T) {
	table := results.For(rocketfile.Starter().Rocket())
	for text, want := range map[string][2]string{
		"":                    {"the highest apogee", "flies highest"},
		"least landing.drift": {"the least drift", "has the least drift"},
		"max.speed":           {"the greatest speed", "has the greatest speed"},
		"apogee.height=300 m": {"apogee of 300 m", "comes nearest to apogee of 300 m"},
	} {
		w, err := study.ReadWish(table, text)
		require.NoError(t, err)
		p := In(quantity.Metric)
		assert.Equal(t, want, [2]string{p.Wish(&w), p.Granted(&w)})
	}
}
