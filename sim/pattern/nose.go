package pattern

import (
	"math"

	"ullage/sim/airframe"
	"ullage/sim/gore"
)

// nose adds the nose's profile with its radii, and the wrap of one that is a cone.
func (s *Set) nose(body *airframe.Shape) {
	n := body.Forebody()
	p := Pattern{Name: "nose", Title: "nose: profile", Count: 1, Input: "nose.length"}
	p.profile("nose", n.Length, func(x float64) float64 { return n.Radius(x) })
	p.size("length", Point{X: n.Length, Y: -n.Diameter / 2}, Point{X: 0, Y: -n.Diameter / 2}, 6*millimetre)
	p.size("base", Point{X: n.Length, Y: n.Diameter / 2}, Point{X: n.Length, Y: -n.Diameter / 2}, 8*millimetre)
	if n.Shape == airframe.TangentOgive {
		radius := n.Diameter / 2
		p.length("radius of the arc", (radius*radius+n.Length*n.Length)/(2*radius))
	}
	p.radii("from the tip", "radius, outside", n.Length, n.Radius)
	p.note("Contour: " + string(n.Shape) + ". No shoulder is described, so none is drawn.")
	p.nosePlug(&n)
	s.add(p)
	if n.Shape == airframe.Conical {
		s.add(coneWrap("wrap-nose", "wrap for the nose", "nose.length", 0, n.Diameter, n.Length, wrapLap))
	}
}

// nosePlug adds what a nose is laid over, within its wall, to the drawing and to the radii.
func (p *Pattern) nosePlug(n *airframe.Nose) {
	if n.Wall == 0 {
		p.note("The outside: no wall is given (nose.wall). A plug or mandrel that cloth is laid over is smaller by it, square to the contour.")
		return
	}
	// From the base on, as profiles go.
	outside := gore.Along(n.Length, func(x float64) float64 { return n.Radius(n.Length - x) })
	var plug []Point
	points := outside.Offset(-n.Wall).Points()
	for i := 1; i < len(points); i++ {
		q := Point{X: n.Length - points[i].X, Y: points[i].Y}
		if q.X <= n.Length && q.Y >= 0 && (len(plug) == 0 || q.X < plug[len(plug)-1].X) {
			plug = append(plug, q)
		}
	}
	if len(plug) > 1 { // on to the base, in the direction that sides have there
		a, b := plug[1], plug[0]
		plug = append([]Point{{X: n.Length, Y: b.Y + (b.Y-a.Y)/(b.X-a.X)*(n.Length-b.X)}}, plug...)
	}
	if len(plug) < 2 {
		p.note("The wall (nose.wall) leaves nothing of a plug.")
		return
	}
	around := append([]Point{}, plug...)
	for i := len(plug) - 1; i >= 0; i-- {
		around = append(around, Point{X: plug[i].X, Y: -plug[i].Y})
	}
	p.closed(Mark, around...)
	p.length("wall", n.Wall)
	p.length("tip of the plug behind the nose's", plug[len(plug)-1].X)
	inside := func(x float64) float64 {
		for i := 1; i < len(plug); i++ { // from the base towards the tip
			if a, b := plug[i-1], plug[i]; x <= a.X && x >= b.X {
				return b.Y + (a.Y-b.Y)*(x-b.X)/(a.X-b.X)
			}
		}
		return math.NaN()
	}
	p.Table.Heads = append(p.Table.Heads, "radius, plug")
	for i := range p.Table.Rows {
		p.Table.Rows[i] = append(p.Table.Rows[i], inside(p.Table.Rows[i][0]))
	}
	p.note("The inner line is the plug or mandrel that cloth is laid over, the wall within the outside, square to it.")
}

// profile adds a section through a body of revolution, its axis along X.
func (p *Pattern) profile(what string, length float64, radius func(x float64) float64) {
	const pieces = 256
	var upper []Point
	for i := 0; i <= pieces; i++ {
		// Places crowd towards the tip, where contours are steep.
		x := length * (1 - math.Cos(math.Pi/2*float64(i)/pieces))
		upper = append(upper, Point{X: x, Y: radius(x)})
	}
	around := append([]Point{}, upper...)
	for i := len(upper) - 1; i >= 0; i-- {
		around = append(around, Point{X: upper[i].X, Y: -upper[i].Y})
	}
	p.closed(Cut, around...)
	p.line(Axis, what+": axis", Point{X: -4 * millimetre, Y: 0}, Point{X: length + 4*millimetre, Y: 0})
}

// radii adds a table of radii at round places.
func (p *Pattern) radii(from, what string, length float64, radius func(x float64) float64) {
	p.Table = &Table{Title: "Radii", Heads: []string{from, what}}
	for _, x := range places(length) {
		p.Table.Rows = append(p.Table.Rows, []float64{x, radius(x)})
	}
}

