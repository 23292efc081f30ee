package layup

import (
	"math"

	"ullage/sim/chamber"
)

// tube lays the tube on a mandrel as wide as its bore, from the inside out. Cloth lies along the middle
// of its own thickness: every layer is 2π of its thickness longer around than the one below.
func (b *builder) tube() {
	c := b.c
	x := Part{Name: Tube, Radius: c.Diameter / 2, Measured: c.Wall}
	long := c.TubeLength() + 2*b.p.Trim
	at, layer := c.Diameter/2, 1
	for i := range c.Plies {
		ply := &c.Plies[i]
		t := b.thickness(ply.Cloth)
		p := Ply{Name: clothName(c, i), Cloth: ply.Cloth, Warp: ply.Direction}
		girth := func(first, count int) float64 {
			return 2 * math.Pi * float64(count) * (at + t*(float64(first)+float64(count)/2))
		}
		switch {
		case ply.Weave == chamber.Braided:
			for k := range ply.Count {
				x.Plies = append(x.Plies, b.sleeve(p, layer+k, long, girth(k, 1)))
			}
		case b.p.Wrap == OneRoll:
			p.First, p.Last = layer, layer+ply.Count-1
			x.Plies = append(x.Plies, b.sheets(p, long, girth(0, ply.Count)+b.p.Overlap, 2*b.p.Trim))
		default:
			for k := range ply.Count {
				p.First, p.Last = layer+k, layer+k
				x.Plies = append(x.Plies, b.sheets(p, long, girth(k, 1)+b.p.Overlap, 2*b.p.Trim))
			}
		}
		at += t * float64(ply.Count)
		layer += ply.Count
	}
	x.Area = math.Pi * (c.Diameter/2 + at) * c.TubeLength()
	x.Peel = (2*math.Pi*at + b.p.Overlap) * long
	b.plan.Parts = append(b.plan.Parts, x)
}

// sleeve is a braid pulled over the mandrel: it is as wide as that makes it, and is cut to length. Pulled to
// another width than its own it grows or shrinks along: it is measured on the mandrel.
func (b *builder) sleeve(p Ply, layer int, long, girth float64) Ply {
	p.Shape, p.First, p.Last, p.Pieces, p.Length = Sleeve, layer, layer, 1, long
	p.Area = long * girth
	p.Kept = (long - 2*b.p.Trim) * girth
	return p
}
