package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func ownTube() *Chamber {
	return &Chamber{Diameter: 0.1, Length: 0.5, Material: Own, Wall: 0.002, Around: 1e8, Along: 1e8, Density: 1500}
}

func TestSoundChambers(t *testing.T) {
	assert.Empty(t, glassTube().Check())
	assert.Empty(t, pipe(0.1, 0.002).Check())
	assert.Empty(t, pipe(0.1, 0.049).Check(), "thick, but with a bore")
	assert.Empty(t, ownTube().Check())
	c := glassTube()
	c.Burst, c.Proof, c.ProofDate, c.Temperature, c.Cycles = 40e5, 20e5, "2026-02-28", 310, 40
	c.Forward = &Closure{Shape: Cone, HalfAngle: 20 * deg, Overlap: 0.03}
	assert.Empty(t, c.Check())
	c.CycleFactor, c.HeatFactor, c.Proof = 1, 1, c.Burst
	assert.Empty(t, c.Check())
	assert.Empty(t, (&Chamber{Diameter: 0.1, Length: 0.5, Material: CarbonEpoxy, Wall: 0.001}).Check(), "a composite by its wall alone")
}

// Every fault by what makes it: name, words of problem and mend, and that it is alone.
func TestFaults(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		spoil         func(*Chamber)
		name          string
		problem, mend string
	}{
		{func(c *Chamber) { c.Diameter = nan }, "chamber.diameter", "not a finite number", "5 mm to 1000 mm"},
		{func(c *Chamber) { c.Diameter = 0 }, "chamber.diameter", "is missing", "inside diameter"},
		{func(c *Chamber) { c.Length = inf }, "chamber.length", "not a finite number", "5 mm to 20000 mm"},
		{func(c *Chamber) { c.Length = 0 }, "chamber.length", "is missing", "between its closures"},
		{func(c *Chamber) { c.Material = "paper" }, "chamber.material", "not a material", "E-glass/epoxy.*own"},
		{func(c *Chamber) { c.Material = "" }, "chamber.material", "is missing", "E-glass/epoxy.*own"},
		{func(c *Chamber) { c.FibreFraction = 0; c.Material = Aluminium }, "chamber.material", "aluminium is not laid up", "no plies"},
		{func(c *Chamber) { *c = *ownTube(); c.Plies = glassTube().Plies }, "chamber.material", "own is not laid up", "chamber.hoop_strength"},
		{func(c *Chamber) { *c = *pipe(0.1, 0.002); c.FibreFraction = 0.4 }, "chamber.fibre_fraction", "does not go with aluminium", "leave it out"},
		{func(c *Chamber) { c.FibreFraction = 0.8 }, "chamber.fibre_fraction", "too large", "10 % to 75 %"},
		{func(c *Chamber) { c.FibreFraction = 0.05 }, "chamber.fibre_fraction", "too small", "10 % to 75 %"},
		{func(c *Chamber) { c.FibreFraction = nan }, "chamber.fibre_fraction", "not a finite number", "10 % to 75 %"},
		{func(c *Chamber) { c.Wall = 0.0003 }, "chamber.wall", "1.034, more than any packing", "0.8859 mm"},
		{func(c *Chamber) { c.Wall = 0.01 }, "chamber.wall", "0.03101, less than a laminate", "0.8859 mm"},
		{func(c *Chamber) { c.Wall = nan }, "chamber.wall", "not a finite number", "0.01 mm to 100 mm"},
		{func(c *Chamber) { c.Wall = -1 }, "chamber.wall", "negative", "0.01 mm to 100 mm"},
		{func(c *Chamber) { c.Plies = nil }, "chamber.wall", "is missing", "the plies it is laid up from"},
		{func(c *Chamber) { *c = *pipe(0.1, 0.05) }, "chamber.wall", "thicker than the inside radius, 50 mm", "units"},
		{func(c *Chamber) { c.Plies[0].Cloth = 2; c.Plies[0].Count = 30 }, "chamber.wall", "thicker than the inside radius", "cloth and count"},
		{func(c *Chamber) { c.Plies[0].Cloth = 200 }, "chamber.ply.cloth.cloth", "too large", "5 g/m2 to 5000 g/m2"},
		{func(c *Chamber) { c.Plies[0].Name = ""; c.Plies[0].Cloth = 0 }, "chamber.ply.1.cloth", "is missing", "5 g/m2 to 5000 g/m2"},
		{func(c *Chamber) { c.Plies[0].Count = 0 }, "chamber.ply.cloth.count", "is missing", "1 to 200"},
		{func(c *Chamber) { c.Plies[0].Count = -3 }, "chamber.ply.cloth.count", "negative", "1 to 200"},
		{func(c *Chamber) { c.Plies[0].Direction = 2 }, "chamber.ply.cloth.direction", "too large", "0 deg to 90 deg"},
		{func(c *Chamber) { c.Plies[0].Weave = "knitted" }, "chamber.ply.cloth.weave", "not a weave", "braided"},
		{func(c *Chamber) { c.Around = 10 }, "chamber.hoop_strength", "too small", "0.1 MPa to 10000 MPa"},
		{func(c *Chamber) { c.Along = nan }, "chamber.axial_strength", "not a finite number", "0.1 MPa to 10000 MPa"},
		{func(c *Chamber) { c.Density = 1.5 }, "chamber.density", "too small", "100 kg/m3 to 20000 kg/m3"},
		{func(c *Chamber) { c.Modulus = 20 }, "chamber.modulus", "too small", "0.01 GPa to 1000 GPa"},
		{func(c *Chamber) { c.Waste = -0.1 }, "chamber.waste", "negative", "0 % to 300 %"},
		{func(c *Chamber) { *c = *ownTube(); c.Around = 0 }, "chamber.hoop_strength", "not known for a material of your own", "tensile strength around"},
		{func(c *Chamber) { *c = *ownTube(); c.Along = 0 }, "chamber.axial_strength", "not known for a material of your own", "tensile strength along"},
		{func(c *Chamber) { *c = *ownTube(); c.Density = 0 }, "chamber.density", "not known for a material of your own", "its density"},
		{func(c *Chamber) { c.Temperature = 40 }, "chamber.temperature", "too small", "-90 degC to 300 degC"},
		{func(c *Chamber) { c.HeatFactor = 1.2 }, "chamber.heat_factor", "too large", "0.01 to 1"},
		{func(c *Chamber) { c.CycleFactor = 1.2 }, "chamber.cycle_factor", "too large", "0.01 to 1"},
		{func(c *Chamber) { c.CycleFactor = nan }, "chamber.cycle_factor", "not a finite number", "0.01 to 1"},
		{func(c *Chamber) { c.Cycles = -1 }, "chamber.cycles", "negative", "0 to 1000000"},
		{func(c *Chamber) { c.Burst = -1 }, "chamber.burst", "negative", "0.01 bar to 1000 bar"},
		{func(c *Chamber) { c.Proof = inf }, "chamber.proof", "not a finite number", "0.01 bar to 1000 bar"},
		{func(c *Chamber) { c.Burst, c.Proof = 15e5, 20e5 }, "chamber.burst", "below the proof on record, 20 bar", "leave it out"},
		{func(c *Chamber) { c.Proof, c.ProofDate = 20e5, "2026-02-30" }, "chamber.proof_date", "is no date", "2026-05-01"},
		{func(c *Chamber) { c.Proof, c.ProofDate = 20e5, "1 May 2026" }, "chamber.proof_date", "is no date", "2026-05-01"},
		{func(c *Chamber) { c.ProofDate = "2026-05-01" }, "chamber.proof_date", "no proof beside it", "chamber.proof"},

		{func(c *Chamber) { c.Forward.Overlap = 0 }, "chamber.forward.overlap", "is missing", "0.1 mm to 2000 mm"},
		{func(c *Chamber) { c.Aft.Overlap = nan }, "chamber.aft.overlap", "is missing", "0.1 mm to 2000 mm"},
		{func(c *Chamber) { c.Aft.Overlap = 0.7 }, "chamber.aft.overlap", "longer than the tube, 600 mm", "unit"},
		{func(c *Chamber) { c.Aft.Shape = "dished" }, "chamber.aft.shape", "not a shape", "ellipsoid"},
		{func(c *Chamber) { c.Aft.Shape = Cone }, "chamber.aft.half_angle", "is missing", "5 deg to 70 deg"},
		{func(c *Chamber) { c.Aft.Shape, c.Aft.HalfAngle = Cone, 1.5 }, "chamber.aft.half_angle", "too large", "5 deg to 70 deg"},
		{func(c *Chamber) { c.Aft.Wall = 0.06 }, "chamber.aft.wall", "thicker than the inside radius", "unit"},
		{func(c *Chamber) { c.Aft.Wall = -0.06 }, "chamber.aft.wall", "negative", "0.01 mm to 100 mm"},
		{func(c *Chamber) { c.Forward.Strength = 300 }, "chamber.forward.strength", "too small", "0.1 MPa to 10000 MPa"},
		{func(c *Chamber) { c.Forward.BondStrength = 8 }, "chamber.forward.bond_strength", "too small", "0.01 MPa to 200 MPa"},

		{func(c *Chamber) { c.Thread.Diameter = 0 }, "chamber.thread.diameter", "is missing", "1 mm to 1000 mm"},
		{func(c *Chamber) { c.Thread.Pitch = nan }, "chamber.thread.pitch", "is missing", "0.1 mm to 50 mm"},
		{func(c *Chamber) { c.Thread.Pitch = 0.011; c.Thread.Hole = 0 }, "chamber.thread.pitch", "more than a quarter of the diameter, 40 mm", "M20×2"},
		{func(c *Chamber) { c.Thread.Engaged = 0 }, "chamber.thread.engaged", "is missing", "0.1 mm to 500 mm"},
		{func(c *Chamber) { c.Thread.Engaged = 0.001 }, "chamber.thread.engaged", "less than one turn, 1.5 mm", "not its turns"},
		{func(c *Chamber) { c.Thread.Engaged = 0.13 }, "chamber.thread.engaged", "more than three diameters", "120 mm"},
		{func(c *Chamber) { c.Thread.Engaged = inf }, "chamber.thread.engaged", "not a finite number", "0.1 mm to 500 mm"},
		{func(c *Chamber) { c.Thread.Hole = 0.039 }, "chamber.thread.hole", "as wide as the thread's root, 38.16 mm", "smaller hole"},
		{func(c *Chamber) { c.Thread.Hole = nan }, "chamber.thread.hole", "not a finite number", "0.1 mm to 1000 mm"},
		{func(c *Chamber) { c.Thread.Strength = 1 }, "chamber.thread.strength", "too small", "0.1 MPa to 5000 MPa"},
		{func(c *Chamber) { c.Thread.Female = 1 }, "chamber.thread.female_strength", "too small", "0.1 MPa to 5000 MPa"},
		{func(c *Chamber) { c.Thread.Seal = 30 }, "chamber.thread.seal", "too large", "1 mm to 1000 mm"},
		{func(c *Chamber) { c.Heating.Temperature = 60 }, "chamber.heating.temperature", "too small", "0 degC to 300 degC"},
		{func(c *Chamber) { c.Heating.Time = 0 }, "chamber.heating.time", "is missing", "0.01 s to 3600 s"},
		{func(c *Chamber) { c.BesideMotor = "ajar" }, "chamber.beside_motor", "neither sealed nor open", `"open"`},
		{func(c *Chamber) { c.Heating.Rise = 1e5 }, "chamber.heating.rise", "too large", "0.0001 bar to 0.2 bar"},
	} {
		tube := glassTube()
		c.spoil(tube)
		faults := tube.Check()
		require.Len(t, faults, 1, "%s: %s: %+v", c.name, c.problem, faults)
		f := faults[0]
		assert.Equal(t, c.name, f.Key)
		assert.Contains(t, f.Problem, c.problem)
		assert.Regexp(t, c.mend, f.Remedy)
	}
}

