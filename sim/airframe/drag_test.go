package airframe

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Schlichting, Boundary-Layer Theory, smooth plate.
func TestFriction(t *testing.T) {
	assert.InDelta(t, 0.00132800, friction(1e5, 0)*math.Sqrt(0.1), 1e-12, "laminar, as at Re 1e6")
	assert.InDelta(t, 0.004471, friction(1e6, 0)+1700/1e6, 5e-7)
	assert.InDelta(t, 0.002771, friction(1e6, 0), 5e-7)
	assert.InDelta(t, 0.003004, friction(1e7, 0)+1700/1e7, 5e-7)
	assert.InDelta(t, 0.002834, friction(1e7, 0), 5e-7)
	// Roughness: 0.032 (k/L)^0.2 is 0.00507166 at 1e-4, and rules turbulent flow only.
	assert.InDelta(t, 0.00507166, friction(1e8, 1e-4), 1e-8)
	assert.Equal(t, friction(1e5, 0), friction(1e5, 1e-3))
	// It is tripped at 5e5, where roughness begins to rule.
	assert.InDelta(t, 1.328/math.Sqrt(4.99e5), friction(4.99e5, 1e-3), 1e-12)
	assert.InDelta(t, 0.032*math.Pow(1e-3, 0.2), friction(5.01e5, 1e-3), 1e-12)
	// Smooth where laminar and turbulent meet, finite everywhere.
	assert.InDelta(t, friction(transition*(1-1e-9), 0), friction(transition, 0), 1e-9)
	for _, re := range []float64{math.NaN(), -1, 0, 1, math.Inf(1), math.MaxFloat64} {
		v := friction(re, 1e-5)
		assert.True(t, v > 0 && v < 0.1, "%v gives %v", re, v)
	}
}

// DATCOM's body form at l/d 10, 15, 20 and Hoerner's fin form at t/c 0.06: computed from
// the formulas.
func TestForm(t *testing.T) {
	for fineness, want := range map[float64]float64{10: 1.0850, 15: 1.0553, 20: 1.0575} {
		assert.InDelta(t, want, 1+bodyForm(fineness), 5e-5)
	}
	assert.InDelta(t, 1.1208, 1+finForm(0.06), 5e-5)
	assert.InDelta(t, 1.4960, 1+finForm(0.2), 5e-5)
}

// Hoerner's base drag at a round number: a friction of 0.09 on a full base, 0.029/0.3.
func TestBase(t *testing.T) {
	assert.InDelta(t, 0.0966667, baseDrag(1, 0.09), 1e-7)
	assert.InDelta(t, 0.0966667/8, baseDrag(0.5, 0.09), 1e-7)
	assert.InDelta(t, 0.27, edgeBaseDrag(0.125), 1e-12)
	assert.InDelta(t, 0.879802, squareEdge, 1e-6) // Lamb, Hydrodynamics, art. 76
}

// seaLevel is U.S. Standard Atmosphere 1976 at sea level.
func seaLevel(speed float64) Flow {
	return Flow{Speed: speed, Density: 1.225, SoundSpeed: 340.294, Viscosity: 1.7894e-5}
}

func share(t *testing.T, all []Share, name string) float64 {
	t.Helper()
	for _, s := range all {
		if s.Name == name {
			return s.Drag
		}
	}
	require.Fail(t, "no share", name)
	return 0
}

// Case A's whole build-up against the same equations by plain arithmetic (Python, apart
// from this program): computed, not published. The last line is past MachLimit.
func TestBuildUp(t *testing.T) {
	for _, c := range []struct{ speed, roughness, nose, body, fins, base, total float64 }{
		{50, 20e-6, 0.0330750, 0.2765580, 0.5319752, 0.0527040, 0.8943122},
		{200, 20e-6, 0.0334794, 0.2799399, 0.6998935, 0.0644353, 1.0777481},
		{300, 0, 0.0238310, 0.1992638, 0.8298853, 0.1041679, 1.1571480},
	} {
		s := caseA()
		s.Roughness = c.roughness
		total, shares := s.Drag(seaLevel(c.speed), 0)
		assert.InDelta(t, c.nose, share(t, shares, "nose"), 1e-6)
		assert.InDelta(t, c.body, share(t, shares, "body"), 1e-6)
		assert.InDelta(t, c.fins, share(t, shares, "fins.1"), 1e-6)
		assert.InDelta(t, c.base, share(t, shares, "base"), 1e-6)
		assert.InDelta(t, c.total, total, 1e-6)
	}
}

