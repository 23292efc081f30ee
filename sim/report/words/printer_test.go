package words

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"ullage/sim/chamber"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

func TestFigures(t *testing.T) {
	p := In(quantity.Metric)
	for v, want := range map[float64]string{
		213.6: "214 m", 1234.5: "1234 m", 7.1: "7.10 m", 0.0991: "0.0991 m", 0.00207: "0.0021 m", 1.18e-10: "0 m", -1e-9: "0 m",
		0: "0 m", -0.02: "-0.0200 m", math.NaN(): "-", math.Inf(1): "-",
	} {
		assert.Equal(t, want, p.Height(v))
	}
	assert.Equal(t, "0.0003", p.Number(0.000275))
	assert.Equal(t, "0", p.Number(math.Copysign(0, -1)))
	assert.Equal(t, "75 ft·lbf", In(quantity.US).Given(rocket.DefaultLimits().Energy, "J"))
	assert.Equal(t, "30 %", p.Given(0.3, "%"))
	assert.Equal(t, "120 g", p.Given(0.12, "g"))
	assert.Equal(t, "1.25 kg", p.Mass(1.25))
	assert.Equal(t, "980 m/s²", p.Acceleration(980.4))
	assert.Equal(t, "100 g", p.Gravities(980.665))
}

func TestBearing(t *testing.T) {
	for _, test := range []struct {
		east, north float64
		want        string
	}{
		{0, 1, "north"}, {1, 1, "north-east"}, {1, 0, "east"}, {1, -1, "south-east"}, {0, -1, "south"},
		{-1e-9, -1, "south"}, {-1, -1, "south-west"}, {-1, 0, "west"}, {-1, 1, "north-west"}, {-0.1, 1, "north"},
	} {
		assert.Equal(t, test.want, Bearing(test.east, test.north), "%v", test)
	}
}

func TestProofPressureKeepsToItsLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(1e3, 5e7).Draw(t, "pressure")
		for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
			p := In(sys)
			down, up := p.Floor(v), p.cut(v, math.Ceil)
			assert.LessOrEqual(t, down, v*(1+1e-8))
			assert.GreaterOrEqual(t, up, v*(1-1e-8))
			assert.InEpsilon(t, v, down, 0.0101)
			assert.InEpsilon(t, v, up, 0.0101)
			limit := v * rapid.Float64Range(0.5, 2).Draw(t, "limit")
			r := chamber.Result{Proof: math.Min(v, limit), ProofLimit: limit, ProofEnough: limit >= v}
			assert.LessOrEqual(t, p.ProofPressure(&r), limit*(1+1e-8))
			assert.Equal(t, p.ProofFigure(&r), p.Pressure(p.ProofPressure(&r)))
		}
	})
}
