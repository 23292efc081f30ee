package pattern_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/chamber"
	"ullage/sim/gore"
	"ullage/sim/pattern"
	"ullage/sim/rocket"
)

// By hand: from 64 to 46 mm over 60 mm the slant is √(60² + 9²) = 60.671 mm, the apex 32/9 of
// it from the wide end, 215.72 mm, and the piece spans 360° · 9/60.671 = 53.403°. Its area
// is that of the frustum, π (32 + 23) 60.671 mm².
func TestConeWrap(t *testing.T) {
	p := of(t, pattern.Of(shaped()), "wrap-section-tail")
	assert.InDelta(t, 60.671*mm, figure(t, p, "along the slant"), 1e-6)
	assert.InDelta(t, 215.72*mm, figure(t, p, "radius of the outer arc"), 1e-5)
	assert.InDelta(t, (215.72-60.671)*mm, figure(t, p, "radius of the inner arc"), 1e-5)
	assert.InDelta(t, 53.403*math.Pi/180, figure(t, p, "angle of the piece"), 1e-5)
	assert.InDelta(t, 64*math.Pi*mm, figure(t, p, "along the outer arc"), 1e-9)
	assert.InDelta(t, 46*math.Pi*mm, figure(t, p, "along the inner arc"), 1e-9)
	cut := lines(p, pattern.Cut)[0]
	lap := 15 * 60.671 * mm * mm
	assert.InEpsilon(t, math.Pi*(32+23)*60.671*mm*mm, cut.Area()-lap, 1e-4)
	low, high := p.Bounds()
	assert.InDelta(t, -high.X+15*mm*math.Cos(53.403/2*math.Pi/180), low.X, 1e-5, "as wide to the left but for the lap")

	nose := of(t, pattern.Of(shaped()), "wrap-nose")
	slant := math.Hypot(160, 32)
	assert.InDelta(t, slant*mm, figure(t, nose, "along the slant"), 1e-9)
	assert.InEpsilon(t, math.Pi*32*slant*mm*mm, lines(nose, pattern.Cut)[0].Area()-lapOf(nose), 1e-4)
}

// lapOf is the area of the lap of a wrap that comes to a point.
func lapOf(p *pattern.Pattern) float64 {
	for _, f := range p.Figures {
		if f.Name == "along the slant" {
			return f.Value * 15 * mm
		}
	}
	return math.NaN()
}

func TestNoseRadii(t *testing.T) {
	r := shaped()
	r.Shape.Nose = airframe.Nose{Shape: airframe.TangentOgive, Length: 160 * mm}
	p := of(t, pattern.Of(r), "nose")
	arc := (32.*32 + 160*160) / 64
	assert.InDelta(t, arc*mm, figure(t, p, "radius of the arc"), 1e-12)
	require.Greater(t, len(p.Table.Rows), 15)
	for _, row := range p.Table.Rows {
		x := 160 - row[0]/mm
		assert.InDelta(t, (math.Sqrt(arc*arc-x*x)-arc+32)*mm, row[1], 1e-9, "x %g", row[0])
	}
	low, high := p.Bounds()
	assert.InDeltaSlice(t, []float64{0, -32 * mm, 160 * mm, 32 * mm}, []float64{low.X, low.Y, high.X, high.Y}, 1e-9)
}

func TestClosure(t *testing.T) {
	c := &chamber.Chamber{Diameter: 68 * mm, Adhesive: &chamber.Adhesive{GlueLine: 0.5 * mm}}
	e := &chamber.Closure{Shape: chamber.Hemisphere, Wall: 2 * mm, Overlap: 30 * mm}
	k, curved := pattern.ClosureOf(c, e)
	require.True(t, curved)
	assert.False(t, k.TypicalGlue)
	assert.InDelta(t, 33.5*mm, k.Outside.Depth(), 1e-9)
	assert.InDelta(t, 31.5*mm, k.Plug.Depth(), 1e-9)
	assert.InDelta(t, 31.5*mm, k.Plug.Points()[0].Y, 1e-5)
	assert.InEpsilon(t, 2*math.Pi*31.5*31.5*mm*mm, k.Plug.Area(), 1e-3)

	e.Shape = chamber.Ellipsoid // its inside half as deep as its radius
	k, _ = pattern.ClosureOf(c, e)
	assert.InDelta(t, 31.5/2*mm, k.Plug.Depth(), 1e-9)
	assert.InDelta(t, (31.5/2+2)*mm, k.Outside.Depth(), 1e-9)

	e.Shape, e.HalfAngle = chamber.Cone, math.Pi/6
	k, _ = pattern.ClosureOf(c, e)
	apart := (k.Outside.Depth() - k.Plug.Depth()) * math.Sin(e.HalfAngle)
	assert.InDelta(t, 2*mm, apart, 1e-9, "the wall square to the side")
	corner := k.Outside.Points()[1]
	assert.InDelta(t, 33.5*mm, corner.Y, 1e-12)
	side := (k.Outside.Depth() - corner.X) * math.Tan(e.HalfAngle)
	assert.InDelta(t, corner.Y, side, 1e-9, "the corner lies on the outer side")

	_, curved = pattern.ClosureOf(c, &chamber.Closure{Shape: chamber.Flat})
	assert.False(t, curved)
	k, _ = pattern.ClosureOf(&chamber.Chamber{Diameter: 68 * mm}, &chamber.Closure{Shape: chamber.Hemisphere, Wall: mm})
	assert.True(t, k.TypicalGlue)
}

