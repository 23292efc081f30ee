package chamber

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// wild draws a number as a file might hold one: mostly in a range, now and then odd.
func wild(t *rapid.T, name string, low, high float64) float64 {
	if rapid.IntRange(0, 60).Draw(t, name+" kind") == 60 {
		return rapid.SampledFrom([]float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, 1e-300}).Draw(t, name+" odd")
	}
	return rapid.Float64Range(low, high).Draw(t, name)
}

// given is wild, or 0 for what is left out.
func given(t *rapid.T, name string, low, high float64) float64 {
	if rapid.Bool().Draw(t, name+" left out") {
		return 0
	}
	return wild(t, name, low, high)
}

func anyClosure(t *rapid.T, name string) *Closure {
	if rapid.Bool().Draw(t, name+" left out") {
		return nil
	}
	return &Closure{
		Shape:     rapid.SampledFrom([]ClosureShape{Hemisphere, Ellipsoid, Cone, Flat}).Draw(t, name),
		Wall:      given(t, name+" wall", 1e-4, 1e-2),
		Strength:  given(t, name+" strength", 1e6, 1e9),
		HalfAngle: wild(t, name+" angle", 0.1, 1.2),
		Overlap:   wild(t, name+" overlap", 0.005, 0.05), BondStrength: given(t, name+" bond", 1e6, 3e7),
	}
}

// anyChamber draws chambers of which many pass Check and some are absurd.
func anyChamber(t *rapid.T) *Chamber {
	c := &Chamber{
		Diameter: wild(t, "diameter", 0.04, 0.3), Length: wild(t, "length", 0.1, 2),
		Material: rapid.SampledFrom(Materials()).Draw(t, "material"),
		Waste:    wild(t, "waste", 0, 0.5),
		Around:   given(t, "around", 1e7, 1e9), Along: given(t, "along", 1e7, 1e9),
		Density: given(t, "density", 900, 3000), Modulus: given(t, "modulus", 1e9, 1e11),
		Temperature: given(t, "temperature", 250, 420), HeatFactor: given(t, "heat", 0.01, 1),
		CycleFactor: given(t, "cycle", 0.01, 1), Cycles: rapid.IntRange(-1, 1e6).Draw(t, "cycles"),
		Burst: given(t, "burst", 1e5, 1e7), Proof: given(t, "proof", 1e5, 1e7),
		Forward: anyClosure(t, "forward"), Aft: anyClosure(t, "aft"),
	}
	if c.Material.FibreFraction() > 0 {
		c.FibreFraction = given(t, "fraction", 0.1, 0.75)
		for range rapid.IntRange(0, 3).Draw(t, "plies") {
			c.Plies = append(c.Plies, Ply{
				Cloth: wild(t, "cloth", 0.05, 0.6), Count: rapid.IntRange(0, 8).Draw(t, "count"),
				Direction: wild(t, "direction", 0, math.Pi/2),
				Weave:     rapid.SampledFrom([]Weave{Woven, Braided, Unidirectional}).Draw(t, "weave"),
			})
		}
	}
	if len(c.Plies) == 0 || rapid.IntRange(0, 4).Draw(t, "measured") == 0 {
		c.Wall = wild(t, "wall", 2e-4, 0.01)
	}
	if rapid.Bool().Draw(t, "thread") {
		d := wild(t, "thread", 0.01, 0.1)
		c.Thread = &Thread{Diameter: d, Pitch: wild(t, "pitch", 5e-4, 4e-3), Engaged: wild(t, "engaged", 0.005, 0.03),
			Strength: given(t, "strength", 1e7, 1e9), Seal: given(t, "seal", 0.01, 0.1), Hole: given(t, "hole", 0.001, 0.02)}
	}
	if rapid.Bool().Draw(t, "heated") {
		c.Heating = &Heating{Temperature: wild(t, "heated", 300, 420), Time: wild(t, "time", 1, 300), Rise: given(t, "rise", 100, 2e4)}
	}
	return c
}

