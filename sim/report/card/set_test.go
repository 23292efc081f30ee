package card

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

func TestCardDelays(t *testing.T) {
	p := filler{Printer: words.In(quantity.Metric)}
	for _, c := range []struct {
		delay  float64
		listed []float64
		want   string
	}{
		{9, nil, "9 s"},
		{9, []float64{7, 9, 11}, "9 s: nothing to drill; listed 7, 9, 11 s"},
		{8, []float64{11, 7, 9}, "8 s: drill 1 s off the 9 s one; listed 11, 7, 9 s"},
		{12, []float64{7, 9}, "12 s: longer than any listed; listed 7, 9 s"},
		{math.NaN(), nil, "none: no charge"},
	} {
		assert.Equal(t, c.want, p.delay(&rocket.Motor{Delay: c.delay, Delays: c.listed}))
	}
}

func TestCardRules(t *testing.T) {
	p := filler{Printer: words.In(quantity.Metric)}
	for want, r := range map[string]rocket.Rule{
		"launch + 9 s":          {Trigger: rocket.AfterLaunch, Value: 9},
		"burnout + 8 s":         {Trigger: rocket.AfterBurnout, Value: 8},
		"apogee + 0.5 s":        {Trigger: rocket.AfterApogee, Value: 0.5},
		"apogee − 1 s":          {Trigger: rocket.AfterApogee, Value: -1},
		"falling through 120 m": {Trigger: rocket.Falling, Value: 120},
		"ejection":              {Trigger: rocket.Ejection},
		"never":                 {},
	} {
		assert.Equal(t, want, p.Opens(r))
	}
	assert.Equal(t, "falling through 394 ft", filler{Printer: words.In(quantity.US)}.Opens(rocket.Rule{Trigger: rocket.Falling, Value: 120}))
}

func TestCardFigures(t *testing.T) {
	assert.Equal(t, "3.00° and 16 °C, 60.8 °F, degrees, 5 degrees", signs("3.00 deg and 16 degC, 60.8 degF, degrees, 5 degrees"))
	assert.Equal(t, "250°", compass(250*math.Pi/180))
	assert.Equal(t, "77 m NE", toward("77 m", "north-east"))
	assert.Equal(t, "77 m S", toward("77 m", "south"))
	for v, want := range map[float64]string{0: "", 0.004: "", 0.006: "± 0.01", 0.077: "± 0.08", 0.123: "± 0.12", 4.44: "± 4.4", 22.3: "± 22", 753: "± 753"} {
		assert.Equal(t, want, plusMinus(v), v)
	}
}
