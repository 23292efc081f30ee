package rocketfile

import (
	"time"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// vessel is where the chamber's rows reach.
func vessel(p place) *chamber.Chamber { return p.rocket.Chamber }

func hasChamber(r *rocket.Rocket) bool { return r.Chamber != nil }

func giveChamber(r *rocket.Rocket) {
	if r.Chamber == nil {
		r.Chamber = &chamber.Chamber{}
	}
}

// inVessel is a number of the chamber with all that the rest of the rocket says of it.
func inVessel(of func(*chamber.Chamber) float64) func(place) float64 {
	return func(p place) float64 { return ifFinite(of(p.rocket.Vessel())) }
}

// stress is a scale for the strength of a material.
func stress(max float64) scale {
	return measured(quantity.Pressure, "MPa", 0.01*megapascal, max*megapascal, 1*megapascal, 10*megapascal)
}

// gauge is a scale for a pressure that a chamber was tested to.
func gauge() scale {
	return measured(quantity.Pressure, "bar", 0.01*bar, 1000*bar, 0.5*bar, 5*bar)
}

func chamberSection() *section {
	at := of[chamber.Chamber, float64](vessel)
	return &section{
		path: "chamber", group: "chamber", apart: true,
		count: func(r *rocket.Rocket) int { return counted(hasChamber(r)) },
		make:  giveChamber,
		fields: []*field{
			text("material", "material", "What the wall is made of; all strengths but your own are typical, unverified.",
				choose(of[chamber.Chamber, chamber.Material](vessel)(func(c *chamber.Chamber) *chamber.Material { return &c.Material }), chamber.Materials()...)).
				required(hasChamber, `"E-glass/epoxy"`),
			optional("diameter", "diameter", millimetres(1, 2000, 0.5, 5), at(func(c *chamber.Chamber) *float64 { return &c.Diameter }), 0,
				"Inside diameter; water.bore when not given.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Diameter })),
			optional("length", "length", millimetres(1, 20e3, 1, 10), at(func(c *chamber.Chamber) *float64 { return &c.Length }), 0,
				"Of the tube between the closures, their laps left out; from water.volume when not given.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Length })),
			optional("wall", "wall", millimetres(0.01, 500, 0.05, 0.5), at(func(c *chamber.Chamber) *float64 { return &c.Wall }), 0,
				"Thickness of the tube as measured; the sum of the plies when not given.").
				otherwise(inVessel((*chamber.Chamber).WallThickness)),
			optional("fibre_fraction", "fibre frac", percent(1, 100, 1, 5), at(func(c *chamber.Chamber) *float64 { return &c.FibreFraction }), 0,
				"Fibres in the laminate by volume; hand lay-up reaches 0.30 to 0.40.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Material.FibreFraction() })),
			num("waste", "waste", percent(0, 300, 5, 20), at(func(c *chamber.Chamber) *float64 { return &c.Waste }),
				"Cloth and resin to buy beyond what stays in the tube.").byDefault("0.15"),
			optional("hoop_strength", "hoop streng", stress(10e3), at(func(c *chamber.Chamber) *float64 { return &c.Around }), 0,
				"Tensile strength of the wall around the tube, from your own coupons or bursts."),
			optional("axial_strength", "axial streng", stress(10e3), at(func(c *chamber.Chamber) *float64 { return &c.Along }), 0,
				"Tensile strength of the wall along the tube, from your own coupons or bursts."),
			optional("density", "density", measured(quantity.Density, "kg/m3", 100, 20e3, 10, 100), at(func(c *chamber.Chamber) *float64 { return &c.Density }), 0,
				"Of the wall; the material's when not given.").
				otherwise(inVessel((*chamber.Chamber).WallDensity)),
			optional("modulus", "modulus", measured(quantity.Pressure, "GPa", 0.01*gigapascal, 1000*gigapascal, 0.5*gigapascal, 5*gigapascal), at(func(c *chamber.Chamber) *float64 { return &c.Modulus }), 0,
				"Of the wall, for its dilation; the material's when not given."),
			optional("temperature", "wall temp", celsius(-60, 300), at(func(c *chamber.Chamber) *float64 { return &c.Temperature }), 0,
				"The warmest the wall gets under pressure, as in the sun; that of air or gas when not given. Room-cured epoxy softens from 45 degC.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Temperature })),
			optional("heat_factor", "heat factor", number(0.01, 1, 0.05, 0.1), at(func(c *chamber.Chamber) *float64 { return &c.HeatFactor }), 0,
				"Share of the strength left at that temperature; estimated when not given.").
				otherwise(inVessel((*chamber.Chamber).HeatFactorInForce)),
			text("cycles", "cycles", "How many times the chamber has been under pressure.",
				&wholeCodec{numberCodec{is: number(0, 1e6, 1, 10)}, of[chamber.Chamber, int](vessel)(func(c *chamber.Chamber) *int { return &c.Cycles })}).
				byDefault("0"),
			optional("cycle_factor", "cycle factor", number(0.01, 1, 0.05, 0.1), at(func(c *chamber.Chamber) *float64 { return &c.CycleFactor }), 0,
				"Share of the strength left after those; estimated when not given.").
				otherwise(inVessel((*chamber.Chamber).CycleFactorInForce)),
			optional("burst", "burst", gauge(), at(func(c *chamber.Chamber) *float64 { return &c.Burst }), 0,
				"Measured on a chamber made alike; it outranks every estimate."),
			optional("proof", "proof", gauge(), at(func(c *chamber.Chamber) *float64 { return &c.Proof }), 0,
				"To which this chamber was proved with water; leave it out until it was."),
			text("proof_date", "proved on", "The day of that proof, as in 2026-05-01.",
				&textCodec{at: of[chamber.Chamber, string](vessel)(func(c *chamber.Chamber) *string { return &c.ProofDate }), check: aDate}),
		},
	}
}

// aDate accepts a calendar day (ISO 8601).
func aDate(text string) *fault.Fault {
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		return flaw("not a day of the calendar", "write year, month and day, as in 2026-05-01")
	}
	return nil
}

func plySection() *section {
	item := func(p place) *chamber.Ply {
		if p.rocket.Chamber == nil || p.item >= len(p.rocket.Chamber.Plies) {
			return nil
		}
		return &p.rocket.Chamber.Plies[p.item]
	}
	at := of[chamber.Ply, float64](item)
	title := of[chamber.Ply, string](item)(func(x *chamber.Ply) *string { return &x.Name })
	return &section{
		path: "chamber.ply", group: "ply", apart: true, many: true, most: 32, title: title,
		count: func(r *rocket.Rocket) int {
			if r.Chamber == nil {
				return 0
			}
			return len(r.Chamber.Plies)
		},
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Plies = append(r.Chamber.Plies, chamber.Ply{})
		},
		fields: []*field{
			text("name", "name", "What the cloth is called in dotted names.", &textCodec{at: title, check: aName("a ply", "hoop")}),
			num("cloth", "cloth", measured(quantity.ArealDensity, "g/m2", 1*gram, 5, 5*gram, 50*gram), at(func(x *chamber.Ply) *float64 { return &x.Cloth }),
				"Areal mass of one layer of the dry cloth.").required(always, `"200 g/m2"`),
			text("count", "layers", "How many layers of it.",
				&wholeCodec{numberCodec{is: number(1, 200, 1, 2)}, of[chamber.Ply, int](item)(func(x *chamber.Ply) *int { return &x.Count })}).
				required(always, "4"),
			text("weave", "weave", "Half of a woven cloth's fibres stand across its direction; a braid's lie to both sides of the axis.",
				choose(of[chamber.Ply, chamber.Weave](item)(func(x *chamber.Ply) *chamber.Weave { return &x.Weave }), chamber.Woven, chamber.Braided, chamber.Unidirectional)).
				byDefault("woven"),
			num("direction", "direction", degrees(0, 90, 1, 15), at(func(x *chamber.Ply) *float64 { return &x.Direction }),
				"Of the warp, or the fibres, from the axis of the tube.").byDefault("0 deg"),
		},
	}
}

// closureSection is one end of the chamber.
func closureSection(path, group string, end func(*chamber.Chamber) **chamber.Closure) *section {
	closure := func(p place) *chamber.Closure {
		if p.rocket.Chamber == nil {
			return nil
		}
		return *end(p.rocket.Chamber)
	}
	at := of[chamber.Closure, float64](closure)
	there := func(r *rocket.Rocket) bool { return closure(place{rocket: r}) != nil }
	conical := func(r *rocket.Rocket) bool { return there(r) && closure(place{rocket: r}).Shape == chamber.Cone }
	return &section{
		path: path, group: group, apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			*end(r.Chamber) = &chamber.Closure{}
		},
		drop: func(r *rocket.Rocket) { *end(r.Chamber) = nil },
		fields: []*field{
			text("shape", "shape", "Of the closure; an ellipsoid is half as deep as its radius.",
				choose(of[chamber.Closure, chamber.ClosureShape](closure)(func(c *chamber.Closure) *chamber.ClosureShape { return &c.Shape }),
					chamber.Hemisphere, chamber.Ellipsoid, chamber.Cone, chamber.Flat)).required(there, `"ellipsoid"`),
			num("overlap", "overlap", millimetres(0, 2000, 1, 10), at(func(c *chamber.Closure) *float64 { return &c.Overlap }),
				"Length of the lap that is bonded into the tube.").required(there, `"30 mm"`),
			optional("bond_strength", "bond", stress(200), at(func(c *chamber.Closure) *float64 { return &c.BondStrength }), 0,
				"Shear strength of the adhesive as you prepare it; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalBond }),
			optional("wall", "wall", millimetres(0.01, 500, 0.05, 0.5), at(func(c *chamber.Closure) *float64 { return &c.Wall }), 0,
				"Thickness of the closure; the tube's when not given.").
				otherwise(inVessel((*chamber.Chamber).WallThickness)),
			optional("strength", "strength", stress(10e3), at(func(c *chamber.Closure) *float64 { return &c.Strength }), 0,
				"Tensile strength of the closure's wall; that of its material as cloth lying both ways when not given."),
			num("half_angle", "half angle", degrees(1, 85, 1, 5), at(func(c *chamber.Closure) *float64 { return &c.HalfAngle }),
				"Of a cone, from the axis to its side.").byDefault("30 deg").onlyFor(conical),
		},
	}
}

func forwardSection() *section {
	return closureSection("chamber.forward", "forward closure", func(c *chamber.Chamber) **chamber.Closure { return &c.Forward })
}

func aftSection() *section {
	return closureSection("chamber.aft", "aft closure", func(c *chamber.Chamber) **chamber.Closure { return &c.Aft })
}

func threadSection() *section {
	thread := func(p place) *chamber.Thread {
		if p.rocket.Chamber == nil {
			return nil
		}
		return p.rocket.Chamber.Thread
	}
	at := of[chamber.Thread, float64](thread)
	there := func(r *rocket.Rocket) bool { return thread(place{rocket: r}) != nil }
	return &section{
		path: "chamber.thread", group: "thread", apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Thread = &chamber.Thread{}
		},
		drop: func(r *rocket.Rocket) { r.Chamber.Thread = nil },
		fields: []*field{
			num("diameter", "diameter", millimetres(1, 1000, 1, 5), at(func(t *chamber.Thread) *float64 { return &t.Diameter }),
				"Major diameter of the thread that holds the nozzle or its adapter.").required(there, `"40 mm"`),
			num("pitch", "pitch", millimetres(0.1, 50, 0.25, 1), at(func(t *chamber.Thread) *float64 { return &t.Pitch }),
				"From one turn of the thread to the next.").required(there, `"2 mm"`),
			num("engaged", "engaged", millimetres(0.1, 500, 0.5, 5), at(func(t *chamber.Thread) *float64 { return &t.Engaged }),
				"Length of thread in engagement.").required(there, `"12 mm"`),
			optional("strength", "strength", stress(5e3), at(func(t *chamber.Thread) *float64 { return &t.Strength }), 0,
				"Tensile strength of the male part; a typical one of aluminium when not given.").
				otherwise(func(place) float64 { return chamber.TypicalThread }),
			optional("female_strength", "female", stress(5e3), at(func(t *chamber.Thread) *float64 { return &t.Female }), 0,
				"Tensile strength of the female part; the male part's when not given.").
				otherwise(func(p place) float64 {
					if v := thread(p).Strength; v != 0 {
						return v
					}
					return chamber.TypicalThread
				}),
			optional("seal", "seal", millimetres(0.1, 2000, 1, 5), at(func(t *chamber.Thread) *float64 { return &t.Seal }), 0,
				"Diameter that the pressure acts on; the thread's when not given.").
				otherwise(func(p place) float64 { return thread(p).Diameter }),
			optional("hole", "hole", millimetres(0.1, 2000, 1, 5), at(func(t *chamber.Thread) *float64 { return &t.Hole }), 0,
				"Through the male part; the throat when not given.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Thread.Hole })),
		},
	}
}

func heatingSection() *section {
	heating := func(p place) *chamber.Heating {
		if p.rocket.Chamber == nil {
			return nil
		}
		return p.rocket.Chamber.Heating
	}
	at := of[chamber.Heating, float64](heating)
	there := func(r *rocket.Rocket) bool { return heating(place{rocket: r}) != nil }
	return &section{
		path: "chamber.heating", group: "heating", apart: true, drive: rocket.MotorPower,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Heating = &chamber.Heating{}
		},
		drop: func(r *rocket.Rocket) { r.Chamber.Heating = nil },
		fields: []*field{
			num("temperature", "hot", celsius(0, 300), at(func(h *chamber.Heating) *float64 { return &h.Temperature }),
				"That the air of the sealed chamber reaches beside the motor.").required(there, `"80 degC"`),
			num("time", "in", measured(quantity.Time, "s", 0.01, 3600, 1, 10), at(func(h *chamber.Heating) *float64 { return &h.Time }),
				"In which it gets there.").required(there, `"20 s"`),
			num("rise", "rise", measured(quantity.Pressure, "bar", 1e-4*bar, 0.2*bar, 0.01*bar, 0.05*bar), at(func(h *chamber.Heating) *float64 { return &h.Rise }),
				"Of pressure that a vent is to allow.").byDefault("0.05 bar"),
		},
	}
}

func recoverySection() *section {
	mount := func(p place) *chamber.Mount { return p.rocket.Recovery }
	at := of[chamber.Mount, float64](mount)
	there := func(r *rocket.Rocket) bool { return r.Recovery != nil }
	return &section{
		path: "recovery", group: "recovery", apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make:  func(r *rocket.Rocket) { r.Recovery = &chamber.Mount{} },
		drop:  func(r *rocket.Rocket) { r.Recovery = nil },
		fields: []*field{
			optional("pin", "pin", millimetres(0.1, 100, 0.5, 1), at(func(m *chamber.Mount) *float64 { return &m.Pin }), 0,
				"Diameter of the cross pin that takes the recovery line."),
			optional("pin_strength", "pin shear", stress(5e3), at(func(m *chamber.Mount) *float64 { return &m.PinStrength }), 0,
				"Shear strength of the pin; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalPin }),
			text("planes", "planes", "In how many planes the pin is sheared.",
				&wholeCodec{numberCodec{is: number(1, 2, 1, 1)}, of[chamber.Mount, int](mount)(func(m *chamber.Mount) *int { return &m.Planes })}).
				byDefault("2"),
			optional("bond_area", "bond area", measured(quantity.Area, "cm2", 1e-6, 1, 0.5e-4, 5e-4), at(func(m *chamber.Mount) *float64 { return &m.BondArea }), 0,
				"By which the mount is bonded to the airframe."),
			optional("bond_strength", "bond", stress(200), at(func(m *chamber.Mount) *float64 { return &m.Bond }), 0,
				"Shear strength of that bond; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalBond }),
			optional("line", "line", measured(quantity.Force, "N", 1, 1e6, 50, 500), at(func(m *chamber.Mount) *float64 { return &m.Line }), 0,
				"Breaking strength of the recovery line as rigged: a knot takes up to half."),
			optional("line_length", "line length", metres(0.01, 100, 0.1, 1), at(func(m *chamber.Mount) *float64 { return &m.LineLength }), 0,
				"Of the recovery line, for the snatch."),
			optional("line_stretch", "stretch", percent(0.1, 500, 1, 5), at(func(m *chamber.Mount) *float64 { return &m.LineStretch }), 0,
				"Of the line at its breaking strength; a braided polyester one's when not given.").
				otherwise(func(place) float64 { return chamber.TypicalStretch }),
			optional("canopy_mass", "canopy mass", grams(50e3, 5, 50), at(func(m *chamber.Mount) *float64 { return &m.CanopyMass }), 0,
				"At the end of the line, for the snatch."),
		},
	}
}
