package airframe

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const deg = math.Pi / 180

// caseA is case A of the check values: diameter 40 mm, tangent ogive 120 mm, four fins root 100, tip 50, semi-span 60,
// sweep 50 mm, leading edge at 700 mm.
func caseA() *Shape {
	return &Shape{
		Length: 0.8, Diameter: 0.04, Roughness: 20e-6,
		Nose: Nose{Shape: TangentOgive, Length: 0.12},
		Fins: []Fins{{Count: 4, Root: 0.1, Tip: 0.05, Span: 0.06, Sweep: 0.05, Thickness: 0.003,
			Section: FlatSection, Position: 0.7}},
	}
}

// caseB: the same with a cone, three fins, and a boat-tail 40 to 28 mm over 50 mm at 800.
func caseB() *Shape {
	s := caseA()
	s.Length = 0.85
	s.Nose.Shape = Conical
	s.Sections = []Section{{Name: "tube", Length: 0.68}, {Name: "tail", Length: 0.05, Aft: 0.028}}
	s.Fins[0].Count = 3
	return s
}

// withRoundedNose are the moments with the ogive's centre at 0.466 of its length, the
// long ogive's value that case A is stated with; its own at fineness 3 is 0.46245.
func withRoundedNose(a *Aero, mach float64) (m0, m1, m2 float64) {
	for _, c := range a.Components(mach) {
		if c.Name == "nose" {
			c.At = 0.466 * 0.12
		}
		m0 += c.CNAlpha
		m1 += c.CNAlpha * c.At
		m2 += c.CNAlpha * c.At * c.At
	}
	return m0, m1, m2
}

// Cases A and B: Barrowman 1967's equations (NASA NTRS 20010047838) by plain arithmetic;
// computed, not published.
func TestBarrowman(t *testing.T) {
	a := caseA().Aero()
	c := a.Components(0)
	require.Len(t, c, 2)
	assert.Equal(t, "nose", c[0].Name)
	assert.InDelta(t, 2, c[0].CNAlpha, 1e-12)
	assert.InDelta(t, 0.46245*0.12, c[0].At, 1e-6)
	assert.Equal(t, "fins.1", c[1].Name)
	assert.InDelta(t, 19.36904, c[1].CNAlpha, 5e-6)
	assert.InDelta(t, 0.741667, c[1].At, 5e-7)
	m0, m1, _ := a.Moments(0)
	assert.InDelta(t, 21.36904, m0, 5e-6)
	r0, r1, _ := withRoundedNose(a, 0)
	assert.InDelta(t, 0.677485, r1/r0, 5e-7)
	assert.InDelta(t, 0.677446, m1/m0, 5e-7, "with the nose's own 0.46245")

	a = caseB().Aero()
	c = a.Components(0)
	require.Len(t, c, 3)
	assert.Equal(t, "section.tail", c[1].Name)
	m0, m1, _ = a.Moments(0)
	assert.InDelta(t, 15.50678, m0, 5e-6)
	assert.InDelta(t, 0.650943, m1/m0, 5e-7)
}

// Boat-tail by the equation as Barrowman writes it, with its fraction.
func TestTransition(t *testing.T) {
	for _, d := range [][2]float64{{0.04, 0.028}, {0.03, 0.05}, {0.05, 0.0499}} {
		f := frustum{start: 0.3, length: 0.07, fore: d[0], aft: d[1]}
		ratio := d[0] / d[1]
		want := 0.3 + 0.07/3*(1+(1-ratio)/(1-ratio*ratio))
		assert.InDelta(t, want, f.pressureCentre(), 1e-12)
	}
	assert.InDelta(t, -2*(1-0.7*0.7), slender(0.04, 0.028, 0.04), 1e-14)
}

// Compressibility inside the fins' root only: x_cp of case A at Mach 0.8, computed.
func TestPressureCentreAtSpeed(t *testing.T) {
	a := caseA().Aero()
	m0, m1, m2 := a.Moments(0.8)
	r0, r1, _ := withRoundedNose(a, 0.8)
	assert.InDelta(t, 0.6824, r1/r0, 5e-5)
	c0, c1, c2 := a.Moments(3)
	assert.Equal(t, [3]float64{m0, m1, m2}, [3]float64{c0, c1, c2}, "held past the limit")
	for _, odd := range []float64{-1, math.NaN()} {
		o0, _, _ := a.Moments(odd)
		s0, _, _ := a.Moments(0)
		assert.Equal(t, s0, o0)
	}
	var sum float64
	for _, c := range a.Components(0.8) {
		sum += c.CNAlpha
	}
	assert.InDelta(t, m0, sum, 1e-12)
}

