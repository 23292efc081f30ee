package airframe

import "math"

// area is one fin's exposed area, m².
func (f *Fins) area() float64 { return (f.Root + f.Tip) / 2 * f.Span }

// chord is the mean exposed chord, m.
func (f *Fins) chord() float64 { return (f.Root + f.Tip) / 2 }

// midChord is the length of the line from the middle of the root to the middle of the
// tip, m.
func (f *Fins) midChord() float64 {
	return math.Hypot(f.Span, f.Sweep+(f.Tip-f.Root)/2)
}

// pressureCentre is the quarter of the mean aerodynamic chord from the tip of the nose,
// m (Barrowman 1967).
func (f *Fins) pressureCentre() float64 {
	r, t := f.Root, f.Tip
	return f.Position + f.Sweep/3*(r+2*t)/(r+t) + (r+t-r*t/(r+t))/6
}

// interference is what the body adds to the fins' own normal force: 1 + r/(s + r)
// (Barrowman 1967); for six fins half of it (from memory, no source at hand).
func (f *Fins) interference(radius float64) float64 {
	share := radius / (f.Span + radius)
	if f.Count == 6 {
		share /= 2
	}
	return 1 + share
}

// finLift is a fin set's normal force with all but the Mach number worked out.
type finLift struct {
	name     string
	at       float64 // m from the tip of the nose
	strength float64 // numerator of the slope, interference in it
	slant2   float64 // (2·l_m/(c_r + c_t))²
}

func newFinLift(f *Fins, name string, radius, reference float64) finLift {
	slant := f.midChord() / f.chord()
	ratio := f.Span / reference
	return finLift{
		name: name, at: f.pressureCentre(),
		strength: f.interference(radius) * 4 * float64(f.Count) * ratio * ratio,
		slant2:   slant * slant,
	}
}

// slope is the set's normal-force slope at β² = 1 − M², per rad (Barrowman 1967, with
// Prandtl and Glauert's factor inside the root alone):
//
//	[1 + r/(s + r)]·4N(s/d)² / {1 + √(1 + (2β·l_m/(c_r + c_t))²)}
func (f *finLift) slope(beta2 float64) float64 {
	return f.strength / (1 + math.Sqrt(1+beta2*f.slant2))
}

// roll is the set's drive and damping about the axis by strip theory: each strip of
// chord c at y from the axis meets the flow at the cant δ less p·y/v, and has the fin's
// own lift slope a on its area c·dy. With J1 = ∫c·y dy and J2 = ∫c·y² dy over the
// exposed span, drive = N·a·δ·J1 (m³) and damp = N·a·J2 (m⁴). What the body adds to
// either is left out: it adds to both, and the settled rate is their ratio.
func (f *Fins) roll(radius float64) (drive, damp float64) {
	cr, ct, s, r := f.Root, f.Tip, f.Span, radius
	j1 := s * ((cr+ct)/2*r + (cr+2*ct)/6*s)
	j2 := s * ((cr+ct)/2*r*r + (cr+2*ct)/3*r*s + (cr+3*ct)/12*s*s)
	slope := float64(f.Count) * f.liftSlope()
	return slope * f.Cant * j1, slope * j2
}

// liftSlope is one fin's own lift slope on its exposed area, per rad, in incompressible
// flow: 2πA/(2 + √(4 + (A/cos Γ)²)) with A = 2s²/area and Γ the mid-chord's sweep, the
// form of F. W. Diederich (NACA TN 2335) on which Barrowman's equation stands.
func (f *Fins) liftSlope() float64 {
	slant := f.midChord() / f.chord()
	return 2 * math.Pi * f.Span / f.chord() / (1 + math.Sqrt(1+slant*slant))
}
