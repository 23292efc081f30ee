package bench_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/bench"
	"ullage/thrust"
)

const mm = 1e-3

// By hand: a ring of 2.62 mm (the 1xx series of AS568) in a bore of 34 mm over a floor of 29.8 mm has 2.1 mm of
// room, is squeezed by 0.52/2.62 = 19.8 %, and fills 5.3913/(2.1 · 3.6) = 71.3 % of a groove 3.6 mm wide.
func TestSealByHand(t *testing.T) {
	s := bench.Seal{Cord: 2.62 * mm, Groove: 29.8 * mm, Width: 3.6 * mm, Bore: 34 * mm, Plug: 33.95 * mm}
	assert.Empty(t, s.Missing())
	assert.InDelta(t, 2.1*mm, s.Depth(), 1e-12)
	assert.InDelta(t, 0.1985, s.Squeeze(), 1e-4)
	assert.InDelta(t, 0.7131, s.Fill(), 1e-4)
	assert.InDelta(t, 0.05*mm, s.Gap(), 1e-12)
	assert.True(t, math.IsNaN(s.Stretch()))

	// Stretched by 4 % it is thinner by √1.04: 2.569 mm.
	s.Inside = 29.8 * mm / 1.04
	assert.InDelta(t, 0.04, s.Stretch(), 1e-12)
	assert.InDelta(t, 1-2.1/2.5691, s.Squeeze(), 1e-4)

	// Thickness classes and hardness; beyond the table nothing is bridged, softer than it nothing is known.
	s = bench.Seal{Cord: 2.62 * mm}
	assert.InDelta(t, 0.09*mm, s.AllowedGap(16e5), 1e-12)
	assert.InDelta(t, 0.07*mm, s.AllowedGap(50e5), 1e-12)
	assert.Zero(t, s.AllowedGap(200e5))
	s.Hardness = 90
	assert.InDelta(t, 0.15*mm, s.AllowedGap(16e5), 1e-12)
	s.Hardness = 80
	assert.InDelta(t, 0.09*mm, s.AllowedGap(16e5), 1e-12, "no more than the next softer has")
	s.Hardness = 60
	assert.True(t, math.IsNaN(s.AllowedGap(16e5)))
	assert.Equal(t, []string{"groove", "width", "bore", "plug"}, s.Missing())
}

// Grooves of Parker's O-Ring Handbook for static seals (depth and width without back-up rings, inches, from
// memory): those proposed come near them, and they lie within the bounds here.
func TestSealAgainstTheHandbook(t *testing.T) {
	const inch = 0.0254
	for _, row := range []struct{ cord, depth, width float64 }{
		{0.070, 0.051, 0.0955}, {0.103, 0.082, 0.1425}, {0.139, 0.112, 0.1895}, {0.210, 0.1715, 0.2835}, {0.275, 0.2275, 0.3775},
	} {
		bore := 2.0
		s := bench.Seal{Cord: row.cord * inch, Bore: bore * inch, Groove: (bore - 2*row.depth) * inch, Width: row.width * inch}
		assert.True(t, s.Squeeze() > bench.LeastSqueeze && s.Squeeze() < bench.MostSqueeze, "%g: squeeze %g", row.cord, s.Squeeze())
		assert.Less(t, s.Fill(), bench.MostFill)
		groove, width := s.Proposed()
		assert.InEpsilon(t, row.depth*inch, (s.Bore-groove)/2, 0.1, "%g", row.cord)
		assert.InEpsilon(t, row.width*inch, width, 0.06, "%g", row.cord)
		s.Groove, s.Width = groove, width
		assert.InDelta(t, 0.20, s.Squeeze(), 1e-9)
		assert.InDelta(t, 0.72, s.Fill(), 1e-9)
	}
}

// 100 in³ have one hole of 1/4 in, or four of 1/8.
func TestPorts(t *testing.T) {
	const inch = 0.0254
	b := bench.Bay{Volume: 100 * inch * inch * inch, Ports: 1}
	assert.InDelta(t, 0.25*inch, b.Port(), 1e-12)
	b.Ports = 4
	assert.InDelta(t, 0.125*inch, b.Port(), 1e-12)
	b.Ports = 0
	assert.Equal(t, bench.UsualPorts, b.Number())
}

