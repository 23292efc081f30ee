package chamber

import (
	"slices"

	"ullage/sim/quantity"
)

func angle(min, max float64) quantity.Range {
	return quantity.Between(quantity.Angle, "deg", min, max)
}

func temperature(min, max float64) quantity.Range {
	return quantity.Between(quantity.Temperature, "degC", min, max)
}

// The ranges that several numbers share.
var (
	wallRange     = quantity.Millimetres(0.01, 100)
	strengthRange = quantity.Between(quantity.Pressure, "MPa", 0.1, 10e3) // of a wall
	metalRange    = quantity.Between(quantity.Pressure, "MPa", 0.1, 5e3)  // strength of threads and pins
	bondRange     = quantity.Between(quantity.Pressure, "MPa", 0.01, 200) // strength of adhesives
	gaugeRange    = quantity.Between(quantity.Pressure, "bar", 0.01, 1000)
	leftRange     = quantity.Between(quantity.Number, "", 0.01, 1) // share of a strength
)

// The numbers of a chamber and a mount under their names in a rocket file, with the
// ranges of what the equations are for: common sense, no source. No packing of fibres
// holds more than 0.75 of them; a cone flatter than 70 deg is a plate; a vent's equation
// is for air that hardly expands.
var (
	sizeFields = []quantity.Field[Chamber]{
		{Key: "chamber.diameter", Range: quantity.Millimetres(5, 1000), At: func(c *Chamber) *float64 { return &c.Diameter }, Optional: true},
		{Key: "chamber.length", Range: quantity.Millimetres(5, 20e3), At: func(c *Chamber) *float64 { return &c.Length }, Optional: true},
	}
	wallFields = []quantity.Field[Chamber]{
		{Key: "chamber.wall", Range: wallRange, At: func(c *Chamber) *float64 { return &c.Wall }, Optional: true},
		{Key: "chamber.fibre_fraction", Range: quantity.Between(quantity.Fraction, "%", 100*leanest, 100*richest),
			At: func(c *Chamber) *float64 { return &c.FibreFraction }, Optional: true},
	}
	figureFields = []quantity.Field[Chamber]{
		{Key: "chamber.hoop_strength", Range: strengthRange, At: func(c *Chamber) *float64 { return &c.Around }, Optional: true},
		{Key: "chamber.axial_strength", Range: strengthRange, At: func(c *Chamber) *float64 { return &c.Along }, Optional: true},
		{Key: "chamber.density", Range: quantity.Between(quantity.Density, "kg/m3", 100, 20e3), At: func(c *Chamber) *float64 { return &c.Density }, Optional: true},
		{Key: "chamber.modulus", Range: quantity.Between(quantity.Pressure, "GPa", 0.01, 1000), At: func(c *Chamber) *float64 { return &c.Modulus }, Optional: true},
		{Key: "chamber.waste", Range: quantity.Between(quantity.Fraction, "%", 0, 300), At: func(c *Chamber) *float64 { return &c.Waste }},
		{Key: "chamber.temperature", Range: temperature(-90, 300), At: func(c *Chamber) *float64 { return &c.Temperature }, Optional: true},
		{Key: "chamber.heat_factor", Range: leftRange, At: func(c *Chamber) *float64 { return &c.HeatFactor }, Optional: true},
		{Key: "chamber.cycles", Range: quantity.Between(quantity.Number, "", 0, 1e6), Count: func(c *Chamber) *int { return &c.Cycles }},
		{Key: "chamber.cycle_factor", Range: leftRange, At: func(c *Chamber) *float64 { return &c.CycleFactor }, Optional: true},
	}
	recordFields = []quantity.Field[Chamber]{
		{Key: "chamber.burst", Range: gaugeRange, At: func(c *Chamber) *float64 { return &c.Burst }, Optional: true},
		{Key: "chamber.proof", Range: gaugeRange, At: func(c *Chamber) *float64 { return &c.Proof }, Optional: true},
	}
	clothFields = []quantity.Field[Ply]{
		{Key: "cloth", Range: quantity.Between(quantity.ArealDensity, "g/m2", 5, 5000), At: func(p *Ply) *float64 { return &p.Cloth }},
		{Key: "count", Range: quantity.Between(quantity.Number, "", 1, 200), Count: func(p *Ply) *int { return &p.Count }},
	}
	plyFields = []quantity.Field[Ply]{
		{Key: "direction", Range: angle(0, 90), At: func(p *Ply) *float64 { return &p.Direction }},
	}
	closureFields = []quantity.Field[Closure]{
		{Key: "overlap", Range: quantity.Millimetres(0.1, 2000), At: func(c *Closure) *float64 { return &c.Overlap }},
		{Key: "bond_strength", Range: bondRange, At: func(c *Closure) *float64 { return &c.BondStrength }, Optional: true},
		{Key: "wall", Range: wallRange, At: func(c *Closure) *float64 { return &c.Wall }, Optional: true},
		{Key: "strength", Range: strengthRange, At: func(c *Closure) *float64 { return &c.Strength }, Optional: true},
		{Key: "half_angle", Range: angle(5, 70), At: func(c *Closure) *float64 { return &c.HalfAngle },
			Only: func(c *Closure) bool { return c.Shape == Cone }},
	}
	adhesiveFields = []quantity.Field[Adhesive]{
		{Key: "chamber.adhesive.glue_line", Range: quantity.Millimetres(0.01, 5), At: func(a *Adhesive) *float64 { return &a.GlueLine }, Optional: true},
		{Key: "chamber.adhesive.strength", Range: bondRange, At: func(a *Adhesive) *float64 { return &a.Strength }, Optional: true},
		{Key: "chamber.adhesive.elastic_strain", Range: quantity.Between(quantity.Fraction, "%", 0.1, 50), At: func(a *Adhesive) *float64 { return &a.Elastic }, Optional: true},
		{Key: "chamber.adhesive.plastic_strain", Range: quantity.Between(quantity.Fraction, "%", 0.001, 200), At: func(a *Adhesive) *float64 { return &a.Plastic }, Optional: true},
	}
	bossFields = []quantity.Field[Boss]{
		{Key: "chamber.boss.diameter", Range: quantity.Millimetres(1, 1000), At: func(b *Boss) *float64 { return &b.Diameter }},
		{Key: "chamber.boss.length", Range: quantity.Millimetres(0.1, 500), At: func(b *Boss) *float64 { return &b.Length }},
		{Key: "chamber.boss.bond_strength", Range: bondRange, At: func(b *Boss) *float64 { return &b.BondStrength }, Optional: true},
	}
	threadFields = []quantity.Field[Thread]{
		{Key: "chamber.thread.diameter", Range: quantity.Millimetres(1, 1000), At: func(t *Thread) *float64 { return &t.Diameter }},
		{Key: "chamber.thread.pitch", Range: quantity.Millimetres(0.1, 50), At: func(t *Thread) *float64 { return &t.Pitch }},
		{Key: "chamber.thread.engaged", Range: quantity.Millimetres(0.1, 500), At: func(t *Thread) *float64 { return &t.Engaged }},
		{Key: "chamber.thread.strength", Range: metalRange, At: func(t *Thread) *float64 { return &t.Strength }, Optional: true},
		{Key: "chamber.thread.female_strength", Range: metalRange, At: func(t *Thread) *float64 { return &t.Female }, Optional: true},
		{Key: "chamber.thread.seal", Range: quantity.Millimetres(1, 1000), At: func(t *Thread) *float64 { return &t.Seal }, Optional: true},
		{Key: "chamber.thread.hole", Range: quantity.Millimetres(0.1, 1000), At: func(t *Thread) *float64 { return &t.Hole }, Optional: true},
	}
	heatingFields = []quantity.Field[Heating]{
		{Key: "chamber.heating.temperature", Range: temperature(0, 300), At: func(h *Heating) *float64 { return &h.Temperature }},
		{Key: "chamber.heating.time", Range: quantity.Between(quantity.Time, "s", 0.01, 3600), At: func(h *Heating) *float64 { return &h.Time }},
		{Key: "chamber.heating.rise", Range: quantity.Between(quantity.Pressure, "bar", 1e-4, 0.2), At: func(h *Heating) *float64 { return &h.Rise }, Optional: true},
	}
	mountFields = []quantity.Field[Mount]{
		{Key: "recovery.pin", Range: quantity.Millimetres(0, 100), At: func(m *Mount) *float64 { return &m.Pin }, Optional: true},
		{Key: "recovery.pin_strength", Range: metalRange, At: func(m *Mount) *float64 { return &m.PinStrength }, Optional: true},
		{Key: "recovery.planes", Range: quantity.Between(quantity.Number, "", 1, 2), Count: func(m *Mount) *int { return &m.Planes },
			Only: func(m *Mount) bool { return m.Pin != 0 }},
		{Key: "recovery.bond_area", Range: quantity.Between(quantity.Area, "cm2", 0, 10e3), At: func(m *Mount) *float64 { return &m.BondArea }, Optional: true},
		{Key: "recovery.bond_strength", Range: bondRange, At: func(m *Mount) *float64 { return &m.Bond }, Optional: true},
		{Key: "recovery.line", Range: quantity.Between(quantity.Force, "N", 0, 1e6), At: func(m *Mount) *float64 { return &m.Line }, Optional: true},
		{Key: "recovery.line_length", Range: quantity.Between(quantity.Length, "m", 0.01, 100), At: func(m *Mount) *float64 { return &m.LineLength }, Optional: true},
		{Key: "recovery.line_stretch", Range: quantity.Between(quantity.Fraction, "%", 0.1, 500), At: func(m *Mount) *float64 { return &m.LineStretch }, Optional: true},
		{Key: "recovery.canopy_mass", Range: quantity.Between(quantity.Mass, "g", 0, 50e3), At: func(m *Mount) *float64 { return &m.CanopyMass }, Optional: true},
	}
)

