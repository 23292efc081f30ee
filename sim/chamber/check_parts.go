package chamber

import "ullage/sim/fault"

// The ranges of threads and vents. Common practice, no source.
const (
	narrowestThread = 1e-3
	finestPitch     = 1e-4
	coarsest        = 0.25  // pitch over diameter; ISO's coarsest, M1, has that
	mostEngaged     = 3.0   // length engaged over diameter: what is farther in carries next to nothing
	mostRise        = 0.2e5 // Pa: the vent's equation is for air that hardly expands
	mostHeat        = celsius + 300
)

// check looks at a closure on a tube of a radius and a length.
func (e *Closure) check(k *checker, name string, radius, length float64) {
	if e == nil {
		return
	}
	switch e.Shape {
	case Hemisphere, Ellipsoid, Flat:
	case Cone:
		if !(e.HalfAngle >= sharpest && e.HalfAngle <= bluntest) {
			k.add(name+".half_angle", "out of range", "give the angle between the cone's side and its axis, "+degrees(sharpest)+" to "+degrees(bluntest)+"; flatter is a plate")
		}
	default:
		k.add(name+".shape", "is not a shape known here", "write hemisphere, ellipsoid, cone or flat")
	}
	if k.optional(name+".wall", e.Wall, thinnest, thickest, "give 0.01 to 100 mm, or leave it out for the tube's") && e.Wall > radius {
		k.add(name+".wall", "is thicker than the inside radius, "+mm(radius), "check its unit")
	}
	k.optional(name+".strength", e.Strength, softest, strongest, "give its wall's tensile strength, 0.1 MPa to 10 GPa, or leave it out for the tube's")
	k.optional(name+".bond_strength", e.BondStrength, 1e4, 1e9, "give the adhesive's shear strength as applied, 0.01 to 1000 MPa, or leave it out for a typical one")
	switch {
	case e.Overlap == 0:
		k.add(name+".overlap", "is nothing: a closure that is not bonded holds nothing", "give the length of the bonded lap")
	case !(e.Overlap >= 1e-4):
		k.add(name+".overlap", "out of range", "give the length of the bonded lap, 0.1 mm or more")
	case !(e.Overlap <= length):
		k.add(name+".overlap", "is longer than the tube, "+mm(length), "check its unit")
	}
}

func (t *Thread) check(k *checker) {
	if t == nil {
		return
	}
	wide := k.within("chamber.thread.diameter", t.Diameter, narrowestThread, widest, "give the major diameter, 1 mm to 1 m")
	pitch := k.within("chamber.thread.pitch", t.Pitch, finestPitch, widest, "give the distance from crest to crest, 0.1 mm or more")
	if wide && pitch && t.Pitch > coarsest*t.Diameter {
		k.add("chamber.thread.pitch", "is more than a quarter of the diameter, "+mm(t.Diameter), "give the distance from crest to crest: an M20×2 thread has 2 mm")
		pitch = false
	}
	switch {
	case !(t.Engaged >= finestPitch):
		k.add("chamber.thread.engaged", "must be above zero", "give the length of thread engaged")
	case pitch && t.Engaged < t.Pitch:
		k.add("chamber.thread.engaged", "is less than one turn, "+mm(t.Pitch), "give the length of thread engaged, not its turns")
	case wide && !(t.Engaged <= mostEngaged*t.Diameter):
		k.add("chamber.thread.engaged", "is more than three diameters, of which the far turns carry next to nothing", "give at most "+mm(mostEngaged*t.Diameter))
	}
	k.optional("chamber.thread.strength", t.Strength, softest, strongest, "give the male part's tensile strength, 0.1 MPa to 10 GPa, or leave it out for a typical one")
	k.optional("chamber.thread.female_strength", t.Female, softest, strongest, "give the female part's tensile strength, 0.1 MPa to 10 GPa, or leave it out for the male part's")
	k.optional("chamber.thread.seal", t.Seal, narrowestThread, widest, "give the diameter of the seal, 1 mm to 1 m, or leave it out for the thread's")
	if k.within("chamber.thread.hole", t.Hole, 0, widest, "give the hole through the male part, 0 for none") && wide && pitch {
		if root := t.Diameter - rootShort*t.Pitch; t.Hole >= root {
			k.add("chamber.thread.hole", "is as wide as the thread's root, "+mm(root), "give a smaller hole, or the major diameter of the thread")
		}
	}
}

func (h *Heating) check(k *checker) {
	if h == nil {
		return
	}
	k.within("chamber.heating.temperature", h.Temperature, coldest, mostHeat, "give what the chamber's air reaches, up to 300 °C")
	k.within("chamber.heating.time", h.Time, 1e-3, 1e7, "give the time in which it does, above zero")
	if h.Rise != 0 {
		k.within("chamber.heating.rise", h.Rise, 1, mostRise, "give 1 Pa to 0.2 bar: a vent is worked out for small differences; or leave it out")
	}
}

// Check tells everything that is wrong with a mount, or nil.
func (m *Mount) Check() fault.List {
	var k checker
	const typical = ", or leave it out for a typical one"
	k.optional("recovery.pin", m.Pin, 1e-4, 0.1, "give the pin's diameter, 0.1 to 100 mm")
	k.optional("recovery.pin_strength", m.PinStrength, softest, strongest, "give its shear strength, 0.1 MPa to 10 GPa"+typical)
	if m.Pin != 0 && m.Planes != 1 && m.Planes != 2 {
		k.add("recovery.planes", "must be 1 or 2", "give 2 for a pin held at both ends, 1 for one held at one")
	}
	k.optional("recovery.bond_area", m.BondArea, 1e-8, 1, "give the bonded area, up to 1 m²")
	k.optional("recovery.bond_strength", m.Bond, 1e4, 1e9, "give the bond's shear strength, 0.01 to 1000 MPa"+typical)
	k.optional("recovery.line", m.Line, 0.1, 1e7, "give the line's breaking strength with its knots, 0.1 N to 10 MN")
	k.optional("recovery.line_length", m.LineLength, 1e-3, 1e3, "give 1 mm to 1 km")
	k.optional("recovery.line_stretch", m.LineStretch, 1e-3, 10, "give the stretch at breaking as a share of the length, 0.15 for 15 %"+typical)
	k.optional("recovery.canopy_mass", m.CanopyMass, 1e-6, 1e3, "give the mass at the end of the line, up to 1000 kg")
	return k.faults
}
