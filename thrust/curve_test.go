package thrust

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"ullage/sim/fault"
)

func mustCurve(t testing.TB, points ...Point) *Curve {
	t.Helper()
	c, err := NewCurve(points)
	require.NoError(t, err)
	return c
}

// A trapezoid of thrust, worked by hand: up to 100 N in 0.1 s, held to 1 s, down
// by 1.2 s. 5 % of the peak is crossed at 0.005 s and at 1.19 s; outside lie
// 0.0125 and 0.025 N·s.
func TestTrapezoidByHand(t *testing.T) {
	c := mustCurve(t, Point{0, 0}, Point{0.1, 100}, Point{1, 100}, Point{1.2, 0})
	assert.InDelta(t, 105, c.Impulse(), 1e-12)
	assert.Equal(t, 100.0, c.Peak())
	assert.InDelta(t, 1.185, c.BurnTime(), 1e-12)
	assert.InDelta(t, (105-0.0375)/1.185, c.Average(), 1e-10)
	assert.Equal(t, 1.2, c.End())
	assert.Zero(t, c.EndsAbove())
	assert.InDelta(t, 25, c.Thrust(0.025), 1e-12)
	assert.InDelta(t, 50, c.Thrust(1.1), 1e-10)
	assert.InDelta(t, 0.3125, c.ImpulseAt(0.025), 1e-12)
	assert.InDelta(t, 5+90+7.5, c.ImpulseAt(1.1), 1e-10) // 75 N on the mean for the last 0.1 s
}

func TestKnotsAreExact(t *testing.T) {
	c := mustCurve(t, Point{0.1, 40}, Point{0.3, 60}, Point{0.7, 20})
	wantImpulse := []float64{0, 2, 12, 28}
	require.Equal(t, 4, c.Len())
	for i, p := range c.Points() {
		time, thrust, impulse := c.Knot(i)
		assert.Equal(t, p, Point{time, thrust})
		assert.InDelta(t, wantImpulse[i], impulse, 1e-12)
		assert.Equal(t, thrust, c.Thrust(time))
		assert.InDelta(t, impulse, c.ImpulseAt(time), 1e-12)
	}
}

func TestPointInFront(t *testing.T) {
	late := mustCurve(t, Point{0.2, 50}, Point{1, 0})
	assert.Equal(t, []Point{{0, 0}, {0.2, 50}, {1, 0}}, late.Points())
	assert.InDelta(t, 25, late.Thrust(0.1), 1e-12)

	prompt := mustCurve(t, Point{0, 50}, Point{1, 0})
	assert.Equal(t, []Point{{0, 50}, {1, 0}}, prompt.Points())
	assert.Equal(t, 50.0, prompt.Thrust(0))
	assert.InDelta(t, 0.95, prompt.BurnTime(), 1e-12) // from the very start
}

func TestEndsAboveZero(t *testing.T) {
	c := mustCurve(t, Point{0, 0}, Point{1, 30})
	assert.Equal(t, 30.0, c.EndsAbove())
	assert.Equal(t, 30.0, c.Thrust(1))
	assert.Zero(t, c.Thrust(math.Nextafter(1, 2)))
	assert.InDelta(t, 0.95, c.BurnTime(), 1e-12) // to the last point
}

func TestOutsideTheTable(t *testing.T) {
	c := mustCurve(t, Point{0, 10}, Point{2, 10})
	for _, early := range []float64{-1, math.Inf(-1), math.Copysign(5e-324, -1), math.NaN()} {
		assert.Zero(t, c.Thrust(early))
		assert.Zero(t, c.ImpulseAt(early))
	}
	for _, late := range []float64{2.1, math.Inf(1)} {
		assert.Zero(t, c.Thrust(late))
		assert.Equal(t, 20.0, c.ImpulseAt(late))
	}
}

// The burn time spans a lull: first rise to last fall, not the first fall.
func TestBurnTimeSpansALull(t *testing.T) {
	c := mustCurve(t, Point{0, 0}, Point{1, 100}, Point{2, 0}, Point{3, 0}, Point{4, 100}, Point{5, 0})
	assert.InDelta(t, 4.95-0.05, c.BurnTime(), 1e-12)
}