// Fields lists the numbers of a chamber, those of its plies, closures, thread and heating
// left out.
func Fields() []quantity.Field[Chamber] {
	return slices.Concat(sizeFields, wallFields, figureFields, recordFields)
}

// PlyFields lists the numbers of a ply, under the last part of their names.
func PlyFields() []quantity.Field[Ply] { return slices.Concat(clothFields, plyFields) }

// ClosureFields lists the numbers of a closure, under the last part of their names.
func ClosureFields() []quantity.Field[Closure] { return slices.Clone(closureFields) }

// ThreadFields lists the numbers of the retainer's thread.
func ThreadFields() []quantity.Field[Thread] { return slices.Clone(threadFields) }

// AdhesiveFields lists the numbers of the laps' adhesive.
func AdhesiveFields() []quantity.Field[Adhesive] { return slices.Clone(adhesiveFields) }

// BossFields lists the numbers of the boss.
func BossFields() []quantity.Field[Boss] { return slices.Clone(bossFields) }

// HeatingFields lists the numbers of how a sealed chamber warms up.
func HeatingFields() []quantity.Field[Heating] { return slices.Clone(heatingFields) }

// MountFields lists the numbers of the recovery mount.
func MountFields() []quantity.Field[Mount] { return slices.Clone(mountFields) }
