package airframe

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Inertias of a solid cylinder and a thin tube (textbook), in round numbers.
func TestCylinderAndShell(t *testing.T) {
	c := Cylinder(12, 1, 3, 0.5)
	assert.Equal(t, Lump{Mass: 12, At: 2, Pitch: 12 * (3*0.25 + 4) / 12, Roll: 1.5}, c)
	s := Shell(12, 1, 3, 0.5)
	assert.Equal(t, Lump{Mass: 12, At: 2, Pitch: 12 * (6*0.25 + 4) / 12, Roll: 3}, s)
}

// Parallel axes (Huygens, Steiner): a rod cut in two is the rod.
func TestCutCylinder(t *testing.T) {
	whole := Cylinder(6, 0.2, 1.4, 0.1)
	for _, cut := range []float64{0.3, 0.8, 1.39} {
		m := 6 * (cut - 0.2) / 1.2
		both := Combine(Cylinder(m, 0.2, cut, 0.1), Cylinder(6-m, cut, 1.4, 0.1))
		assert.InDelta(t, whole.Mass, both.Mass, 1e-12)
		assert.InDelta(t, whole.At, both.At, 1e-12)
		assert.InDelta(t, whole.Pitch, both.Pitch, 1e-12)
		assert.InDelta(t, whole.Roll, both.Roll, 1e-12)
	}
	// Two points: reduced mass times the square of their distance.
	p := Combine(Lump{Mass: 1, At: 0}, Lump{Mass: 3, At: 2})
	assert.Equal(t, Lump{Mass: 4, At: 1.5, Pitch: 0.75 * 4}, p)
	assert.Equal(t, Lump{}, Combine())
	assert.Equal(t, Lump{Pitch: 1, Roll: 2}, Combine(Lump{At: 3, Pitch: 1, Roll: 2}))
}

// In whatever order lumps are joined, the whole is the same.
func TestCombineAssociates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) Lump {
			return Lump{
				Mass: rapid.Float64Range(0.001, 10).Draw(t, name+" mass"), At: rapid.Float64Range(0, 3).Draw(t, name+" at"),
				Pitch: rapid.Float64Range(0, 1).Draw(t, name+" pitch"), Roll: rapid.Float64Range(0, 1).Draw(t, name+" roll"),
			}
		}
		a, b, c := draw("a"), draw("b"), draw("c")
		x, y := Combine(Combine(a, b), c), Combine(c, b, a)
		for _, d := range [][2]float64{{x.Mass, y.Mass}, {x.At, y.At}, {x.Pitch, y.Pitch}, {x.Roll, y.Roll}} {
			if math.Abs(d[0]-d[1]) > 1e-12*(1+math.Abs(d[0])) {
				t.Fatalf("%+v is not %+v", x, y)
			}
		}
		if x.Pitch < a.Pitch+b.Pitch+c.Pitch-1e-12 {
			t.Fatal("joining lessened the inertia")
		}
	})
}

// The estimate balances where it was measured, is the even tube in the middle, and has
// the m·b(L − b)/3 it says.
func TestEstimate(t *testing.T) {
	s := caseA()
	middle := Estimate(s, 0.5, 0.4)
	tube := Shell(0.5, 0, 0.8, 0.02)
	assert.InDelta(t, tube.Pitch, middle.Pitch, 1e-15)
	assert.InDelta(t, tube.Roll, middle.Roll, 1e-15)
	for _, b := range []float64{0.1, 0.47, 0.6, 0.79} {
		l := Estimate(s, 0.5, b)
		assert.Equal(t, b, l.At)
		assert.InDelta(t, 0.5, l.Mass, 1e-15)
		assert.InDelta(t, 0.5*b*(0.8-b)/3+0.5*0.02*0.02/2, l.Pitch, 1e-15)
		halves := Combine(Shell(0.5*(0.8-b)/0.8, 0, b, 0.02), Shell(0.5*b/0.8, b, 0.8, 0.02))
		assert.InDelta(t, b, halves.At, 1e-15)
	}
	for _, b := range []float64{-1, 0, 0.8, 5} {
		l := Estimate(s, 0.5, b)
		assert.Positive(t, l.Pitch)
		assert.InDelta(t, 0.5*0.02*0.02, l.Roll, 1e-15)
	}
	assert.Equal(t, Lump{Mass: 1, At: 2}, Estimate(&Shape{}, 1, 2))
}

// A mass list: a tube over the skin, a solid cylinder, a disc and a ring, by hand.
func TestSum(t *testing.T) {
	s := caseA()
	got := Sum(s, []Part{
		{Name: "tube", Mass: 0.2, Position: 0.4, Length: 0.8},
		{Name: "battery", Mass: 0.1, Position: 0.2, Length: 0.05, Diameter: 0.02},
		{Name: "disc", Mass: 0.03, Position: 0.6, Diameter: 0.04},
		{Name: "ring", Mass: 0.02, Position: 0.7},
	})
	mass := 0.35
	at := (0.2*0.4 + 0.1*0.2 + 0.03*0.6 + 0.02*0.7) / mass
	pitch := 0.2*(6*0.0004+0.64)/12 + 0.1*(3*0.0001+0.0025)/12 + 0.03*0.0004/4 + 0.02*0.0004/2 +
		0.2*(0.4-at)*(0.4-at) + 0.1*(0.2-at)*(0.2-at) + 0.03*(0.6-at)*(0.6-at) + 0.02*(0.7-at)*(0.7-at)
	assert.InDelta(t, mass, got.Mass, 1e-15)
	assert.InDelta(t, at, got.At, 1e-15)
	assert.InDelta(t, pitch, got.Pitch, 1e-15)
	assert.InDelta(t, 0.2*0.0004+0.1*0.0001/2+0.03*0.0004/2+0.02*0.0004, got.Roll, 1e-15)
}
