package pattern

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/gore"
	"ullage/sim/rocket"
)

// words and fileName make a dotted name fit for a title and for a file.
func words(name string) string    { return strings.ReplaceAll(name, ".", " ") }
func fileName(name string) string { return strings.ReplaceAll(name, ".", "-") }

// chamber adds the closures of the pressure chamber.
func (s *Set) chamber(r *rocket.Rocket) {
	if r.Chamber == nil {
		if r.Water != nil {
			s.lack("closures of the chamber", "chamber")
		}
		return
	}
	c := r.Vessel()
	if faults := c.Check(); len(faults) > 0 {
		s.lack("closures of the chamber", keysOf(faults)...)
		return
	}
	for _, end := range []struct {
		name string
		of   *chamber.Closure
	}{{"forward", c.Forward}, {"aft", c.Aft}} {
		if end.of == nil {
			s.lack(end.name+" closure", "chamber."+end.name)
			continue
		}
		s.closure(c, end.of, end.name)
	}
}

// Closure is one as it is made: its outside fits the bore less the glue, its plug is the
// inside, and the skirt beyond the rim is bonded into the tube. Both profiles begin at the rim.
type Closure struct {
	Outside, Plug gore.Profile
	Wall, Glue    float64 // m
	TypicalGlue   bool    // the glue line is a built-in one
}

// ClosureOf is the surfaces of a closure, and false of a flat one, which has none to lay up.
func ClosureOf(c *chamber.Chamber, e *chamber.Closure) (k Closure, curved bool) {
	k.Wall = e.Wall
	if k.Wall == 0 {
		k.Wall = c.WallThickness()
	}
	if k.Glue, k.TypicalGlue = chamber.TypicalGlueLine, true; c.Adhesive != nil && c.Adhesive.GlueLine > 0 {
		k.Glue, k.TypicalGlue = c.Adhesive.GlueLine, false
	}
	radius := c.Diameter/2 - k.Glue
	switch e.Shape {
	case chamber.Hemisphere:
		k.Outside = gore.Ellipsoid(radius, radius)
	case chamber.Ellipsoid:
		k.Outside = gore.Ellipsoid(radius, radius/2)
	case chamber.Cone:
		k.Outside = gore.Cone(radius, 0, radius/math.Tan(e.HalfAngle))
	default:
		return k, false
	}
	k.Plug = k.inside(e)
	return k, true
}

// inside is the surface a wall within the outside one.
func (k *Closure) inside(e *chamber.Closure) gore.Profile {
	if e.Shape == chamber.Cone { // straight sides stay so, and the corner of the rim with them
		within := k.Outside.Points()[0].Y - k.Wall/math.Cos(e.HalfAngle)
		return gore.Cone(within, 0, within/math.Tan(e.HalfAngle))
	}
	return k.Outside.Offset(-k.Wall)
}

// sound tells whether the plug is a surface: a wall thicker than its contour is round folds it.
func (k *Closure) sound() bool {
	points := k.Plug.Points()
	for i := 1; i < len(points); i++ {
		if !(points[i].X >= points[i-1].X && points[i].Y <= points[i-1].Y) {
			return false
		}
	}
	return points[0].Y > 0
}

