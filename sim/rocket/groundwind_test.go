package rocket

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/atmosphere"
)

// A gust near the ground counts with the wind it comes on top of, by hand: 3 and 4 m/s at right angles are 5, one against the
// other no less than the wind alone, and what sets in above the height of the wind is none near the ground.
func TestGroundWind(t *testing.T) {
	r := wet(t)
	r.Wind = atmosphere.Wind{Speed: 3, From: math.Pi / 2, Height: 10}
	for _, x := range []struct {
		gust atmosphere.Gust
		want float64
	}{
		{atmosphere.Gust{}, 3},
		{atmosphere.Gust{Speed: 4, From: math.Pi / 2}, 7},
		{atmosphere.Gust{Speed: 4}, 5},
		{atmosphere.Gust{Speed: 4, From: -math.Pi / 2}, 3},
		{atmosphere.Gust{Speed: 4, From: math.Pi / 2, Height: 9}, 7},
		{atmosphere.Gust{Speed: 4, From: math.Pi / 2, Height: 10}, 3},
	} {
		r.Gust = x.gust
		assert.InDelta(t, x.want, r.GroundWind(), 1e-12, "%+v", x.gust)
	}
}