// amiss is what does not hold of a chamber that passed Check, at a service that makes sense.
func amiss(c *Chamber, r Result) string {
	numbers := func(v ...float64) bool {
		for _, x := range v {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				return false
			}
		}
		return true
	}
	if r.Weakest < 0 || !numbers(r.Estimate, r.Burst, r.Proof, r.ProofLimit, r.MostWorking, r.MostOnRecord, r.Tube.Mass, r.Tube.Resin,
		r.Gas.Isentropic, r.Gas.Brode, r.Pneumatic.Isentropic, r.Pneumatic.Standoff) {
		return "a figure is missing or below nothing"
	}
	for _, p := range r.Parts {
		if math.IsNaN(p.Stress) || math.IsInf(p.Stress, 0) || math.IsNaN(p.Use) || !(p.Strength >= 0) {
			return "not a number in " + p.Name
		}
		if p.Strength > 0 && math.Abs(p.Use*p.Strength-math.Abs(p.Stress)) > 1e-9*math.Abs(p.Stress) {
			return "use is not stress over strength in " + p.Name
		}
		if p.Use > r.Parts[r.Weakest].Use {
			return "the weakest is not " + p.Name
		}
	}
	if r.Proof > r.ProofLimit || r.Proof > r.ProofWanted || r.ProofLimit > MeasuredShare*r.ColdBurst*(1+1e-12) || r.MostWorking > MeasuredShare*r.ColdBurst*r.HeatLeft/r.ProofFactor*(1+1e-12) {
		return "the proof is past its limit"
	}
	if math.IsNaN(r.Strain) != (c.Material == Own && c.Modulus == 0) {
		return "the strain is known just when a modulus is"
	}
	if c.Heating != nil && !(r.Heated.Damp >= r.Heated.Dry) {
		return "damp air has less pressure than dry"
	}
	return ""
}

// No chamber, however odd, panics; of those that pass Check every figure is one.
func TestAnyChamber(t *testing.T) {
	sound := 0
	rapid.Check(t, func(t *rapid.T) {
		c := anyChamber(t)
		s := Service{Working: float64(rapid.IntRange(0, 4_000_000).Draw(t, "working")), Ambient: 101325,
			Fill: rapid.Float64Range(0, 1).Draw(t, "fill"), Gamma: 1.4, AirTemperature: 293.15}
		r := c.At(s)
		odd := Service{Working: wild(t, "odd working", 0, 1e6), Ambient: wild(t, "odd ambient", 0, 1e5), Fill: wild(t, "odd fill", 0, 1),
			Volume: wild(t, "odd volume", 0, 1), Gamma: wild(t, "odd gamma", 1, 2), AirTemperature: wild(t, "odd air", 0, 400)}
		c.At(odd)
		if c.Check() != nil {
			return
		}
		sound++
		if wrong := amiss(c, r); wrong != "" {
			t.Fatalf("%s: %+v", wrong, r)
		}
	})
	if sound == 0 {
		t.Fatal("no chamber drawn passed Check")
	}
}

// Whatever is odd in the figures of a chamber, Check says so.
func TestOddIsRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := glassTube()
		c.Forward.Shape, c.Forward.HalfAngle = Cone, 0.5
		fields := []*float64{&c.Diameter, &c.Length, &c.FibreFraction, &c.Wall, &c.Waste, &c.Around, &c.Along, &c.Density, &c.Modulus,
			&c.Temperature, &c.HeatFactor, &c.CycleFactor, &c.Burst, &c.Proof, &c.Plies[0].Cloth, &c.Plies[0].Direction,
			&c.Forward.Wall, &c.Forward.Strength, &c.Forward.HalfAngle, &c.Forward.Overlap, &c.Forward.BondStrength,
			&c.Thread.Diameter, &c.Thread.Pitch, &c.Thread.Engaged, &c.Thread.Strength, &c.Thread.Female, &c.Thread.Seal, &c.Thread.Hole,
			&c.Heating.Temperature, &c.Heating.Time, &c.Heating.Rise}
		i := rapid.IntRange(0, len(fields)-1).Draw(t, "field")
		*fields[i] = rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e300}).Draw(t, "odd")
		if c.Check() == nil {
			t.Fatalf("field %d passes with %v", i, *fields[i])
		}
	})
}
