package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/atmosphere"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// What nobody stated of the air is not told as if somebody had.
func TestAir(t *testing.T) {
	for text, s := range map[string]atmosphere.Site{
		"15 degC and 1013 hPa by the standard atmosphere": {},
		"15 degC by the standard atmosphere, 990 hPa":     {Pressure: 99000},
		"30 degC, 1013 hPa":                               {Temperature: 303.15},
	} {
		p := In(quantity.Metric)
		assert.Equal(t, text, p.Air(s))
		assert.Equal(t, s.Temperature == 0, p.StandardDay(&rocket.Rocket{Site: s}) != "")
	}
	assert.Contains(t, In(quantity.US).StandardDay(&rocket.Rocket{}), "59 degF. In warmer air the rocket lands faster.")
	assert.Contains(t, In(quantity.US).StandardDay(&rocket.Rocket{Water: &rocket.Water{}}), "pressure")
}

func TestWarmer(t *testing.T) {
	assert.Equal(t, "10 °C", In(quantity.Metric).Warmer(10))
	assert.Equal(t, "18 °F", In(quantity.US).Warmer(10))
}
