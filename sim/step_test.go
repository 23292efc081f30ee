package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// φ against their definition where that is well conditioned, and against the series
// near zero.
func TestPhi(t *testing.T) {
	p1, p2, p3 := phi(0)
	assert.Equal(t, [3]float64{1, 0.5, 1.0 / 6}, [3]float64{p1, p2, p3})
	for _, z := range []float64{-1e-8, -1e-3, -0.1, -0.4999999, -0.5, -0.7, -3, -40, -2000, 0.3, 0.5, 2} {
		p1, p2, p3 := phi(z)
		// z³φ₃ = e^z − 1 − z − z²/2 and so on, as series summed with the small terms first.
		series := func(k int) float64 {
			sum, term := 0.0, 1.0
			terms := []float64{}
			for n := 1; n <= k; n++ {
				term /= float64(n)
			}
			for n := k + 1; n < k+60; n++ {
				terms = append(terms, term)
				term *= z / float64(n)
			}
			for i := len(terms) - 1; i >= 0; i-- {
				sum += terms[i]
			}
			return sum
		}
		if math.Abs(z) < 4 {
			assert.InEpsilon(t, series(1), p1, 1e-14, z)
			assert.InEpsilon(t, series(2), p2, 1e-13, z)
			assert.InEpsilon(t, series(3), p3, 1e-13, z)
		} else {
			assert.InEpsilon(t, -1/z, p1, math.Exp(z)+1e-15, z)
			assert.InEpsilon(t, (p1-1)/z, p2, 1e-15, z)
			assert.InEpsilon(t, (p2-0.5)/z, p3, 1e-15, z)
		}
	}
}

func TestPhiTwice(t *testing.T) {
	for _, z := range []float64{-800, -30, -2, -0.6, -0.3, -1e-6, 0, 0.2} {
		p1, p2, p3 := phi(z)
		q1, q2, q3 := twice(z, p1, p2, p3)
		w1, w2, w3 := phi(2 * z)
		assert.InEpsilon(t, w1, q1, 1e-13, z)
		assert.InEpsilon(t, w2, q2, 1e-13, z)
		assert.InEpsilon(t, w3, q3, 1e-13, z)
	}
}

// The weights with the stiff rate zero are the classical tableau's, and satisfy
// the order conditions at any rate: ΣB = φ₁, Σbc = φ₂, Σbc² = 2φ₃.
func TestWeights(t *testing.T) {
	var w weights
	w.set(0)
	for i, v := range []float64{w.half1 - 0.5, w.half2 - 0.5, w.full1 - 1, w.full2 - 1, w.b2 - 1.0/3, w.b4 - 1.0/6} {
		assert.InDelta(t, 0, v, 1e-15, i)
	}
	for _, z := range []float64{-0.01, -0.3, -2, -50} {
		p1, p2, p3 := phi(z)
		w.set(z)
		b1 := p1 - 2*w.b2 - w.b4
		assert.InDelta(t, p1-3*p2+4*p3, b1, 1e-14)
		assert.InDelta(t, p2, 2*w.b2*0.5+w.b4, 1e-14)
		assert.InDelta(t, 2*p3, 2*w.b2*0.25+w.b4, 1e-14)
	}
}

// quadraticDrag falls in air of constant density from height up: closed form
// v = v∞ tanh(gt/v∞), drop = v∞²/g·ln cosh(gt/v∞).
type quadraticDrag struct{ terminal float64 }

func (q quadraticDrag) rates(_ float64, y, dy *state, _ *forces) {
	*dy = state{}
	dy[up] = y[vUp]
	dy[vUp] = -9.80665 * (1 + y[vUp]*math.Abs(y[vUp])/(q.terminal*q.terminal))
}

func march(eq equations, stiff *stiffPart, y state, from, to float64, n int) (end, estimate state) {
	s := stages{n: states}
	var f, y1, f1, est state
	h := (to - from) / float64(n)
	eq.rates(from, &y, &f, &forces{})
	for i := range n {
		s.step(eq, stiff, from+float64(i)*h, h, &y, &f, &y1, &f1, &est, &forces{})
		y, f = y1, f1
	}
	return y, est
}

// The order of convergence, measured: fourth.
func TestOrderIsFourth(t *testing.T) {
	eq := quadraticDrag{20}
	exact := -20 * math.Tanh(9.80665*3/20)
	drop := -20 * 20 / 9.80665 * math.Log(math.Cosh(9.80665*3/20))
	fault := func(n int) (float64, float64) {
		y, _ := march(eq, &stiffPart{}, state{}, 0, 3, n)
		return math.Abs(y[vUp] - exact), math.Abs(y[up] - drop)
	}
	v1, z1 := fault(20)
	v2, z2 := fault(40)
	v3, z3 := fault(80)
	for _, ratio := range []float64{v1 / v2, v2 / v3, z1 / z2, z2 / z3} {
		assert.InDelta(t, 4, math.Log2(ratio), 0.25)
	}
}

