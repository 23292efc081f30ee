package rocketfile

import (
	"time"

	"ullage/sim/chamber"
	"ullage/sim/fault"
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

func chamberSection() *section {
	return &section{
		path: "chamber", group: "chamber", about: "The pressure chamber: its wall, strength and proof.", apart: true,
		count: func(r *rocket.Rocket) int { return counted(hasChamber(r)) },
		make:  giveChamber,
		fields: []*field{
			text("material", "material", "What the wall is made of; all strengths but your own are typical, unverified.",
				choose(of[chamber.Chamber, chamber.Material](vessel)(func(c *chamber.Chamber) *chamber.Material { return &c.Material }), chamber.Materials()...)).
				required(hasChamber, `"E-glass/epoxy"`),
			num("diameter", "diameter", 0.5, 5,
				"Inside diameter; water.bore when not given.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Diameter })),
			num("length", "length", 1, 10,
				"Of the tube between the closures, their laps left out; from water.volume when not given.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Length })),
			num("wall", "wall", 0.05, 0.5,
				"Thickness of the tube as measured; the sum of the plies when not given.").
				otherwise(inVessel((*chamber.Chamber).WallThickness)),
			num("fibre_fraction", "fibre frac", 1, 5,
				"Fibres in the laminate by volume; hand lay-up reaches 0.30 to 0.40.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Material.FibreFraction() })),
			text("liner", "liner", "What keeps water from a laid-up wall, which weeps as it is strained: none, or lined.",
				choose(of[chamber.Chamber, chamber.Lining](vessel)(func(c *chamber.Chamber) *chamber.Lining { return &c.Liner }), chamber.Unlined, chamber.Lined)),
			text("beside_motor", "by motor", "Whether it is closed while the motor burns: sealed, or open, as one is with a vent that ullage proof works out.",
				choose(of[chamber.Chamber, chamber.Closing](vessel)(func(c *chamber.Chamber) *chamber.Closing { return &c.BesideMotor }), chamber.Sealed, chamber.Open)).
				forDrive(rocket.MotorPower),
			num("waste", "waste", 5, 20,
				"Cloth and resin to buy beyond what stays in the tube.").byDefault("0.15"),
			num("hoop_strength", "hoop streng", 1, 10,
				"Tensile strength of the wall around the tube, from your own coupons or bursts."),
			num("axial_strength", "axial streng", 1, 10,
				"Tensile strength of the wall along the tube, from your own coupons or bursts."),
			num("density", "density", 10, 100,
				"Of the wall; the material's when not given.").
				otherwise(inVessel((*chamber.Chamber).WallDensity)),
			num("modulus", "modulus", 0.5, 5,
				"Of the wall, for its dilation; the material's when not given."),
			num("temperature", "wall temp", 1, 5,
				"The warmest the wall gets under pressure, as in the sun; that of air or gas when not given. Room-cured epoxy softens from 45 degC.").
				otherwise(inVessel(func(c *chamber.Chamber) float64 { return c.Temperature })),
			num("heat_factor", "heat factor", 0.05, 0.1,
				"Share of the strength left at that temperature; estimated when not given.").
				otherwise(inVessel((*chamber.Chamber).HeatFactorInForce)),
			cycles("How many times the chamber has been under pressure; 0 says never."),
			num("cycle_factor", "cycle factor", 0.05, 0.1,
				"Share of the strength left after those; estimated when not given.").
				otherwise(inVessel((*chamber.Chamber).CycleFactorInForce)),
			text("burst", "burst", "At which one made alike burst, filled with water; or that the estimate counts, where all strengths are given from specimens of your own. Not judged without.",
				numberOr(&numberCodec{step: 0.5, coarse: 5},
					choose(of[chamber.Chamber, chamber.Word](vessel)(func(c *chamber.Chamber) *chamber.Word { return &c.BurstWord }), chamber.Estimated))),
			num("proof", "proof", 0.5, 5,
				"To which this chamber was proved with water; leave it out until it was."),
			text("proof_date", "proved on", "The day of that proof, as in 2026-05-01.",
				&textCodec{at: of[chamber.Chamber, string](vessel)(func(c *chamber.Chamber) *string { return &c.ProofDate }), check: aDate}),
			text("serial", "serial", "Of this chamber, by which its logbook knows it; without one all entries count.",
				&textCodec{at: of[chamber.Chamber, string](vessel)(func(c *chamber.Chamber) *string { return &c.Serial }), check: aTitle}),
			text("logbook", "logbook", "The file that ullage record writes, from which cycles and proof are counted; the worse of the two counts.",
				&textCodec{at: of[chamber.Chamber, string](vessel)(func(c *chamber.Chamber) *string { return &c.Logbook }), check: aFileName, path: true}),
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
	title := of[chamber.Ply, string](item)(func(x *chamber.Ply) *string { return &x.Name })
	return &section{
		path: "chamber.ply", group: "ply", about: "A cloth of the wall and how many layers of it.", apart: true, many: true, most: 32, title: title,
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
			num("cloth", "cloth", 5, 50,
				"Areal mass of one layer of the dry cloth.").required(always, `"200 g/m2"`),
			num("count", "layers", 1, 2, "How many layers of it.").
				required(always, "4"),
			text("weave", "weave", "Half of a woven cloth's fibres stand across its direction; a braid's lie to both sides of the axis.",
				choose(of[chamber.Ply, chamber.Weave](item)(func(x *chamber.Ply) *chamber.Weave { return &x.Weave }), chamber.Woven, chamber.Braided, chamber.Unidirectional)).
				byDefault("woven"),
			num("direction", "direction", 1, 15,
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
	there := func(r *rocket.Rocket) bool { return closure(place{rocket: r}) != nil }
	conical := func(r *rocket.Rocket) bool { return there(r) && closure(place{rocket: r}).Shape == chamber.Cone }
	return &section{
		path: path, group: group, about: "The closure of that end of the chamber: shape, wall and lap.", apart: true,
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
			num("overlap", "overlap", 1, 10,
				"Length of the lap that is bonded into the tube.").required(there, `"30 mm"`),
			num("bond_strength", "bond", 1, 10,
				"Shear strength of the adhesive as you prepare it; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalBond }),
			num("wall", "wall", 0.05, 0.5,
				"Thickness of the closure; the tube's when not given.").
				otherwise(inVessel((*chamber.Chamber).WallThickness)),
			num("strength", "strength", 1, 10,
				"Tensile strength of the closure's wall; that of its material as cloth lying both ways when not given."),
			num("half_angle", "half angle", 1, 5,
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
	there := func(r *rocket.Rocket) bool { return thread(place{rocket: r}) != nil }
	return &section{
		path: "chamber.thread", group: "thread", about: "The nozzle's retainer thread.", apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Thread = &chamber.Thread{}
		},
		drop: func(r *rocket.Rocket) { r.Chamber.Thread = nil },
		fields: []*field{
			num("diameter", "diameter", 1, 5,
				"Major diameter of the thread that holds the nozzle or its adapter.").required(there, `"40 mm"`),
			num("pitch", "pitch", 0.25, 1,
				"From one turn of the thread to the next.").required(there, `"2 mm"`),
			num("engaged", "engaged", 0.5, 5,
				"Length of thread in engagement.").required(there, `"12 mm"`),
			num("strength", "strength", 1, 10,
				"Tensile strength of the male part; a typical one of aluminium when not given.").
				otherwise(func(place) float64 { return chamber.TypicalThread }),
			num("female_strength", "female", 1, 10,
				"Tensile strength of the female part; the male part's when not given.").
				otherwise(func(p place) float64 {
					if v := thread(p).Strength; v != 0 {
						return v
					}
					return chamber.TypicalThread
				}),
			num("seal", "seal", 1, 5,
				"Diameter that the pressure acts on; the thread's when not given.").
				otherwise(func(p place) float64 { return thread(p).Diameter }),
			num("hole", "hole", 1, 5,
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
	there := func(r *rocket.Rocket) bool { return heating(place{rocket: r}) != nil }
	return &section{
		path: "chamber.heating", group: "heating", about: "What a sealed chamber beside the motor heats up to.", apart: true, drive: rocket.MotorPower,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make: func(r *rocket.Rocket) {
			giveChamber(r)
			r.Chamber.Heating = &chamber.Heating{}
		},
		drop: func(r *rocket.Rocket) { r.Chamber.Heating = nil },
		fields: []*field{
			num("temperature", "hot", 1, 5,
				"That the air of the sealed chamber reaches beside the motor.").required(there, `"80 degC"`),
			num("time", "in", 1, 10,
				"In which it gets there.").required(there, `"20 s"`),
			num("rise", "rise", 0.01, 0.05,
				"Of pressure that a vent is to allow.").byDefault("0.05 bar"),
		},
	}
}

// holding is a number of the mount of which a rocket knows whether anybody stated it, 0 too.
func holding(key, label string, step, coarse float64, help string, at func(*chamber.Mount) (*float64, *bool)) *field {
	return &field{key: key, label: label, help: help, codec: &numberCodec{step: step, coarse: coarse, in: mountCell{at}}}
}

// cycles are a count of which a chamber knows whether anybody stated it, 0 too.
func cycles(help string) *field {
	return &field{key: "cycles", label: "cycles", help: help, codec: &numberCodec{step: 1, coarse: 10, in: cyclesCell{}}}
}

// cyclesCell is where a chamber holds them.
type cyclesCell struct{}

func (cyclesCell) get(p place) (v float64, given, there bool) {
	c := p.rocket.Chamber
	if c == nil {
		return 0, false, false
	}
	return float64(c.Cycles), c.Counted || c.Cycles != 0, true
}

func (cyclesCell) set(p place, v float64) bool {
	c := p.rocket.Chamber
	if c == nil {
		return false
	}
	c.Cycles, c.Counted = int(v), true
	return true
}

// mountCell is where a mount holds it.
type mountCell struct {
	at func(*chamber.Mount) (v *float64, none *bool)
}

func (c mountCell) get(p place) (v float64, given, there bool) {
	if p.rocket.Recovery == nil {
		return 0, false, false
	}
	at, none := c.at(p.rocket.Recovery)
	return *at, *at != 0 || *none, true
}

func (c mountCell) set(p place, v float64) bool {
	if p.rocket.Recovery == nil {
		return false
	}
	at, none := c.at(p.rocket.Recovery)
	*at, *none = v, v == 0
	return true
}

func recoverySection() *section {
	there := func(r *rocket.Rocket) bool { return r.Recovery != nil }
	return &section{
		path: "recovery", group: "recovery", about: "What holds the recovery gear: pin, bond and line.", apart: true,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make:  func(r *rocket.Rocket) { r.Recovery = &chamber.Mount{} },
		drop:  func(r *rocket.Rocket) { r.Recovery = nil },
		fields: []*field{
			holding("pin", "pin", 0.5, 1, "Diameter of the cross pin that takes the recovery line; 0 says that there is none.",
				func(m *chamber.Mount) (*float64, *bool) { return &m.Pin, &m.None.Pin }),
			num("pin_strength", "pin shear", 1, 10,
				"Shear strength of the pin; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalPin }),
			num("planes", "planes", 1, 1, "In how many planes the pin is sheared.").
				byDefault("1"),
			holding("bond_area", "bond area", 0.5, 5, "By which the mount is bonded to the airframe; 0 says that it is not bonded.",
				func(m *chamber.Mount) (*float64, *bool) { return &m.BondArea, &m.None.Bond }),
			num("bond_strength", "bond", 1, 10,
				"Shear strength of that bond; a typical one when not given.").
				otherwise(func(place) float64 { return chamber.TypicalBond }),
			holding("line", "line", 50, 500, "Breaking strength of the recovery line as rigged: a knot takes up to half.",
				func(m *chamber.Mount) (*float64, *bool) { return &m.Line, &m.None.Line }),
			num("line_length", "line length", 0.1, 1,
				"Of the recovery line, for the snatch."),
			num("line_stretch", "stretch", 1, 5,
				"Of the line at its breaking strength; a braided polyester one's when not given.").
				otherwise(func(place) float64 { return chamber.TypicalStretch }),
			num("canopy_mass", "canopy mass", 5, 50,
				"At the end of the line, for the snatch."),
		},
	}
}
