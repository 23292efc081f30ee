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
	"ullage/sim/rocketfile"
)

const mm = 1e-3

// of is the pattern of a name.
func of(t *testing.T, s pattern.Set, name string) *pattern.Pattern {
	t.Helper()
	for i := range s.Patterns {
		if s.Patterns[i].Name == name {
			return &s.Patterns[i]
		}
	}
	require.Fail(t, "no pattern "+name)
	return nil
}

// figure is a named number of a pattern.
func figure(t *testing.T, p *pattern.Pattern, name string) float64 {
	t.Helper()
	for _, f := range p.Figures {
		if f.Name == name {
			return f.Value
		}
	}
	require.Fail(t, "no figure "+name+" of "+p.Name)
	return 0
}

// lines are those of a pen.
func lines(p *pattern.Pattern, pen pattern.Pen) (all []pattern.Line) {
	for _, l := range p.Lines {
		if l.Pen == pen {
			all = append(all, l)
		}
	}
	return all
}

// long is how long a line is.
func long(l pattern.Line) float64 {
	sum := 0.0
	for i := 1; i < len(l.Points); i++ {
		sum += math.Hypot(l.Points[i].X-l.Points[i-1].X, l.Points[i].Y-l.Points[i-1].Y)
	}
	return sum
}

// shaped is a rocket of a nose, a tube, a boat-tail and fins.
func shaped() *rocket.Rocket {
	return &rocket.Rocket{Body: rocket.Body{Diameter: 64 * mm}, Shape: &airframe.Shape{
		Length: 1000 * mm, Diameter: 64 * mm, Nose: airframe.Nose{Shape: airframe.Conical, Length: 160 * mm},
		Sections: []airframe.Section{{Name: "tube", Length: 780 * mm}, {Name: "tail", Length: 60 * mm, Aft: 46 * mm}},
		Fins:     []airframe.Fins{{Name: "tail", Count: 4, Root: 110 * mm, Tip: 60 * mm, Span: 75 * mm, Sweep: 40 * mm, Thickness: 3 * mm, Position: 820 * mm, Section: airframe.FlatSection}},
	}}
}

func TestFin(t *testing.T) {
	p := of(t, pattern.Of(shaped()), "fins-tail")
	assert.Equal(t, 4, p.Count)
	low, high := p.Bounds()
	assert.InDeltaSlice(t, []float64{0, 0, 110 * mm, 75 * mm}, []float64{low.X, low.Y, high.X, high.Y}, 1e-12)
	cut := lines(p, pattern.Cut)
	around := pattern.Line{Points: append(cut[0].Points, cut[1].Points[0])}
	assert.InDelta(t, (110+60)/2.*75*mm*mm, around.Area(), 1e-12, "a trapezium")
	for name, want := range map[string]float64{"root": 110, "tip": 60, "span": 75, "sweep": 40, "leading edge": 85, "thickness": 3} {
		assert.InDelta(t, want*mm, figure(t, p, name), 1e-12, name)
	}
	for _, s := range p.Sizes {
		assert.InDelta(t, figure(t, p, s.Name), s.Length(), 1e-12, "the line drawn for %s", s.Name)
	}
	assert.InDelta(t, math.Atan2(40, 75), figure(t, p, "leading edge swept"), 1e-12)

	pointed := shaped()
	pointed.Shape.Fins[0].Tip, pointed.Shape.Fins[0].Sweep = 0, -10*mm
	p = of(t, pattern.Of(pointed), "fins-tail")
	low, high = p.Bounds()
	assert.InDeltaSlice(t, []float64{-10 * mm, 0, 110 * mm, 75 * mm}, []float64{low.X, low.Y, high.X, high.Y}, 1e-12)
}

// A root on a boat-tail follows it, and the span still counts from the middle of the root.
func TestFinOnABoatTail(t *testing.T) {
	r := shaped()
	f := &r.Shape.Fins[0]
	f.Root, f.Tip, f.Position = 50*mm, 30*mm, 945*mm
	s := pattern.Of(r)
	p := of(t, s, "fins-tail")
	root := lines(p, pattern.Cut)[1].Points
	slope := 9. / 60 // of the radius
	assert.InDelta(t, 25*mm*slope, root[0].Y, 1e-9)
	assert.InDelta(t, -25*mm*slope, root[len(root)-1].Y, 1e-9)
	require.Len(t, s.Lacks, 2, "neither wrap nor discs")
}

