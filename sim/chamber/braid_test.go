package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// byHand are the stresses in a balanced braid, in its fibres' axes, under the wall's mean
// ones: equilibrium both ways, and no change of the angle between axis and circumference
// (Jones, 1975, chapters 2 and 4, written in stresses and compliances, where the program
// goes by strains and stiffnesses). With σ1 + σ2 = X + Y and τ from equilibrium, that
// third condition is linear in σ1.
func byHand(of lamina, angle, x, y float64) (fibre, across, shear float64) {
	s, c := math.Sincos(angle)
	stresses := func(fibre float64) (across, shear float64) {
		across = x + y - fibre
		return across, (fibre*c*c + across*s*s - x) / (2 * s * c)
	}
	distortion := func(fibre float64) float64 {
		across, shear := stresses(fibre)
		e1 := (fibre - of.poisson*across) / of.along
		e2 := across/of.across - of.poisson*fibre/of.along
		return 2*s*c*(e1-e2) + (c*c-s*s)*shear/of.shear
	}
	at0, at1 := distortion(0), distortion(x+y)
	fibre = (x + y) * at0 / (at0 - at1)
	across, shear = stresses(fibre)
	return fibre, across, shear
}

// Burst pressure of a braid at every angle of winding, by hand: where its fibres cross at
// 30° or more they hold as a net with the resin cracked (a thousandth of its stiffness
// left across the fibres, a tenth in shear), and fibre or shear gives way, shear being the
// greater of cracked and whole; nearer to the circumference the resin gives way across the
// fibres. Strengths are those of the sources in TestStrengths.
func TestBraidByHand(t *testing.T) {
	whole := mix(GlassEpoxy.stuff(), 0.35)
	cracked := whole
	cracked.across, cracked.shear = 0.001*whole.across, 0.1*whole.shear
	for _, angle := range []float64{46, 50, 53, 54.7356, 56, 60, 65, 70, 74, 74.99, 75.02, 76, 80, 85, 89} {
		c := &Chamber{Diameter: 0.1, Length: 0.5, Material: GlassEpoxy,
			Plies: []Ply{{Cloth: 0.3, Count: 4, Weave: Braided, Direction: angle * deg}}}
		wall := 4 * 0.3 / (2580 * 0.35)
		hoop := 1e6 * (0.1 + wall) / 2 / wall
		r := c.At(service())
		fibre, across, shear := byHand(whole, angle*deg, hoop/2, hoop)
		name, resin := wallAlong+resinAlone, across/30e6
		if angle < 75 {
			f, a, s := byHand(cracked, angle*deg, hoop/2, hoop)
			fibre, across, shear = f, a, math.Max(math.Abs(shear), math.Abs(s))
			name, resin = wallAlong, 0
		}
		of := whole
		if angle < 75 {
			of = cracked
		}
		strain := (fibre - of.poisson*across) / of.along
		assert.InEpsilon(t, strain/0.016, part(t, r, wallAround).Use, 1e-9, "%v", angle)
		if resin > 0 {
			assert.InEpsilon(t, resin, part(t, r, name).Use, 1e-9, "%v", angle)
		} else {
			assert.InEpsilon(t, strain/0.016, part(t, r, name).Use, 1e-9, "%v", angle)
		}
		assert.InEpsilon(t, math.Abs(shear), part(t, r, wallShear).Stress, 1e-9, "%v", angle)
		assert.InEpsilon(t, math.Abs(shear)/40e6, part(t, r, wallShear).Use, 1e-9, "%v", angle)
		worst := math.Max(strain/0.016, math.Max(resin, math.Abs(shear)/40e6))
		assert.InEpsilon(t, 1e6/worst, r.Estimate, 1e-9, "%v", angle)
	}
}

// The angles at which what is judged changes, to a tenth of a degree: fibres cross from 30°
// on, and carry a way that they lie no more than 45° off.
func TestWhatIsJudged(t *testing.T) {
	rows := func(weave Weave, direction float64) []string {
		c := &Chamber{Diameter: 0.1, Length: 0.5, Material: GlassEpoxy,
			Plies: []Ply{{Cloth: 0.3, Count: 4, Weave: weave, Direction: direction * deg}}}
		return names(c.At(service()).Parts)
	}
	assert.Contains(t, rows(Braided, 74.9), wallAlong)
	assert.Contains(t, rows(Braided, 75.1), wallAlong+resinAlone)
	assert.Contains(t, rows(Braided, 15.1), wallAround)
	assert.Contains(t, rows(Braided, 14.9), wallAround+resinAlone)
	assert.Contains(t, rows(Unidirectional, 45.1), wallAround)
	assert.Contains(t, rows(Unidirectional, 45.1), wallAlong+resinAlone)
	assert.Contains(t, rows(Unidirectional, 44.9), wallAround+resinAlone)
	assert.Contains(t, rows(Unidirectional, 44.9), wallAlong)

	// In a net with hoops, which strain the most, a braid that lies near enough to the axis
	// is judged along it by itself; a steeper one is judged with all.
	for _, direction := range []float64{44.9, 45.1} {
		c := &Chamber{Diameter: 0.1, Length: 0.5, Material: GlassEpoxy, Plies: []Ply{
			{Cloth: 0.3, Count: 4, Weave: Braided, Direction: direction * deg}, {Cloth: 0.1, Count: 1, Weave: Unidirectional, Direction: 90 * deg}}}
		l := c.laminate()
		l.of = l.of.cracked()
		e := l.under(1e6*c.loadAlong(), 1e6*c.loadAround())
		along, hoops := l.seenBy(l.families[0], e).fibre, l.seenBy(l.families[2], e).fibre
		assert.Greater(t, hoops, along)
		r := c.At(service())
		assert.InEpsilon(t, hoops/0.016, part(t, r, wallAround).Use, 1e-9, "%v", direction)
		if direction > 45 {
			along = hoops
		}
		assert.InEpsilon(t, along/0.016, part(t, r, wallAlong).Use, 1e-9, "%v", direction)
	}
}
