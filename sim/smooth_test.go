package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/long"
	"ullage/sim/rocket"
)

// The apogee against the fill is smooth, for those who look for its highest: from one fill to the next, a
// thousandth on, its error changes by less than a millionth in the mean, the jumps where a step comes or goes among
// them.
func TestApogeeIsSmooth(t *testing.T) {
	for name, r := range map[string]*rocket.Rocket{"calm": bottle(), "wind": withWind(bottle()), "rigid": withWind(wetRigid(t))} {
		last, sum, worst := math.NaN(), 0.0, 0.0
		n := long.Of(100, 250)
		for i := range n {
			r.Water.Fill = 0.2 + float64(i)/1000
			off := mustFly(r, 0).Apogee.Height/mustFly(r, 1e-9).Apogee.Height - 1
			if i > 0 {
				sum += (off - last) * (off - last)
				worst = math.Max(worst, math.Abs(off-last))
			}
			last = off
		}
		usual := math.Sqrt(sum / float64(n-1))
		t.Logf("%s: %.2g in the mean, %.2g at most", name, usual, worst)
		assert.Less(t, usual, 1e-6, name)
	}
}