// The wrap of a 64 mm tube is 64 π mm to its dashed line, and four fins are a quarter of that
// apart, the first an eighth of that from its edge at each side of the seam.
func TestWrapMarksFins(t *testing.T) {
	r := shaped()
	p := of(t, pattern.Of(r), "wrap-fins-tail")
	girth := 201.06192982974676 * mm
	assert.InDelta(t, girth, figure(t, p, "around the tube"), 1e-12)
	fold := lines(p, pattern.Fold)
	require.Len(t, fold, 1)
	assert.InDelta(t, girth, fold[0].Points[0].X, 1e-12)
	var at []float64
	for _, l := range lines(p, pattern.Axis) {
		if l.Word == "" && len(l.Points) == 2 {
			at = append(at, l.Points[0].X)
			assert.InDelta(t, 110*mm, long(l), 1e-12, "a root")
		}
	}
	require.Len(t, at, 4)
	for k, x := range at {
		assert.InDelta(t, girth*(float64(k)+0.25)/4, x, 1e-12)
	}
	sides := 0
	for _, l := range lines(p, pattern.Mark) {
		if l.Points[0].X == l.Points[1].X {
			sides++
			nearest := math.Inf(1)
			for _, x := range at {
				nearest = math.Min(nearest, math.Abs(x-l.Points[0].X))
			}
			assert.InDelta(t, 1.5*mm, nearest, 1e-12, "half a thickness")
		}
	}
	assert.Equal(t, 8, sides)
	assert.InDelta(t, 808*mm, figure(t, p, "forward edge from the tip of the nose"), 1e-12)
	assert.InDelta(t, 940*mm, figure(t, p, "aft edge from the tip of the nose"), 1e-12, "no further than the tube")

	r.Shape.Fins[0].Cant = 0.1
	p = of(t, pattern.Of(r), "wrap-fins-tail")
	for _, l := range lines(p, pattern.Axis) {
		if l.Word == "" && len(l.Points) == 2 {
			assert.InDelta(t, math.Tan(0.1), (l.Points[1].X-l.Points[0].X)/(l.Points[0].Y-l.Points[1].Y), 1e-12)
		}
	}
}

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

