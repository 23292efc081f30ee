package rocketfile

import (
	"ullage/sim/layup"
	"ullage/sim/rocket"
)

// layupSection is how the chamber is laid up, and what its parts weighed.
func layupSection() *section {
	practice := func(p place) *layup.Practice { return &p.rocket.Layup }
	usual := func(of func(*layup.Practice) float64) func(place) float64 {
		return func(p place) float64 {
			f := p.rocket.Layup.InForce()
			return of(&f)
		}
	}
	return &section{
		path: "layup", group: "lay-up", about: "How the chamber is laid up, and what its parts weighed.", loose: true, apart: true, count: one,
		quiet: func(r *rocket.Rocket) bool { return r.Chamber == nil || len(r.Chamber.Plies) == 0 },
		fields: []*field{
			num("hardener", "hardener", 1, 5,
				"Over resin by weight, from the data sheet: 40 % is 100 to 40; no ratio is usual."),
			num("pot_life", "pot life", 1, 5,
				"Of the mixed resin, at the workshop's temperature, from the data sheet."),
			num("pot", "pot", 5, 20,
				"The most resin you mix at once and use up within its pot life; 100 g when not given (common practice).").
				otherwise(usual(func(p *layup.Practice) float64 { return p.Pot })),
			text("wrap", "wrap", "How a ply of several layers goes around: in one roll, or layer by layer.",
				choose(of[layup.Practice, layup.Wrap](practice)(func(p *layup.Practice) *layup.Wrap { return &p.Wrap }), layup.OneRoll, layup.LayerByLayer)).
				byDefault(string(layup.OneRoll)),
			text("peel_ply", "peel ply", "Where peel ply is laid: outside, or none.",
				choose(of[layup.Practice, layup.Peel](practice)(func(p *layup.Practice) *layup.Peel { return &p.Peel }), layup.PeelOutside, layup.NoPeel)).
				byDefault(string(layup.PeelOutside)),
			num("trim", "trim", 1, 5,
				"Laid beyond every open edge and cut off once cured; 10 mm when not given (common practice).").
				otherwise(usual(func(p *layup.Practice) float64 { return p.Trim })),
			num("overlap", "overlap", 1, 5,
				"Of a ply on itself and of gores on each other; 10 mm when not given (common practice).").
				otherwise(usual(func(p *layup.Practice) float64 { return p.Overlap })),
			num("cloth_width", "cloth width", 10, 100,
				"Of the rolls of cloth; 1 m when not given (common practice).").
				otherwise(usual(func(p *layup.Practice) float64 { return p.ClothWidth })),
			num("closure_cloth", "closure clth", 5, 50,
				"Areal mass of the cloth of closures and patches; the tube's first woven ply when not given.").
				otherwise(func(p place) float64 {
					if p.rocket.Chamber == nil {
						return 0
					}
					return p.rocket.Layup.ClosureClothInForce(p.rocket.Chamber)
				}),
			num("forward_layers", "fwd layers", 1, 2,
				"Layers of that cloth in the forward closure; 0 counts them from its wall.").byDefault("0"),
			num("aft_layers", "aft layers", 1, 2,
				"Layers of that cloth in the aft closure; 0 counts them from its wall.").byDefault("0"),
			num("mount_layers", "mount layers", 1, 2,
				"Layers of that cloth over the bond of the recovery mount.").byDefault("0"),
			num("tube", "tube weighs", 1, 10,
				"The finished tube on the scales, trimmed and bare; leave it out until it is."),
			num("forward", "forward wt", 1, 10,
				"The finished forward closure on the scales, trimmed and bare."),
			num("aft", "aft wt", 1, 10,
				"The finished aft closure on the scales, trimmed and bare, its boss not in it."),
		},
	}
}
