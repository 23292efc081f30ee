package rocketfile

import "ullage/sim/rocket"

// holeSection is what is drilled into the body or sits on it, for drawings.
func holeSection() *section {
	item := func(p place) *rocket.Hole {
		if p.item >= len(p.rocket.Holes) {
			return nil
		}
		return &p.rocket.Holes[p.item]
	}
	title := of[rocket.Hole, string](item)(func(h *rocket.Hole) *string { return &h.Name })
	return &section{
		path: "hole", group: "hole", about: "A hole, a rail button or a lug of the body, for drawings.", apart: true, many: true, most: 32, title: title,
		count: func(r *rocket.Rocket) int { return len(r.Holes) },
		make:  func(r *rocket.Rocket) { r.Holes = append(r.Holes, rocket.Hole{}) },
		fields: []*field{
			text("name", "name", "What the hole, button or lug is called in dotted names.", &textCodec{at: title, check: aName("a hole", "rail-button")}),
			num("position", "position", 1, 10,
				"Of its middle from the tip of the nose.").required(always, `"900 mm"`),
			num("diameter", "diameter", 0.5, 1,
				"To drill; the width of what has a length.").required(always, `"5 mm"`),
			num("length", "length", 1, 10,
				"Along the axis, of a slot or of a lug that sits there; round when not given."),
			num("count", "count", 1, 1, "How many, evenly around the body.").
				otherwise(func(p place) float64 { return float64(item(p).Number()) }),
			num("angle", "angle", 1, 15,
				"Of the first, around from the first fin, clockwise seen from behind; 180 deg / count of fins is between two fins.").byDefault("0 deg"),
		},
	}
}
