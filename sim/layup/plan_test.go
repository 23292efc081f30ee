package layup

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
)

const deg = math.Pi / 180

// handLaid is an 80 mm tube of four plies of 200 g/m² and two of 85 g/m².
func handLaid() *chamber.Chamber {
	return &chamber.Chamber{
		Diameter: 0.08, Length: 0.8, Material: chamber.GlassEpoxy, FibreFraction: 0.35, Waste: 0.15,
		Plies:   []chamber.Ply{{Name: "cloth", Cloth: 0.2, Count: 4, Weave: chamber.Woven}, {Name: "light", Cloth: 0.085, Count: 2, Weave: chamber.Woven}},
		Forward: &chamber.Closure{Shape: chamber.Hemisphere, Overlap: 0.03}, Aft: &chamber.Closure{Shape: chamber.Ellipsoid, Overlap: 0.03},
	}
}

func planned(t testing.TB, c *chamber.Chamber, m *chamber.Mount, p Practice) Plan {
	t.Helper()
	require.Empty(t, c.Check())
	plan, err := Of(c, m, &p)
	require.NoError(t, err)
	return plan
}

// Common practice, no source: such a tube laid by hand has a wall of about 1.1 mm.
func TestAHandLaidTube(t *testing.T) {
	p := planned(t, handLaid(), nil, Practice{ClothWidth: 2})
	x := p.Parts[0]
	assert.InDelta(t, 1.1e-3, x.Wall, 0.05e-3)
	assert.InEpsilon(t, 4*0.2+2*0.085, x.Areal, 1e-12)
	// Its weight is that of a tube of that wall, and of the two overlaps beyond.
	girth := math.Pi * (0.08 + x.Wall)
	assert.InEpsilon(t, x.Areal/(2580*0.35)*(0.35*2580+0.65*1150)*girth*0.86, x.Mass, 0.015)
	assert.InEpsilon(t, girth*0.86, x.Area, 1e-9)
}

// All layers of a ply that goes around in one roll need as much cloth as the layers cut one by one, but for
// their overlaps; each layer is 2π of its thickness longer than the one below.
func TestRollsAndLayers(t *testing.T) {
	c := handLaid()
	wide := Practice{ClothWidth: 2}
	one := planned(t, c, nil, wide).Parts[0].Plies
	wide.Wrap = LayerByLayer
	each := planned(t, c, nil, wide).Parts[0].Plies
	require.Len(t, one, 2)
	require.Len(t, each, 6)
	sum := 0.
	for i, p := range each[:4] {
		assert.Equal(t, [2]int{i + 1, i + 1}, [2]int{p.First, p.Last})
		sum += p.Width - UsualOverlap
		if i > 0 {
			assert.InDelta(t, 2*math.Pi*0.2/(2580*0.35), p.Width-each[i-1].Width, 1e-9)
		}
	}
	assert.InDelta(t, sum, one[0].Width-UsualOverlap, 1e-9)
	assert.Equal(t, [2]int{1, 4}, [2]int{one[0].First, one[0].Last})
	assert.InDelta(t, 0.8+2*0.03+2*UsualTrim, one[0].Length, 1e-12)
	assert.Equal(t, [2]int{5, 6}, [2]int{one[1].First, one[1].Last})
	assert.InDelta(t, math.Pi*0.08+math.Pi*0.2/(2580*0.35)+UsualOverlap, each[0].Width, 1e-9, "by hand: at the middle of the cloth")
	assert.Equal(t, 0, one[0].Joints)
}

// A roll that is too narrow makes pieces that overlap each other.
func TestNarrowRolls(t *testing.T) {
	for _, direction := range []float64{0, 45, 90} {
		for _, width := range []float64{0.05, 0.3, 0.6, 1.2} {
			t.Run(fmt.Sprint(direction, width), func(t *testing.T) {
				c := handLaid()
				c.Plies = c.Plies[:1]
				c.Plies[0].Direction = direction * deg
				p := planned(t, c, nil, Practice{ClothWidth: width}).Parts[0].Plies[0]
				_, across := p.box()
				assert.LessOrEqual(t, across, width+1e-9)
				assert.GreaterOrEqual(t, p.Area, 0.86*4*math.Pi*0.08)
				assert.Equal(t, p.Joints > 0, p.Pieces > 1)
				assert.GreaterOrEqual(t, p.offRoll(width)*width, p.Area*(1-1e-9))
			})
		}
	}
}