// The lag is that under which an orifice lets the bay's air out by the isentropic flow of a gas (Saint-Venant and
// Wantzel), to a thousandth: at such small differences air is incompressible.
func TestLagIsTheOrificesFlow(t *testing.T) {
	const temperature, pressure, speed = 288.15, 101325., 60.
	density := pressure / (thrust.Air.Constant() * temperature)
	b := bench.Bay{Volume: 0.5e-3, Ports: 1}
	lag := b.Lag(speed, pressure, density)
	area := math.Pi / 4 * b.Port() * b.Port()
	inside := pressure + lag*density*9.80665
	gamma, ratio := thrust.Air.Gamma(), pressure/inside
	jet := area * inside * math.Sqrt(2*gamma/((gamma-1)*thrust.Air.Constant()*temperature)*
		(math.Pow(ratio, 2/gamma)-math.Pow(ratio, (gamma+1)/gamma)))
	left := b.Volume * density * density * 9.80665 * speed / pressure // kg/s that has to leave: V dρ/dt
	assert.InEpsilon(t, left, 0.61*jet, 1e-3)
	assert.Less(t, lag, 0.1, "m, at the size that practice has")
}

func TestDrills(t *testing.T) {
	assert.InDelta(t, 2.3*mm, bench.DrillFor(2.21*mm), 1e-12)
	assert.InDelta(t, 2.3*mm, bench.DrillFor(2.3*mm), 1e-12)
	assert.InDelta(t, 4*mm, bench.HoleOf(math.Pi*4*mm*mm, 1), 1e-12)
	assert.InDelta(t, 2*mm, bench.HoleOf(math.Pi*4*mm*mm, 4), 1e-12)
	assert.InDelta(t, 2.618*mm, bench.GapAt(0.3, math.Pi/360), 1e-6)
}

// By hand: 3 L at 10 bar and 288.15 K take 10e5 · 3e-3/(287.05 · 288.15) = 36.3 g of air; a pump of 0.2 L at
// 101 325 Pa 148 strokes; a bottle of 10 L falls by 10 · 3/10 = 3 bar.
func TestFillingByHand(t *testing.T) {
	g := bench.Gas{Volume: 3e-3, Pressure: 10e5, Ambient: 101325, Temperature: 288.15, Constant: 287.05}
	assert.InDelta(t, 36.27e-3, g.Mass(), 1e-5)
	assert.InDelta(t, 148.04, g.Strokes(0.2e-3), 0.01)
	f := bench.Filling{Bottle: 10e-3, BottlePressure: 20e5, Leak: 0.2e5, LeakTime: 300, Wait: 120}
	assert.InDelta(t, 17e5, g.BottleAfter(&f), 1e-6)
	assert.Equal(t, 3, g.Fillings(&f), "20, 17, 14, 11: the next would end below 10")
	assert.InDelta(t, 0.08e5, f.LostBy(), 1e-6)
	f.Wait = 0
	assert.True(t, math.IsNaN(f.LostBy()))
}

func TestCheck(t *testing.T) {
	keys := func(b bench.Bench) (all []string) {
		for _, f := range b.Check() {
			all = append(all, f.Key)
		}
		return all
	}
	assert.Empty(t, keys(bench.Bench{}))
	assert.Equal(t, []string{"seal.groove"}, keys(bench.Bench{Seal: bench.Seal{Groove: 34 * mm, Bore: 30 * mm}}))
	assert.Equal(t, []string{"seal.plug"}, keys(bench.Bench{Seal: bench.Seal{Plug: 34 * mm, Bore: 30 * mm}}))
	assert.Equal(t, []string{"seal.plug"}, keys(bench.Bench{Seal: bench.Seal{Plug: 28 * mm, Groove: 29 * mm, Bore: 30 * mm}}))
	assert.Equal(t, []string{"filling.wait"}, keys(bench.Bench{Filling: bench.Filling{Wait: -1}}))
}
