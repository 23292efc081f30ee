package gore

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Areas of closed surfaces: mensuration formulas (Zwillinger, CRC Standard Mathematical
// Tables and Formulas, chapter on geometry; from memory). An oblate spheroid's half is
// π a² (1 + (1−e²)/e · artanh e), a prolate one's π a² (1 + c/(a e) · arcsin e).
func TestGoresHaveTheSurfacesArea(t *testing.T) {
	const r = 0.035
	oblate := func(a, c float64) float64 {
		e := math.Sqrt(1 - c*c/(a*a))
		return math.Pi * a * a * (1 + (1-e*e)/e*math.Atanh(e))
	}
	prolate := func(a, c float64) float64 {
		e := math.Sqrt(1 - a*a/(c*c))
		return math.Pi * a * a * (1 + c/(a*e)*math.Asin(e))
	}
	for _, x := range []struct {
		name string
		of   Profile
		want float64
	}{
		{"hemisphere", Ellipsoid(r, r), 2 * math.Pi * r * r},
		{"ellipsoid 2:1", Ellipsoid(r, r/2), oblate(r, r/2)},
		{"deep ellipsoid", Ellipsoid(r, 3*r), prolate(r, 3*r)},
		{"cone", Cone(r, 0, 0.08), math.Pi * r * math.Hypot(r, 0.08)},
		{"frustum", Cone(r, 0.02, 0.05), math.Pi * (r + 0.02) * math.Hypot(r-0.02, 0.05)},
		{"disc", Cone(r, 0, 0), math.Pi * r * r},
		{"ring", Cone(r, 0.01, 0), math.Pi * (r*r - 0.01*0.01)},
		{"hemisphere along its axis", Along(r, func(x float64) float64 { return math.Sqrt(math.Max(0, r*r-x*x)) }), 2 * math.Pi * r * r},
	} {
		t.Run(x.name, func(t *testing.T) {
			assert.InEpsilon(t, x.want, x.of.Area(), 1e-4)
			for _, n := range []int{1, 6, 12} {
				g := x.of.Gores(n)
				assert.InEpsilon(t, x.want/float64(n), g.Area(), 1e-4)
				assert.InEpsilon(t, x.want/float64(n), shoelace(g.Outline(Allowance{})), 1e-4, "as it is drawn")
			}
		})
	}
}

func shoelace(points []Point) float64 {
	sum := 0.
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}

// A gore of a sphere is half a sine: at an angle φ above the rim its width is
// 2π R cos φ/n, its middle a quarter of a great circle.
func TestAGoreOfASphere(t *testing.T) {
	const r = 0.05
	g := Ellipsoid(r, r).Gores(8)
	assert.InEpsilon(t, math.Pi/2*r, g.Length(), 1e-4)
	assert.InEpsilon(t, 2*math.Pi*r/8, g.Wide(), 1e-9)
	for _, phi := range []float64{0.1, 0.5, 1, 1.5} {
		assert.InEpsilon(t, math.Pi*r*math.Cos(phi)/8, g.Half(r*phi), 1e-3, phi)
	}
	assert.Zero(t, g.Half(1), "beyond the pole")
	// The edge is √(1 + (π/n)² sin²φ) longer at each place: in the mean (π/2n)²·… after its series.
	assert.InEpsilon(t, math.Pow(math.Pi/8, 2)/4, g.Excess(), 0.04)
	assert.Less(t, Ellipsoid(r, r).Gores(12).Excess(), g.Excess())
	assert.Equal(t, 6, Ellipsoid(r, r).Fewest(4, 0.07))
	assert.Equal(t, 4, Cone(r, 0, r).Gores(4).Count)
	assert.LessOrEqual(t, Ellipsoid(r, r).Fewest(1, 1e-9), 64)
}

func TestAllowances(t *testing.T) {
	const r = 0.05
	g := Cone(r, r, 0.2).Gores(4) // a tube: rectangles
	a := Allowance{Side: 0.005, Rim: 0.03, Far: 0.01}
	length, width := g.Cut(a)
	assert.InEpsilon(t, 0.24, length, 1e-9)
	assert.InEpsilon(t, 2*math.Pi*r/4+0.01, width, 1e-9)
	assert.InEpsilon(t, length*width, g.CutArea(a), 1e-9)
	assert.InEpsilon(t, length*width, shoelace(g.Outline(a)), 1e-9)

	h := Ellipsoid(r, r).Gores(6)
	assert.InEpsilon(t, shoelace(h.Outline(a)), h.CutArea(a), 1e-9)
	assert.Greater(t, h.CutArea(a), h.Area()+2*a.Side*h.Length(), "both sides, rim and tip")
	for _, p := range h.Outline(a) {
		require.False(t, math.IsNaN(p.X+p.Y))
	}
}

// A cone laid flat keeps slant and circumference, by which a tin-smith marks it out.
func TestAConeLaidFlat(t *testing.T) {
	for _, x := range []struct{ r, top, h float64 }{{0.05, 0, 0.12}, {0.05, 0.02, 0.06}, {0.02, 0.05, 0.06}, {0.05, 0, 0.01}} {
		t.Run(fmt.Sprint(x), func(t *testing.T) {
			s := Wrap(x.r, x.top, x.h)
			wide, narrow := math.Max(x.r, x.top), math.Min(x.r, x.top)
			assert.InEpsilon(t, math.Hypot(x.h, x.r-x.top), s.Slant(), 1e-12)
			assert.InEpsilon(t, 2*math.Pi*wide, s.Angle*s.Outer, 1e-12)
			assert.InDelta(t, 2*math.Pi*narrow, s.Angle*s.Inner, 1e-12)
			assert.InEpsilon(t, Cone(x.r, x.top, x.h).Area(), s.Area(), 1e-9)
			assert.InEpsilon(t, s.Area(), shoelace(s.Outline(400, 0)), 1e-3)
			assert.InEpsilon(t, s.Area()+0.01*s.Slant(), shoelace(s.Outline(400, 0.01)), 2e-3)
			length, width := s.Cut()
			for _, p := range s.Outline(400, 0) {
				assert.LessOrEqual(t, math.Abs(p.X), width/2+1e-9)
				assert.LessOrEqual(t, p.Y, s.Outer+1e-9)
				assert.GreaterOrEqual(t, p.Y, s.Outer-length-1e-9)
			}
		})
	}
	assert.InEpsilon(t, math.Pi, Wrap(1, 0, math.Sqrt(3)).Angle, 1e-12, "a half angle of 30 deg is half a disc")
}

// The next layer on a plug lies on a surface that much larger.
func TestOffset(t *testing.T) {
	const r, by = 0.04, 0.001
	assert.InEpsilon(t, 2*math.Pi*(r+by)*(r+by), Ellipsoid(r, r).Offset(by).Area(), 1e-3)
	o := Cone(r, r, 0.1).Offset(by)
	assert.InEpsilon(t, 2*math.Pi*(r+by)*0.1, o.Area(), 1e-9)
	// A surface's offset has A + 2H dA to first order: for the 2:1 ellipsoid between its inscribed and circumscribed spheres' growth.
	e := Ellipsoid(r, r/2)
	grown := e.Offset(by).Area() / e.Area()
	assert.Greater(t, grown, 1.0)
	assert.Less(t, grown, math.Pow(1+by/(r/2), 2))
}

func TestNothingPanics(t *testing.T) {
	nan := math.NaN()
	for _, p := range []Profile{{}, Of(), Of(Point{}), Ellipsoid(0, 0), Cone(nan, 0, 1), Cone(math.Inf(1), 0, 1), Ellipsoid(-1, nan)} {
		g := p.Gores(0)
		_ = []float64{p.Length(), p.Depth(), p.Area(), p.Radius(1), g.Half(nan), g.Wide(), g.Edge(), g.Excess(), g.CutArea(Allowance{1, 1, 1})}
		g.Outline(Allowance{1, 1, 1})
		p.Offset(1)
		p.Fewest(-1, nan)
	}
	s := Wrap(1, 1, 1)
	assert.Zero(t, s.Angle)
	s.Outline(0, 1)
}
