package layup

import (
	"math"

	"ullage/sim/chamber"
	"ullage/sim/gore"
)

// Gores of domes. Common practice, no source: six at least, and as many as it takes for an edge
// to be no more than this longer than the middle of its gore, which cloth on the bias gives by shearing.
const (
	leastGores = 6
	mostExcess = 0.07
)

// spare is the share of a layer by which a wall may be thicker than whole layers make it before
// another is laid: that is measuring (common practice, no source).
const spare = 0.1

// PlugOf is what a closure of a chamber is laid over, from the rim of its dome to its pole: its inside, so
// that its skirt goes into the bore with a glue line around it. The radius is that of the rim.
func PlugOf(c *chamber.Chamber, e *chamber.Closure) (dome gore.Profile, radius float64) {
	line := chamber.TypicalGlueLine
	if c.Adhesive != nil && c.Adhesive.GlueLine != 0 {
		line = c.Adhesive.GlueLine
	}
	wall := e.Wall
	if wall == 0 { // as planned: what the tube was measured to is the tube's
		planned := *c
		planned.Wall = 0
		if wall = planned.WallThickness(); wall == 0 {
			wall = c.WallThickness()
		}
	}
	radius = c.Diameter/2 - line - wall
	switch e.Shape {
	case chamber.Hemisphere:
		return gore.Ellipsoid(radius, radius), radius
	case chamber.Ellipsoid:
		return gore.Ellipsoid(radius, radius/2), radius
	case chamber.Cone:
		return gore.Cone(radius, 0, radius/math.Tan(e.HalfAngle)), radius
	}
	return gore.Cone(radius, 0, 0), radius
}

// GoresOf is how many gores a layer of a closure is cut in; 1 of a cone or a plate, which lie flat.
func GoresOf(e *chamber.Closure, dome gore.Profile) int {
	if e.Shape != chamber.Hemisphere && e.Shape != chamber.Ellipsoid {
		return 1
	}
	return dome.Fewest(leastGores, mostExcess)
}

// GoreAllowance is by what a closure's gores are cut larger: half an overlap at either side, and beyond the rim the skirt
// with its trim.
func (p *Practice) GoreAllowance(e *chamber.Closure) gore.Allowance {
	f := p.InForce()
	return gore.Allowance{Side: f.Overlap / 2, Rim: e.Overlap + f.Trim}
}

// closure lays one over its plug, skirt and all, in as many layers as its wall takes.
func (b *builder) closure(name Name, e *chamber.Closure, laid int, weighed float64) {
	if e == nil {
		return
	}
	c := b.c
	dome, radius := PlugOf(c, e)
	cloth, clothIs := b.p.ClosureClothInForce(c), "closure cloth"
	if b.p.ClosureCloth == 0 {
		for i := range c.Plies {
			if &c.Plies[i] == drapes(c) {
				clothIs = clothName(c, i)
			}
		}
	}
	t := b.thickness(cloth)
	wall := e.Wall
	if wall == 0 {
		wall = b.thickness(b.areal())
	}
	layers := laid
	if laid == 0 {
		layers = max(1, int(math.Ceil(wall/t-spare)))
	}
	x := Part{Name: name, Plug: dome, Radius: radius, Counted: laid == 0}
	if weighed != 0 { // a wall beside a weight was measured too
		x.Measured = e.Wall
	}
	var skirts []Ply
	for k := range layers {
		mid := (float64(k) + 0.5) * t
		p := Ply{Name: clothIs, Cloth: cloth, First: k + 1, Last: k + 1}
		at := radius + mid
		switch e.Shape {
		case chamber.Hemisphere, chamber.Ellipsoid:
			x.Plies = append(x.Plies, b.gores(p, e, dome.Offset(mid), GoresOf(e, dome)))
			x.Area += dome.Offset(mid).Area()
		case chamber.Cone:
			x.Plies, skirts = append(x.Plies, b.sector(p, at, e.HalfAngle)), append(skirts, b.skirt(p, e, at))
			x.Area += gore.Cone(at, 0, at/math.Tan(e.HalfAngle)).Area()
		default:
			x.Plies, skirts = append(x.Plies, b.disc(p, at)), append(skirts, b.skirt(p, e, at))
			x.Area += math.Pi * at * at
		}
		x.Area += 2 * math.Pi * at * e.Overlap
	}
	x.Plies = append(x.Plies, skirts...)
	x.Area /= float64(layers)
	outer := dome.Offset(t * float64(layers))
	rim := 2 * math.Pi * (radius + t*float64(layers))
	x.Peel = outer.Area() + rim*(e.Overlap+b.p.Trim)
	b.plan.Parts = append(b.plan.Parts, x)
}

