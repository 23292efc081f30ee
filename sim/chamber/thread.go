package chamber

import "math"

// TypicalThread is the tensile strength of threaded aluminium, Pa. Typical, unverified,
// from memory.
const TypicalThread = 290e6

// Of a 60° thread's pitch (FED-STD-H28; ISO 68-1): what its diameters are short of the
// major one, and tan 30°.
const (
	minorShort   = 1.082532 // of the female part
	pitchShort   = 0.649519
	stressShort  = 0.938194
	rootShort    = 1.226869 // of the male part
	tanHalfAngle = 0.57735
)

// StressArea is the area of the male part that carries tension, less its hole, m².
func (t *Thread) StressArea() float64 {
	d := t.Diameter - stressShort*t.Pitch
	return math.Pi / 4 * (d*d - t.Hole*t.Hole)
}

// ShearAreas are those of the male and female threads engaged, at basic sizes, m²
// (FED-STD-H28).
func (t *Thread) ShearAreas() (male, female float64) {
	minor, pitch := t.Diameter-minorShort*t.Pitch, t.Diameter-pitchShort*t.Pitch
	turns := t.Engaged / t.Pitch
	male = math.Pi * turns * minor * (t.Pitch/2 + tanHalfAngle*(pitch-minor))
	female = math.Pi * turns * t.Diameter * (t.Pitch/2 + tanHalfAngle*(t.Diameter-pitch))
	return male, female
}

// sealDiameter is what the pressure acts on, m.
func (t *Thread) sealDiameter() float64 {
	if t.Seal == 0 {
		return t.Diameter
	}
	return t.Seal
}

// parts adds the thread's at one pascal. Shear strength is tensile strength over √3 (von
// Mises). Neither heat nor cycles are counted: the retainer is taken as metal.
func (t *Thread) parts(parts []Part) []Part {
	if t == nil {
		return parts
	}
	seal := t.sealDiameter()
	force := math.Pi / 4 * seal * seal
	strength, typical := orTypical(t.Strength, TypicalThread)
	nut, builtNut := strength, true
	if builtNut = t.Female == 0; !builtNut { // the male part's says nothing of it
		nut = t.Female
	}
	male, female := t.ShearAreas()
	return append(parts,
		newPart("retainer thread, male", force/male, strength/math.Sqrt(3), typical, ""),
		newPart("retainer thread, female", force/female, nut/math.Sqrt(3), builtNut, ""),
		newPart("retainer, tension", force/t.StressArea(), strength, typical, ""),
	)
}