// The disc's hole is the body's, and its slots let the fins through.
func TestFinDisc(t *testing.T) {
	r := shaped()
	p := of(t, pattern.Of(r), "jig-fins-tail")
	assert.Equal(t, 2, p.Count)
	hole := lines(p, pattern.Hole)[0]
	depth := 37.5 * mm // half the span
	near := math.Sqrt(32*32-1.5*1.5) * mm
	slots := 4 * (depth + 32*mm - near) * 3 * mm
	body := math.Pi * 32 * 32 * mm * mm
	caps := 4 * (math.Asin(1.5/32)*32*32*mm*mm - 1.5*mm*near) // between chord and circle
	assert.InEpsilon(t, body+slots-caps, hole.Area(), 2e-4)
	low, high := p.Bounds()
	assert.InDelta(t, 2*(32+37.5+10)*mm, high.X-low.X, 2e-5)

	r.Shape.Fins[0].Cant = 0.02
	s := pattern.Of(r)
	fore, aft := of(t, s, "jig-fins-tail-forward"), of(t, s, "jig-fins-tail-aft")
	turn := math.Tan(0.02) * 27.5 / 32
	assert.InDelta(t, -turn, figure(t, fore, "slots turned, clockwise seen from behind"), 1e-12)
	assert.InDelta(t, turn, figure(t, aft, "slots turned, clockwise seen from behind"), 1e-12)
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

// What the starter describes is drawn, every size with a figure, every table falling to its crown.
func TestStarterIsDrawn(t *testing.T) {
	s := pattern.Of(rocketfile.Starter().Rocket())
	for _, name := range []string{"nose", "fins-tail", "wrap-fins-tail", "jig-fins-tail", "closure-forward", "closure-forward-gore",
		"closure-aft", "closure-aft-gore", "canopy-main-gore"} {
		p := of(t, s, name)
		assert.NotEmpty(t, p.Notes, name)
		assert.NotEmpty(t, p.Title, name)
		for _, x := range p.Sizes {
			assert.InDelta(t, x.Length(), figure(t, p, x.Name), 1e-12, "%s: %s", name, x.Name)
		}
		low, high := p.Bounds()
		assert.True(t, high.X > low.X && high.Y > low.Y, name)
	}
	rows := of(t, s, "closure-aft").Table.Rows
	for i := 1; i < len(rows); i++ {
		assert.Less(t, rows[i][1], rows[i-1][1])
		assert.Greater(t, rows[i][0], rows[i-1][0])
	}
	assert.Zero(t, rows[len(rows)-1][1])
}

// What is missing or unsound is told by name.
func TestLacks(t *testing.T) {
	s := pattern.Of(&rocket.Rocket{Water: &rocket.Water{}})
	assert.Empty(t, s.Patterns)
	assert.Equal(t, []pattern.Lack{
		{What: "nose, fins and what goes round the body", Keys: []string{"body.length", "nose", "fins"}},
		{What: "target of the alignment jig", Keys: []string{"jig.length"}},
		{What: "closures of the chamber", Keys: []string{"chamber"}},
	}, s.Lacks)

	r := shaped()
	r.Shape.Fins[0].Span = 0
	s = pattern.Of(r)
	assert.Empty(t, s.Patterns)
	assert.Equal(t, []string{"fins.tail.span"}, s.Lacks[0].Keys)
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

func TestRings(t *testing.T) {
	r := &rocket.Rocket{MotorMount: &rocket.MotorMount{Diameter: 29 * mm, Length: 250 * mm}}
	s := pattern.Of(r)
	assert.Contains(t, s.Lacks, pattern.Lack{What: "centring rings of the motor mount", Keys: []string{"motor_mount.within", "motor_mount.wall"}})
	r.MotorMount.Wall, r.Water = 1.5*mm, &rocket.Water{Bore: 68 * mm}
	p := of(t, pattern.Of(r), "ring-mount")
	assert.Equal(t, rocket.UsualRings, p.Count)
	assert.InDelta(t, 68*mm, figure(t, p, "outside"), 1e-12)
	assert.InDelta(t, 32*mm, figure(t, p, "hole"), 1e-12)
	assert.InEpsilon(t, math.Pi/4*32*32*mm*mm, lines(p, pattern.Hole)[0].Area(), 1e-3)
	r.MotorMount.Within, r.MotorMount.Rings = 60*mm, 3
	p = of(t, pattern.Of(r), "ring-mount")
	assert.Equal(t, 3, p.Count)
	assert.InDelta(t, 60*mm, figure(t, p, "outside"), 1e-12)
}

// Holes stand on the wrap of the fins where they are within it, else on a strip of their own,
// an eighth of the girth from the first of four fins when half way between two.
func TestHoles(t *testing.T) {
	r := shaped()
	r.Holes = []rocket.Hole{
		{Name: "button", Position: 870 * mm, Diameter: 5 * mm, Angle: math.Pi / 4},
		{Name: "port", Position: 400 * mm, Diameter: 3 * mm, Count: 3},
		{Name: "lug", Position: 500 * mm, Diameter: 8 * mm, Length: 40 * mm, Angle: -math.Pi / 8},
		{Name: "late", Position: 970 * mm, Diameter: 3 * mm},
	}
	s := pattern.Of(r)
	girth := math.Pi * 64 * mm
	middle := func(l pattern.Line) (at pattern.Point) {
		low, high := pattern.Point{X: 1, Y: 1}, pattern.Point{X: -1, Y: -1}
		for _, p := range l.Points {
			low = pattern.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
			high = pattern.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
		}
		return pattern.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}
	}
	fins := of(t, s, "wrap-fins-tail")
	holes := lines(fins, pattern.Hole)
	require.Len(t, holes, 1)
	assert.InDelta(t, girth*(1./16+1./8), middle(holes[0]).X, 1e-6)
	assert.InDelta(t, (940-870)*mm, middle(holes[0]).Y, 1e-6)

	ports := of(t, s, "wrap-hole-port")
	holes = lines(ports, pattern.Hole)
	require.Len(t, holes, 3)
	for k, l := range holes {
		assert.InDelta(t, girth*(1./16+float64(k)/3), middle(l).X, 1e-6)
		assert.InEpsilon(t, math.Pi/4*9*mm*mm, l.Area(), 0.01)
	}
	// The lug's middle is on the seam: half of it at either side.
	lug := lines(of(t, s, "wrap-hole-lug"), pattern.Hole)
	require.Len(t, lug, 2)
	assert.InDelta(t, girth, math.Abs(middle(lug[0]).X-middle(lug[1]).X), 1e-9)
	assert.InDelta(t, 8*40*mm*mm, lug[0].Area(), 1e-12)
	require.Len(t, s.Lacks, 1)
	assert.Equal(t, "wrap for hole late", s.Lacks[0].What)
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

// By hand: at the end of 300 mm a quarter of a degree is 1.309 mm off, a degree 5.236 mm.
func TestTarget(t *testing.T) {
	r := &rocket.Rocket{Motor: &rocket.Motor{}}
	assert.Contains(t, pattern.Of(r).Lacks, pattern.Lack{What: "target of the alignment jig", Keys: []string{"jig.length"}})
	r.Bench.Jig = 300 * mm
	p := of(t, pattern.Of(r), "jig-thrust")
	assert.InDelta(t, 1.309*mm, figure(t, p, "ring of 0.25°"), 1e-6)
	assert.InDelta(t, 5.236*mm, figure(t, p, "ring of 1°"), 1e-6)
	rings := lines(p, pattern.Mark)
	assert.InDelta(t, 2*math.Pi*1.309*mm, long(rings[0]), 5e-5)
}
