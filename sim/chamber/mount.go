package chamber

import "math"

// Typical figures of a mount, unverified, from memory.
const (
	TypicalPin     = 200e6 // shear strength of a mild steel pin, Pa
	TypicalStretch = 0.15  // of a braided polyester line at its breaking strength
)

// Hold is one way in which a mount can fail.
type Hold struct {
	Name     string  // "pin", "bond", "line"
	Strength float64 // N
	Use      float64 // of it
	Typical  bool    // a built-in strength is in it, typical, unverified
}

// Uses is what a load, N, makes of each thing described; empty when nothing is. Neither
// heat nor cycles are counted.
func (m *Mount) Uses(load float64) []Hold {
	var all []Hold
	add := func(name string, strength float64, typical bool) {
		all = append(all, Hold{Name: name, Strength: strength, Use: load / strength, Typical: typical})
	}
	if m.Pin != 0 {
		strength, typical := orTypical(m.PinStrength, TypicalPin)
		add("pin", float64(m.Planes)*math.Pi/4*m.Pin*m.Pin*strength, typical)
	}
	if m.BondArea != 0 {
		strength, typical := orTypical(m.Bond, TypicalBond)
		add("bond", m.BondArea*strength, typical)
	}
	if m.Line != 0 {
		add("line", m.Line, false)
	}
	return all
}

// Strength is the load, N, at which the weakest thing described fails, and its name;
// NaN and no name when nothing is.
func (m *Mount) Strength() (newtons float64, weakest string, typical bool) {
	newtons = math.NaN()
	for _, h := range m.Uses(0) {
		if !(h.Strength >= newtons) {
			newtons, weakest, typical = h.Strength, h.Name, h.Typical
		}
	}
	return newtons, weakest, typical
}

// Snatch is the load, N, as a line that was slack stops the canopy's mass at a speed,
// m/s: v √(m F_b/(L ε_b)), from the energy that a line stiff as F_b/(L ε_b) takes up
// (derived; the rocket taken as much the heavier). NaN unless line, length and mass are
// given. typical tells that the stretch is the built-in one.
func (m *Mount) Snatch(speed float64) (newtons float64, typical bool) {
	if m.Line == 0 || m.LineLength == 0 || m.CanopyMass == 0 {
		return math.NaN(), false
	}
	stretch, typical := orTypical(m.LineStretch, TypicalStretch)
	return speed * math.Sqrt(m.CanopyMass*m.Line/(m.LineLength*stretch)), typical
}
