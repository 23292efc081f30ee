package sim

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
)

// φ of complex numbers: those of real ones on the axis, the definition by the exponential, and the
// doubling.
func TestPhiComplex(t *testing.T) {
	near := func(a, b complex128, within float64) {
		t.Helper()
		assert.InDelta(t, 0, cmplx.Abs(a-b)/cmplx.Abs(b), within)
	}
	for _, x := range []float64{-20, -1, -0.3, -1e-7, 0.4} {
		p1, p2, p3 := phi(x)
		q1, q2, q3 := phiComplex(complex(x, 0))
		near(q1, complex(p1, 0), 1e-14)
		near(q2, complex(p2, 0), 1e-14)
		near(q3, complex(p3, 0), 1e-14)
	}
	for _, z := range []complex128{-0.1 + 0.3i, -0.2 + 0.45i, -0.3 + 2i, -2 - 7i, 5i} {
		p1, p2, p3 := phiComplex(z)
		near(z*p1, cmplx.Exp(z)-1, 1e-14)
		near(z*z*p2, cmplx.Exp(z)-1-z, 1e-12)
		near(z*z*z*p3, cmplx.Exp(z)-1-z-z*z/2, 1e-11)
		q1, q2, q3 := twiceComplex(z, p1, p2, p3)
		w1, w2, w3 := phiComplex(2 * z)
		near(q1, w1, 1e-13)
		near(q2, w2, 1e-13)
		near(q3, w3, 1e-12)
	}
}

// swinging is a weather vane with constants for coefficients, and a push that comes and goes slowly if it is not nothing:
// in body axes that are those of east, north and up, and in the turn.
type swinging struct {
	vane *vane
	push float64
}

func (s swinging) rates(t float64, y, dy *state, _ *forces) {
	*dy = state{}
	for k := range 2 {
		f := s.vane.times(pick(k, y))
		f.spin += s.push * math.Sin(3*t)
		place(k, dy, f)
	}
}

// steadyVane is a vane as it might fly, that of an attitude which is none.
func steadyVane() *vane {
	var v vane
	y := state{attitude: 1}
	v.set(&y, &forces{mass: 0.5, axial: 90, airspeed: 90, turn: 0.25, damping: 0.03, sideways: 1, ahead: 20, swing: 40,
		inertia: massProperties{pitch: 0.012, roll: 2e-4}})
	return &v
}

// A swing is exact over any number of turns of it: what the step solves is linear.
func TestSwingIsExact(t *testing.T) {
	v := steadyVane()
	assert.True(t, v.on)
	eq := swinging{v, 0}
	start := state{attitude: 1, attitude + 1: 0.01, attitude + 2: -0.02, spin: 0.003, spin + 1: 0.002, vEast: 0.4, vNorth: -0.3}
	const span = 0.3 // two swings
	want, _ := march(eq, &stiffPart{}, start, 0, span, 20_000)
	var s stages
	s.n = states
	var f, y1, f1, est state
	eq.rates(0, &start, &f, &forces{})
	s.swing(eq, v, 0, span, &start, &f, &y1, &f1, &est, &forces{})
	for k := range 2 {
		a, b := pick(k, &want), pick(k, &y1)
		assert.InEpsilon(t, a.turn, b.turn, 1e-9)
		assert.InEpsilon(t, a.spin, b.spin, 1e-9)
		assert.InEpsilon(t, a.speed, b.speed, 1e-9)
	}
}

// Pushed, it is solved to the fourth order, and not wildly where a step takes more than a swing.
func TestSwingOrderIsFourth(t *testing.T) {
	v := steadyVane()
	eq := swinging{v, 3}
	const span = 2.0
	want, _ := march(eq, &stiffPart{}, state{attitude: 1}, 0, span, 100_000)
	fault := func(n int) float64 {
		s := stages{n: states}
		y := state{attitude: 1}
		var f, y1, f1, est state
		h := span / float64(n)
		for i := range n {
			at := float64(i) * h
			eq.rates(at, &y, &f, &forces{})
			w := *v
			s.swing(eq, &w, at, h, &y, &f, &y1, &f1, &est, &forces{})
			y = y1
		}
		return math.Abs(y[spin] - want[spin])
	}
	assert.Less(t, fault(10), 0.05*math.Abs(want[spin]), "eight radians a step")
	a, b, c := fault(80), fault(160), fault(320)
	assert.InDelta(t, 4, math.Log2(a/b), 0.1)
	assert.InDelta(t, 4, math.Log2(b/c), 0.1)
}

// The slow eigenvalue is one, however strong the thrust is at a low speed: it is not slow then.
func TestSlowEigenvalue(t *testing.T) {
	for _, ahead := range []float64{-20, 0, 20, 60, 200} {
		for _, speed := range []float64{5.0, 9, 14, 30, 90} {
			var v vane
			y := state{attitude: 1}
			v.set(&y, &forces{mass: 0.5, axial: speed, airspeed: speed, turn: 0.25 * speed / 90, damping: 0.03 * speed / 90,
				sideways: speed / 90, ahead: ahead, swing: 40 * speed / 90, inertia: massProperties{pitch: 0.012, roll: 2e-4}})
			if !v.on {
				continue
			}
			path := v.times(v.path)
			assert.InDelta(t, v.slow, path.turn, 1e-9, "%v N at %v m/s", ahead, speed)
			assert.InDelta(t, v.slow*v.path.spin, path.spin, 1e-9*math.Abs(v.stiff), "%v N at %v m/s", ahead, speed)
			assert.InDelta(t, v.slow*v.path.speed, path.speed, 1e-9*(1+math.Abs(v.along)), "%v N at %v m/s", ahead, speed)
			assert.InDelta(t, 1, v.drifts(v.path), 1e-9)
		}
	}
}