// What is stated of heat and cycles is no worse than what counts without it, where that is let count: a line taken out
// makes no chamber stronger.
func TestStatedNoWorseThanUnstated(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Chamber)
		name  string
	}{
		{func(c *Chamber) { c.Temperature, c.HeatFactor = celsius+30, 0.99 }, "chamber.heat_factor"},
		{func(c *Chamber) { c.Temperature, c.HeatFactor = celsius+30, 1 }, ""},
		{func(c *Chamber) { c.Temperature, c.HeatFactor = celsius+31, 0.5 }, ""},          // asked for without it
		{func(c *Chamber) { c.Temperature, c.HeatFactor = 0, 0.5 }, ""},                   // the temperature is
		{func(c *Chamber) { c.Cycles, c.CycleFactor = 10, 0.89 }, "chamber.cycle_factor"}, // a tenth a decade
		{func(c *Chamber) { c.Cycles, c.CycleFactor = 10, 0.91 }, ""},
		{func(c *Chamber) { c.Cycles, c.CycleFactor = 11, 0.5 }, ""},
		{func(c *Chamber) { c.Cycles, c.Counted, c.CycleFactor = 0, false, 0.5 }, ""}, // the cycles are asked for
		{func(c *Chamber) { c.Cycles, c.Counted, c.CycleFactor = 0, true, 0.99 }, "chamber.cycle_factor"},
		{func(c *Chamber) { *c = *pipe(0.1, 0.002); c.Cycles, c.CycleFactor = 10, 0.95 }, "chamber.cycle_factor"}, // aluminium is fresh
	} {
		tube := glassTube()
		c.spoil(tube)
		faults := tube.CheckStated()
		if c.name == "" {
			assert.Empty(t, faults)
			continue
		}
		require.Len(t, faults, 1)
		assert.Equal(t, c.name, faults[0].Key)
	}
}

