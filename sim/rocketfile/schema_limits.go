package rocketfile

import (
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// limitsSection replaces the limits that a flight is judged by.
func limitsSection() *section {
	row := func(key, label string, is scale, at func(*rocket.Limits) *float64, help string) *field {
		return optional(key, label, is, func(p place) *float64 { return at(&p.rocket.Limits) }, 0, help).
			otherwise(func(p place) float64 {
				inForce := p.rocket.Limits.InForce()
				return *at(&inForce)
			})
	}
	speed := func(min float64) scale { return measured(quantity.Speed, "m/s", min, 1000, 0.5, 5) }
	return &section{
		path: "limits", group: "limits", apart: true, count: one,
		fields: []*field{
			row("rail_exit", "rail exit", speed(0.1), func(l *rocket.Limits) *float64 { return &l.RailExit },
				"Least speed as the rail ends."),
			row("rail_exit_wind", "exit/wind", number(0.1, 100, 0.5, 1), func(l *rocket.Limits) *float64 { return &l.RailExitWind },
				"Least of that speed over the wind."),
			row("thrust_to_weight", "thrust/wt", number(0.1, 100, 0.5, 1), func(l *rocket.Limits) *float64 { return &l.ThrustToWeight },
				"Least thrust over weight as the rail ends."),
			row("margin_least", "margin min", number(0.01, 50, 0.1, 0.5), func(l *rocket.Limits) *float64 { return &l.MarginLeast },
				"Least stability margin, calibres."),
			row("margin_most", "margin max", number(0.01, 50, 0.1, 0.5), func(l *rocket.Limits) *float64 { return &l.MarginMost },
				"Greatest stability margin, calibres."),
			row("attack", "attack", degrees(0.1, 90, 1, 5), func(l *rocket.Limits) *float64 { return &l.Attack },
				"Greatest angle of attack at rail exit."),
			row("tilt", "tilt", degrees(0.1, 80, 1, 5), func(l *rocket.Limits) *float64 { return &l.Tilt },
				"Greatest tilt of the rail from vertical."),
			row("wind", "wind", speed(0.1), func(l *rocket.Limits) *float64 { return &l.Wind },
				"Greatest wind to fly in."),
			row("impulse", "impulse", measured(quantity.Impulse, "N*s", 0.1, 1e6, 10, 100), func(l *rocket.Limits) *float64 { return &l.Impulse },
				"Greatest impulse of a motor; class I ends at 640 N*s."),
			row("opening", "opening", speed(0.1), func(l *rocket.Limits) *float64 { return &l.Opening },
				"Greatest airspeed as a canopy opens."),
			row("mount_factor", "mount factor", number(0.1, 100, 0.1, 0.5), func(l *rocket.Limits) *float64 { return &l.MountFactor },
				"Least strength of the recovery mount over the opening load."),
			row("landing", "landing", speed(0.1), func(l *rocket.Limits) *float64 { return &l.Landing },
				"Greatest vertical speed of landing."),
			row("energy", "energy", measured(quantity.Energy, "J", 0.01, 1e7, 5, 50), func(l *rocket.Limits) *float64 { return &l.Energy },
				"Greatest energy of the whole rocket at landing."),
			row("proof_factor", "proof factor", number(1.25, 10, 0.1, 0.5), func(l *rocket.Limits) *float64 { return &l.ProofFactor },
				"Least proof pressure on record over the pressure to fly at."),
			row("proof_days", "proof days", number(1, 36500, 30, 365), func(l *rocket.Limits) *float64 { return &l.ProofDays },
				"For how many days a proof holds."),
		},
	}
}

// fieldSection is the flying field.
func fieldSection() *section {
	at := of[rocket.Field, float64](func(p place) *rocket.Field { return &p.rocket.Field })
	return &section{
		path: "field", group: "field", apart: true, count: one,
		fields: []*field{
			optional("ceiling", "ceiling", metres(1, 100e3, 10, 100), at(func(f *rocket.Field) *float64 { return &f.Ceiling }), 0,
				"Greatest height above the pad that the field is cleared for."),
			optional("radius", "radius", metres(1, 100e3, 10, 100), at(func(f *rocket.Field) *float64 { return &f.Radius }), 0,
				"Greatest distance from the pad at which a landing is still on the field."),
		},
	}
}
