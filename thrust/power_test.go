package thrust

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPower(t *testing.T) {
	for _, e := range []float64{0, 0.115, 0.2, 2.0 / 7, 0.4, 1, 1.1, 1.4, 5.0 / 3, 2, -0.4, -1} {
		var p power
		p.fit(e)
		for x := 1e-3; x < 40; x *= 1.00317 {
			assert.InEpsilon(t, math.Pow(x, e), p.of(x), 2e-15, "%g^%g", x, e)
		}
		for _, x := range []float64{0.125, math.Nextafter(0.125, 0), 1, math.Nextafter(1, 0), 2, math.Nextafter(2, 0)} {
			assert.InEpsilon(t, math.Pow(x, e), p.of(x), 2e-15, "%g^%g", x, e)
		}
	}
	var p power
	p.fit(1.4)
	assert.True(t, math.IsNaN(p.of(math.NaN())))
	assert.True(t, math.IsNaN(p.of(-1)))
	assert.Zero(t, p.of(0))
}

func BenchmarkPower(b *testing.B) {
	var p power
	p.fit(1.4)
	x := 0.3
	for b.Loop() {
		x = p.of(x*0.1 + 0.5)
	}
}

func BenchmarkPrepare(b *testing.B) {
	c := liquidChamber(0.013, 1.4)
	for b.Loop() {
		c.Prepare()
	}
}