// The gores of a layer cover its dome: their area without overlaps is the closed surface's (formulas as in
// sim/gore), and the skirt's 2π r L.
func TestClosuresAreCovered(t *testing.T) {
	c := handLaid()
	p := planned(t, c, nil, Practice{Overlap: 1e-3, Trim: 0.5e-3}) // as small as they may be
	h, e := p.Parts[1], p.Parts[2]
	for _, ply := range h.Plies {
		assert.Equal(t, 6, ply.Pieces)
		r := h.Radius + (float64(ply.First)-0.5)*0.2/(2580*0.35)
		surface := 2*math.Pi*r*r + 2*math.Pi*r*0.03
		seams := 6 * 1e-3 * ply.Length
		assert.InEpsilon(t, surface+seams, ply.Kept, 0.01)
	}
	assert.GreaterOrEqual(t, len(h.Plies), 5, "as thick as the tube: 970 g/m² of cloth in layers of 200")
	assert.Less(t, h.Wall, p.Parts[0].Wall*1.2)
	ecc := math.Sqrt(3) / 2
	r := e.Radius
	dome := math.Pi * r * r * (1 + (1-ecc*ecc)/ecc*math.Atanh(ecc))
	assert.InEpsilon(t, dome, e.Plug.Area(), 0.01)
	assert.GreaterOrEqual(t, e.Plies[0].Pieces, 6)
	assert.InDelta(t, 0.04-0.2e-3-p.Parts[0].Wall, h.Radius, 1e-9, "skirt and glue go into the bore")
}

// A cone is wrapped by a sector of its slant area, π r l, a plate is a disc; both have a skirt.
func TestConesAndPlates(t *testing.T) {
	c := handLaid()
	c.Forward = &chamber.Closure{Shape: chamber.Cone, HalfAngle: 30 * deg, Overlap: 0.03, Wall: 1e-3}
	c.Aft = &chamber.Closure{Shape: chamber.Flat, Overlap: 0.03, Wall: 6e-3}
	p := planned(t, c, nil, Practice{})
	cone, plate := p.Parts[1], p.Parts[2]
	require.Len(t, cone.Plies, 10)
	assert.Equal(t, Sector, cone.Plies[0].Shape)
	assert.Equal(t, Strip, cone.Plies[5].Shape)
	r := cone.Radius + 0.1/(2580*0.35)
	assert.InEpsilon(t, math.Pi*r*2*r+UsualOverlap*2*r, cone.Plies[0].Area, 1e-9)
	assert.InEpsilon(t, 5*0.2, cone.Areal, 1e-12, "a skirt is no second layer")
	assert.Equal(t, Disc, plate.Plies[0].Shape)
	assert.InDelta(t, 6e-3, plate.Wall, 0.2/(2580*0.35))
}

func TestResinAndPots(t *testing.T) {
	for _, pot := range []float64{0.02, 0.05, 0.1, 1} {
		p := planned(t, handLaid(), &chamber.Mount{BondArea: 15e-4}, Practice{Hardener: 0.4, Pot: pot, Wrap: LayerByLayer, MountLayers: 2})
		require.Len(t, p.Parts, 4)
		sum := 0.
		for _, x := range p.Parts {
			part, layer := 0., 0
			for _, q := range x.Pots {
				assert.LessOrEqual(t, q.Mixed.Whole, pot*(1+1e-9))
				assert.InEpsilon(t, q.Mixed.Whole, q.Mixed.Resin+q.Mixed.Hardener, 1e-9)
				assert.InEpsilon(t, 0.4, q.Mixed.Hardener/q.Mixed.Resin, 1e-9)
				assert.LessOrEqual(t, q.First, layer+1, "no layer is left out")
				layer = q.Last
				part += q.Mixed.Whole
			}
			assert.InEpsilon(t, x.Mixed.Whole, part, 1e-9)
			assert.Equal(t, x.Plies[len(x.Plies)-1].Last, layer)
			sum += part
		}
		require.Len(t, p.Bonds, 3)
		assert.InEpsilon(t, 15e-4*0.2e-3*1150*1.15, p.Bonds[2].Mixed.Whole, 1e-9)
		for _, b := range p.Bonds {
			sum += b.Mixed.Whole
		}
		assert.InEpsilon(t, sum, p.Mixed.Whole, 1e-9)
	}
	none := planned(t, handLaid(), nil, Practice{})
	assert.True(t, math.IsNaN(none.Mixed.Hardener), "no ratio is usual")
	assert.Positive(t, none.Mixed.Whole)
}

// What is cut of every cloth is what its rows say, and less than comes off the roll.
func TestRollsOfCloth(t *testing.T) {
	c := handLaid()
	c.Plies = append(c.Plies, chamber.Ply{Name: "sleeve", Cloth: 0.3, Count: 2, Weave: chamber.Braided, Direction: 45 * deg})
	p := planned(t, c, nil, Practice{})
	sum, rolls := 0., 0.
	for _, x := range p.Parts {
		for _, y := range x.Plies {
			sum += y.Area
		}
	}
	for _, r := range p.Rolls {
		rolls += r.Area
		assert.InEpsilon(t, r.Area*r.Cloth, r.Mass, 1e-9)
		if !r.Sleeve {
			assert.GreaterOrEqual(t, r.Length*UsualClothWidth, r.Area)
		}
	}
	assert.InEpsilon(t, sum, rolls, 1e-9)
	assert.Equal(t, []string{"cloth", "light", "sleeve"}, []string{p.Rolls[0].Ply, p.Rolls[1].Ply, p.Rolls[2].Ply})
	assert.True(t, p.Rolls[2].Sleeve)
	assert.Positive(t, p.Peel)
	assert.Zero(t, planned(t, c, nil, Practice{Peel: NoPeel}).Peel)
}

