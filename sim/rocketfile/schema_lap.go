package rocketfile

import (
	"ullage/sim/chamber"
	"ullage/sim/rocket"
)

// adhesiveSection is what the laps of the closures are bonded with.
func adhesiveSection() *section {
	there := func(r *rocket.Rocket) bool { return r.Chamber != nil && r.Chamber.Adhesive != nil }
	usual := func(v float64) func(place) float64 { return func(place) float64 { return v } }
	return &section{
		path: "chamber.adhesive", group: "adhesive", about: "What the laps of the closures are bonded with.", apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Adhesive = &chamber.Adhesive{}
		},
		drop: func(r *rocket.Rocket) { r.Chamber.Adhesive = nil },
		fields: []*field{
			num("glue_line", "glue line", 0.05, 0.1,
				"Thickness of the adhesive in a lap.").otherwise(usual(chamber.TypicalGlueLine)),
			num("strength", "strength", 1, 10,
				"Shear strength of the adhesive itself, where it yields.").otherwise(usual(chamber.TypicalGlueYield)),
			num("elastic_strain", "elastic", 0.1, 1,
				"Shear strain of the adhesive up to where it yields.").otherwise(usual(chamber.TypicalGlueElastic)),
			num("plastic_strain", "plastic", 1, 5,
				"Shear strain beyond that up to failure: near nothing of a brittle one, 10 % and more of a toughened one (typical, from memory).").otherwise(usual(chamber.TypicalGluePlastic)),
		},
	}
}

// bossSection is what the nozzle's retainer is screwed into.
func bossSection() *section {
	there := func(r *rocket.Rocket) bool { return r.Chamber != nil && r.Chamber.Boss != nil }
	return &section{
		path: "chamber.boss", group: "boss", about: "What the nozzle's retainer is screwed into.", apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Boss = &chamber.Boss{}
		},
		drop: func(r *rocket.Rocket) { r.Chamber.Boss = nil },
		fields: []*field{
			num("diameter", "diameter", 1, 5,
				"Of the face by which the nozzle's boss is bonded into the aft closure.").required(there, `"44 mm"`),
			num("length", "length", 1, 5,
				"Of that face along the axis.").required(there, `"15 mm"`),
			num("bond_strength", "bond", 1, 10,
				"Shear strength of that bond; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalBond }),
		},
	}
}
