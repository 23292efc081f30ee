package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Thin wall, 1 MPa, mean radius 44 mm, 0.3 mm: 146.67 and 73.33 MPa (computed).
func TestThinWall(t *testing.T) {
	c := &Chamber{Diameter: 0.088 - 0.0003, Length: 0.3, Material: PETBottle, Wall: 0.0003}
	r := c.At(Service{Working: 1e6, Ambient: 101325})
	assert.InDelta(t, 146.67e6, part(t, r, wallAround).Stress, 5e3)
	assert.InDelta(t, 73.33e6, part(t, r, wallAlong).Stress, 5e3)
	assert.False(t, r.Thick)
}

// Lamé, inner radius 50, outer 60 mm, 5 MPa: 27.727 MPa around at the inner face, 22.727
// at the outer, 11.364 along (computed).
func TestLame(t *testing.T) {
	around, along := lame(0.05, 0.06)
	assert.InDelta(t, 27.727e6, 5e6*around, 500)
	assert.InDelta(t, 11.364e6, 5e6*along, 500)
	// At the outer face there is one pressure less: the two faces are 27.727 and 22.727.
	assert.InDelta(t, 22.727e6, 5e6*(around-1), 500)

	c := pipe(0.1, 0.01)
	r := c.At(Service{Working: 5e6, Ambient: 101325})
	assert.True(t, c.lame())
	assert.InDelta(t, 27.727e6, part(t, r, wallAround).Stress, 500)
	assert.InDelta(t, 11.364e6, part(t, r, wallAlong).Stress, 500)
	assert.False(t, r.Thick, "the inner face is known")

	// Thin, it is p r/t with the mean radius.
	around, along = lame(0.05, 0.05001)
	assert.InEpsilon(t, 0.050005/0.00001, around, 1e-6)
	assert.InEpsilon(t, 0.050005/0.00002, along, 1e-3)

	// Thick is over a tenth of the mean radius.
	assert.False(t, pipe(0.1, 0.00520).lame())
	assert.True(t, pipe(0.1, 0.00530).lame())

	laid := glassTube()
	laid.Plies[0].Count = 30
	assert.True(t, laid.At(service()).Thick, "a composite's inner face is not")
}

// The strain of a thin isotropic tube: p r/(E t)(1 − ν/2) around, p r/(E t)(1/2 − ν)
// along (Timoshenko); a thick one's inner face: Hooke's law on Lamé's three stresses.
func TestIsotropicStrain(t *testing.T) {
	c := pipe(0.1, 0.002)
	r := c.At(Service{Working: 1e6, Ambient: 101325})
	thin := r.Proof * 0.051 / (69e9 * 0.002)
	assert.InEpsilon(t, thin*(1-0.33/2), r.Dilation.Around, 1e-12)
	assert.InEpsilon(t, thin*(0.5-0.33), r.Dilation.Along, 1e-12)
	assert.InEpsilon(t, r.Dilation.Around/1.5, r.Strain, 1e-12)
	e := pipe(0.1, 0.01).strains()
	assert.InEpsilon(t, (27.72727/5-0.33*(11.36364/5-1))/69e9, e.around, 1e-6)
	assert.InEpsilon(t, (11.36364/5-0.33*(27.72727/5-1))/69e9, e.along, 1e-5)
}

// A composite whose constituents are alike strains as its modulus given would.
func TestModulusGiven(t *testing.T) {
	c := glassTube()
	c.Modulus = 20e9
	e := c.strains()
	assert.InEpsilon(t, c.meanRadius()/(20e9*c.WallThickness())*(1-0.3/2), e.around, 1e-12)
}

// Closures, each against its formula at 1 MPa, inside radius 50 mm, wall 2 mm.
func TestClosures(t *testing.T) {
	const r, wall = 0.05, 0.002
	for _, c := range []struct {
		shape  ClosureShape
		stress float64
		note   Note
	}{
		{Hemisphere, 12.5e6, ""},
		{Ellipsoid, -25e6, Equator}, // crown as much in tension: Timoshenko and Woinowsky-Krieger, chapter 14
		{Cone, 25e6 / math.Cos(30*deg), Edge},
		{Flat, 3 * 3.33 / 8 * 625e6, ""}, // Timoshenko and Woinowsky-Krieger, chapter 3
	} {
		tube := pipe(2*r, 0.001)
		tube.Aft = &Closure{Shape: c.shape, Wall: wall, HalfAngle: 30 * deg, Overlap: 0.03}
		assert.Empty(t, tube.Check())
		p := part(t, tube.At(Service{Working: 1e6, Ambient: 1e5}), "aft closure")
		assert.InEpsilon(t, c.stress, p.Stress, 1e-12, c.shape)
		assert.Equal(t, c.note, p.Note)
		assert.Equal(t, 240e6, p.Strength, "the tube's")
		assert.InEpsilon(t, math.Abs(p.Stress)/p.Strength, p.Use, 1e-12)
	}

	// Composites are weaker in compression; a closure without figures has the tube's.
	c := glassTube()
	c.Forward, c.Aft.Wall = nil, 0
	res := c.At(service())
	along, around := part(t, res, wallAlong), part(t, res, wallAround)
	p := part(t, res, "aft closure")
	assert.InEpsilon(t, -1e6*0.05/c.WallThickness(), p.Stress, 1e-12)
	assert.InEpsilon(t, 0.6*math.Min(along.Strength, around.Strength), p.Strength, 1e-12)
	c.Aft.Strength = 100e6
	assert.InEpsilon(t, 60e6, part(t, c.At(service()), "aft closure").Strength, 1e-12)
}

