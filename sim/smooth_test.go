package sim

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/long"
	"ullage/sim/rocket"
)

// The apogee against the fill is smooth, for those who look for its highest: from one fill to the next, a
// thousandth on, its error changes by less than a millionth of the highest apogee, where steps come or go too; and by less than a
// millionth of the fill's own, as long as that itself changes by less than half a hundredth.
func TestApogeeIsSmooth(t *testing.T) {
	tubed := func(r *rocket.Rocket) *rocket.Rocket {
		r.Water.Tube = &rocket.LaunchTube{Length: 0.2, Outer: 0.98 * r.Water.Throat, Inner: 0.8 * r.Water.Throat}
		return r
	}
	through := func(throat float64, r *rocket.Rocket) *rocket.Rocket {
		r.Water.Throat = throat
		return r
	}
	large := func() *rocket.Rocket {
		r := bottle()
		r.Body.Mass, r.Body.Diameter = 1.5, 0.13
		r.Water.Volume, r.Water.Bore, r.Water.Throat, r.Water.Pressure = 0.01, 0.12, 0.015, 15e5
		return r
	}
	rockets := map[string]*rocket.Rocket{
		"tube": tubed(bottle()), "tube in wind": withWind(tubed(bottle())),
		"large": large(), "large in wind": withWind(large()), "large, tube in wind": withWind(tubed(large())),
	}
	for _, throat := range []float64{0.005, 0.009, 0.013, 0.022} {
		add := func(name string, r *rocket.Rocket) {
			rockets[fmt.Sprintf("%g mm, %s", throat*1e3, name)] = through(throat, r)
		}
		add("calm", bottle())
		add("wind", withWind(bottle()))
		add("rigid", wetRigid(t))
		add("rigid in wind", withWind(wetRigid(t)))
	}
	for name, r := range rockets {
		highest := 0.0
		for i := range 18 {
			r.Water.Fill = 0.1 + 0.05*float64(i)
			highest = math.Max(highest, mustFly(r, 0).Apogee.Height)
		}
		sum, worst, own := 0.0, 0.0, 0.0
		n, last, before, every := 0, math.NaN(), 0.0, long.Of(60, 1)
		for i := range 851 {
			if i%every > 1 {
				last = math.NaN()
				continue
			}
			r.Water.Fill = 0.1 + float64(i)/1000
			usual, exact := mustFly(r, 0), mustFly(r, 1e-8)
			off := (usual.Apogee.Height - exact.Apogee.Height) / highest
			if !exact.RailExit.Happened {
				off = math.NaN()
			}
			if change := math.Abs(off - last); change >= 0 { // there was one before
				n++
				sum += change * change
				worst = math.Max(worst, change)
				if apogee := exact.Apogee.Height; math.Abs(apogee-before) < 0.005*apogee {
					own = math.Max(own, change*highest/apogee)
				}
			}
			last, before = off, exact.Apogee.Height
		}
		t.Logf("%s: %.2g in the mean, %.2g at most, %.2g of its own", name, math.Sqrt(sum/float64(n)), worst, own)
		assert.Less(t, worst, 1e-6, name)
		assert.Less(t, own, 1e-6, name)
	}
}
