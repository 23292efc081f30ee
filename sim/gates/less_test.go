package gates

import (
	"context"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/chamber"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// strengths are the numbers of heron's chamber and mount of which less is weaker. Mass and balance stay: they are
// the file's own.
func strengths(r *rocket.Rocket) map[string]*float64 {
	c, m := r.Chamber, r.Recovery
	all := map[string]*float64{
		"around": &c.Around, "along": &c.Along, "wall": &c.Wall, "burst": &c.Burst, "heat factor": &c.HeatFactor, "cycle factor": &c.CycleFactor,
		"forward wall": &c.Forward.Wall, "forward strength": &c.Forward.Strength, "forward lap": &c.Forward.Overlap, "forward bond": &c.Forward.BondStrength,
		"aft wall": &c.Aft.Wall, "aft strength": &c.Aft.Strength, "aft lap": &c.Aft.Overlap, "aft bond": &c.Aft.BondStrength,
		"glue line": &c.Adhesive.GlueLine, "glue": &c.Adhesive.Strength, "elastic": &c.Adhesive.Elastic, "plastic": &c.Adhesive.Plastic,
		"boss face": &c.Boss.Diameter, "boss length": &c.Boss.Length, "boss bond": &c.Boss.BondStrength,
		"engaged": &c.Thread.Engaged, "male": &c.Thread.Strength, "female": &c.Thread.Female,
		"pin": &m.Pin, "pin strength": &m.PinStrength, "mount bond": &m.Bond, "mount bond area": &m.BondArea, "line": &m.Line,
		"line length": &m.LineLength, "stretch": &m.LineStretch,
	}
	for i := range c.Plies {
		all["cloth of "+c.Plies[i].Name] = &c.Plies[i].Cloth
	}
	return all
}

// loads are those of which more is worse.
func loads(r *rocket.Rocket) map[string]*float64 {
	c := r.Chamber
	return map[string]*float64{
		"warmth": &c.Temperature, "pitch": &c.Thread.Pitch, "seal": &c.Thread.Seal, "hole": &c.Thread.Hole, "air beside the motor": &c.Heating.Temperature,
		"canopy": &r.Recovery.CanopyMass, "retainer": &r.MotorMount.Retainer, "motor": &r.Motor.Length,
	}
}

// others are changes for the worse that are no number's.
var others = map[string]func(r *rocket.Rocket, share float64){
	"a layer":  func(r *rocket.Rocket, _ float64) { r.Chamber.Plies[0].Count-- },
	"a plane":  func(r *rocket.Rocket, _ float64) { r.Recovery.Planes = 1 },
	"a liner":  func(r *rocket.Rocket, _ float64) { r.Chamber.Liner = "" },
	"a rest":   func(r *rocket.Rocket, _ float64) { r.Chamber.Cycles += 3 },
	"material": weakerMaterial,
}

// weakerMaterial is another of which nothing is known but less strength and stiffness in a wall as thick; the mass stays,
// whatever its density.
func weakerMaterial(r *rocket.Rocket, share float64) {
	c := r.Chamber
	at := r.ChamberAt()
	for _, p := range at.Parts {
		strength := share * p.Strength / at.HeatFactor / at.CycleFactor
		switch p.Name {
		case "wall around":
			c.Around = strength
		case "wall along":
			c.Along = strength
		}
	}
	v := r.Vessel()
	c.Modulus = share * v.Diameter * r.Water.Pressure / (2 * v.WallThickness() * at.Strain) // no stiffer than what strains it most
	c.Material, c.Wall, c.Plies, c.FibreFraction, c.Density = chamber.Own, v.WallThickness(), nil, 0, 900/share
}

// anyHeron is heron with another chamber and mount of any strengths, some of them not stated.
func anyHeron(t *rapid.T) *rocket.Rocket {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket().Clone()
	c := r.Chamber
	if rapid.Bool().Draw(t, "motor") {
		r.Power = rocket.MotorPower
	}
	if rapid.Bool().Draw(t, "lined") {
		c.Liner = chamber.Lined
	}
	if rapid.IntRange(0, 2).Draw(t, "measured wall") == 0 {
		c.Wall = rapid.Float64Range(0.6e-3, 1.2e-3).Draw(t, "wall")
		c.FibreFraction = rapid.Float64Range(0.2, 0.55).Draw(t, "fraction")
	}
	if rapid.IntRange(0, 2).Draw(t, "burst once") == 0 {
		c.Burst, c.BurstWord = rapid.Float64Range(15e5, 60e5).Draw(t, "burst"), ""
	}
	if rapid.IntRange(0, 3).Draw(t, "proved") == 0 {
		c.Proof, c.ProofDate = 0, ""
	}
	c.Temperature = rapid.Float64Range(290, 325).Draw(t, "temperature")
	if rapid.Bool().Draw(t, "warm coupons") {
		c.HeatFactor = rapid.Float64Range(0.5, 1).Draw(t, "heat factor")
	}
	c.Cycles = rapid.IntRange(0, 40).Draw(t, "cycles")
	if rapid.Bool().Draw(t, "tired coupons") {
		c.CycleFactor = rapid.Float64Range(0.4, 1).Draw(t, "cycle factor")
	}
	r.Water.Pressure = rapid.Float64Range(4e5, 14e5).Draw(t, "pressure")
	for i := range c.Plies {
		c.Plies[i].Count = rapid.IntRange(1, 4).Draw(t, "count of "+c.Plies[i].Name)
	}
	all := strengths(r)
	for range rapid.IntRange(0, 4).Draw(t, "others") {
		name := rapid.SampledFrom(sorted(all)).Draw(t, "other")
		*all[name] *= rapid.SampledFrom([]float64{0, 0.1, 0.3, 0.6, 1.5, 3}).Draw(t, name)
	}
	return r
}

// held are the rows that judge a chamber or a mount. Whether two figures of one burst agree is another thing than how
// strong it is: the smaller of them doubts the larger less.
func held(c *Check) bool {
	return c.About == Chamber && c.Key != checkDoubt || strings.HasPrefix(c.Key, LimitMount) || strings.HasPrefix(c.Key, checkMost)
}

// passes are the rows that do, cautions left out.
func passes(t *rapid.T, r *rocket.Rocket) map[string]bool {
	v, err := Judge(context.Background(), r, Options{Today: today})
	require.NoError(t, err)
	rows := map[string]bool{}
	for i := range v.Checks {
		if c := &v.Checks[i]; held(c) {
			rows[c.Key] = c.Pass && c.Level == Good
		}
	}
	return rows
}

// Of any chamber and mount, with less strength, wall, cloth, lap, boss, thread, pin, bond or line, of a weaker material, warmer, older or
// under more load no row passes that did not.
func TestLessNeverPasses(t *testing.T) {
	long.Unraced(t)
	long.Check(t, 60, func(t *rapid.T) {
		r := anyHeron(t)
		w := r.Clone()
		less, more := strengths(w), loads(w)
		name := rapid.SampledFrom(slices.Concat(sorted(less), sorted(more), sorted(others))).Draw(t, "less")
		switch share := rapid.Float64Range(0.3, 0.97).Draw(t, "share"); {
		case less[name] != nil:
			*less[name] *= share
		case name == "warmth" || name == "air beside the motor":
			*more[name] += 30 * (1 - share)
		case more[name] != nil:
			*more[name] /= share
		default:
			others[name](w, share)
		}
		if r.Validate() != nil || w.Validate() != nil {
			t.Skip("no rocket")
		}
		before := passes(t, r)
		for key, pass := range passes(t, w) {
			if was, there := before[key]; pass && there && !was {
				t.Fatalf("less of %s passes %s", name, key)
			}
		}
	})
}

// Of any chamber and mount, with a statement taken out no row passes that did not, and the whole is no go.
func TestTakenOutNeverPasses(t *testing.T) {
	long.Unraced(t)
	long.Check(t, 60, func(t *rapid.T) {
		r := anyHeron(t)
		inputs := map[string]*rocket.Number{}
		for _, in := range rocketfile.Inputs(r) {
			n := rocket.NumberNamed(in.Name)
			_, given := in.Get(r)
			if group, _, _ := strings.Cut(in.Name, "."); group != "chamber" && group != "recovery" || n == nil || !n.Optional || !given {
				continue
			}
			if saysNothing[in.Name] == "" && in.Name != "chamber.proof" { // without a proof, that it is too high for the chamber is gone too
				inputs[in.Name] = n
			}
		}
		name := rapid.SampledFrom(sorted(inputs)).Draw(t, "taken out")
		w := r.Clone()
		*inputs[name].At(w, 0) = inputs[name].Absent
		if r.Validate() != nil || w.Validate() != nil {
			t.Skip("no rocket")
		}
		before := passes(t, r)
		for key, pass := range passes(t, w) {
			if was, there := before[key]; pass && there && !was {
				t.Fatalf("without %s passes %s", name, key)
			}
		}
	})
}

func sorted[T any](m map[string]T) []string { return slices.Sorted(maps.Keys(m)) }
