package rocketfile

import (
	"math"

	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// shaped tells that a rocket has a shape: what concerns balance and attitude is
// listed for no other.
func shaped(r *rocket.Rocket) bool { return r.Shape != nil }

// shape is where the shape's rows reach.
func shape(p place) *airframe.Shape { return p.rocket.Shape }

// shapeRows are the keys of [body] that only a rocket with a shape has. One of
// them is enough to say that it has one.
func shapeRows() []*field {
	rows := []*field{
		num("length", "length", 1, 10,
			"From the tip of the nose to the aft end, fins left out.").required(shaped, `"980 mm"`),
		num("balance", "balance", 1, 10,
			"Where the body balances, from the tip of the nose, weighed as for mass.").
			otherwise(dry(func(l airframe.Lump) float64 { return l.At })),
		num("inertia", "inertia", 1e-4, 1e-3,
			"Of the body across its axis, about the balance point, from a swing test; estimated when not given.").
			otherwise(dry(func(l airframe.Lump) float64 { return l.Pitch })),
		num("roll_inertia", "roll inertia", 1e-4, 1e-3,
			"Of the body about its axis, from a swing test; estimated when not given.").
			otherwise(dry(func(l airframe.Lump) float64 { return l.Roll })),
		num("roughness", "roughness", 1, 10,
			"Height of the surface's roughness; sprayed paint has about 30 um.").byDefault("30 um"), // DATCOM, from memory
		num("rail_buttons", "rail buttons", 1, 10,
			"Frontal area of all rail buttons together.").byDefault("0 mm2"),
	}
	for _, f := range rows {
		f.only, f.group = shaped, "airframe"
	}
	return rows
}

func noseSection() *section {
	nose := func(p place) *airframe.Nose {
		if p.rocket.Shape == nil {
			return nil
		}
		return &p.rocket.Shape.Nose
	}
	return &section{
		path: "nose", group: "nose", about: "The nose, and with it the shape that stability takes.",
		count: func(r *rocket.Rocket) int { return counted(shaped(r)) },
		make:  giveShape,
		fields: []*field{
			text("shape", "shape", "Contour of the nose.",
				choose(of[airframe.Nose, airframe.NoseShape](nose)(func(n *airframe.Nose) *airframe.NoseShape { return &n.Shape }),
					airframe.NoseShapes()...)).
				required(shaped, `"tangent ogive"`),
			num("length", "length", 1, 10,
				"From the tip to the base.").required(shaped, `"200 mm"`),
			num("exponent", "exponent", 0.05, 0.1,
				"Of a power series: 1 is a cone, 0.5 a paraboloid.").byDefault("0.5").onlyFor(func(r *rocket.Rocket) bool {
				return shaped(r) && r.Shape.Nose.Shape == airframe.PowerSeries
			}),
			num("diameter", "diameter", 0.1, 1,
				"Of the base; that of what follows when not given.").
				otherwise(func(p place) float64 { return p.rocket.Shape.Forebody().Diameter }),
			num("wall", "wall", 0.1, 0.5,
				"Thickness of the nose, for the plug or mandrel it is laid up on."),
		},
	}
}

func sectionSection() *section {
	item := func(p place) *airframe.Section {
		if p.rocket.Shape == nil || p.item >= len(p.rocket.Shape.Sections) {
			return nil
		}
		return &p.rocket.Shape.Sections[p.item]
	}
	title := of[airframe.Section, string](item)(func(s *airframe.Section) *string { return &s.Name })
	return &section{
		path: "section", group: "section", about: "A tube or a transition of the body behind the nose.", many: true, title: title,
		count: func(r *rocket.Rocket) int {
			if r.Shape == nil {
				return 0
			}
			return len(r.Shape.Sections)
		},
		make: func(r *rocket.Rocket) {
			giveShape(r)
			r.Shape.Sections = append(r.Shape.Sections, airframe.Section{})
		},
		fields: []*field{
			text("name", "name", "What the section is called in dotted names.", &textCodec{at: title, check: aName("a section", "tail")}),
			num("length", "length", 1, 10,
				"Along the axis.").required(always, `"120 mm"`),
			num("forward", "forward", 0.1, 1,
				"Diameter of the forward end; that of what is before it when not given.").
				otherwise(func(p place) float64 { fore, _ := ends(p); return fore }),
			num("aft", "aft", 0.1, 1,
				"Diameter of the aft end; that of the forward end when not given.").
				otherwise(func(p place) float64 { _, aft := ends(p); return aft }),
		},
	}
}

// ends are the diameters of a section with what is not given filled in.
func ends(p place) (fore, aft float64) {
	s := p.rocket.Shape
	aft = s.Forebody().Diameter
	for i := range p.item + 1 {
		fore = aft
		if s.Sections[i].Forward != 0 {
			fore = s.Sections[i].Forward
		}
		aft = fore
		if s.Sections[i].Aft != 0 {
			aft = s.Sections[i].Aft
		}
	}
	return fore, aft
}

func finsSection() *section {
	item := func(p place) *airframe.Fins {
		if p.rocket.Shape == nil || p.item >= len(p.rocket.Shape.Fins) {
			return nil
		}
		return &p.rocket.Shape.Fins[p.item]
	}
	title := of[airframe.Fins, string](item)(func(f *airframe.Fins) *string { return &f.Name })
	return &section{
		path: "fins", group: "fins", about: "A set of fins.", many: true, title: title,
		count: func(r *rocket.Rocket) int {
			if r.Shape == nil {
				return 0
			}
			return len(r.Shape.Fins)
		},
		make: func(r *rocket.Rocket) {
			giveShape(r)
			r.Shape.Fins = append(r.Shape.Fins, airframe.Fins{})
		},
		fields: []*field{
			text("name", "name", "What the set of fins is called in dotted names.", &textCodec{at: title, check: aName("fins", "tail")}),
			num("count", "count", 1, 1, "How many fins, evenly around the body.").
				required(always, "4"),
			num("root", "root", 1, 10,
				"Chord at the body.").required(always, `"110 mm"`),
			num("tip", "tip", 1, 10,
				"Chord at the tip, 0 for a pointed fin.").required(always, `"60 mm"`),
			num("span", "span", 1, 10,
				"From the body to the tip of one fin.").required(always, `"75 mm"`),
			num("sweep", "sweep", 1, 10,
				"How far the tip's leading edge lies aft of the root's.").required(always, `"40 mm"`),
			num("thickness", "thickness", 0.1, 1,
				"Of the fins.").required(always, `"3 mm"`),
			text("section", "section", "Profile of the fins: square edges, rounded, sharp in front, or streamlined.",
				choose(of[airframe.Fins, airframe.FinSection](item)(func(f *airframe.Fins) *airframe.FinSection { return &f.Section }),
					airframe.FlatSection, airframe.RoundedSection, airframe.WedgeSection, airframe.AirfoilSection)).byDefault("flat"),
			num("position", "position", 1, 10,
				"Of the root's leading edge from the tip of the nose.").required(always, `"860 mm"`),
			num("cant", "cant", 0.1, 1,
				"Angle of the fins to the axis, which makes the rocket roll.").byDefault("0 deg"),
			num("shear_modulus", "shear mod", 0.1, 1,
				"Of the fins' material, for their flutter: glass and epoxy 4 to 7 GPa, birch plywood about 0.7 (typical, from memory)."),
		},
	}
}

func partSection() *section {
	item := func(p place) *airframe.Part {
		if p.item >= len(p.rocket.Parts) {
			return nil
		}
		return &p.rocket.Parts[p.item]
	}
	title := of[airframe.Part, string](item)(func(x *airframe.Part) *string { return &x.Name })
	return &section{
		path: "part", group: "part", about: "A part of a mass list, in place of weighing and balancing.", many: true, most: 64, title: title,
		count: func(r *rocket.Rocket) int { return len(r.Parts) },
		make:  func(r *rocket.Rocket) { r.Parts = append(r.Parts, airframe.Part{}) },
		fields: []*field{
			text("name", "name", "What the part is called in dotted names.", &textCodec{at: title, check: aName("a part", "battery")}),
			num("mass", "mass", 1, 10,
				"Of the part.").required(always, `"40 g"`),
			num("position", "position", 1, 10,
				"Of the part's own balance point from the tip of the nose.").required(always, `"300 mm"`),
			num("length", "length", 1, 10,
				"Along the axis; 0 for a lump.").byDefault("0 mm"),
			num("diameter", "diameter", 1, 10,
				"Across; spread over the body's skin when not given.").
				otherwise(func(p place) float64 { return p.rocket.Body.Diameter }),
		},
	}
}

func flightSection() *section {
	model := choose(func(p place) *rocket.Model { return &p.rocket.Model }, rocket.RigidModel, rocket.PointModel)
	model.offered = func(r *rocket.Rocket) []string {
		if r.Balanced() {
			return model.words
		}
		return []string{string(rocket.PointModel)}
	}
	model.otherwise = func(p place) string {
		if p.rocket.Balanced() {
			return string(rocket.RigidModel)
		}
		return string(rocket.PointModel)
	}
	return &section{
		path: "flight", group: "flight", loose: true, count: func(r *rocket.Rocket) int { return counted(shaped(r)) },
		fields: []*field{
			text("model", "model", "Equations of free flight: a rigid body up to the first canopy, or a point mass.", model),
			num("misalignment", "misalignment", 0.05, 0.25,
				"Angle of the thrust's line to the centreline, in the plane of the rail's tilt.").byDefault("0 deg"),
			num("offset", "offset", 0.1, 1,
				"How far the nozzle's centre is off the centreline, in the same plane.").byDefault("0 mm"),
		},
	}
}

// giveShape makes a rocket have a shape, as wide as its body.
func giveShape(r *rocket.Rocket) {
	if r.Shape == nil {
		r.Shape = &airframe.Shape{Diameter: r.Body.Diameter}
	}
}

// dry is a number of the body without its drive, where it is known.
func dry(of func(airframe.Lump) float64) func(place) float64 {
	return func(p place) float64 {
		if r := p.rocket; r.Balanced() && r.BodyMass() > 0 {
			return ifFinite(of(r.DryBody()))
		}
		return 0
	}
}

// shapeDrag is the drag coefficient that the shape gives at 50 m/s in the air of
// the site, rounded to what it is worth; 0 without a sound shape.
func shapeDrag(p place) float64 {
	s := p.rocket.Shape
	if s == nil || len(s.Check()) > 0 {
		return 0
	}
	column := p.rocket.Site.Column()
	air := column.Air(0)
	drag, _ := s.Drag(airframe.Flow{Speed: 50, Density: air.Density, SoundSpeed: air.SoundSpeed, Viscosity: air.Viscosity()}, 0)
	return ifFinite(math.Round(drag*1e3) / 1e3)
}

func ifFinite(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

// nozzleAt is where the nozzle's exit is, m from the tip of the nose.
func nozzleAt(p place) float64 {
	if w := p.rocket.Water; w != nil && w.Nozzle != 0 {
		return w.Nozzle
	}
	return aftEnd(p)
}

// motorMiddle is where the middle of the motor is, m from the tip of the nose.
func motorMiddle(p place) float64 {
	aft := aftEnd(p)
	if p.rocket.Motor.Position != 0 {
		aft = p.rocket.Motor.Position
	}
	return aft - p.rocket.Motor.Length/2
}

// aftEnd is the body's length, m.
func aftEnd(p place) float64 {
	if p.rocket.Shape == nil {
		return 0
	}
	return p.rocket.Shape.Length
}