// Half a sine wave has the impulse 2·T·F/π. A linear table of it errs by the
// trapezoid rule's h², so twice the points leave a quarter of the error.
func TestImpulseConverges(t *testing.T) {
	errorOf := func(n int) float64 {
		points := make([]Point, n+1)
		for i := range points {
			x := float64(i) / float64(n)
			points[i] = Point{2 * x, math.Abs(80 * math.Sin(math.Pi*x))}
		}
		return mustCurve(t, points...).Impulse() - 2*2*80/math.Pi
	}
	coarse, fine := errorOf(50), errorOf(100)
	assert.Less(t, math.Abs(fine), 0.01)
	assert.InDelta(t, 4, coarse/fine, 0.01)
}

func anyCurve() *rapid.Generator[[]Point] {
	return rapid.Custom(func(t *rapid.T) []Point {
		n := rapid.IntRange(2, 40).Draw(t, "points")
		points := make([]Point, n)
		time := rapid.SampledFrom([]float64{0, 0.01, 0.5}).Draw(t, "first")
		for i := range points {
			points[i] = Point{time, rapid.Float64Range(0, 500).Draw(t, "thrust")}
			time += rapid.Float64Range(2e-6, 0.4).Draw(t, "step")
		}
		points[rapid.IntRange(0, n-1).Draw(t, "peak")].Thrust = 501
		return points
	})
}

// What must hold of every curve. The impulse is held against Gauss–Legendre
// quadrature of Thrust, piece by piece.
func TestCurveProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, err := NewCurve(anyCurve().Draw(t, "curve"))
		require.NoError(t, err)
		require.Positive(t, c.BurnTime())
		require.LessOrEqual(t, c.BurnTime(), c.End())
		require.Positive(t, c.Average())
		require.LessOrEqual(t, c.Average(), c.Peak()*(1+1e-12))
		sum := 0.0
		for i := 1; i < c.Len(); i++ {
			from, _, _ := c.Knot(i - 1)
			to, _, impulse := c.Knot(i)
			sum += quad.Fixed(c.Thrust, from, to, 3, quad.Legendre{}, 0)
			require.InDelta(t, sum, impulse, 1e-9)
			middle := from + rapid.Float64Range(0, 1).Draw(t, "share")*(to-from)
			require.GreaterOrEqual(t, c.Thrust(middle), 0.0)
			require.LessOrEqual(t, c.Thrust(middle), c.Peak()*(1+1e-12))
			require.InDelta(t, c.Impulse(), c.ImpulseAt(middle)+
				quad.Fixed(c.Thrust, middle, to, 3, quad.Legendre{}, 0)+c.Impulse()-impulse, 1e-9)
		}
	})
}

func TestLookupsDoNotAllocate(t *testing.T) {
	c := mustCurve(t, Point{0, 10}, Point{1, 20}, Point{2, 0})
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		for i := range c.Len() {
			at, _, _ := c.Knot(i)
			_ = c.Thrust(at + 0.3)
			_ = c.ImpulseAt(at + 0.3)
		}
		_ = c.Average() + c.BurnTime() + c.Impulse()
	}))
}

func TestNewCurveFaults(t *testing.T) {
	for name, c := range map[string]struct {
		points []Point
		line   int
		value  string
	}{
		"none":            {nil, 0, ""},
		"one":             {[]Point{{0.1, 5}}, 0, ""},
		"too many":        {make([]Point, MaxPoints+1), 2, "0"}, // and times that do not rise
		"NaN time":        {[]Point{{math.NaN(), 5}, {1, 0}}, 1, "NaN"},
		"infinite thrust": {[]Point{{0, 5}, {1, math.Inf(1)}}, 2, "+Inf"},
		"huge thrust":     {[]Point{{0, 5}, {1, math.MaxFloat64}}, 2, "1.7976931348623157e+308"},
		"denormal time":   {[]Point{{5e-324, 5}, {1, 0}}, 1, "5e-324"},
		"no thrust":       {[]Point{{0, 0}, {1, 0}}, 0, "0"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := NewCurve(c.points)
			var faults fault.List
			require.ErrorAs(t, err, &faults)
			assert.Equal(t, c.line, faults[0].Line)
			assert.Equal(t, c.value, faults[0].Value)
		})
	}
}

func TestACurveIsItsOwn(t *testing.T) {
	points := []Point{{0, 10}, {1, 0}}
	c := mustCurve(t, points...)
	points[0].Thrust = 99
	c.Points()[0].Thrust = 98
	assert.Equal(t, 10.0, c.Thrust(0))
}
