package chamber

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// glued is a tube of radius 44 mm and wall 0.8 mm with an axial modulus of 12 GPa, its laps of an adhesive of 20 MPa, elastic
// strain 0.02, glue line 0.2 mm.
func glued(plastic, overlap float64) *Chamber {
	c := pipe(0.088, 0.0008)
	c.Modulus = 12e9
	c.Adhesive = &Adhesive{GlueLine: 0.2e-3, Strength: 20e6, Elastic: 0.02, Plastic: plastic}
	c.Forward = &Closure{Shape: Flat, Wall: 0.01, Overlap: overlap, BondStrength: 12e6}
	return c
}

// Hart-Smith's limit and Volkersen's peak, computed by plain arithmetic: 96.0 kN/m (43.6 bar on r 44 mm) with a
// plastic strain of 0.05, 39.2 kN/m (17.8 bar) of a brittle one; at 1 MPa average 0.7333 and peak 11.23 MPa on 30 mm, 0.3667 and 11.23 on 60 mm.
func TestLapsEnds(t *testing.T) {
	for plastic, want := range map[float64]struct{ ends, bar float64 }{0.05: {96.0e3, 43.6}, 1e-9: {39.2e3, 17.8}} {
		res := glued(plastic, 0.03).At(Service{Working: 1e6, Ambient: 1e5})
		l := res.Laps[0]
		assert.InEpsilon(t, want.ends, l.Ends, 1e-3)
		assert.InEpsilon(t, want.bar, l.Ends/l.Load*10, 2e-3)
		assert.InDelta(t, 22e3, l.Load, 1e-6)
		assert.InEpsilon(t, l.Ends/12e6, l.Useful, 1e-12)
	}
	for overlap, want := range map[float64]struct{ average, peak float64 }{0.03: {0.7333, 11.23}, 0.06: {0.3667, 11.23}} {
		l := glued(0.05, overlap).At(Service{Working: 1e6, Ambient: 1e5}).Laps[0]
		assert.InDelta(t, want.average, 1e-6*l.Load/l.Overlap, 1e-4)
		assert.InDelta(t, want.peak, 1e-6*l.Peak, 6e-3)
	}
}

// Up to the useful overlap the average strength governs, beyond it the ends, and more does nothing.
func TestWhatLimitsALap(t *testing.T) {
	use := func(overlap float64) (float64, Note) {
		p := part(t, glued(0.05, overlap).At(Service{Working: 1e6, Ambient: 1e5}), "forward bond")
		return p.Use, p.Note
	}
	short, note := use(0.004)
	assert.Equal(t, Average, note)
	assert.InEpsilon(t, 22e3/(12e6*0.004), short, 1e-9)
	long, note := use(0.02)
	assert.Equal(t, LapEnds, note)
	longer, _ := use(0.08)
	assert.InEpsilon(t, 22e3/96e3, long, 1e-3)
	assert.InEpsilon(t, long, longer, 1e-12)
	at := glued(0.05, 0.02).At(Service{Working: 1e6}).Laps[0]
	edge, _ := use(at.Useful)
	assert.InEpsilon(t, long, edge, 1e-9)
	// A wall of which nothing is known has no ends to speak of: then the average alone is left, and it is typical.
	own := glued(0.05, 0.02)
	own.Material, own.Modulus, own.Around, own.Along, own.Density = Own, 0, 1e8, 1e8, 1800
	p := part(t, own.At(Service{Working: 1e6}), "forward bond")
	assert.True(t, p.Typical)
	assert.Equal(t, Average, p.Note)
}

// A boss of 44 mm bonded over 15 mm, pushed out at 1 MPa by a seal of 34 mm: 907.9 N on 2073.5 mm², 0.43787 MPa (by hand).
func TestBoss(t *testing.T) {
	c := glassTube()
	c.Boss = &Boss{Diameter: 0.044, Length: 0.015, BondStrength: 8e6}
	c.Thread = &Thread{Diameter: 0.036, Pitch: 0.002, Engaged: 0.01, Seal: 0.034}
	p := part(t, c.At(Service{Working: 1e6, Ambient: 1e5}), "boss bond")
	assert.InDelta(t, 0.43788e6, p.Stress, 20)
	assert.False(t, p.Typical)
	c.Thread = nil // without one the face of the boss itself
	p = part(t, c.At(Service{Working: 1e6, Ambient: 1e5}), "boss bond")
	assert.InEpsilon(t, 1e6*0.044/4/0.015, p.Stress, 1e-12)
}

// A PET bottle of 2 L at 6 bar grows by 4 to 5 % (common practice, no source); what has no modulus grows by nothing that is known.
func TestGrowth(t *testing.T) {
	pet := &Chamber{Material: PETBottle, Diameter: 0.108, Length: 0.2, Wall: 0.3e-3}
	assert.InDelta(t, 0.045, pet.Growth(0, 6e5), 0.005)
	bare := *pet
	bare.Diameter = 0
	assert.InEpsilon(t, pet.Growth(0, 6e5), bare.Growth(0.108, 6e5), 1e-12)
	own := *pet
	own.Material = Own
	assert.Zero(t, own.Growth(0, 6e5))
	assert.Equal(t, 0.5, pet.Growth(0, 1e12), "held there")
}

// More resin is never stronger: a thicker wall measured over the same plies does not make a closure without a wall of
// its own hold more than a little of what resin adds.
func TestClosureTakesTheTubesPlies(t *testing.T) {
	at := func(wall float64) float64 {
		c := glassTube()
		c.Forward, c.Aft = &Closure{Shape: Hemisphere, Overlap: 0.05}, nil
		c.Wall = wall
		return part(t, c.At(service()), "forward closure").Use
	}
	thin := glassTube().WallThickness()
	assert.InEpsilon(t, at(thin), at(1.5*thin), 0.08)
}
