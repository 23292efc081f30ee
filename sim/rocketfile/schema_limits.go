package rocketfile

import (
	"ullage/sim/rocket"
)

// limitsSection replaces the limits that a flight is judged by.
func limitsSection() *section {
	limit := func(key, label string, step, coarse float64, help string) *field {
		inForce := func(p place) float64 {
			standing := rocket.Rocket{Limits: p.rocket.Limits.InForce()}
			return *rocket.NumberNamed("limits."+key).At(&standing, 0)
		}
		return num(key, label, step, coarse, help).otherwise(inForce)
	}
	return &section{
		path: "limits", group: "limits", loose: true, apart: true, count: one,
		fields: []*field{
			limit("rail_exit", "rail exit", 0.5, 5,
				"Least rail exit speed."),
			limit("rail_exit_wind", "exit/wind", 0.5, 1,
				"Least of that speed over the wind."),
			limit("thrust_to_weight", "thrust/wt", 0.5, 1,
				"Least thrust/weight at rail exit."),
			limit("margin_least", "margin min", 0.1, 0.5,
				"Least stability margin, calibres."),
			limit("margin_most", "margin max", 0.1, 0.5,
				"Greatest stability margin, calibres."),
			limit("margin_at_angle", "margin angle", 0.1, 0.5,
				"Least margin at the angle of rail exit, calibres."),
			limit("attack", "attack", 1, 5,
				"Greatest angle of attack at rail exit."),
			limit("attack_most", "attack max", 1, 5,
				"Greatest angle of attack from there to the top, while it is as fast as it left the rail."),
			limit("flutter", "flutter", 0.05, 0.1,
				"Greatest speed over the fins' flutter speed."),
			limit("tilt", "tilt", 1, 5,
				"Greatest tilt of the rail from vertical."),
			limit("wind", "wind", 0.5, 5,
				"Greatest wind to fly in."),
			limit("impulse", "impulse", 10, 100,
				"Greatest impulse of a motor; class I ends at 640 N*s."),
			limit("opening", "opening", 0.5, 5,
				"Greatest airspeed as a canopy opens."),
			limit("mount_factor", "mount factor", 0.1, 0.5,
				"Least strength of the recovery mount over the opening load."),
			limit("landing", "landing", 0.5, 5,
				"Greatest vertical speed of landing."),
			limit("energy", "energy", 5, 50,
				"Greatest energy of the whole rocket at landing."),
			limit("proof_factor", "proof factor", 0.1, 0.5,
				"Least proof pressure on record over the pressure to fly at."),
			limit("proof_cycles", "proof cycles", 1, 10,
				"For how many pressurisations a proof holds, where a logbook counts them."),
			limit("proof_days", "proof days", 30, 365,
				"For how many days a proof holds."),
		},
	}
}

// fieldSection is the flying field.
func fieldSection() *section {
	return &section{
		path: "field", group: "field", loose: true, apart: true, count: one,
		fields: []*field{
			num("ceiling", "ceiling", 10, 100,
				"Greatest height above the pad that the field is cleared for."),
			num("radius", "radius", 10, 100,
				"Greatest distance from the pad at which a landing is still on the field."),
			num("clear", "clear", 5, 50,
				"Least distance of people from the pad by the field's own rule, beside that of US codes; the greater one rules."),
			text("boundary", "boundary", "The field's outline around the pad of [site]: one polygon in a GeoJSON file, named relative to this one.",
				&textCodec{at: func(p place) *string { return &p.rocket.Field.Outline }, check: aFileName, path: true}),
		},
	}
}

// flyerSection is who flies, for the card.
func flyerSection() *section {
	return &section{
		path: "flyer", group: "flyer", loose: true, apart: true, count: one,
		fields: []*field{
			text("name", "name", "Who flies, for the card.",
				&textCodec{at: func(p place) *string { return &p.rocket.Flyer.Name }, check: aTitle}),
			text("certification", "certified", "Number and level of the flyer's certification, for the card.",
				&textCodec{at: func(p place) *string { return &p.rocket.Flyer.Certification }, check: aTitle}),
		},
	}
}
