package layup

import (
	"cmp"
	"math"

	"ullage/sim/chamber"
	"ullage/sim/fault"
)

// Ply is a row of the cutting list: pieces alike of one cloth, which make one layer of a part, or
// several.
type Ply struct {
	Name        string  // of the cloth
	Cloth       float64 // kg/m²
	First, Last int     // layers of the part that they make, from 1, from the inside out
	Shape       Shape
	Pieces      int
	Length      float64 // of a piece as cut, along the part's axis or a gore's middle, m
	Width       float64 // m; 0 of a sleeve
	Warp        float64 // of the cloth from the length, rad; the fibres of a unidirectional one
	Joints      int     // lines at which pieces that the roll is too narrow for overlap, none where one piece does
	Area        float64 // of all pieces as cut, m²
	Kept        float64 // of that in the finished part, trims off and overlaps in it, m²
}

// Shape is that of a piece.
type Shape string

// The shapes.
const (
	Sheet  Shape = "sheet"
	Sleeve Shape = "sleeve" // braided, pulled over
	Gore   Shape = "gore"
	Sector Shape = "sector"
	Disc   Shape = "disc"
	Strip  Shape = "strip" // of a skirt
	Patch  Shape = "patch"
)

// Layers is how many layers the pieces make.
func (p *Ply) Layers() int {
	if p.Shape == Strip { // beside the sector or disc that is counted
		return 0
	}
	return p.Last - p.First + 1
}

// box is the rectangle of a roll that holds a piece: along it, the warp's way, and across it.
func (p *Ply) box() (along, across float64) {
	sin, cos := math.Sincos(p.Warp)
	return p.Length*cos + p.Width*sin, p.Length*sin + p.Width*cos
}

// offRoll is the length of roll that the pieces take, side by side as they fit, m.
func (p *Ply) offRoll(width float64) float64 {
	if p.Shape == Sleeve {
		return p.Length * float64(p.Pieces)
	}
	along, across := p.box()
	side := max(1, int(math.Floor(width/across+1e-9)))
	return along * math.Ceil(float64(p.Pieces)/float64(side))
}

// clothName is how the cloth of a ply of the file is called.
func clothName(c *chamber.Chamber, i int) string { return fault.Entry(c.Plies[i].Name, i) }

// sheets cuts a rectangle, long along the axis and around the part, for a roll: in one piece where it fits,
// else in as many across the length as it takes, and those shorter where even a strip does not.
func (b *builder) sheets(p Ply, long, around, trim float64) Ply {
	lap := b.p.Overlap
	p.Shape = cmp.Or(p.Shape, Sheet)
	const most = 1000 // pieces either way: a roll narrower than its overlaps, which Check tells of, gets no farther
	fits := func(n, m int) bool {
		p.Width = (around + float64(n-1)*lap) / float64(n)
		p.Length = (long + float64(m-1)*lap) / float64(m)
		_, across := p.box()
		return across <= b.p.ClothWidth+1e-9
	}
	n, m := 1, 1
	for !fits(n, m) && n < most && m < most {
		narrowest := Ply{Length: p.Length, Width: 2 * lap, Warp: p.Warp}
		if _, across := narrowest.box(); across > b.p.ClothWidth {
			m++
			n = 1
			continue
		}
		n++
	}
	p.Pieces = n * m
	p.Joints = n - 1 + m - 1
	p.Area = float64(p.Pieces) * p.Length * p.Width
	p.Kept = p.Area * max(0, long-trim) / long
	return p
}