// closure adds a closure's profile with its radii.
func (s *Set) closure(c *chamber.Chamber, e *chamber.Closure, name string) {
	k, curved := ClosureOf(c, e)
	p := Pattern{Name: "closure-" + name, Title: name + " closure: profile", Count: 1}
	if !curved {
		s.flatClosure(p, c, e, &k)
		return
	}
	if !k.sound() {
		s.Lacks = append(s.Lacks, Lack{What: name + " closure", Why: "its wall is too thick for the curve of its inside"})
		return
	}
	radius, depth := k.Outside.Points()[0].Y, k.Outside.Depth()
	p.closed(Cut, around(k.Outside, e.Overlap)...)
	p.closed(Mark, around(k.Plug, e.Overlap)...)
	p.line(Axis, "", Point{X: -e.Overlap - 4*millimetre}, Point{X: depth + 4*millimetre})
	p.line(Fold, "rim", Point{Y: -radius}, Point{Y: radius})
	p.size("skirt", Point{X: -e.Overlap, Y: radius}, Point{X: 0, Y: radius}, 6*millimetre)
	p.size("dome", Point{X: depth, Y: -radius}, Point{X: 0, Y: -radius}, 6*millimetre)
	p.size("outside", Point{X: -e.Overlap, Y: -radius}, Point{X: -e.Overlap, Y: radius}, 8*millimetre)
	p.length("plug", 2*k.Plug.Points()[0].Y)
	p.length("depth of the plug's dome", k.Plug.Depth())
	p.length("wall", k.Wall)
	p.length("bore", c.Diameter)
	p.length("glue line", k.Glue)
	if e.Shape == chamber.Cone {
		p.angle("half angle", e.HalfAngle)
	}
	p.Table = &Table{Title: "Radii from the rim towards the crown", Heads: []string{"from the rim", "radius, outside", "radius, plug"}}
	for _, x := range crownwards(k.Plug.Depth(), depth) {
		p.Table.Rows = append(p.Table.Rows, []float64{x, radiusAt(k.Outside, x), radiusAt(k.Plug, x)})
	}
	p.note("Shape: " + string(e.Shape) + ". The outer line fits the bore less the glue line at either side; the inner one is the plug that cloth is laid over, the wall within it square to the contour.")
	p.note("The skirt is straight, as long as the lap. An opening for boss, nozzle or valve is not drawn: cut it to the part.")
	p.glued(&k)
	s.add(p)
}

// flatClosure adds a plate.
func (s *Set) flatClosure(p Pattern, c *chamber.Chamber, e *chamber.Closure, k *Closure) {
	diameter := c.Diameter - 2*k.Glue
	p.Title = strings.TrimSuffix(p.Title, ": profile") + ": plate"
	p.circle(Cut, Point{}, diameter)
	p.cross(Point{}, diameter*0.3)
	p.size("plate", Point{X: diameter / 2, Y: -diameter / 2}, Point{X: -diameter / 2, Y: -diameter / 2}, 4*millimetre)
	p.length("thickness", k.Wall)
	p.length("lap along the tube", e.Overlap)
	p.length("bore", c.Diameter)
	p.length("glue line", k.Glue)
	p.note("A plate that fits the bore less the glue line at either side. Openings are not drawn.")
	p.glued(k)
	s.add(p)
}

// glued says where the glue line is from.
func (p *Pattern) glued(k *Closure) {
	if k.TypicalGlue {
		p.note("The glue line is a typical one, from memory: none is given (chamber.adhesive.glue_line).")
	}
}

// around is the outline of a section through a closure with its skirt, its axis along X.
func around(profile gore.Profile, skirt float64) []Point {
	half := append([]Point{{X: -skirt, Y: profile.Points()[0].Y}}, profile.Points()...)
	out := append([]Point{}, half...)
	for i := len(half) - 1; i >= 0; i-- {
		out = append(out, Point{X: half[i].X, Y: -half[i].Y})
	}
	return out
}

// radiusAt is a profile's radius at a distance from its rim along the axis; NaN beyond its end.
func radiusAt(profile gore.Profile, x float64) float64 {
	points := profile.Points()
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if x >= a.X && x <= b.X && b.X > a.X {
			return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
		}
	}
	return math.NaN()
}

// crownwards are round places from a rim to the crowns of an inside and an outside, close
// together before either, where domes are steep.
func crownwards(inside, outside float64) []float64 {
	all := places(outside)
	step := all[len(all)-2] - all[len(all)-3]
	var out []float64
	for _, x := range all {
		if x == 0 || x > step*0.75 {
			out = append(out, x)
		}
	}
	for _, crown := range []float64{inside, outside} {
		for _, short := range []float64{0, step / 2, step / 4, step / 8} {
			out = append(out, crown-short)
		}
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(a-b) < 0.02*millimetre })
}