func TestShares(t *testing.T) {
	s := caseB()
	s.RailButtons = 1e-4
	f := seaLevel(90)
	total, shares := s.Drag(f, 0)
	var names []string
	sum := 0.
	for _, x := range shares {
		names = append(names, x.Name)
		assert.Positive(t, x.Drag, x.Name)
		sum += x.Drag
	}
	assert.Equal(t, []string{"nose", "section.tube", "section.tail", "fins.1", "base", "rail buttons"}, names)
	assert.InDelta(t, total, sum, 1e-12)
	// Rail buttons: C_D 1 on their frontal area (common practice, no source).
	assert.InDelta(t, 1e-4/(math.Pi/4*0.04*0.04)*f.squeeze(), share(t, shares, "rail buttons"), 1e-12)

	// A jet as wide as the base leaves no base drag, half its area half.
	base := math.Pi / 4 * 0.028 * 0.028
	off := share(t, shares, "base")
	_, half := s.Drag(f, base/2)
	_, full := s.Drag(f, base)
	_, over := s.Drag(f, 2*base)
	assert.InEpsilon(t, off/2, share(t, half, "base"), 1e-12)
	assert.Zero(t, share(t, full, "base"))
	assert.Zero(t, share(t, over, "base"))
}

// Blunt edges cost drag, and their order is that of their edges.
func TestFinSections(t *testing.T) {
	drag := func(section FinSection, sweep float64) float64 {
		s := caseA()
		s.Fins[0].Section, s.Fins[0].Sweep = section, sweep
		return s.Aero().Drag(seaLevel(60), 0)
	}
	assert.Greater(t, drag(FlatSection, 0.05), drag(RoundedSection, 0.05))
	assert.Greater(t, drag(RoundedSection, 0.05), drag(AirfoilSection, 0.05))
	assert.Greater(t, drag(FlatSection, 0), drag(FlatSection, 0.1))
}

// What each profile's edges cost, by hand at Mach 0.3: a square leading edge Kirchhoff's
// 2π/(π + 4) on its front, a blunt trailing edge Hoerner's 0.135/∛C_f, each by cos² of its
// own sweep; a rounded fin and a wedge have the second alone, an airfoil neither.
func TestFinEdges(t *testing.T) {
	f := seaLevel(0.3 * 340.294)
	drag := func(section FinSection) float64 {
		s := caseA()
		s.Fins[0].Section = section
		_, shares := s.Drag(f, 0)
		return share(t, shares, "fins.1")
	}
	squeeze := 1 / math.Sqrt(1-0.09)
	front := 4 * 0.003 * 0.06 / (math.Pi / 4 * 0.04 * 0.04)
	assert.InEpsilon(t, 2*math.Pi/(math.Pi+4)*front*0.0036/(0.0036+0.0025)*squeeze, drag(FlatSection)-drag(RoundedSection), 1e-9)
	assert.Equal(t, drag(RoundedSection), drag(WedgeSection))
	skin := friction(1.225*f.Speed*0.075/1.7894e-5, 20e-6/0.075)
	before := skin * (1 + 2*0.04 + 60*math.Pow(0.04, 4)) * 2 * 0.0045 / (0.003 * 0.06)
	assert.InEpsilon(t, 0.135/math.Cbrt(before)*front*squeeze, drag(RoundedSection)-drag(AirfoilSection), 1e-9, "the trailing edge is not swept")
}

// Past MachLimit only the Reynolds number still moves the drag.
func TestDragIsHeld(t *testing.T) {
	f := seaLevel(0.8 * 340.294)
	g := f
	g.SoundSpeed /= 2 // Mach 1.6 at the same Reynolds number
	a := caseA().Aero()
	assert.InDelta(t, a.Drag(f, 0), a.Drag(g, 0), 1e-9)
	g.SoundSpeed = f.SoundSpeed * 2
	assert.Less(t, a.Drag(g, 0), a.Drag(f, 0))
}

// No flow, however odd, gives a drag that is not a number.
func TestOddFlows(t *testing.T) {
	a := caseA().Aero()
	for _, f := range []Flow{{}, {Speed: -5, Density: 1, SoundSpeed: 340, Viscosity: 1e-5},
		{Speed: 50}, {Speed: math.NaN(), Density: 1, SoundSpeed: 1, Viscosity: 1}, {Speed: math.Inf(1), Density: 1, SoundSpeed: 340, Viscosity: 1e-5}} {
		v := a.Drag(f, 0)
		assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%+v gives %v", f, v)
	}
}