// Gores of whatever number have together the area of the sphere, the ellipsoid and the cone.
func TestGoresHaveTheSurfacesArea(t *testing.T) {
	oblate := func(a, c float64) float64 { // half of an oblate spheroid, closed form
		e := math.Sqrt(1 - c*c/a/a)
		return math.Pi*a*a + math.Pi/2*c*c/e*math.Log((1+e)/(1-e))
	}
	for name, x := range map[string]struct {
		profile gore.Profile
		want    float64
	}{
		"hemisphere": {gore.Ellipsoid(0.4, 0.4), 2 * math.Pi * 0.16},
		"ellipsoid":  {gore.Ellipsoid(0.4, 0.2), oblate(0.4, 0.2)},
		"cone":       {gore.Cone(0.3, 0, 0.4), math.Pi * 0.3 * 0.5},
	} {
		for _, n := range []int{3, 8, 17} {
			p := pattern.GorePattern("gore", "gore", x.profile.Gores(n), gore.Allowance{}, 0, nil)
			cut := lines(&p, pattern.Cut)[0]
			assert.InEpsilon(t, x.want, float64(n)*cut.Area(), 0.01, "%s, %d gores", name, n)
			assert.InDelta(t, x.profile.Length(), figure(t, &p, "length without allowances"), 1e-12)
		}
	}
}

// A canopy's gores have together its nominal area, whatever its shape, a vent in it.
func TestCanopyGores(t *testing.T) {
	for _, shape := range []rocket.CanopyShape{"", rocket.FlatCanopy, rocket.HemisphereCanopy, rocket.EllipsoidCanopy} {
		for _, vent := range []float64{0, 120 * mm} {
			r := &rocket.Rocket{Canopies: []rocket.Canopy{{Name: "main", Diameter: 1.1, Shape: shape, Gores: 6, Seam: 12 * mm, Vent: vent}}}
			p := of(t, pattern.Of(r), "canopy-main-gore")
			assert.Equal(t, 6, p.Count)
			seam := lines(p, pattern.Fold)[0]
			sewn := 6 * seam.Area()
			opening := math.Pi / 4 * vent * vent
			if shape == rocket.HemisphereCanopy || shape == rocket.EllipsoidCanopy {
				opening = math.Pi/4*vent*vent + 0.0002 // the cap that is cut off is a little more than its disc
			}
			assert.InEpsilon(t, math.Pi/4*1.1*1.1, sewn+opening, 0.001, "%s %g", shape, vent)
			cut := lines(p, pattern.Cut)[0]
			assert.Greater(t, cut.Area(), seam.Area()+figure(t, p, "length without allowances")*2*12*mm*0.98)
			for _, row := range p.Table.Rows {
				assert.GreaterOrEqual(t, row[2]-row[1], 24*mm-1e-6, "at least a seam at either side")
			}
		}
	}
	flat := pattern.CanopyProfile(&rocket.Canopy{Diameter: 1})
	assert.InDelta(t, 0.5, flat.Length(), 1e-12)
	round := pattern.CanopyProfile(&rocket.Canopy{Diameter: 1, Shape: rocket.HemisphereCanopy})
	assert.InDelta(t, 1/math.Sqrt(8), round.Depth(), 1e-12, "D = √8 R")
}

// The plug of a hemispherical nose is a hemisphere smaller by the wall; one of a cone has its sides
// a wall apart.
func TestNosePlug(t *testing.T) {
	r := shaped()
	r.Shape.Nose = airframe.Nose{Shape: airframe.Elliptical, Length: 32 * mm, Wall: 2 * mm}
	for _, row := range of(t, pattern.Of(r), "nose").Table.Rows {
		x := 32*mm - row[0]
		if row[0] < 2.01*mm {
			if row[0] > 1.99*mm {
				continue // its tip
			}
			assert.True(t, math.IsNaN(row[2]), "%g is ahead of the plug", row[0])
			continue
		}
		assert.InDelta(t, math.Sqrt(30*30*mm*mm-x*x), row[2], 1e-4, "x %g", row[0])
	}
	r.Shape.Nose = airframe.Nose{Shape: airframe.Conical, Length: 160 * mm, Wall: 2 * mm}
	slant := math.Hypot(160, 32) / 160
	for _, row := range of(t, pattern.Of(r), "nose").Table.Rows {
		if row[0] > 20*mm {
			assert.InDelta(t, 2*mm*slant, row[1]-row[2], 2e-5, "x %g", row[0])
		}
	}
}