// places are round distances from 0 to a length, three of them close to the beginning, where
// contours are steep: 25 to 60 steps where lengths allow.
func places(length float64) []float64 {
	step := 1e-3
	for _, next := range []float64{2e-3, 5e-3, 10e-3, 20e-3, 50e-3, 100e-3, 200e-3, 500e-3, 1} {
		if length/step <= 30 {
			break
		}
		step = next
	}
	out := []float64{0}
	for _, x := range []float64{step / 8, step / 4, step / 2} {
		if x < length {
			out = append(out, x)
		}
	}
	for i := 1; float64(i)*step < length-0.1e-3; i++ {
		out = append(out, float64(i)*step)
	}
	return append(out, length)
}

// transitions adds the wrap of each section that is a cone.
func (s *Set) transitions(body *airframe.Shape) {
	for _, f := range body.Frustums() {
		if !f.Straight() && f.Length > 0 {
			p := coneWrap("wrap-"+fileName(f.Name), "wrap for "+words(f.Name), f.Name+".length", f.Fore, f.Aft, f.Length, wrapLap)
			finsOnCone(&p, body, f)
			s.add(p)
		}
	}
}

// coneWrap is the sector of a ring that wraps a cone or a frustum between two diameters a
// length apart. Its apex is at the origin, the middle of the piece below it.
func coneWrap(name, title, input string, one, other, length, lap float64) Pattern {
	p := Pattern{Name: name, Title: title, Count: 1, Input: input}
	sector := gore.Wrap(one/2, other/2, length)
	at := func(radius, angle float64) Point {
		sin, cos := math.Sincos(angle)
		return Point{X: radius * sin, Y: -radius * cos}
	}
	half := sector.Angle / 2
	turn := func(radius, from, to float64) []Point { return arc(Point{}, radius, from-math.Pi/2, to-math.Pi/2) }
	around := turn(sector.Outer, -half, half)
	lapped := func(radius float64) Point { // square to the edge
		q, sin, cos := at(radius, half), math.Sin(half), math.Cos(half)
		return Point{X: q.X + lap*cos, Y: q.Y + lap*sin}
	}
	around = append(around, lapped(sector.Outer), lapped(sector.Inner))
	if sector.Inner > 0 {
		around = append(around, turn(sector.Inner, half, -half)...)
	} else {
		around = append(around, Point{})
	}
	p.closed(Cut, around...)
	p.line(Fold, "lay the other edge here", at(sector.Inner, half), at(sector.Outer, half))
	middle, reach := (sector.Inner+sector.Outer)/2, sector.Slant()*0.2
	if one > other {
		reach = -reach
	}
	p.arrow(Axis, "forward", at(middle+reach, 0), at(middle-reach, 0))
	p.size("along the slant", at(sector.Outer, -half), at(sector.Inner, -half), 6*millimetre)
	p.length("radius of the outer arc", sector.Outer)
	p.length("radius of the inner arc", sector.Inner)
	p.angle("angle of the piece", sector.Angle)
	p.length("along the outer arc", sector.Outer*sector.Angle)
	p.length("along the inner arc", sector.Inner*sector.Angle)
	p.length("straight across the ends of the outer arc", sector.Chord())
	p.length("length on the axis", length)
	if one > 0 {
		p.length("forward diameter", one)
		p.length("aft diameter", other)
	} else {
		p.length("base", other)
	}
	p.note("As seen from outside. The outside of a cone, laid flat: a paper or sheet of no thickness. Wrapped tight, one straight edge meets the dashed line.")
	return p
}

// finsOnCone marks fins whose roots stand on a cone: they lie along lines through its apex.
func finsOnCone(p *Pattern, body *airframe.Shape, f airframe.Frustum) {
	sector := gore.Wrap(f.Fore/2, f.Aft/2, f.Length)
	for i := range body.Fins {
		x := &body.Fins[i]
		if x.Position < f.Start-millimetre || x.Position+x.Root > f.End()+millimetre {
			continue
		}
		slant := func(place float64) float64 { // from the apex
			share := (place - f.Start) / f.Length
			if f.Fore < f.Aft {
				return sector.Inner + share*sector.Slant()
			}
			return sector.Outer - share*sector.Slant()
		}
		for k := range x.Count {
			angle := sector.Angle * ((float64(k)+0.25)/float64(x.Count) - 0.5)
			sin, cos := math.Sincos(angle)
			on := func(radius float64) Point { return Point{X: radius * sin, Y: -radius * cos} }
			p.line(Mark, "fin", on(slant(x.Position)), on(slant(x.Position+x.Root)))
		}
		p.note("The middles of the fins " + x.Name + " are marked where their roots stand.")
	}
}
