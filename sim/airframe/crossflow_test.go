package airframe

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// caseLong is a slender body: 1300 × 40 mm, margins at small angles good, most of its side ahead.
func caseLong() *Shape {
	s := caseA()
	s.Length = 1.3
	s.Fins[0] = Fins{Count: 3, Root: 0.08, Tip: 0.04, Span: 0.045, Sweep: 0.04, Thickness: 0.002, Section: FlatSection, Position: 1.215}
	return s
}

// The centre of pressure at an angle by hand, for three bodies: Barrowman's equations and NACA Report
// 1048's cross-flow on the side view, whose area and centroid are sums over strips; computed
// by plain arithmetic apart from this program, mm from the tip of the nose.
func TestPressureCentreAtAnAngle(t *testing.T) {
	for name, x := range map[string]struct {
		shape *Shape
		at    map[float64]float64
	}{
		"case A": {caseA(), map[float64]float64{0: 677.4455, 5: 656.1619, 10: 638.2469, 20: 610.1463, 45: 568.5947, 90: 546.3928}},
		"case B": {caseB(), map[float64]float64{0: 650.9429, 5: 628.1702, 10: 610.1702, 20: 583.8720, 45: 548.7858, 90: 531.6648}},
		"long":   {caseLong(), map[float64]float64{0: 1024.5114, 5: 939.5389, 10: 887.7053, 20: 828.3454, 45: 769.4037, 90: 746.4815}},
	} {
		a := x.shape.Aero()
		for angle, want := range x.at {
			assert.InDelta(t, want, 1e3*a.PressureCentre(0, angle*deg), 2e-3, "%s at %g", name, angle)
		}
		m0, m1, _ := a.Moments(0.5)
		assert.Equal(t, m1/m0, a.PressureCentre(0.5, 0))
		assert.InDelta(t, a.PressureCentre(0, 90*deg), a.PressureCentre(0, 150*deg), 1e-12, "from behind")
		assert.InDelta(t, a.PressureCentre(0, 20*deg), a.PressureCentre(0, -20*deg), 1e-12)
		assert.Less(t, a.PressureCentre(0, math.Pi/2), m1/m0)
	}
}