// Lap: 1 MPa, r 44 mm, τ 1 MPa wants 22.0 mm (computed): force π r² p on 2 π r L.
func TestLap(t *testing.T) {
	c := pipe(0.088, 0.001)
	c.Forward = &Closure{Shape: Flat, Wall: 0.01, Overlap: 0.022, BondStrength: 1e6}
	p := part(t, c.At(Service{Working: 1e6, Ambient: 1e5}), "forward bond")
	assert.InEpsilon(t, 1e6, p.Stress, 1e-12)
	assert.InEpsilon(t, 1, p.Use, 1e-12)
	assert.Equal(t, Average, p.Note)
	assert.True(t, p.Typical, "the adhesive's own figures")
	c.Adhesive = &Adhesive{GlueLine: 0.2e-3, Strength: 20e6, Elastic: 0.02, Plastic: 0.05}
	assert.False(t, part(t, c.At(Service{Working: 1e6, Ambient: 1e5}), "forward bond").Typical)
	c.Forward.BondStrength, c.HeatFactor = 0, 0.5
	p = part(t, c.At(Service{Working: 1e6, Ambient: 1e5}), "forward bond")
	assert.Equal(t, TypicalBond/2, p.Strength)
	assert.True(t, p.Typical)
}

// M20×2, 10 mm engaged, after FED-STD-H28: 257.98, 420.23 and 549.78 mm² (computed).
func TestThread(t *testing.T) {
	th := &Thread{Diameter: 0.02, Pitch: 0.002, Engaged: 0.01}
	male, female := th.ShearAreas()
	assert.InDelta(t, 257.98e-6, th.StressArea(), 5e-9)
	assert.InDelta(t, 420.23e-6, male, 5e-9)
	assert.InDelta(t, 549.78e-6, female, 5e-9)

	c := pipe(0.1, 0.002)
	c.Thread = th
	r := c.At(Service{Working: 1e6, Ambient: 1e5})
	force := 1e6 * math.Pi / 4 * 0.02 * 0.02
	assert.InEpsilon(t, force/male, part(t, r, "retainer thread, male").Stress, 1e-12)
	assert.InEpsilon(t, force/female, part(t, r, "retainer thread, female").Stress, 1e-12)
	assert.InEpsilon(t, force/th.StressArea(), part(t, r, "retainer, tension").Stress, 1e-12)
	assert.InEpsilon(t, TypicalThread/math.Sqrt(3), part(t, r, "retainer thread, female").Strength, 1e-12)

	th.Seal, th.Hole, th.Strength, th.Female = 0.04, 0.01, 400e6, 100e6
	h := c.At(Service{Working: 1e6, Ambient: 1e5})
	assert.InEpsilon(t, 4*force/male, part(t, h, "retainer thread, male").Stress, 1e-12)
	assert.InDelta(t, 257.98e-6-math.Pi/4*1e-4, th.StressArea(), 5e-9)
	assert.Equal(t, 400e6, part(t, h, "retainer, tension").Strength)
	assert.InEpsilon(t, 100e6/math.Sqrt(3), part(t, h, "retainer thread, female").Strength, 1e-12)
	assert.False(t, part(t, h, "retainer thread, female").Typical)
}

// Volumes of the bodies (Euclid, Archimedes): a sphere of two hemispheres is πD³/6.
func TestVolume(t *testing.T) {
	c := &Chamber{Diameter: 0.1, Length: 0.5}
	tube := math.Pi / 4 * 0.01 * 0.5
	assert.InEpsilon(t, tube, c.Volume(), 1e-12)
	c.Forward, c.Aft = &Closure{Shape: Hemisphere}, &Closure{Shape: Hemisphere}
	assert.InEpsilon(t, tube+math.Pi/6*1e-3, c.Volume(), 1e-12)
	c.Aft = &Closure{Shape: Ellipsoid}
	assert.InEpsilon(t, tube+math.Pi/8*1e-3, c.Volume(), 1e-12)
	c.Forward, c.Aft = nil, &Closure{Shape: Cone, HalfAngle: 45 * deg}
	assert.InEpsilon(t, tube+math.Pi/3*0.05*0.05*0.05, c.Volume(), 1e-12)
	c.Aft.HalfAngle = 30 * deg
	assert.InEpsilon(t, tube+math.Pi/3*0.05*0.05*0.05*math.Sqrt(3), c.Volume(), 1e-12, "a third of base times height")
	c.Aft.Shape = Flat
	assert.InEpsilon(t, tube, c.Volume(), 1e-12)
}
