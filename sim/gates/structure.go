package gates

import (
	"math"

	"ullage/sim"
	"ullage/sim/airframe"
	"ullage/sim/chamber"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Keys of the checks of what the airframe is made of and shaped like.
const (
	checkNose  = "nose-angle"
	checkTaper = "boat-tail-angle"
	checkWeep  = "weep"
	checkWeepy = "weep-at-proof"
)

// shapeCriteria hold a shape to what the drag model is for, where that flies, and the fins against flutter.
func shapeCriteria(r *rocket.Rocket) []criterion {
	if r.Shape == nil {
		return nil
	}
	var g []criterion
	angle := func(key, name, part string, most float64, of func(s *airframe.Shape) float64) {
		if len(r.Body.Drag) > 0 || !(of(r.Shape) > 0) {
			return
		}
		g = append(g, criterion{key: key, still: true, change: "build a longer " + part + ", and weigh and balance it anew; or give body.drag as measured",
			limit: Limit{Key: key, Name: name, Min: noMin, Max: most, Unit: "deg", Word: WordHigh, Source: CommonPractice},
			value: func(fl *sim.Flight) (float64, bool) { return of(fl.Rocket.Shape), true }})
	}
	angle(checkNose, "angle at which the nose meets the tube", "nose", airframe.SteepJunction, func(s *airframe.Shape) float64 { return s.Forebody().JunctionAngle() })
	angle(checkTaper, "half-angle of the boat-tail", "boat-tail", airframe.SteepTaper, (*airframe.Shape).SteepestTaper)
	if len(r.Shape.Fins) == 0 {
		return g
	}
	flutter := criterion{key: LimitFlutter, limit: LimitFor(r, LimitFlutter)}.judging(results.For(r).Must("max.flutter"))
	var unknown []string
	for i := range r.Shape.Fins {
		f := &r.Shape.Fins[i]
		flutter.levers = append(flutter.levers, lever{input: "fins." + f.Name + ".thickness", up: true}, lever{input: "fins." + f.Name + ".span"})
		if f.ShearModulus == 0 {
			unknown = append(unknown, "fins."+f.Name+".shear_modulus")
		}
	}
	if unknown != nil {
		flutter.lacks = give(unknown...).because("glass and epoxy 4 to 7 GPa, printed plastic 0.7 to 1, birch plywood about 0.7: typical, from memory")
	}
	return append(g, flutter)
}

// weepCriteria hold the strain of a laid-up wall without a liner against that from which it weeps.
func weepCriteria(r *rocket.Rocket) []criterion {
	v := r.Vessel()
	if !v.Weeps() {
		return nil
	}
	add := func(key, name string, most float64, of func(chamber.Result) float64) criterion {
		g := criterion{key: key, still: true, levers: []lever{{input: "water.pressure"}},
			limit: Limit{Key: key, Name: name, Min: noMin, Max: most, Unit: "%", Word: WordHigh, Source: CommonPractice},
			value: func(fl *sim.Flight) (float64, bool) {
				x := of(fl.Rocket.ChamberAt())
				return x, !math.IsNaN(x)
			}}
		if math.IsNaN(of(r.ChamberAt())) {
			g.lacks = give("chamber.modulus").because(`its strain is not known; chamber.liner = "lined" makes it none of this`)
		}
		if key == checkWeepy && g.lacks == nil && r.Chamber.Temperature == 0 {
			g.lacks = give("chamber.temperature").because("the warmer its wall, the higher its proof")
		}
		return g
	}
	return []criterion{
		add(checkWeep, "strain of the wall at its pressure", chamber.WeepStrain, func(x chamber.Result) float64 { return x.Strain }),
		add(checkWeepy, "strain of the wall at its proof", chamber.WeepProof, func(x chamber.Result) float64 {
			// At the proof that its pressure wants, not at what a weaker wall can be proved to: that would strain it less.
			return x.Strain * LimitFor(r, LimitProof).Min / x.HeatLeft
		}),
	}
}

// unstatedStrength lists what the estimate of a chamber's burst takes that nobody has stated: what is built in is
// typical, and says nothing of this one.
func unstatedStrength(r *rocket.Rocket) []string {
	c := r.Chamber
	var keys []string
	need := func(key string, missing bool) {
		if missing {
			keys = append(keys, key)
		}
	}
	keys = append(keys, unstatedAge(r)...)
	laid := c.Material == chamber.GlassEpoxy || c.Material == chamber.CarbonEpoxy
	need("chamber.hoop_strength", c.Around == 0)
	need("chamber.axial_strength", c.Along == 0)
	need("chamber.temperature", c.Temperature == 0)
	need("chamber.fibre_fraction", len(c.Plies) > 0 && c.FibreFraction == 0 && c.Wall == 0) // the thickness hangs on it
	for _, end := range []struct {
		name string
		of   *chamber.Closure
	}{{"chamber.forward", c.Forward}, {"chamber.aft", c.Aft}} {
		if need(end.name, end.of == nil); end.of == nil {
			continue
		}
		need(end.name+".wall", end.of.Wall == 0)
		need(end.name+".strength", end.of.Strength == 0)
		need(end.name+".bond_strength", end.of.BondStrength == 0)
	}
	if a := c.Adhesive; a == nil {
		need("chamber.adhesive", c.Forward != nil || c.Aft != nil)
	} else {
		need("chamber.adhesive.glue_line", a.GlueLine == 0)
		need("chamber.adhesive.strength", a.Strength == 0)
		need("chamber.adhesive.elastic_strain", a.Elastic == 0)
		need("chamber.adhesive.plastic_strain", a.Plastic == 0)
	}
	if need("chamber.thread", c.Thread == nil); c.Thread != nil {
		need("chamber.thread.strength", c.Thread.Strength == 0)
		need("chamber.thread.female_strength", c.Thread.Female == 0)
		need("chamber.thread.seal", c.Thread.Seal == 0)
		need("chamber.thread.hole", c.Thread.Hole == 0)
	}
	if b := c.Boss; b == nil {
		need("chamber.boss", laid || c.Material == chamber.Own)
	} else {
		need("chamber.boss.bond_strength", b.BondStrength == 0)
	}
	return keys
}

// Up to where what is built in on heat and cycles is let count: common practice, no source. A chamber is proved about
// as warm, and fewer cycles cost little. Beyond them nobody knows but who measured it.
const (
	warmest    = 303.15 // of a wall, K
	mostCycles = 10
)

// heatUnknown tells of a wall so warm that what it keeps of its strength has to be stated.
func heatUnknown(r *rocket.Rocket) bool {
	return r.Chamber.HeatFactor == 0 && r.Vessel().Temperature > warmest+1e-6
}

// unstatedAge lists what nobody has said of the pressurisations that a chamber went through: they tell on a burst that
// was measured as on one that is estimated.
func unstatedAge(r *rocket.Rocket) []string {
	switch c := r.Chamber; {
	case c.CycleFactor != 0:
		return nil
	case c.Cycles == 0 && !c.Counted && c.Booked == nil:
		return []string{"chamber.cycles"}
	case c.Cycles > mostCycles:
		return []string{"chamber.cycle_factor"}
	}
	return nil
}
