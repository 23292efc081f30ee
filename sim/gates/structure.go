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
func shapeCriteria(r *rocket.Rocket, out results.Table) []criterion {
	if r.Shape == nil {
		return nil
	}
	var g []criterion
	angle := func(key, name, part string, most float64, of func(s *airframe.Shape) float64) {
		if !r.ShapeDrags() || !(of(r.Shape) > 0) {
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
	flutter := criterion{key: LimitFlutter, limit: LimitFor(r, LimitFlutter)}.judging(out.Must("max.flutter"))
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
	add := func(key, name string, most float64, of func(*rocket.Rocket) float64) criterion {
		g := criterion{key: key, still: true, levers: []lever{{input: "water.pressure"}},
			limit: Limit{Key: key, Name: name, Min: noMin, Max: most, Unit: "%", Word: WordHigh, Source: CommonPractice},
			value: func(fl *sim.Flight) (float64, bool) {
				x := of(fl.Rocket)
				return x, !math.IsNaN(x)
			}}
		if r.Chamber.ModulusUnstated() {
			g.lacks = give("chamber.modulus").because(`its strain is not known; chamber.liner = "lined" makes it none of this`)
		}
		if key == checkWeepy {
			g.change = `a wall strained so far has begun to crack: seal it inside, and say chamber.liner = "lined"; or build another with more cloth`
		}
		if missing := warmthUnstated(r); key == checkWeepy && g.lacks == nil && missing != nil {
			g.lacks = give(missing...).because(proofHigher)
		}
		return g
	}
	return []criterion{
		add(checkWeep, "strain of the wall at its pressure", chamber.WeepStrain, func(r *rocket.Rocket) float64 { return r.ChamberAt().Strain }),
		add(checkWeepy, "strain of the wall at its proof", chamber.WeepProof, func(r *rocket.Rocket) float64 {
			// At the proof that its pressure wants, not at what a weaker wall can be proved to: that would strain it less. And
			// at the one on record, which has strained it.
			x := r.ChamberAt()
			return x.Strain * max(LimitFor(r, LimitProof).Min/x.HeatLeft, r.Chamber.ProvedTo()/r.Water.Pressure)
		}),
	}
}
