package pattern_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/pattern"
	"ullage/sim/rocket"
)

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
