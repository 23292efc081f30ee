package words

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/atmosphere"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

func TestWindWords(t *testing.T) {
	p := In(quantity.Metric)
	for says, w := range map[string]atmosphere.Wind{
		"no wind stated":          {},
		"calm":                    {Stated: true},
		"wind 4 m/s from 270 deg": {Speed: 4, From: 4.71238898},
		"wind 3 m/s from 90 deg at 10 m, one layer":                   {Layers: []atmosphere.Layer{{Height: 10, Speed: 3, From: 1.570796}}},
		"wind calm at 10 m, 2 layers up to 9 m/s from 0 deg at 500 m": {Layers: []atmosphere.Layer{{Height: 10}, {Height: 500, Speed: 9}}},
	} {
		assert.Equal(t, says, p.Wind(&w))
	}
	for says, w := range map[string]plan.WindLimit{
		"do not fly above 5.2 m/s of wind; beyond it drift fails":                 {Passes: true, Most: 5.2, Above: []string{"drift"}},
		"do not fly below 2 m/s of wind, nor above 5 m/s; beyond it a and b fail": {Passes: true, Least: 2, Most: 5, Above: []string{"a", "b"}},
		"fly in calm air only; beyond it drift fails":                             {Passes: true, Above: []string{"drift"}},
		"do not fly in any wind: landing fails in all that were tried":            {Fails: []string{"landing"}, Unjudged: []string{"b"}},
		"not judged in any wind: apogee under the ceiling and drift":              {Unjudged: []string{"apogee under the ceiling", "drift"}},
	} {
		assert.Equal(t, says, p.MostWind(&w))
	}
	us := In(quantity.US)
	assert.Equal(t, "wind 8.95 mph from 270 deg", us.Wind(&atmosphere.Wind{Speed: 4, From: 4.71238898}))
	assert.Equal(t, "do not fly above 11.6 mph of wind", us.MostWind(&plan.WindLimit{Passes: true, Most: 5.2}), "11.63, down")
	limit := gates.LimitFor(&rocket.Rocket{}, gates.LimitWind)
	assert.Equal(t, "at most 20 mph", us.Bounds(limit), "NFPA 1127's")
	assert.Equal(t, "8.95 mph", us.CheckValue(&gates.Check{Limit: limit, Value: 4, Judged: true}))
}

// A gust and turbulence are told beside the wind.
func TestDayWind(t *testing.T) {
	p := In(quantity.Metric)
	r := &rocket.Rocket{Wind: atmosphere.Wind{Speed: 3, From: math.Pi / 2, Stated: true}}
	assert.Equal(t, "wind 3 m/s from 90 deg", p.DayWind(r))
	r.Gust = rocket.Gust{Speed: 6, From: math.Pi, Height: 20}
	assert.Equal(t, "wind 3 m/s from 90 deg, a gust of 6 m/s from 180 deg above 20 m", p.DayWind(r))
	r.Gust.Length, r.Wind.Turbulence = 50, 0.1
	assert.Equal(t, "wind 3 m/s from 90 deg, a gust of 6 m/s from 180 deg above 20 m, full 50 m higher, turbulence of 10 % where flights are drawn", p.DayWind(r))
}