// The same problem with its drag taken as the stiff part, frozen anew each step,
// is solved to the fourth order too.
func TestExponentialOrderIsFourth(t *testing.T) {
	eq := quadraticDrag{20}
	exact := -20 * math.Tanh(9.80665*3/20)
	fault := func(n int) float64 {
		s := stages{n: states}
		var y, f, y1, f1, est state
		h := 3.0 / float64(n)
		eq.rates(0, &y, &f, &forces{})
		for range n {
			var stiff stiffPart
			stiff.add(vUp, -2*9.80665*math.Abs(y[vUp])/400)
			s.step(eq, &stiff, 0, h, &y, &f, &y1, &f1, &est, &forces{})
			y, f = y1, f1
		}
		return math.Abs(y[vUp] - exact)
	}
	a, b, c := fault(20), fault(40), fault(80)
	assert.InDelta(t, 4, math.Log2(a/b), 0.3)
	assert.InDelta(t, 4, math.Log2(b/c), 0.3)
}

// slaved is a stiff equation y' = λ(y − sin t) + cos t, whose answer is sin t
// (Prothero and Robinson, Math. Comp. 28 (1974) 145): the explicit method would need
// |λh| < 2.8.
type slaved struct{ lambda float64 }

func (s slaved) rates(t float64, y, dy *state, _ *forces) {
	*dy = state{}
	dy[jet] = s.lambda*(y[jet]-math.Sin(t)) + math.Cos(t)
}

func TestStiffStepIsStableAndAccurate(t *testing.T) {
	for _, lambda := range []float64{-1e2, -1e4, -1e6} {
		stiff := new(stiffPart)
		stiff.add(jet, lambda)
		y1, _ := march(slaved{lambda}, stiff, state{}, 0, 2, 20)
		y2, _ := march(slaved{lambda}, stiff, state{}, 0, 2, 40)
		e1, e2 := math.Abs(y1[jet]-math.Sin(2)), math.Abs(y2[jet]-math.Sin(2))
		assert.Less(t, e1, 1e-4, lambda)
		assert.Less(t, e2, e1/3, lambda)
	}
	y, _ := march(slaved{-1e4}, &stiffPart{}, state{}, 0, 2, 20)
	assert.False(t, math.Abs(y[jet]) < 1, "the explicit form should have blown up here: the test would prove nothing")
}

// The estimate bounds the true local error: it belongs to the third order companion.
func TestEstimateBoundsTheError(t *testing.T) {
	eq := quadraticDrag{20}
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(0.01, 0.8).Draw(t, "h")
		v := rapid.Float64Range(-40, 0).Draw(t, "v")
		start := state{vUp: v}
		end, est := march(eq, &stiffPart{}, start, 0, h, 1)
		fine, _ := march(eq, &stiffPart{}, start, 0, h, 256)
		fault := math.Abs(end[vUp] - fine[vUp])
		if fault > math.Abs(est[vUp])+1e-12 {
			t.Fatalf("error %g above the estimate %g", fault, est[vUp])
		}
	})
}

// The dense output is exact for cubics, and keeps the ends and their slopes.
func TestHermite(t *testing.T) {
	cubic := func(x float64) (float64, float64) { return 1 + x*(2+x*(3-4*x)), 2 + x*(6-12*x) }
	var y0, f0, y1, f1, y state
	const a, h = 0.3, 0.7
	y0[up], f0[up] = cubic(a)
	y1[up], f1[up] = cubic(a + h)
	for _, theta := range []float64{0, 0.2, 0.5, 0.9, 1} {
		hermite(states, theta, h, &y0, &f0, &y1, &f1, &y)
		want, _ := cubic(a + theta*h)
		require.InDelta(t, want, y[up], 1e-14)
	}
}

// A cubic that begins at nothing, rises and falls back is found where it falls; one that never rises is not.
func TestComesBack(t *testing.T) {
	c := cubic{0, 1, -1, -4} // θ(1 − θ − θ²): by its values and slopes at both ends
	assert.InDelta(t, (math.Sqrt(5)-1)/2, c.comesBack(), 1e-12)
	low := cubic{-1e-12, 1e-3, -1, -2}
	assert.InDelta(t, 1e-3/1.002, low.comesBack(), 1e-6)
	never := cubic{0, -1, -1, -1}
	assert.True(t, math.IsInf(never.comesBack(), 1))
}