// Pitch of case A at 50 m/s, ρ 1.225, x_cg 0.470 m, I_t 0.012 kg·m²: computed from the
// closed forms ω² = (C1 + C2·L/m)/I_t and ζ = (C2/I_t + L/m)/(2ω).
func TestPitch(t *testing.T) {
	m0, m1, m2 := withRoundedNose(caseA().Aero(), 0)
	const cg, speed, density, inertia = 0.470, 50., 1.225, 0.012
	area := math.Pi / 4 * 0.04 * 0.04
	c1 := density / 2 * speed * speed * area * (m1 - m0*cg)
	c2 := density / 2 * speed * area * (m2 - 2*cg*m1 + cg*cg*m0)
	assert.InDelta(t, 8.53156, c1, 5e-6)
	assert.InDelta(t, 0.0682105, c2, 5e-8)
	omega := math.Sqrt(c1 / inertia)
	assert.InDelta(t, 26.664, omega, 5e-4)
	assert.InDelta(t, 0.10659, c2/inertia/(2*omega), 5e-6)
	lift := density / 2 * speed * area * m0
	for mass, want := range map[float64]float64{1.5: 0.1166, 0.8: 0.1254, 0.5: 0.1365} {
		free := math.Sqrt((c1 + c2*lift/mass) / inertia)
		assert.InDelta(t, want, (c2/inertia+lift/mass)/(2*free), 5e-5, "%v kg", mass)
	}
}

// Fins of one shape, many and few: the factors of count and
// interference. For six the halved interference is from memory.
func TestFinCount(t *testing.T) {
	f := caseA().Fins[0]
	slope := func(n int) float64 {
		f.Count = n
		l := newFinLift(&f, "", 0.02, 0.04)
		return l.slope(1)
	}
	assert.InEpsilon(t, 3./4, slope(3)/slope(4), 1e-12)
	assert.InEpsilon(t, 5./4, slope(5)/slope(4), 1e-12)
	assert.InEpsilon(t, 6./4*(1+0.5*0.25)/(1+0.25), slope(6)/slope(4), 1e-12)
}

// Fins on a boat-tail stand on the radius at the middle of their root: by hand, case B's
// tail from 40 to 28 mm over 50, fins of 40 mm root from 5 mm behind its start.
func TestFinsOnATail(t *testing.T) {
	s := caseB()
	s.Fins[0] = Fins{Count: 4, Root: 0.04, Tip: 0.02, Span: 0.05, Sweep: 0.025, Thickness: 0.003, Section: FlatSection, Position: 0.805, Cant: 0.5 * deg}
	assert.Empty(t, s.Check())
	const radius = 0.017 // at 825 mm: 40 − 12/2 across
	a := s.Aero()
	c := a.Components(0)
	middle := math.Hypot(0.05, 0.025+0.01-0.02)
	want := (1 + radius/(0.05+radius)) * 16 * (0.05 / 0.04) * (0.05 / 0.04) / (1 + math.Sqrt(1+math.Pow(2*middle/0.06, 2)))
	assert.InEpsilon(t, want, c[len(c)-1].CNAlpha, 1e-12)
	// Roll settles at δ·J1/J2 from the same radius: strips from 17 to 67 mm.
	j1 := 0.05 * (0.03*radius + (0.04+2*0.02)/6*0.05)
	j2 := 0.05 * (0.03*radius*radius + (0.04+2*0.02)/3*radius*0.05 + (0.04+3*0.02)/12*0.0025)
	drive, damp := a.Roll()
	assert.InEpsilon(t, 0.5*deg*j1/j2, drive/damp, 1e-12)
}

// Roll: case A at 100 m/s and half a degree of cant settles at 16.51 rad/s, computed
// from V·δ·J1/J2; and J1, J2 against the sums they stand for.
func TestRoll(t *testing.T) {
	s := caseA()
	s.Fins[0].Cant = 0.5 * deg
	drive, damp := s.Aero().Roll()
	assert.InDelta(t, 16.51, 100*drive/damp, 0.005)

	f := &s.Fins[0]
	var j1, j2 float64
	const strips = 100000
	for i := range strips {
		u := (float64(i) + 0.5) / strips
		c, y := f.Root+(f.Tip-f.Root)*u, 0.02+f.Span*u
		j1 += c * y * f.Span / strips
		j2 += c * y * y * f.Span / strips
	}
	assert.InEpsilon(t, j1/j2*0.5*deg, drive/damp, 1e-8)
	assert.InEpsilon(t, 4*f.liftSlope()*j2, damp, 1e-8)

	s.Fins[0].Cant = 0
	drive, _ = s.Aero().Roll()
	assert.Zero(t, drive)
}