// Closures are those of a chamber without the resin by which their measured walls are thicker than the layers that
// somebody counted: what is thicker by resin alone holds no more.
func (p *Practice) Closures(c *chamber.Chamber) (forward, aft *chamber.Closure) {
	fibre, _ := c.Material.LaidUp()
	held := func(e *chamber.Closure, layers int) *chamber.Closure {
		if e == nil || e.Wall == 0 || layers == 0 || fibre == 0 {
			return e
		}
		laid := float64(layers) * p.ClosureClothInForce(c) / (fibre * c.FibreFractionPlanned())
		if !(laid > 0 && laid < e.Wall) {
			return e
		}
		less := *e
		less.Wall = laid
		return &less
	}
	return held(c.Forward, p.ForwardLayers), held(c.Aft, p.AftLayers)
}

// areal is the dry cloth in the tube's wall, kg/m².
func (b *builder) areal() float64 {
	sum := 0.
	for i := range b.c.Plies {
		sum += b.c.Plies[i].Cloth * float64(b.c.Plies[i].Count)
	}
	return sum
}

// bias is how the warp of a gore or a sector lies to its middle: there cloth gives most (common practice, no source).
const bias = math.Pi / 4

func (b *builder) gores(p Ply, e *chamber.Closure, surface gore.Profile, count int) Ply {
	g := surface.Gores(count)
	a := b.p.GoreAllowance(e)
	p.Shape, p.Pieces, p.Warp = Gore, count, bias
	p.Length, p.Width = g.Cut(a)
	p.Area = g.CutArea(a) * float64(count)
	a.Rim = e.Overlap
	p.Kept = g.CutArea(a) * float64(count)
	return p
}

// sector wraps a cone without a wrinkle, lapped along one line.
func (b *builder) sector(p Ply, radius, half float64) Ply {
	s := gore.Wrap(radius, 0, radius/math.Tan(half))
	p.Shape, p.Pieces, p.Warp = Sector, 1, bias
	p.Length, p.Width = s.Cut()
	p.Width += b.p.Overlap
	p.Area = s.Area() + b.p.Overlap*s.Slant()
	p.Kept = p.Area
	return p
}

func (b *builder) disc(p Ply, radius float64) Ply {
	p.Shape, p.Pieces = Disc, 1
	p.Length, p.Width = 2*radius, 2*radius
	p.Area = math.Pi * radius * radius
	p.Kept = p.Area
	return p
}

// skirt is the strip around the rim of a cone or a plate, turned onto it by an overlap. On the bias it
// goes around the edge.
func (b *builder) skirt(p Ply, e *chamber.Closure, radius float64) Ply {
	p.Shape, p.Warp = Strip, bias
	return b.sheets(p, e.Overlap+b.p.Trim+b.p.Overlap, 2*math.Pi*radius+b.p.Overlap, b.p.Trim)
}

// mount lays cloth over the bond of the recovery mount, every layer larger than the one below
// by an overlap all around.
func (b *builder) mount(m *chamber.Mount) {
	if m == nil || m.BondArea == 0 || b.p.MountLayers == 0 {
		return
	}
	x := Part{Name: Mount}
	cloth, name := b.p.ClosureClothInForce(b.c), "closure cloth"
	if b.p.ClosureCloth == 0 {
		for i := range b.c.Plies {
			if &b.c.Plies[i] == drapes(b.c) {
				name = clothName(b.c, i)
			}
		}
	}
	for k := range b.p.MountLayers {
		side := math.Sqrt(m.BondArea) + 2*b.p.Overlap*float64(k+1)
		p := Ply{Name: name, Cloth: cloth, First: k + 1, Last: k + 1, Shape: Patch, Pieces: 1, Length: side, Width: side, Area: side * side, Kept: side * side}
		x.Plies = append(x.Plies, p)
		x.Area, x.Peel = side*side, side*side
	}
	b.plan.Parts = append(b.plan.Parts, x)
}
