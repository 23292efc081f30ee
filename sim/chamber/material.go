package chamber

import "math"

// celsius is 0 °C, K.
const celsius = 273.15

// fibre is the reinforcement of a composite.
type fibre struct {
	density       float64 // kg/m³
	along, across float64 // moduli, Pa
	shear         float64 // modulus, Pa
	poisson       float64
	failure       float64 // strain along the fibre at which a hand-laid cloth fails
	fraction      float64 // by volume, usual in hand lay-up
}

// stuff is what is known of one material.
type stuff struct {
	name          Material
	fibre         *fibre  // nil: the same all over
	density       float64 // kg/m³; of a composite, that of its resin
	modulus       float64 // Pa; likewise
	poisson       float64 // likewise
	around, along float64 // strength around and along a tube of it, Pa; 0: from the fibres
	crush         float64 // compressive strength over tensile
	softens, gone float64 // K: strength begins to fall, and is counted as gone
	tires         float64 // share of the strength lost in a decade of cycles
	fresh         float64 // cycles before that begins
}

// Resin figures beyond its modulus. Typical, unverified, from memory.
const (
	resinShear      = 40e6 // strength in the plane of a ply, Pa
	resinTransverse = 30e6 // strength of a ply pulled across its fibres, Pa
)

// unknownPoisson is taken where a modulus is given and nothing is known of what has it:
// between those of cloth laminates and of metals.
const unknownPoisson = 0.3

// mostPoisson is the greatest in the table.
const mostPoisson = 0.4

// Where the room-cured epoxy of walls and bonds begins to soften, and where its strength is counted as gone, K (common practice, no source).
const (
	EpoxySoftens = celsius + 45
	EpoxyGone    = celsius + 65
)

// materials are typical figures, unverified, from memory, but for the window in which
// room-cured epoxy softens, which is common practice. The loss to cycles in glass is
// Mandell's tenth a decade (fatigue of glass laminates, from memory). Aluminium's
// strength is its yield.
var materials = [...]stuff{
	{
		name:    GlassEpoxy,
		fibre:   &fibre{density: 2580, along: 72e9, across: 72e9, shear: 30e9, poisson: 0.22, failure: 0.016, fraction: 0.35},
		density: 1150, modulus: 3e9, poisson: 0.35, crush: 0.6,
		softens: EpoxySoftens, gone: EpoxyGone, tires: 0.1, fresh: 1,
	},
	{
		name:    CarbonEpoxy,
		fibre:   &fibre{density: 1780, along: 230e9, across: 15e9, shear: 15e9, poisson: 0.2, failure: 0.010, fraction: 0.45},
		density: 1150, modulus: 3e9, poisson: 0.35, crush: 0.6,
		softens: EpoxySoftens, gone: EpoxyGone, tires: 0.05, fresh: 1,
	},
	{
		name: PETBottle, density: 1380, modulus: 4e9, poisson: mostPoisson, around: 160e6, along: 80e6, crush: 0.6,
		softens: celsius + 45, gone: celsius + 75, tires: 0.1, fresh: 1,
	},
	{
		name: Aluminium, density: 2700, modulus: 69e9, poisson: 0.33, around: 240e6, along: 240e6, crush: 1,
		softens: celsius + 120, gone: celsius + 300, tires: 0.1, fresh: 3000,
	},
	// Of one's own nothing is known: it softens and tires like the table's quickest.
	{
		name: Own, density: math.NaN(), modulus: math.NaN(), poisson: unknownPoisson, crush: 0.6,
		softens: EpoxySoftens, gone: EpoxyGone, tires: 0.1, fresh: 1,
	},
}

// Materials lists the materials known, Own last.
func Materials() []Material {
	all := make([]Material, len(materials))
	for i := range materials {
		all[i] = materials[i].name
	}
	return all
}

// known tells whether there is such a material.
func (m Material) known() bool { return m.stuff().name == m }

// stuff is the row of a material, that of Own for a name not known.
func (m Material) stuff() *stuff {
	for i := range materials {
		if materials[i].name == m {
			return &materials[i]
		}
	}
	return &materials[len(materials)-1]
}

// isotropic tells whether a material is one without fibres that is known here.
func (m Material) isotropic() bool { return m != Own && m.known() && m.stuff().fibre == nil }

// LaidUp is the density of the fibres and of the resin of a material that is laid up, kg/m³,
// typical and unverified; both are 0 of another.
func (m Material) LaidUp() (fibre, resin float64) {
	if s := m.stuff(); s.fibre != nil {
		return s.fibre.density, s.density
	}
	return 0, 0
}

// FibreFraction is the usual share of fibre by volume in hand lay-up, typical and
// unverified; 0 of what has no fibres that are known here.
func (m Material) FibreFraction() float64 {
	if f := m.stuff().fibre; f != nil {
		return f.fraction
	}
	return 0
}

// Density is a material's, kg/m³: of a composite with a share of fibre by volume, its
// usual one if that is 0, after the rule of mixtures; NaN of Own. Typical, unverified.
func (m Material) Density(fraction float64) float64 {
	s := m.stuff()
	if s.fibre == nil {
		return s.density
	}
	if fraction == 0 {
		fraction = s.fibre.fraction
	}
	return fraction*s.fibre.density + (1-fraction)*s.density
}
