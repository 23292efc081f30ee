package layup

import (
	"math"

	"ullage/sim/chamber"
)

// Weighed is what a finished part turned out to be.
type Weighed struct {
	Mass   float64 // on the scales, kg
	ByMass float64 // share of fibre by volume, were there no voids; NaN where it weighs no more than its cloth
	ByWall float64 // that of the wall as measured; NaN where none is
	Voids  float64 // share of the volume; NaN likewise. Below 0 weight and wall disagree
	Error  float64 // of Voids, by what a wall is measured to, TapeError
}

// weigh holds a part's weight against its cloth. The densities of what it is made of do not
// change: with a share w of fibre by weight that by volume is (w/ρ_f)/(w/ρ_f + (1−w)/ρ_r), and
// voids are what wall or weight have beyond that, 1 − ρ (w/ρ_f + (1−w)/ρ_r) (ASTM D2734, from
// memory). ρ is that of the wall away from overlaps: its cloth an area over w and the wall.
func (b *builder) weigh(x *Part) {
	mass := b.p.of(x.Name)
	if mass == 0 {
		return
	}
	fibre, resin := b.c.Material.LaidUp()
	w := Weighed{Mass: mass, ByMass: math.NaN(), ByWall: math.NaN(), Voids: math.NaN(), Error: math.NaN()}
	share := x.Dry / mass
	if share < 1 {
		w.ByMass = share / fibre / (share/fibre + (1-share)/resin)
	}
	if x.Measured > 0 {
		w.ByWall = x.Areal / (fibre * x.Measured)
		if share < 1 {
			solid := x.Areal / share * (share/fibre + (1-share)/resin)
			w.Voids = 1 - solid/x.Measured
			w.Error = TapeError * solid / (x.Measured * x.Measured)
		}
	}
	x.Weighed = &w
}

func (p *Practice) of(n Name) float64 {
	switch n {
	case Tube:
		return p.Tube
	case Forward:
		return p.Forward
	case Aft:
		return p.Aft
	}
	return 0
}

// Strength is what bursts the chamber by estimate, as planned and as it was built, gauge, Pa; NaN where nobody
// knows. What was built never holds more than what was planned.
type Strength struct {
	Planned, Built float64
	Weakest        string // part as built; empty where nobody knows
	From           From
}

// From says what Built rests on.
type From string

// The bases.
const (
	FromPlan From = "planned" // neither wall nor weight is known yet
	FromWall From = "wall"    // as measured
	FromMass From = "mass"    // of the tube, since its wall was not measured
)

// strength is the tube's as planned, and as its measured wall or else its weight says.
func (b *builder) strength() Strength {
	built, from := *b.c, FromWall
	built.Forward, built.Aft = b.p.Closures(b.c)
	planned := built
	planned.Wall = 0
	if built.Wall == 0 {
		from = FromPlan
		if w := b.plan.Parts[0].Weighed; w != nil && w.ByMass > 0 {
			fibre, _ := b.c.Material.LaidUp()
			built.Wall, from = b.areal()/(fibre*w.ByMass), FromMass
		}
	}
	burst := func(c *chamber.Chamber) (float64, string) {
		r := c.At(chamber.Service{})
		if r.Weakest < 0 {
			return math.NaN(), ""
		}
		return r.Estimate, r.Parts[r.Weakest].Name
	}
	s := Strength{From: from}
	s.Planned, _ = burst(&planned)
	s.Built, s.Weakest = burst(&built)
	if s.Built > s.Planned {
		s.Built = s.Planned
	}
	return s
}
