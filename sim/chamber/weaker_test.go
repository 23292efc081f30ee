package chamber

import (
	"maps"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// drawVessel is a chamber of any make, all of it described.
func drawVessel(t *rapid.T) *Chamber {
	f := func(name string, min, max float64) float64 { return rapid.Float64Range(min, max).Draw(t, name) }
	c := &Chamber{Diameter: f("diameter", 0.03, 0.15), Length: 0.6,
		Material: rapid.SampledFrom([]Material{GlassEpoxy, CarbonEpoxy, PETBottle, Aluminium, Own}).Draw(t, "material")}
	switch c.Material {
	case GlassEpoxy, CarbonEpoxy:
		c.FibreFraction = f("fraction", 0.25, 0.5)
		for i := range rapid.IntRange(1, 3).Draw(t, "plies") {
			c.Plies = append(c.Plies, Ply{Name: string(rune('a' + i)), Cloth: f("cloth", 0.08, 0.4), Count: rapid.IntRange(1, 5).Draw(t, "count"), Weave: Woven})
		}
		if rapid.Bool().Draw(t, "given") {
			c.Around, c.Along = f("around", 5e7, 4e8), f("along", 5e7, 3e8)
		}
	case Own:
		c.Around, c.Along, c.Density, c.Modulus = f("around", 5e7, 4e8), f("along", 5e7, 3e8), 1800, f("modulus", 5e9, 50e9)
		c.Wall = f("wall", 3e-4, 3e-3)
	default:
		c.Wall = f("wall", 3e-4, 3e-3)
	}
	end := func(name string) *Closure {
		return &Closure{Shape: rapid.SampledFrom([]ClosureShape{Hemisphere, Ellipsoid, Flat}).Draw(t, name), Overlap: f(name+" lap", 0.005, 0.08),
			BondStrength: f(name+" bond", 1e6, 2e7), Strength: f(name+" strength", 5e7, 3e8),
			Wall: rapid.SampledFrom([]float64{0, 1e-3, 3e-3, 8e-3}).Draw(t, name+" wall")}
	}
	c.Forward, c.Aft = end("forward"), end("aft")
	c.Adhesive = &Adhesive{GlueLine: f("glue", 5e-5, 1e-3), Strength: f("yield", 5e6, 4e7), Elastic: f("elastic", 0.005, 0.05), Plastic: f("plastic", 0.001, 0.2)}
	c.Boss = &Boss{Diameter: f("boss", 0.02, 0.06), Length: f("boss length", 0.003, 0.03), BondStrength: f("boss bond", 1e6, 2e7)}
	c.Thread = &Thread{Diameter: 0.036, Pitch: 0.002, Engaged: f("engaged", 0.003, 0.02), Strength: f("male", 1e8, 5e8), Female: f("female", 1e8, 5e8), Seal: 0.034}
	return c
}

// Weaker is never better: less strength, wall, cloth, lap, boss or thread never raises the burst estimate, of whatever
// chamber.
func TestWeakerIsNeverBetter(t *testing.T) {
	less := func(at func(c *Chamber) *float64) func(c *Chamber, share float64) bool {
		return func(c *Chamber, share float64) bool {
			v := at(c)
			if *v == 0 {
				return false
			}
			*v *= share
			return true
		}
	}
	more := func(at func(c *Chamber) *float64) func(c *Chamber, share float64) bool {
		return func(c *Chamber, share float64) bool {
			v := at(c)
			*v /= share
			return *v > 0
		}
	}
	weaken := map[string]func(c *Chamber, share float64) bool{
		"around":        less(func(c *Chamber) *float64 { return &c.Around }),
		"along":         less(func(c *Chamber) *float64 { return &c.Along }),
		"modulus":       less(func(c *Chamber) *float64 { return &c.Modulus }),
		"forward lap":   less(func(c *Chamber) *float64 { return &c.Forward.Overlap }),
		"forward bond":  less(func(c *Chamber) *float64 { return &c.Forward.BondStrength }),
		"forward wall":  less(func(c *Chamber) *float64 { return &c.Forward.Wall }),
		"aft strength":  less(func(c *Chamber) *float64 { return &c.Aft.Strength }),
		"glue strength": less(func(c *Chamber) *float64 { return &c.Adhesive.Strength }),
		"plastic":       less(func(c *Chamber) *float64 { return &c.Adhesive.Plastic }),
		"elastic":       less(func(c *Chamber) *float64 { return &c.Adhesive.Elastic }),
		"glue line":     less(func(c *Chamber) *float64 { return &c.Adhesive.GlueLine }),
		"boss diameter": less(func(c *Chamber) *float64 { return &c.Boss.Diameter }),
		"boss length":   less(func(c *Chamber) *float64 { return &c.Boss.Length }),
		"boss bond":     less(func(c *Chamber) *float64 { return &c.Boss.BondStrength }),
		"engaged":       less(func(c *Chamber) *float64 { return &c.Thread.Engaged }),
		"male":          less(func(c *Chamber) *float64 { return &c.Thread.Strength }),
		"female":        less(func(c *Chamber) *float64 { return &c.Thread.Female }),
		"seal":          more(func(c *Chamber) *float64 { return &c.Thread.Seal }), // pressed on over more
		"hole":          more(func(c *Chamber) *float64 { return &c.Thread.Hole }),
		"pitch":         more(func(c *Chamber) *float64 { return &c.Thread.Pitch }), // a deeper thread
		"wall": func(c *Chamber, share float64) bool {
			c.Wall *= share
			return c.Wall > 0
		},
		"cloth": func(c *Chamber, share float64) bool {
			if len(c.Plies) > 0 {
				c.Plies[0].Cloth *= share
			}
			return len(c.Plies) > 0
		},
		"a layer": func(c *Chamber, _ float64) bool {
			if len(c.Plies) == 0 || c.Plies[0].Count == 1 {
				return false
			}
			c.Plies[0].Count--
			return true
		},
		"a ply": func(c *Chamber, _ float64) bool {
			if len(c.Plies) < 2 {
				return false
			}
			c.Plies = c.Plies[1:]
			return true
		},
		"resin instead of cloth": func(c *Chamber, share float64) bool { // as thick, of less fibre
			if len(c.Plies) == 0 {
				return false
			}
			c.Wall = c.WallThickness()
			c.Plies[0].Cloth *= share
			return true
		},
	}
	names := slices.Sorted(maps.Keys(weaken))
	rapid.Check(t, func(t *rapid.T) {
		c := drawVessel(t)
		name := rapid.SampledFrom(names).Draw(t, "weaker")
		w := copied(c)
		if !weaken[name](w, rapid.Float64Range(0.5, 0.98).Draw(t, "share")) {
			t.Skip()
		}
		notStronger(t, "less of "+name, c, w)
	})
}

// copied is a chamber that shares nothing with another.
func copied(c *Chamber) *Chamber {
	w := *c
	w.Plies = append([]Ply(nil), c.Plies...)
	forward, aft, glue, boss, thread := *c.Forward, *c.Aft, *c.Adhesive, *c.Boss, *c.Thread
	w.Forward, w.Aft, w.Adhesive, w.Boss, w.Thread = &forward, &aft, &glue, &boss, &thread
	return &w
}

// notStronger holds that a chamber that is weaker by one thing bursts no later, new and cold, nor as warm and old as it is.
func notStronger(t *rapid.T, what string, c, w *Chamber) {
	if len(c.Check()) > 0 || len(w.Check()) > 0 {
		t.Skip()
	}
	before, after := c.At(Service{Working: 1e6, Ambient: 1e5}), w.At(Service{Working: 1e6, Ambient: 1e5})
	if !(after.ColdEstimate <= before.ColdEstimate*(1+1e-9)) || !(after.Estimate <= before.Estimate*(1+1e-9)) {
		t.Fatalf("%s: %g Pa after %g Pa cold, %g after %g; weakest %s, before %s", what, after.ColdEstimate, before.ColdEstimate,
			after.Estimate, before.Estimate, after.Parts[after.Weakest].Name, before.Parts[before.Weakest].Name)
	}
}

// A step to a material that is weaker makes no chamber stronger: from aluminium to the plastic of bottles, as built in; and from
// whatever to one of which nothing is known, with no more strength, stiffness and wall than the other has, as dense or not.
func TestWeakerMaterialIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawVessel(t)
		c.Temperature, c.Cycles = rapid.Float64Range(280, 345).Draw(t, "temperature"), rapid.IntRange(0, 5000).Draw(t, "cycles")
		w := copied(c)
		if c.Material == Aluminium && rapid.Bool().Draw(t, "as built in") {
			w.Material = PETBottle
			notStronger(t, "a bottle", c, w)
			return
		}
		if c.Material != Own && (c.Around == 0 || rapid.Bool().Draw(t, "closures as built in")) {
			part := func(name string) float64 {
				for _, p := range c.parts() {
					if p.Name == name {
						return p.Strength / c.factors().wall
					}
				}
				return 0
			}
			c.Around, c.Along = part(wallAround), part(wallAlong)
			*w = *copied(c)
		}
		share := rapid.Float64Range(0.7, 1).Draw(t, "share")
		w.Material, w.Plies, w.FibreFraction = Own, nil, 0
		w.Wall = c.WallThickness()
		w.Modulus = share * c.stiffnessAlong() / w.Wall
		w.Around, w.Along = share*c.Around*c.counted(), share*c.Along*c.counted()
		w.Density = rapid.SampledFrom([]float64{c.WallDensity(), 500, 8000}).Draw(t, "density")
		notStronger(t, "another material", c, w)
	})
}
