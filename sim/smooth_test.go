package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/long"
	"ullage/sim/rocket"
)

// The apogee against the fill is smooth, for those who look for its highest: from one fill to the next, a
// thousandth on, its error changes by less than a millionth, where steps come or go too.
func TestApogeeIsSmooth(t *testing.T) {
	tubed := func(r *rocket.Rocket) *rocket.Rocket {
		r.Water.Tube = &rocket.LaunchTube{Length: 0.2, Outer: 0.98 * r.Water.Throat, Inner: 0.8 * r.Water.Throat}
		return r
	}
	large := func() *rocket.Rocket {
		r := bottle()
		r.Body.Mass, r.Body.Diameter = 1.5, 0.13
		r.Water.Volume, r.Water.Bore, r.Water.Throat, r.Water.Pressure = 0.01, 0.12, 0.015, 15e5
		return r
	}
	for name, r := range map[string]*rocket.Rocket{
		"calm": bottle(), "wind": withWind(bottle()), "tube": tubed(bottle()), "tube in wind": withWind(tubed(bottle())),
		"large": large(), "large in wind": withWind(large()), "large, tube in wind": withWind(tubed(large())),
		"rigid": wetRigid(t), "rigid in wind": withWind(wetRigid(t)),
	} {
		sum, worst := 0.0, 0.0
		n, last, every := 0, math.NaN(), long.Of(20, 1)
		for i := range 400 {
			if i%every > 1 {
				last = math.NaN()
				continue
			}
			r.Water.Fill = 0.2 + float64(i)/1000
			off := mustFly(r, 0).Apogee.Height/mustFly(r, 1e-8).Apogee.Height - 1
			if change := math.Abs(off - last); change >= 0 { // there was one before
				n++
				sum += change * change
				worst = math.Max(worst, change)
			}
			last = off
		}
		t.Logf("%s: %.2g in the mean, %.2g at most", name, math.Sqrt(sum/float64(n)), worst)
		assert.Less(t, worst, 1e-6, name)
	}
}