// One fin's lift slope is what Barrowman's set is made of: N fins around the axis make
// N/2 times a fin's normal force, whatever the roll angle.
func TestLiftSlope(t *testing.T) {
	f := caseA().Fins[0]
	ref := math.Pi / 4 * 0.04 * 0.04
	l := newFinLift(&f, "", 0.02, 0.04)
	set := l.slope(1) / f.interference(0.02)
	assert.InEpsilon(t, set, 2*f.liftSlope()*f.area()/ref, 1e-12)
	// A wing of great aspect ratio has the thin section's 2π (thin-airfoil theory).
	wide := Fins{Root: 0.01, Tip: 0.01, Span: 10}
	assert.InEpsilon(t, 2*math.Pi, wide.liftSlope(), 2e-3)
}

// NACA Report 1048: c_dc about 1.2 for the long subcritical cylinder, η from measured
// cylinders of finite length (F. M. White, Fluid Mechanics, table 7.3, from memory).
func TestCrossflow(t *testing.T) {
	assert.Equal(t, 1.2, cylinderDrag(1e5))
	for fineness, want := range map[float64]float64{1: 0.64, 2: 0.68, 3: 0.72, 5: 0.74, 10: 0.82, 20: 0.91, 40: 0.98, 1000: 1.2} {
		assert.InDelta(t, want, cylinderDrag(fineness), 1e-12, "l/d %v, as in the table", fineness)
	}
	assert.InDelta(t, (0.82+0.91)/2, cylinderDrag(math.Sqrt(200)), 1e-12, "halfway by the logarithm")
	assert.InDelta(t, 0.82, cylinderDrag(10), 1e-12)
	assert.InDelta(t, 0.91, cylinderDrag(20), 1e-12)
	assert.Equal(t, 0.64, cylinderDrag(0.1))
	assert.Equal(t, 0.64, cylinderDrag(math.NaN()))
	last := 0.
	for f := 0.5; f < 2000; f *= 1.1 {
		assert.GreaterOrEqual(t, cylinderDrag(f), last)
		last = cylinderDrag(f)
	}
	// Cone and tube: a triangle and a rectangle.
	s := caseA()
	s.Nose.Shape = Conical
	area, at, coefficient := s.Aero().Crossflow()
	assert.InDelta(t, 0.02*0.12+0.04*0.68, area, 1e-12)
	assert.InDelta(t, (0.02*0.12*0.08+0.04*0.68*0.46)/area, at, 1e-12)
	assert.InDelta(t, 0.91, coefficient, 1e-12)
}

// The side view and the radius are one outside: the plan area is the integral of the
// diameter, whatever stands there.
func TestOutline(t *testing.T) {
	s := caseB()
	s.Sections = append(s.Sections, Section{Name: "end", Length: 0.02})
	s.Length = 0.9
	area, at, _ := s.Aero().Crossflow()
	var sum, moment float64
	const n = 200000
	for i := range n {
		x := (float64(i) + 0.5) / n * s.Length
		sum += 2 * s.Radius(x) * s.Length / n
		moment += 2 * s.Radius(x) * x * s.Length / n
	}
	assert.InEpsilon(t, sum, area, 1e-8)
	assert.InEpsilon(t, moment/sum, at, 1e-8)
	assert.Equal(t, 0.014, s.Radius(0.89))
	assert.Zero(t, s.Radius(-0.01))
	assert.Zero(t, s.Radius(0.91))
	assert.Zero(t, s.Radius(0))
}

// What flies must not feed the collector.
func TestHotPathsAllocateNothing(t *testing.T) {
	a := caseB().Aero()
	f := Flow{Speed: 100, Density: 1.2, SoundSpeed: 340, Viscosity: 1.8e-5}
	var sink float64
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		m0, m1, m2 := a.Moments(0.3)
		plan, _, _ := a.Crossflow()
		_, damp := a.Roll()
		sink = m0 + m1 + m2 + plan + damp + a.Drag(f, 1e-4)
	}))
	assert.Positive(t, sink)
}