func TestMountFaults(t *testing.T) {
	for _, c := range []struct {
		spoil      func(*Mount)
		name, mend string
	}{
		{func(m *Mount) { m.Pin = 5 }, "recovery.pin", "0 mm to 100 mm"},
		{func(m *Mount) { m.PinStrength = 1 }, "recovery.pin_strength", "0.1 MPa to 5000 MPa"},
		{func(m *Mount) { m.Planes = 0 }, "recovery.planes", "1 to 2"},
		{func(m *Mount) { m.BondArea = 2 }, "recovery.bond_area", "0 cm2 to 10000 cm2"},
		{func(m *Mount) { m.Bond = math.NaN() }, "recovery.bond_strength", "0.01 MPa to 200 MPa"},
		{func(m *Mount) { m.Line = -1 }, "recovery.line", "0 N to 1000000 N"},
		{func(m *Mount) { m.LineLength = math.Inf(1) }, "recovery.line_length", "0.01 m to 100 m"},
		{func(m *Mount) { m.LineStretch = -0.1 }, "recovery.line_stretch", "0.1 % to 500 %"},
		{func(m *Mount) { m.CanopyMass = -0.1 }, "recovery.canopy_mass", "0 g to 50000 g"},
	} {
		m := &Mount{Pin: 0.005, Planes: 2, BondArea: 1e-4, Line: 1000, LineLength: 2, CanopyMass: 0.1}
		require.Empty(t, m.Check())
		c.spoil(m)
		faults := m.Check()
		require.Len(t, faults, 1, c.name)
		assert.Equal(t, c.name, faults[0].Key)
		assert.Regexp(t, c.mend, faults[0].Remedy)
		assert.NotEmpty(t, faults[0].Problem)
	}
}

// All faults come at once.
func TestFaultsTogether(t *testing.T) {
	c := glassTube()
	c.Length, c.Waste, c.Cycles, c.Plies[0].Weave, c.Aft.Overlap, c.Thread.Engaged, c.Heating.Time = 0, -1, -1, "", 0, 0, 0
	var found []string
	for _, f := range c.Check() {
		found = append(found, f.Key)
	}
	assert.ElementsMatch(t, []string{"chamber.length", "chamber.waste", "chamber.cycles", "chamber.ply.cloth.weave",
		"chamber.aft.overlap", "chamber.thread.engaged", "chamber.heating.time"}, found)
}