// The density identity: cloth and resin without voids fill 1/ρ = w/ρ_f + (1−w)/ρ_r, and a wall that has
// a share of voids is as much thicker.
func TestWeighIn(t *testing.T) {
	for _, v := range []float64{0.25, 0.35, 0.5} {
		for _, voids := range []float64{0, 0.04, 0.1} {
			c := handLaid()
			plain := planned(t, c, nil, Practice{}).Parts[0]
			mass := plain.Dry * (1 + (1-v)/v*1150/2580) // by hand
			wall := plain.Areal / (2580 * v) / (1 - voids)
			c.Wall = wall
			w := planned(t, c, nil, Practice{Tube: mass}).Parts[0].Weighed
			require.NotNil(t, w)
			assert.InEpsilon(t, v, w.ByMass, 1e-9)
			assert.InEpsilon(t, v*(1-voids), w.ByWall, 1e-9)
			assert.InDelta(t, voids, w.Voids, 1e-9)
			assert.InEpsilon(t, c.FibreFractionInForce(), w.ByWall, 1e-9, "as the chamber counts it")
		}
	}
	c := handLaid()
	light := planned(t, c, nil, Practice{Tube: 0.01}).Parts[0].Weighed
	assert.True(t, math.IsNaN(light.ByMass), "lighter than its cloth")
	assert.True(t, math.IsNaN(light.Voids))
	assert.Nil(t, planned(t, c, nil, Practice{Tube: 0.2}).Parts[1].Weighed)
	c.Forward.Wall = 1.2e-3
	assert.InEpsilon(t, 1.2e-3, planned(t, c, nil, Practice{Forward: 0.05}).Parts[1].Measured, 1e-12)
}

// Strength follows what was reached, and never upward: not from more resin, by wall or by weight.
func TestStrengthFollowsTheScales(t *testing.T) {
	for _, own := range []float64{0, 240e6} {
		c := handLaid()
		c.Around, c.Along = own, own*0.6
		plain := planned(t, c, nil, Practice{})
		assert.Equal(t, FromPlan, plain.Strength.From)
		assert.Equal(t, plain.Strength.Planned, plain.Strength.Built)
		last := math.Inf(1)
		for _, v := range []float64{0.35, 0.3, 0.2} {
			mass := plain.Parts[0].Dry * (1 + (1-v)/v*1150/2580)
			s := planned(t, c, nil, Practice{Tube: mass}).Strength
			assert.Equal(t, FromMass, s.From)
			assert.LessOrEqual(t, s.Built, s.Planned)
			assert.LessOrEqual(t, s.Built, last*(1+1e-9))
			last = s.Built
		}
		c.Wall = plain.Parts[0].Wall * 0.8
		s := planned(t, c, nil, Practice{}).Strength
		assert.Equal(t, FromWall, s.From)
		assert.LessOrEqual(t, s.Built, s.Planned)
		assert.NotEmpty(t, s.Weakest)
	}
}

// A closure whose layers were counted holds what they hold, however thick resin made it.
func TestClosuresOfCountedLayers(t *testing.T) {
	c := handLaid()
	laid := 7 * 0.2 / (2580 * 0.35)
	last := math.Inf(1)
	for _, wall := range []float64{0.8, 1, 1.3, 2} {
		c.Forward.Wall = laid * wall
		p := Practice{ForwardLayers: 7}
		forward, aft := p.Closures(c)
		assert.Same(t, c.Aft, aft)
		assert.InEpsilon(t, laid*math.Min(1, wall), forward.Wall, 1e-12)
		x := planned(t, c, nil, p).Parts[1]
		assert.Len(t, x.Plies, 7)
		assert.False(t, x.Counted)
		if wall >= 1 {
			s := planned(t, c, nil, p).Strength
			assert.LessOrEqual(t, s.Built, last*(1+1e-9))
			last = s.Built
		}
	}
}

func TestNothingToLayUp(t *testing.T) {
	for _, c := range []*chamber.Chamber{
		{Diameter: 0.1, Length: 1, Material: chamber.PETBottle, Wall: 0.3e-3},
		{Diameter: 0.1, Length: 1, Material: chamber.GlassEpoxy, Wall: 1e-3},
	} {
		_, err := Of(c, nil, nil)
		assert.ErrorIs(t, err, ErrNoPlies)
	}
}
