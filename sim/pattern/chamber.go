package pattern

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/gore"
	"ullage/sim/layup"
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
		s.closure(c, end.of, end.name, &r.Layup)
	}
}

// Closure is one as it is made, from its rim: its outside fits the bore less the glue, the plug
// that it is laid over is its inside. The skirt beyond the rim is bonded into the tube.
type Closure struct {
	Outside, Plug gore.Profile
	Wall, Glue    float64 // m
	TypicalGlue   bool    // the glue line is a built-in one
}

// ClosureOf is the surfaces of a closure, and false of a plate, which has none, or of one
// whose wall leaves nothing within.
func ClosureOf(c *chamber.Chamber, e *chamber.Closure) (k Closure, curved bool) {
	if k.Glue, k.TypicalGlue = chamber.TypicalGlueLine, true; c.Adhesive != nil && c.Adhesive.GlueLine > 0 {
		k.Glue, k.TypicalGlue = c.Adhesive.GlueLine, false
	}
	plug, radius := layup.PlugOf(c, e)
	outside := c.Diameter/2 - k.Glue
	k.Wall, k.Plug = outside-radius, plug
	switch {
	case e.Shape == chamber.Flat || !(radius > 0):
		return k, false
	case e.Shape == chamber.Cone: // its sides stay straight, and its corner goes outward with them
		sin, cos := math.Sincos(e.HalfAngle)
		corner := k.Wall * (1 - cos) / sin
		k.Outside = gore.Of(Point{X: 0, Y: outside}, Point{X: corner, Y: outside}, Point{X: plug.Depth() + k.Wall/sin})
	default:
		k.Outside = plug.Offset(k.Wall)
	}
	return k, true
}

// closure adds a closure's profile with its radii.
func (s *Set) closure(c *chamber.Chamber, e *chamber.Closure, name string, practice *layup.Practice) {
	k, curved := ClosureOf(c, e)
	p := Pattern{Name: "closure-" + name, Title: name + " closure: profile", Count: 1, Input: "chamber." + name + ".shape"}
	switch {
	case !curved && e.Shape != chamber.Flat:
		s.Lacks = append(s.Lacks, Lack{What: name + " closure", Why: "its wall leaves nothing of its inside"})
		return
	case !curved:
		s.flatClosure(p, c, e, &k)
		return
	}
	radius, depth := k.Outside.Points()[0].Y, k.Outside.Depth()
	p.closed(Cut, around(k.Outside, e.Overlap)...)
	p.closed(Mark, around(k.Plug, e.Overlap)...)
	p.line(Axis, "", Point{X: -e.Overlap - 4*millimetre}, Point{X: depth + 4*millimetre})
	p.line(Fold, "rim", Point{}, Point{Y: radius}) // the word clear of the axis
	p.line(Fold, "", Point{Y: -radius}, Point{})
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
	if m := c.Material; m != chamber.PETBottle && m != chamber.Aluminium {
		s.add(closureCloth(e, &k, name, practice))
	}
}

// closureCloth is a layer of cloth of a closure: a gore, or the sector that a cone is laid from.
func closureCloth(e *chamber.Closure, k *Closure, name string, practice *layup.Practice) Pattern {
	title := name + " closure: cloth of the first layer"
	if e.Shape == chamber.Cone {
		p := coneWrap("closure-"+name+"-cloth", title, "chamber."+name+".half_angle", 0, 2*k.Plug.Points()[0].Y, k.Plug.Depth(), practice.InForce().Overlap)
		p.note("The skirt is a strip of its own: ullage layup has its size, and how many layers there are.")
		return p
	}
	g := k.Plug.Gores(layup.GoresOf(e, k.Plug))
	p := GorePattern("closure-"+name+"-gore", title+", one gore", g, practice.GoreAllowance(e), math.Pi/4, places(g.Length()))
	p.Input = "chamber." + name + ".overlap"
	p.length("skirt and trim below the rim", practice.GoreAllowance(e).Rim)
	p.note("Laid on the plug, rim to rim, the skirt down its side; gores overlap by twice the allowance of a side. So many are cut for each layer: outer layers are a little larger, as ullage layup lists.")
	p.note("Cloth at 45° to the middle gives where a dome needs it: common practice, no source.")
	p.Figures = append(p.Figures, Figure{Name: "edge longer than the middle", Value: g.Excess(), Unit: "%"})
	return p
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
			return math.Max(0, a.Y+(b.Y-a.Y)*(x-a.X)/(b.X-a.X))
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
